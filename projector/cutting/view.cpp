#include "projector/cutting/view.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <numbers>
#include <utility>

#include "drafting/geometry/polyline.h"
#include "drafting/refusal.h"
#include "projector/cutting/parts.h"
#include "projector/cutting/plan.h"

namespace cowlcast::projector {
namespace {

constexpr double kDegree = std::numbers::pi / 180.0;

Point middle_on_mat(const CuttingView& view) {
  const drafting::Box box = drafting::box_of(view.piece.cut_line);
  return mat_from_piece(view.laying, 0.5 * (box.low + box.high));
}

Laying moved(Laying laying, double dx, double dy) {
  laying.x += dx;
  laying.y += dy;
  return laying;
}

CuttingView read_on(CuttingView view, Act act) {
  const auto count = static_cast<int>(cautions().size());
  if (act == Act::back) view.cautions_shown = std::max(1, view.cautions_shown - 1);
  if (act != Act::next) return view;
  if (view.cautions_shown < count) {
    ++view.cautions_shown;
  } else {
    view.cautions_read = true;
    view.phase = Phase::laying;
  }
  return view;
}

// A move or turn while laying: near the laid-out place it goes all the way, unless the steps are fine.
CuttingView placed(CuttingView view, const Laying& laying, bool may_snap) {
  if (may_snap && view.kept) {
    const Laying there = snapped(view.laying, laying, *view.kept, view.piece.cut_line);
    if (apart(there, laying, view.piece.cut_line) > 0.0) view.message = "At its laid-out place.";
    view.laying = there;
  } else {
    view.laying = laying;
  }
  return view;
}

CuttingView waive(CuttingView view) {
  if (view.asked) {
    view.waived.push_back(view.block);
    view.block.clear();
    view.way_out.clear();
  }
  view.asked = !view.asked;
  return view;
}

CuttingView ask_to_end(CuttingView view) {
  const bool amid =
      view.phase == Phase::cutting && !all_cut(view) && view.block.empty() && view.light == Light::lines;
  view.ended = view.asked || !amid;
  view.asked = true;
  if (!view.ended) view.message = "Esc once more ends here; what is cut is kept.";
  return view;
}

}  // namespace

double move_step(Pace pace) {
  return pace == Pace::fine ? 0.1 : pace == Pace::normal ? 1.0 : 10.0;
}

double turn_step(Pace pace) {
  return (pace == Pace::fine ? 0.02 : pace == Pace::normal ? 0.2 : 5.0) * kDegree;
}

CuttingView new_view(drafting::Piece piece, std::vector<Cut> plan, const Laying& laying,
                     const FrameStyle& style) {
  CuttingView view;
  view.piece = std::move(piece);
  view.plan = std::move(plan);
  view.laying = laying;
  view.kept = laying;
  view.style = style;
  return view;
}

bool is_laying(const CuttingView& view) {
  return view.phase == Phase::laying;
}

bool all_cut(const CuttingView& view) {
  return view.phase == Phase::cutting && view.cut >= static_cast<int>(view.plan.size());
}

const std::vector<std::string>& cautions() {
  static const std::vector<std::string> list{
      "Close the blade whenever you put it down.",
      "Cut away from your body.",
      "Keep the other hand outside the hatched band.",
      "No children and no pets at the table.",
      "Keep your eyes out of the projector's beam.",
      "Projector and camera hang firmly, cables out of the way.",
      "What the makers of blade, mat and projector say comes first.",
      "This light is an aid: it does not see your hand.",
  };
  return list;
}

CuttingView after(CuttingView view, Act act, Pace pace) {
  if (view.light != Light::lines && act != Act::end) return view;
  view.message.clear();
  const bool was_asked = std::exchange(view.asked, false);
  const bool next_asks = act == Act::next && view.camera == CameraAsk::by_next && !view.block.empty();
  view.camera_asked = next_asks || (act == Act::look && view.camera != CameraAsk::none);
  if (view.camera_asked) return view;
  if (act == Act::end || (act == Act::waive && !view.block.empty())) {
    view.asked = was_asked;
    return act == Act::end ? ask_to_end(std::move(view)) : waive(std::move(view));
  }
  if (!view.block.empty() && !(act == Act::unlock && view.phase == Phase::cutting)) return view;
  if (view.phase == Phase::cautions) return read_on(std::move(view), act);
  if (view.phase == Phase::laying) {
    const double step = move_step(pace), turn = turn_step(pace);
    const bool may_snap = pace != Pace::fine;
    const Laying here = view.laying;
    const auto turned = [&](double angle) { return turned_about(here, middle_on_mat(view), angle); };
    switch (act) {
      case Act::left:
        return placed(std::move(view), moved(here, -step, 0.0), may_snap);
      case Act::right:
        return placed(std::move(view), moved(here, step, 0.0), may_snap);
      case Act::away:
        return placed(std::move(view), moved(here, 0.0, step), may_snap);
      case Act::nearer:
        return placed(std::move(view), moved(here, 0.0, -step), may_snap);
      case Act::turn_left: {
        const Laying there = turned(turn);
        return with_parts_as_laid(placed(std::move(view), there, may_snap));
      }
      case Act::turn_right: {
        const Laying there = turned(-turn);
        return with_parts_as_laid(placed(std::move(view), there, may_snap));
      }
      case Act::flip:
        if (!view.before.empty())
          view.message = "The parts before lie this way up, so this one does.";
        else
          view.laying = flipped_about(here, middle_on_mat(view));
        return with_parts_as_laid(std::move(view));
      case Act::home:
        if (view.kept) view.laying = *view.kept;
        view.message = "At its laid-out place.";
        return with_parts_as_laid(std::move(view));
      case Act::back:
        return back_in_parts(std::move(view));
      case Act::next:
        if (view.to_find) return found_by_marks(std::move(view), was_asked);
        if (!part_error(view)) view.doubt.reset();  // laid by hand
        if (!view.ordered) view.plan = ordered_cuts(std::move(view.plan), view.laying, view.person);
        view.ordered = true;
        view.phase = Phase::cutting;
        view.kept = view.laying;
        return view;
      default:
        break;
    }
  }
  switch (act) {
    case Act::next:
      if (!all_cut(view)) ++view.cut;
      break;
    case Act::back:
      if (view.cut > cut_before_part(view))
        --view.cut;
      else
        view.phase = Phase::laying;
      if (view.phase == Phase::laying && view.cut == 0) view.ordered = false;
      break;
    case Act::unlock:
      view.phase = Phase::laying;
      if (view.cut == 0) view.ordered = false;
      break;
    case Act::legend:
      view.legend = !view.legend;
      break;
    case Act::band:
      view.overlay.band = !view.overlay.band;
      break;
    case Act::grain:
      view.grain_line = !view.grain_line;
      break;
    case Act::part:
      return next_part(std::move(view));
    default:
      break;
  }
  return view;
}

CuttingView dragged(CuttingView view, const Point& shift) {
  if (!is_laying(view) || !view.block.empty()) return view;
  view.message.clear();
  const Laying there = moved(view.laying, shift.x(), shift.y());
  return placed(std::move(view), there, true);
}

CuttingView blocked(CuttingView view, const std::string& reason, const std::string& way_out) {
  const bool known = std::find(view.waived.begin(), view.waived.end(), reason) != view.waived.end();
  view.asked = view.asked && view.block == reason;
  view.block = known ? std::string() : reason;
  view.way_out = view.block.empty() ? std::string() : way_out;
  return view;
}

CuttingView resumed(CuttingView view, const Record& record) {
  const double height = view.laying.height;  // of the cloth as it is now
  view.laying = record.laying;
  view.laying.height = height;
  view.kept = view.laying;
  view.seconds = record.seconds;
  std::vector<Cut> left = ordered_cuts(std::move(view.plan), view.laying, view.person);
  view.plan = taken_as_cut(left, record);
  view.cut = static_cast<int>(view.plan.size());
  for (Cut& stroke : ordered_cuts(std::move(left), view.laying, view.person))
    view.plan.push_back(std::move(stroke));
  view.ordered = true;
  return view;
}

Record recorded(const CuttingView& view, Record record, const std::string& now) {
  record.piece = view.piece.name;
  record.shape = shape_of(view.piece);
  record.laying = view.laying;
  record.strokes = static_cast<int>(view.plan.size());
  record.cut = view.cut;
  record.cut_strokes = places_of(view.piece, {view.plan.begin(), view.plan.begin() + view.cut});
  record.seconds = view.seconds;
  if (view.cautions_read) record.cautions_read_at = now;
  for (const std::string& reason : view.waived) {  // once in a sitting, at the time it was waived
    const auto written = [&](const Waiver& waiver) {
      return waiver.reason == reason && waiver.table == view.table_made_at && waiver.at >= view.begun_at;
    };
    if (std::none_of(record.waivers.begin(), record.waivers.end(), written))
      record.waivers.push_back({now, reason, view.table_made_at});
  }
  return record;
}

std::string stroke_name(const drafting::Piece& piece, const Cut& cut) {
  const Point middle = drafting::point_at(cut.path, 0.5 * drafting::length(cut.path));
  std::string name = "cut line";
  double least = 1e300;
  for (const drafting::Edge& edge : piece.edges) {
    if (edge.points.size() < 2 || edge.role == "cowl-edge") continue;
    const double distance = drafting::nearest(edge.points, middle).distance;
    if (distance >= least) continue;
    least = distance;
    name = edge.role;
  }
  std::replace(name.begin(), name.end(), '-', ' ');
  return name;
}

}  // namespace cowlcast::projector
