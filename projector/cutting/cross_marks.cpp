#include "projector/cutting/cross_marks.h"

#include <cmath>
#include <numbers>
#include <string>

namespace cowlcast::projector {
namespace {

constexpr double kArm = 15.0,
                 kOpen = 5.0;    // mm from the middle: to the arm's end, to its beginning when open
constexpr double kRing = 9.0;    // mm, radius
constexpr double kNumber = 1.0;  // height of a number, of that of other words

void add_cross(Mark& mark, const Point& at, double from) {
  for (const Point& way : {Point(1, 0), Point(-1, 0), Point(0, 1), Point(0, -1)})
    mark.lines.push_back({at + from * way, at + kArm * way});
}

void add_ring(Mark& mark, const Point& at) {
  Polyline ring;
  for (int i = 0; i <= 32; ++i) {
    const double angle = 2.0 * std::numbers::pi * i / 32.0;
    ring.emplace_back(at + kRing * Point(std::cos(angle), std::sin(angle)));
  }
  mark.lines.push_back(std::move(ring));
}

// Between two arms, wherever there is room.
Words number_of(size_t index, const Point& at, const FrameStyle& style) {
  Words words{
      .text = std::to_string(index + 1), .height = kNumber * style.word_height, .colour = style.words};
  const double off = 0.8 * words.height + 0.5 * kArm;
  for (const Point& side : {Point(1, 1), Point(-1, 1), Point(1, -1), Point(-1, -1)})
    words.places.push_back(at + off * side);
  return words;
}

}  // namespace

Drawing cross_drawing(const CuttingView& view) {
  Drawing drawing;
  Mark mark{.lines = {}, .width = view.style.mark_width, .colour = view.style.guide};
  const auto number = [&](size_t i, const Point& at) {
    drawing.words.push_back(number_of(i, at, view.style));
  };
  const auto add = [&](const std::vector<Point>& places, size_t from, bool open, bool ringed) {
    for (size_t i = from; i < places.size(); ++i) {
      add_cross(mark, places[i], open ? kOpen : 0.0);
      if (ringed) add_ring(mark, places[i]);
      number(i, places[i]);
    }
  };
  const bool found = !view.crosses.empty() && is_laying(view) && !view.to_find;
  for (size_t i = 0; i < view.pointed.size(); ++i) {
    add_ring(mark, view.pointed[i]);
    number(i, view.pointed[i]);
  }
  if (view.to_find || found)
    add(laid(view.laying, view.crosses), view.pointed.size(), true, found);
  else if (view.part + 1 < view.parts.size())
    add(laid(view.laying, view.parts[view.part].chalk), 0, false, false);
  if (!mark.lines.empty()) drawing.marks.push_back(std::move(mark));
  return drawing;
}

}  // namespace cowlcast::projector
