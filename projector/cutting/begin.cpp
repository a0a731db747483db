#include "projector/cutting/begin.h"

#include <cstdio>
#include <numbers>
#include <string>
#include <utility>

#include "calibration/refusal.h"
#include "drafting/geometry/polyline.h"
#include "drafting/refusal.h"

namespace cowlcast::projector {
namespace {

Laying first_laying(const CuttingWishes& wishes, const Polyline& lit, const drafting::Piece& piece) {
  if (wishes.at) return *wishes.at;
  const Laying laying = in_the_middle(lit, piece, wishes.height);
  const drafting::Box box = drafting::box_of(lit);
  return wishes.mirrored ? flipped_about(laying, 0.5 * (box.low + box.high)) : laying;
}

// Amid a piece it lies where it lay: strokes that are cut do not move.
void refuse_another_place(const CuttingWishes& wishes, const Record& record, const Polyline& piece) {
  constexpr double kRounding = 0.5;  // mm, of a place that was written down
  const Laying& lies = record.laying;
  const bool elsewhere =
      wishes.at ? !(apart(*wishes.at, lies, piece) < kRounding) : wishes.mirrored && !lies.mirrored;
  if (!elsewhere) return;
  char text[200];
  std::snprintf(
      text, sizeof text,
      "%d of %d strokes are cut and the piece lies at %.2f,%.2f,%.3f%s, not where --at or --mirrored "
      "says. ",
      record.cut, record.strokes, lies.x, lies.y, lies.angle * 180.0 / std::numbers::pi,
      lies.mirrored ? ", face down" : "");
  throw drafting::Refusal(text +
                          std::string("Leave them out, and lay it anew with U where the cloth was moved."));
}

Polyline mat_outline(const Point& size, const Polyline& lit) {
  const drafting::Box box = drafting::box_of(lit);
  const Point middle = 0.5 * (box.low + box.high), half = 0.5 * size;
  Polyline outline;
  for (const Point& sign : {Point(-1, -1), Point(1, -1), Point(1, 1), Point(-1, 1)})
    outline.push_back(middle + half.cwiseProduct(sign));
  return outline;
}

}  // namespace

CuttingView begun(const calibration::TableMap& map, drafting::Piece piece, const CuttingWishes& wishes,
                  const Record& record, const std::string& now) {
  if (record.cut > 0) refuse_another_place(wishes, record, piece.cut_line);
  const Polyline lit = lit_outline(map, wishes.height);
  const Laying laying = first_laying(wishes, lit, piece);
  std::vector<Cut> plan = cuts_of(cut_runs(piece), wishes.blade, {});
  CuttingView view = new_view(std::move(piece), std::move(plan), laying, style_for_cloth(wishes.cloth));
  view.person = standing_before(lit, wishes.hand);
  view.table_made_at = map.made_at;
  view.begun_at = now;
  view.inches = wishes.inches;
  view.overlay.hand = view.person.hand;
  view.overlay.band_width = wishes.band;
  if (wishes.mat) view.mat = mat_outline(*wishes.mat, lit);
  if (record.cut > 0) {
    view = resumed(std::move(view), record);
  } else {
    Polyline outline = laid(laying, view.piece.cut_line);
    if (!outline.empty()) outline.push_back(outline.front());
    const Reach reach = reach_of(map, {outline}, laying.height);
    if (!reach.any_inside)
      throw calibration::Refusal(
          "No part of the piece lies in the light. Leave --at out to lay it in the middle.");
    view.seconds = record.seconds;
    if (reach.outside > 0.0) view = in_parts(std::move(view), lit);
  }
  if (cautions_due(record, now)) {
    view.phase = Phase::cautions;
    view.cautions_shown = 1;
  }
  return view;
}

}  // namespace cowlcast::projector
