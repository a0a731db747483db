#include "projector/workbench/look/theme.h"

#include <QApplication>
#include <QPalette>
#include <QToolTip>
#include <cmath>

#include "projector/workbench/look/style.h"

namespace cowlcast::projector {
namespace {

Theme light() {
  Theme t;
  t.name = ThemeName::light;
  t.ground = QColor(0xf3, 0xee, 0xe5);
  t.panel = QColor(0xfb, 0xf8, 0xf2);
  t.field = QColor(0xff, 0xff, 0xff);
  t.paper = QColor(0xfd, 0xfb, 0xf7);
  t.ink = QColor(0x22, 0x20, 0x1c);
  t.quiet = QColor(0x59, 0x53, 0x49);
  t.line = QColor(0xcd, 0xc4, 0xb4);
  t.accent = QColor(0x0b, 0x59, 0x66);
  t.on_accent = QColor(0xff, 0xff, 0xff);
  t.tint = QColor(0xdd, 0xeb, 0xea);
  t.warn = QColor(0x86, 0x26, 0x18);
  t.warn_ground = QColor(0xfa, 0xe6, 0xde);
  t.good = QColor(0x25, 0x5c, 0x3a);
  t.cloth = QColor(0xec, 0xe4, 0xd6);
  t.part = QColor(0xdc, 0xe8, 0xe6);
  t.seam = QColor(0x0b, 0x59, 0x66);
  t.cut = QColor(0x22, 0x20, 0x1c);
  t.slash = QColor(0x8a, 0x4b, 0x08);
  t.handle = QColor(0xa8, 0x32, 0x17);
  t.ghost = QColor(0x8d, 0x85, 0x77);
  return t;
}

Theme dark() {
  Theme t;
  t.name = ThemeName::dark;
  t.ground = QColor(0x1a, 0x1d, 0x1f);
  t.panel = QColor(0x22, 0x26, 0x29);
  t.field = QColor(0x15, 0x18, 0x1a);
  t.paper = QColor(0x13, 0x16, 0x18);
  t.ink = QColor(0xf2, 0xee, 0xe6);
  t.quiet = QColor(0xbc, 0xb6, 0xaa);
  t.line = QColor(0x4a, 0x51, 0x56);
  t.accent = QColor(0x7f, 0xcd, 0xd4);
  t.on_accent = QColor(0x0c, 0x22, 0x26);
  t.tint = QColor(0x26, 0x3c, 0x40);
  t.warn = QColor(0xff, 0xbc, 0xa6);
  t.warn_ground = QColor(0x40, 0x26, 0x20);
  t.good = QColor(0xa0, 0xd8, 0xb4);
  t.cloth = QColor(0x2a, 0x2c, 0x2c);
  t.part = QColor(0x1f, 0x33, 0x36);
  t.seam = QColor(0x7f, 0xcd, 0xd4);
  t.cut = QColor(0xf2, 0xee, 0xe6);
  t.slash = QColor(0xf0, 0xc2, 0x74);
  t.handle = QColor(0xff, 0x9d, 0x7a);
  t.ghost = QColor(0x86, 0x8b, 0x8c);
  return t;
}

Theme& in_use() {
  static Theme current = light();
  return current;
}

QPalette palette_of(const Theme& t) {
  QPalette palette;
  const auto set = [&palette](QPalette::ColorRole role, const QColor& colour) {
    palette.setColor(QPalette::All, role, colour);
  };
  set(QPalette::Window, t.ground);
  set(QPalette::WindowText, t.ink);
  set(QPalette::Base, t.field);
  set(QPalette::AlternateBase, t.panel);
  set(QPalette::Text, t.ink);
  set(QPalette::Button, t.panel);
  set(QPalette::ButtonText, t.ink);
  set(QPalette::BrightText, t.warn);
  set(QPalette::Highlight, t.accent);
  set(QPalette::HighlightedText, t.on_accent);
  set(QPalette::Link, t.accent);
  set(QPalette::LinkVisited, t.accent);
  set(QPalette::ToolTipBase, t.panel);
  set(QPalette::ToolTipText, t.ink);
  set(QPalette::PlaceholderText, t.quiet);
  set(QPalette::Light, t.panel.lighter(110));
  set(QPalette::Midlight, t.panel);
  set(QPalette::Mid, t.line);
  set(QPalette::Dark, t.quiet);
  set(QPalette::Shadow, t.line);
  for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText})
    palette.setColor(QPalette::Disabled, role, t.quiet);
  return palette;
}

}  // namespace

Theme theme_named(ThemeName name, double size) {
  Theme theme = name == ThemeName::light ? light() : dark();
  theme.letters = size;
  return theme;
}

const Theme& theme() {
  return in_use();
}

void apply_theme(QApplication& application, const Theme& theme) {
  in_use() = theme;
  if (dynamic_cast<WorkbenchStyle*>(QApplication::style()) == nullptr)
    QApplication::setStyle(new WorkbenchStyle);  // Qt takes it
  QApplication::setPalette(palette_of(theme));
  QToolTip::setPalette(palette_of(theme));
  application.setFont(letters(TextSize::plain));
  QToolTip::setFont(letters(TextSize::plain));
}

QFont letters(TextSize size, bool bold) {
  QFont font;
  double pixels = 17.0;
  if (size == TextSize::small) pixels = 15.0;
  if (size == TextSize::large) pixels = 21.0;
  if (size == TextSize::title) pixels = 29.0;
  font.setPixelSize(grown(pixels));
  font.setBold(bold);
  return font;
}

int grown(double pixels) {
  return static_cast<int>(std::lround(pixels * theme().letters));
}

std::vector<TextPair> text_pairs(const Theme& t) {
  std::vector<TextPair> pairs;
  const std::vector<std::pair<std::string, QColor>> grounds{
      {"the window", t.ground}, {"the panel", t.panel}, {"a field", t.field}, {"the canvas", t.paper}};
  for (const auto& [name, ground] : grounds) {
    pairs.push_back({"words on " + name, t.ink, ground});
    pairs.push_back({"lesser words on " + name, t.quiet, ground});
    pairs.push_back({"chosen words on " + name, t.accent, ground});
    pairs.push_back({"warning on " + name, t.warn, ground});
    pairs.push_back({"good news on " + name, t.good, ground});
  }
  pairs.push_back({"words on the accent", t.on_accent, t.accent});
  pairs.push_back({"words on the tint", t.ink, t.tint});
  pairs.push_back({"lesser words on the tint", t.quiet, t.tint});
  pairs.push_back({"chosen words on the tint", t.accent, t.tint});
  pairs.push_back({"a refusal", t.warn, t.warn_ground});
  pairs.push_back({"words of a refusal", t.ink, t.warn_ground});
  pairs.push_back({"words on cloth", t.ink, t.cloth});
  pairs.push_back({"words on a part", t.ink, t.part});
  pairs.push_back({"a handle's words", t.handle, t.paper});
  pairs.push_back({"seam line", t.seam, t.paper, 3.0});
  pairs.push_back({"seam line on a part", t.seam, t.part, 3.0});
  pairs.push_back({"cut line on cloth", t.cut, t.cloth, 3.0});
  pairs.push_back({"slash line on a part", t.slash, t.part, 3.0});
  pairs.push_back({"what was before", t.ghost, t.paper, 3.0});
  return pairs;
}

}  // namespace cowlcast::projector
