// Writing on the table: letters as outlines, and finding room for them.
//
//   std::vector<Words> words = {{.text = "FOLD", .places = {beside_the_fold, further_along}}};
//   for (Mark& mark : settled(words, {cut_line}, lit)) marks.push_back(std::move(mark));
//
// Letters are bold, since a projector's pixels hardly light thin strokes, and stand
// upright for the operator, whichever way a piece lies. Heights are
// those of capitals on the cloth: from a standing person's eye, about 0.8 m away,
// 12 mm are 52 minutes of arc, more than twice what is comfortable to read
// (20 to 22; ISO 9241-303, value from memory), which dim light on dark cloth needs.
// Needs a QGuiApplication (any platform, "offscreen" too).
#pragma once

#include <string>
#include <vector>

#include "projector/frame/render.h"

namespace cowlcast::projector {

enum class Lines { centred, from_left };

/// `text` with its middle at `centre` (mat mm), capitals `height` mm high. Lines are parted by '\n'.
Mark writing(const std::string& text, const Point& centre, double height, QRgb colour,
             Lines lines = Lines::centred);

/// How much room a writing takes, mm across and down.
Point writing_size(const std::string& text, double height);

/// The text in lines of at most `longest` characters, parted at spaces.
std::string in_lines(const std::string& text, size_t longest);

/// Writing that still looks for its place.
struct Words {
  std::string text;
  double height = 12.0;  ///< of capitals, mm
  QRgb colour = 0xffffffff;
  std::vector<Point> places = {};  ///< where its middle may be, mat mm, the best first
  Lines lines = Lines::centred;
};

/// Marks, and words that go with them.
struct Drawing {
  std::vector<Mark> marks = {};
  std::vector<Words> words = {};
};

/// The words as marks, each at that of its places where it least lies over earlier words, over the lines
/// `clear_of` or beyond the light; of equal ones the first. In the language that was chosen (`said`). Words
/// without a place are left out.
std::vector<Mark> settled(const std::vector<Words>& words, const std::vector<Polyline>& clear_of,
                          const Polyline& lit);

}  // namespace cowlcast::projector
