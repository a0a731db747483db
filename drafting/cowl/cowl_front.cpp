#include "drafting/cowl/cowl_front.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <optional>

#include "drafting/cowl/opening.h"
#include "drafting/cowl/trueing.h"
#include "drafting/geometry/polyline.h"
#include "drafting/piece/assemble.h"
#include "drafting/piece/marks.h"
#include "drafting/refusal.h"

namespace cowlcast::drafting {
namespace {

constexpr double max_opening = 40.0 * std::numbers::pi / 180.0;  // wider wedges fold over instead of draping
constexpr double degrees = 180.0 / std::numbers::pi;
constexpr double grid = 0.1;             // mm: nearest drapes are named on it
constexpr double drilled_inside = 12.0;  // mm from the side seam

/// A drill mark of the base and the part it lies on.
struct PartMark {
  DrillMark drill;
  size_t part = 0;
};

/// All of the draft that does not depend on the drape.
struct Prepared {
  Piece base;
  LoweredBase lowered;
  std::vector<Slash> slashes;
  std::vector<Polyline> parts;
  std::vector<PartMark> drills;
  SlashedFront front;
};

enum class Failure { none, too_short, no_opening, too_wide, crossing };

struct Attempt {
  Failure failure = Failure::none;
  CowlDraft draft;
};

std::vector<Slash> slashes_of(const LoweredBase& lowered, const CowlWishes& wishes) {
  if (wishes.slashes.empty()) return default_slashes(lowered, wishes.slash_count, wishes.slash_form);
  if (wishes.slashes.size() > 6) throw Refusal("There can be at most 6 slash lines. Take some away.");
  std::vector<Slash> slashes;
  for (const SlashWish& wish : wishes.slashes) {
    slashes.push_back(wish.line.empty()
                          ? slash_at(lowered, wish.below_neckline, wish.seam, wish.share, wishes.slash_form)
                          : slash_along(lowered, wish.line));
  }
  return slashes;
}

void check_openings(const CowlWishes& wishes, const Prepared& p) {
  const size_t n = p.slashes.size();
  for (const auto* list : {&wishes.proportions, &wishes.set_openings}) {
    if (!list->empty() && list->size() != n) {
      throw Refusal("There are " + std::to_string(n) + " slash lines but " + std::to_string(list->size()) +
                    " openings. Give one opening for each slash line, from the top down.");
    }
  }
  for (const double share : wishes.proportions) {
    if (!(share >= 0.05) || !(share <= 20.0)) {
      throw Refusal("Each opening's proportion must be between 0.05 and 20. Give 1 for all to open evenly.");
    }
  }
  for (const double angle : wishes.set_openings) {
    if (!(angle >= 0.0) || !(angle <= max_opening)) {
      throw Refusal(
          "Each opening must be between 0 and 40 degrees. Open the other slash lines more instead.");
    }
  }
  const double room = p.lowered.centre_top().y() - p.lowered.centre_hem().y();
  if (!(wishes.pivot_height >= 0.0) || wishes.pivot_height > room) {
    throw Refusal("The swing's centre must lie on the centre front, between 0 and " +
                  mm_in_words(std::floor(room)) + " above the hem. Move it there.");
  }
}

/// The base's drill marks, each with the part that carries it along.
std::vector<PartMark> marks_on(const Piece& base, const std::vector<Polyline>& parts) {
  std::vector<PartMark> marks;
  for (const DrillMark& drill : drill_marks(base)) {
    const auto part = std::find_if(parts.begin(), parts.end(),
                                   [&](const Polyline& outline) { return contains(outline, drill.at); });
    if (part == parts.end())
      throw Refusal("The drill mark \"" + drill.name +
                    "\" lies above the lowered neckline or outside the front, " + place_in_words(drill.at) +
                    ". Move it, or lower the neckline less.");
    marks.push_back({drill, static_cast<size_t>(part - parts.begin())});
  }
  return marks;
}

Prepared prepare(const Piece& base, const CowlWishes& wishes) {
  Prepared p;
  p.base = base;
  add_allowances(p.base, wishes.allowances, wishes.corners);
  set_notch_form(p.base, wishes.notch_form);
  p.lowered = lower_neckline(base, wishes.neckline_drop);
  p.slashes = slashes_of(p.lowered, wishes);
  p.parts = parts_of(p.lowered, p.slashes);
  p.drills = marks_on(base, p.parts);
  for (const Slash& slash : p.slashes) p.front.hinges.push_back(slash.hinge);
  for (const Polyline& part : p.parts) p.front.corners.push_back(convex_hull(part));
  p.front.neck_point = p.lowered.neck_point();
  p.front.pivot = p.lowered.centre_hem() + Point(0.0, wishes.pivot_height);
  p.front.allowed_crossing = wishes.allowed_crossing;
  p.front.weights.assign(p.slashes.size(), 1.0);
  if (!wishes.proportions.empty()) p.front.weights = wishes.proportions;
  check_openings(wishes, p);
  p.front.max_opening = max_opening;
  p.front.max_swing = wishes.max_swing;
  return p;
}

void check(const CowlWishes& wishes) {
  if (!std::isfinite(wishes.drape) || wishes.drape <= 0.0) {
    throw Refusal(
        "The drape must be a length above zero. Measure it along the cowl from shoulder seam to "
        "shoulder seam, in millimetres.");
  }
  if (!std::isfinite(wishes.facing_depth) || wishes.facing_depth < 0.0 || wishes.facing_depth > 200.0) {
    throw Refusal("The facing depth must be between 0 and 200 mm. About 50 mm suits most cowls.");
  }
  if (!(wishes.max_swing > 0.0) || wishes.max_swing > 60.0 * std::numbers::pi / 180.0) {
    throw Refusal("The most swing must be above 0 and at most 60 degrees. 30 degrees is the usual.");
  }
  const auto within = [](double value, double least, double most, const char* what) {
    if (!(value >= least) || !(value <= most)) {
      throw Refusal(std::string(what) + " must be between " + mm_in_words(least) + " and " +
                    mm_in_words(most) + ". Give it in millimetres.");
    }
  };
  within(wishes.allowed_crossing, 0.0, 100.0, "The allowed crossing of the centre front");
  within(wishes.tacked_length, 0.0, 300.0, "The extra length to tack up");
  within(wishes.trial_hang, 0.0, 150.0, "The drop of the trial hang");
  if (!(wishes.cloth_width >= 300.0) || wishes.cloth_width > 5000.0) {
    throw Refusal("The cloth's width must be between 300 and 5000 mm. Give the width it is sold in.");
  }
}

Piece front_piece(const Prepared& p, const CowlWishes& wishes, const Opening& opening,
                  const std::vector<Motion>& motions) {
  Piece front;
  const bool back = has_edge(p.base, "centre-back");
  front.name = back ? "cowl back" : "cowl front";
  Trueing trueing;
  trueing.centre_role = back ? "centre-back" : "centre-front";
  trueing.facing_depth = wishes.separate_facing ? 0.0 : wishes.facing_depth;
  trueing.tacked_length = wishes.tacked_length;
  trueing.trial_hang = wishes.trial_hang;
  front.edges = trued_edges(p.lowered, p.slashes, motions, trueing);
  front.seam_line = outline_of(front.edges);
  const Polyline& centre = front.edges.front().points;
  (wishes.on_fold && !wishes.on_bias ? front.fold : front.mirror) = Segment{centre.front(), centre.back()};
  const Polyline& shoulder = edge_of(front, "shoulder").points;
  const Point cowl_centre = edge_of(front, "cowl-edge").points.front();
  front.points["neck-point"] = shoulder.back();
  front.points["shoulder-point"] = shoulder.front();
  front.points["cowl-centre"] = cowl_centre;
  if (p.lowered.notch) {
    const Point place = point_at(edge_of(front, "armhole").points, *p.lowered.notch);
    front.notches.push_back({"armhole", place, place});
  }
  front.notches.push_back({"cowl-edge", cowl_centre, cowl_centre});
  const double across = 0.25 * shoulder.back().x(), tall = cowl_centre.y() - centre.back().y();
  const Point low(across, centre.back().y() + 0.3 * tall);
  // Woven cloth hangs in a cowl best on the true bias: NIMI, CITS Dress Making, Trade Theory (2024), p. 224.
  const double grain = 0.4 * (wishes.on_bias ? std::min(tall, 1.4 * shoulder.back().x()) : tall);
  front.grain = Segment{low, low + grain * (wishes.on_bias ? Point(1, 1).normalized() : Point(0, 1))};
  if (const auto tack = tack_marks(front.edges, wishes.tacked_length)) {
    front.notches.push_back({"tack", tack->from, tack->from});
    front.notches.push_back({"tack", tack->to, tack->to});
    // Where the fold is caught, just inside the seam: common practice, no source.
    const Point inside(-drilled_inside, 0.0);
    add_drill_mark(front, "tack-upper", tack->from + inside);
    add_drill_mark(front, "tack-lower", tack->to + inside);
  }
  for (const PartMark& mark : p.drills)
    add_drill_mark(front, mark.drill.name, motions[mark.part] * mark.drill.at);

  CowlRecord record;
  record.drape = 2.0 * shoulder.back().x();
  record.hinge_angles = opening.angles;
  record.swing = opening.swing;
  for (const Slash& slash : p.slashes) {
    record.slash_lines.push_back({slash.start, slash.hinge});
    record.slash_paths.push_back(slash.line);
  }
  for (size_t k = 0; k < p.parts.size(); ++k) {
    record.parts.push_back({p.parts[k], moved(motions[k], p.parts[k])});
  }
  front.cowl = std::move(record);
  return front;
}

Piece facing_piece(const Piece& front, const CowlWishes& wishes) {
  Piece facing;
  facing.name = has_edge(front, "centre-back") ? "cowl back facing" : "cowl facing";
  facing.edges = facing_edges(front.edges, front.edges.front().role, wishes.facing_depth);
  facing.seam_line = outline_of(facing.edges);
  const Polyline& centre = facing.edges.front().points;
  (wishes.on_fold && !wishes.on_bias ? facing.fold : facing.mirror) = Segment{centre.front(), centre.back()};
  facing.points["neck-point"] = front.points.at("neck-point");
  const double middle = 0.5 * (centre.front().y() + centre.back().y()), reach = 0.3 * wishes.facing_depth;
  const double across = 0.5 * front.points.at("neck-point").x();
  facing.grain = Segment{{across, middle - reach}, {across, middle + reach}};
  add_allowances(facing, wishes.allowances, wishes.corners);
  set_notch_form(facing, wishes.notch_form);
  return facing;
}

/// The opening by the criterion, or as set; none when it breaks a constraint.
std::optional<Opening> opening_of(const Prepared& p, const CowlWishes& wishes, double drape) {
  if (wishes.set_openings.empty()) return open_to(p.front, 0.5 * drape);
  const auto swing = swing_to(p.front, wishes.set_openings, 0.5 * drape);
  if (!swing) return std::nullopt;
  const Opening opening{wishes.set_openings, *swing};
  const Trespass trespass = trespass_of(p.front, opening);
  if (trespass.over_centre > wishes.allowed_crossing + 1e-8 || trespass.above_edge > 1e-8)
    return std::nullopt;
  return opening;
}

Attempt attempt(const Prepared& p, const CowlWishes& wishes, double drape) {
  Attempt result;
  if (0.5 * drape < p.front.neck_point.x() - 1e-9) {
    result.failure = Failure::too_short;
    return result;
  }
  const auto opening = opening_of(p, wishes, drape);
  if (!opening) {
    result.failure = Failure::no_opening;
    return result;
  }
  CowlDraft& draft = result.draft;
  draft.front = front_piece(p, wishes, *opening, motions_of(p.front, *opening));
  if (self_crossing(draft.front.seam_line) || signed_area(draft.front.seam_line) <= 0.0) {
    result.failure = Failure::crossing;
    return result;
  }
  add_allowances(draft.front, wishes.allowances, wishes.corners);
  set_notch_form(draft.front, wishes.notch_form);
  const Box box = box_of(draft.front.cut_line);
  draft.cloth_width = 2.0 * box.high.x();
  draft.cloth_length = box.height();
  if (box.low.x() < -1e-6) result.failure = Failure::crossing;
  if (draft.cloth_width > wishes.cloth_width) result.failure = Failure::too_wide;
  draft.base = p.base;
  if (wishes.separate_facing && wishes.facing_depth > 0.0) draft.facing = facing_piece(draft.front, wishes);
  draft.tacked_length = wishes.tacked_length;
  draft.swing_centre = p.front.pivot;
  draft.neckline_drop = wishes.neckline_drop;
  draft.facing_depth = wishes.facing_depth;
  const Polyline& centre = draft.front.edges.front().points;
  draft.crossing = trespass_of(p.front, *opening).over_centre;
  draft.hem_drop = p.lowered.side_seam.front().y() -
                   (edge_of(draft.front, "side-seam").points.front().y() + wishes.tacked_length);
  draft.front_length = draft.front.points["cowl-centre"].y() - centre.back().y();
  return result;
}

bool works(const Prepared& p, const CowlWishes& wishes, double drape) {
  try {
    return attempt(p, wishes, drape).failure == Failure::none;
  } catch (const Refusal&) {
    return false;
  }
}

double least_drape(const Prepared& p, const CowlWishes& wishes) {
  double drape = std::ceil(2.0 * p.front.neck_point.x() / grid) * grid;
  for (double step = grid; step < 100.0; drape += step, step *= 1.5) {
    if (works(p, wishes, drape)) return drape;
  }
  throw Refusal(
      "No drape works with this base and these wishes: the opened front would cross itself or be "
      "wider than the cloth. Lower the neckline more, or use fewer slash lines or wider cloth.");
}

/// The longest drape that works below `fails`, on the grid.
double most_drape(const Prepared& p, const CowlWishes& wishes, double good, double fails) {
  while (fails - good > grid) {
    const double middle = 0.5 * (good + fails);
    (works(p, wishes, middle) ? good : fails) = middle;
  }
  double drape = std::floor(good / grid) * grid;
  while (!works(p, wishes, drape)) drape -= grid;
  return drape;
}

double longest_thinkable(const Prepared& p) {
  return 4.0 * (p.front.neck_point - p.front.pivot).norm() + 100.0;
}

std::string openings_in_words(const Opening& opening) {
  std::string text;
  char one[32];
  for (const double angle : opening.angles) {
    std::snprintf(one, sizeof one, "%s%.2f", text.empty() ? "" : ", ", angle * degrees);
    text += one;
  }
  std::snprintf(one, sizeof one, " degrees, swing %.2f degrees", opening.swing * degrees);
  return text + one;
}

/// Openings set by hand that break a constraint: which one, and the nearest that keep them all.
[[noreturn]] void refuse_set_openings(const Prepared& p, const CowlWishes& wishes) {
  std::string why;
  if (const auto swing = swing_to(p.front, wishes.set_openings, 0.5 * wishes.drape)) {
    const Trespass trespass = trespass_of(p.front, {wishes.set_openings, *swing});
    if (trespass.over_centre > wishes.allowed_crossing + 1e-8) {
      why = "a part would lie " + mm_in_words(std::max(0.1, trespass.over_centre)) + " over the centre front";
    } else {
      why = "a part would rise " + mm_in_words(std::max(0.1, trespass.above_edge)) + " above the cowl edge";
    }
  } else {
    const double arm = (motions_of(p.front, {wishes.set_openings, 0.0})[0] * p.front.neck_point).x();
    why = arm > 0.5 * wishes.drape ? "the neck point would stand too far out even without a swing"
                                   : "the neck point would need more swing than the front allows";
  }
  SlashedFront near = p.front;
  near.wished = wishes.set_openings;
  if (const auto nearest = open_to(near, 0.5 * wishes.drape)) {
    throw Refusal("With these openings " + why + ". The nearest that work are " +
                  openings_in_words(*nearest) + ": set those, or change the drape.");
  }
  throw Refusal("With these openings " + why +
                ", and no others reach this drape. Leave the openings free and ask "
                "for the drapes that work.");
}

/// Throws when it is the facing's depth that makes the outline cross itself; else does nothing.
void refuse_deep_facing(const Prepared& p, const CowlWishes& wishes) {
  constexpr double usual = 50.0, step = 5.0;  // mm
  CowlWishes less = wishes;
  less.facing_depth = usual;
  if (wishes.facing_depth <= usual || !works(p, less, wishes.drape)) return;
  double depth = std::floor(wishes.facing_depth / step) * step;
  for (less.facing_depth = depth; !works(p, less, wishes.drape); less.facing_depth = depth) depth -= step;
  throw Refusal("A facing " + mm_in_words(wishes.facing_depth) +
                " deep does not fit this front: its outline would cross itself. One of " +
                mm_in_words(depth) + " works.");
}

[[noreturn]] void refuse(const Prepared& p, const CowlWishes& wishes, Failure failure) {
  if (failure == Failure::no_opening && !wishes.set_openings.empty()) refuse_set_openings(p, wishes);
  const double least = least_drape(p, wishes);
  const std::string asked = "A drape of " + mm_in_words(wishes.drape);
  if (wishes.drape < least) {
    throw Refusal(asked + " is too short: the neck points of this base already stand " +
                  mm_in_words(2.0 * p.front.neck_point.x()) + " apart. The shortest drape that works is " +
                  mm_in_words(least) + ".");
  }
  const double most = most_drape(p, wishes, least, std::min(wishes.drape, longest_thinkable(p)));
  std::string why = " is too long: the parts would have to open or swing further than this front allows";
  if (failure == Failure::too_wide) why = " is too long: the front would be wider than the cloth";
  if (failure == Failure::crossing) why = " is too long: the front's outline would cross itself";
  throw Refusal(asked + why + ". The longest drape that works is " + mm_in_words(most) + ".");
}

}  // namespace

CowlDraft draft_cowl_front(const Piece& base, const CowlWishes& wishes) {
  check(wishes);
  const Prepared prepared = prepare(base, wishes);
  Attempt result;
  try {
    result = attempt(prepared, wishes, wishes.drape);
  } catch (const Refusal&) {
    refuse_deep_facing(prepared, wishes);
    throw;
  }
  if (result.failure == Failure::crossing) refuse_deep_facing(prepared, wishes);
  if (result.failure != Failure::none) refuse(prepared, wishes, result.failure);
  return std::move(result.draft);
}

DrapeRange drape_range(const Piece& base, const CowlWishes& wishes) {
  CowlWishes any = wishes;
  any.drape = 1.0;
  check(any);
  const Prepared prepared = prepare(base, any);
  const double least = least_drape(prepared, any);
  return {least, most_drape(prepared, any, least, longest_thinkable(prepared))};
}

OpeningRanges opening_ranges(const Piece& base, const CowlWishes& wishes) {
  check(wishes);
  const Prepared prepared = prepare(base, wishes);
  const Attempt result = attempt(prepared, wishes, wishes.drape);
  if (result.failure != Failure::none) refuse(prepared, wishes, result.failure);
  OpeningRanges ranges;
  ranges.swing = result.draft.front.cowl->swing;
  for (size_t i = 0; i < prepared.slashes.size(); ++i) {
    const double drafted = result.draft.front.cowl->hinge_angles[i];
    const auto least = open_furthest(prepared.front, 0.5 * wishes.drape, i, false);
    const auto most = open_furthest(prepared.front, 0.5 * wishes.drape, i, true);
    ranges.openings.push_back({drafted, least ? std::min(drafted, least->angles[i]) : drafted,
                               most ? std::max(drafted, most->angles[i]) : drafted});
  }
  return ranges;
}

}  // namespace cowlcast::drafting
