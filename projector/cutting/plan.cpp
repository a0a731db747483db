#include "projector/cutting/plan.h"

#include <algorithm>

#include "drafting/geometry/polyline.h"
#include "drafting/refusal.h"
#include "projector/blade/order.h"
#include "projector/cutting/view.h"

namespace cowlcast::projector {
namespace {

Point middle_of(const Cut& stroke) {
  return drafting::point_at(stroke.path, 0.5 * drafting::length(stroke.path));
}

bool lies_at(const Cut& stroke, const StrokePlace& place) {
  constexpr double kSame = 0.1;  // mm
  const auto near = [](const Point& a, const Point& b) { return (a - b).norm() < kSame; };
  const Point &from = stroke.path.front(), &to = stroke.path.back();
  return near(middle_of(stroke), place.middle) &&
         ((near(from, place.from) && near(to, place.to)) || (near(from, place.to) && near(to, place.from)));
}

// Of a record that counts alone: the longest ones, if no order of cutting could have begun with others.
std::vector<Cut> longest(std::vector<Cut>& strokes, const Record& record) {
  std::stable_sort(strokes.begin(), strokes.end(), [](const Cut& a, const Cut& b) {
    return drafting::length(a.path) > drafting::length(b.path);
  });
  const auto count = static_cast<size_t>(record.cut);
  const bool as_many = static_cast<size_t>(record.strokes) == strokes.size();
  const bool sure =
      as_many && (count == strokes.size() || drafting::length(strokes[count].path) <
                                                 kAboutAsLong * drafting::length(strokes[count - 1].path));
  if (!sure)
    throw drafting::Refusal(
        "It is not known which strokes are cut: an earlier version wrote the record and only counted them. "
        "Begin the piece with a new record, lay it to the cut edges, and say of each stroke that is cut "
        "already that it is cut.");
  const auto end = strokes.begin() + static_cast<long>(count);
  std::vector<Cut> done(strokes.begin(), end);
  strokes.erase(strokes.begin(), end);
  return done;
}

}  // namespace

std::vector<StrokePlace> places_of(const drafting::Piece& piece, const std::vector<Cut>& strokes) {
  std::vector<StrokePlace> places;
  for (const Cut& stroke : strokes)
    places.push_back(
        {stroke_name(piece, stroke), stroke.path.front(), middle_of(stroke), stroke.path.back()});
  return places;
}

std::vector<Cut> taken_as_cut(std::vector<Cut>& strokes, const Record& record) {
  if (record.cut == 0) return {};
  if (record.cut_strokes.empty()) return longest(strokes, record);
  std::vector<Cut> done;
  for (const StrokePlace& place : record.cut_strokes) {
    const auto found = std::find_if(strokes.begin(), strokes.end(),
                                    [&](const Cut& stroke) { return lies_at(stroke, place); });
    if (found == strokes.end())
      throw drafting::Refusal(
          "A stroke along the " + place.seam +
          " is cut by the record, but this piece has no such stroke. Go on with the piece "
          "as it was then, or begin this one with a new record.");
    done.push_back(std::move(*found));
    strokes.erase(found);
  }
  return done;
}

}  // namespace cowlcast::projector
