#include <gtest/gtest.h>

#include <QImage>
#include <QPainter>
#include <algorithm>

#include "projector/frame/style.h"
#include "projector/workbench/look/icons.h"
#include "projector/workbench/look/theme.h"

namespace cowlcast::projector {
namespace {

/// WCAG 2.2, definition of contrast ratio.
double contrast(const QColor& a, const QColor& b) {
  const double one = relative_luminance(a.rgb()), other = relative_luminance(b.rgb());
  return (std::max(one, other) + 0.05) / (std::min(one, other) + 0.05);
}

TEST(Theme, KeepsItsContrastsInLightAndDark) {
  for (const ThemeName name : {ThemeName::light, ThemeName::dark}) {
    const Theme theme = theme_named(name, 1.0);
    int texts = 0;
    for (const TextPair& pair : text_pairs(theme)) {
      EXPECT_GE(contrast(pair.text, pair.ground), pair.least)
          << pair.what << (name == ThemeName::dark ? ", dark" : "");
      EXPECT_TRUE(pair.least == 4.5 || pair.least == 3.0);  // WCAG 2.2, 1.4.3 and 1.4.11
      texts += pair.least == 4.5 ? 1 : 0;
    }
    EXPECT_GE(texts, 25);
  }
}

TEST(Icons, AreDrawnAndDiffer) {
  std::vector<QImage> all;
  for (int i = 0; i < static_cast<int>(Icon::count); ++i) {
    QImage image(48, 48, QImage::Format_ARGB32_Premultiplied);
    image.fill(Qt::transparent);
    QPainter painter(&image);
    paint_icon(painter, QRectF(0, 0, 48, 48), static_cast<Icon>(i), Qt::black);
    painter.end();
    int inked = 0;
    for (int y = 0; y < 48; ++y)
      for (int x = 0; x < 48; ++x) inked += qAlpha(image.pixel(x, y)) > 128 ? 1 : 0;
    EXPECT_GT(inked, 40) << i;
    for (int x = 0; x < 48; ++x) EXPECT_EQ(qAlpha(image.pixel(x, 0)) + qAlpha(image.pixel(x, 47)), 0) << i;
    EXPECT_EQ(std::count(all.begin(), all.end(), image), 0) << i;
    all.push_back(image);
  }
}

}  // namespace
}  // namespace cowlcast::projector
