// Theme: the colours and letters of the workbench, light and dark.
//
//   apply_theme(*qApp, theme_named(ThemeName::dark, 1.25));
//   painter.setPen(theme().ink);
//
// Every text colour keeps 4.5:1 against every ground it stands on (WCAG 2.2,
// 1.4.3), every line that carries meaning 3:1 (1.4.11); `text_pairs` lists them
// for the test. Nothing is told by colour alone.
#pragma once

#include <QColor>
#include <QFont>
#include <string>
#include <vector>

class QApplication;

namespace cowlcast::projector {

enum class ThemeName { light, dark };

struct Theme {
  ThemeName name = ThemeName::light;
  double letters = 1.0;  ///< size of all letters and controls, 1 the usual

  QColor ground, panel, field, paper;  ///< the window, its side panel, what is typed into, the canvas
  QColor ink, quiet, line;             ///< words, lesser words, frames
  QColor accent, on_accent, tint;      ///< what is chosen or pressed, the words on it, its faint ground
  QColor warn, warn_ground, good;      ///< words of a refusal, their ground, words that all is well

  QColor cloth, part, seam, cut, slash, handle, ghost;  ///< on the canvas
};

Theme theme_named(ThemeName name, double letters);

/// The theme in use; the light one before any was applied.
const Theme& theme();

/// Sets palette, style and letters of the whole program.
void apply_theme(QApplication& application, const Theme& theme);

enum class TextSize { small, plain, large, title };

/// Letters in use, in pixels that the screen's own scale multiplies.
QFont letters(TextSize size, bool bold = false);

/// A length of the layout, grown with the letters.
int grown(double pixels);

struct TextPair {
  std::string what;
  QColor text, ground;
  double least = 4.5;  ///< contrast that is wanted
};
std::vector<TextPair> text_pairs(const Theme& theme);

}  // namespace cowlcast::projector
