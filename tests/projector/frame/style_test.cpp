#include "projector/frame/style.h"

#include <gtest/gtest.h>

namespace cowlcast::projector {
namespace {

TEST(Style, RelativeLuminanceIsThatOfWcag) {
  // WCAG 2.2, relative luminance: 0 for black, 1 for white; the weights are those of the primaries.
  EXPECT_DOUBLE_EQ(relative_luminance(0xff000000), 0.0);
  EXPECT_NEAR(relative_luminance(0xffffffff), 1.0, 1e-12);
  EXPECT_NEAR(relative_luminance(0xffff0000), 0.2126, 1e-12);
  EXPECT_NEAR(relative_luminance(0xff00ff00), 0.7152, 1e-12);
  // #767676 is the darkest grey that keeps 4.5:1 on white: widely quoted, value from memory.
  EXPECT_NEAR(1.05 / (relative_luminance(0xff767676) + 0.05), 4.54, 0.01);
}

TEST(Style, EveryLineStandsOutOnEveryClothAtLeastThreeToOne) {
  // WCAG 2.2, 1.4.11: graphics 3:1.
  for (const QRgb cloth : {0xff101010u, 0xfff4f4f0u, 0xff808080u, 0xffb01828u, 0xff18244cu, 0xff2c6b3cu,
                           0xffe8c83cu, 0xff8a3a4cu, 0xff0000ffu, 0xff00ff00u, 0xffff0000u}) {
    const FrameStyle style = style_for_cloth(cloth);
    for (const QRgb light : {style.cut, style.seam, style.guide, style.warn})
      EXPECT_GE(contrast_on_cloth(light, style.ground, cloth), 3.0) << std::hex << cloth << ' ' << light;
  }
}

TEST(Style, BlueLightIsLostOnYellowCloth) {
  EXPECT_LT(contrast_on_cloth(0xff0000ff, 0xff000000, 0xffe8c83c),
            0.5 * contrast_on_cloth(0xffffff00, 0xff000000, 0xffe8c83c));
}

}  // namespace
}  // namespace cowlcast::projector
