#include "drafting/cowl/cowl_front.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "drafting/cowl/opening.h"
#include "drafting/cowl/slash.h"
#include "drafting/cowl/trueing.h"
#include "drafting/geometry/polyline.h"
#include "drafting/piece/assemble.h"
#include "drafting/refusal.h"

namespace cowlcast::drafting {
namespace {

constexpr double max_opening = 40.0 * std::numbers::pi / 180.0;  // wider wedges fold over instead of draping
constexpr double grid = 0.1;                                     // mm: nearest drapes are named on it

/// All of the draft that does not depend on the drape.
struct Prepared {
  Piece base;
  LoweredBase lowered;
  std::vector<Slash> slashes;
  std::vector<Polyline> parts;
  SlashedFront front;
};

enum class Failure { none, too_short, no_opening, too_wide, crossing };

struct Attempt {
  Failure failure = Failure::none;
  CowlDraft draft;
};

Prepared prepare(const Piece& base, const CowlWishes& wishes) {
  Prepared p;
  p.base = base;
  add_allowances(p.base, wishes.allowances);
  p.lowered = lower_neckline(base, wishes.neckline_drop);
  p.slashes = default_slashes(p.lowered, wishes.slash_count);
  p.parts = parts_of(p.lowered, p.slashes);
  for (const Slash& slash : p.slashes) p.front.hinges.push_back(slash.hinge);
  for (const Polyline& part : p.parts) p.front.corners.push_back(convex_hull(part));
  p.front.neck_point = p.lowered.neck_point();
  p.front.pivot = p.lowered.centre_hem();
  p.front.weights.assign(p.slashes.size(), 1.0);
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
  if (!(wishes.cloth_width >= 300.0) || wishes.cloth_width > 5000.0) {
    throw Refusal("The cloth's width must be between 300 and 5000 mm. Give the width it is sold in.");
  }
}

Piece front_piece(const Prepared& p, const CowlWishes& wishes, const Opening& opening,
                  const std::vector<Motion>& motions) {
  Piece front;
  front.name = "cowl front";
  front.edges = trued_edges(p.lowered, p.slashes, motions, wishes.facing_depth);
  front.seam_line = outline_of(front.edges);
  const Polyline& centre = front.edges.front().points;
  (wishes.on_fold ? front.fold : front.mirror) = Segment{centre.front(), centre.back()};
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
  front.grain = Segment{{across, centre.back().y() + 0.3 * tall}, {across, centre.back().y() + 0.7 * tall}};

  CowlRecord record;
  record.drape = 2.0 * shoulder.back().x();
  record.hinge_angles = opening.angles;
  record.swing = opening.swing;
  for (const Slash& slash : p.slashes) record.slash_lines.push_back({slash.start, slash.hinge});
  for (size_t k = 0; k < p.parts.size(); ++k) {
    record.parts.push_back({p.parts[k], moved(motions[k], p.parts[k])});
  }
  front.cowl = std::move(record);
  return front;
}

Attempt attempt(const Prepared& p, const CowlWishes& wishes, double drape) {
  Attempt result;
  if (0.5 * drape < p.front.neck_point.x() - 1e-9) {
    result.failure = Failure::too_short;
    return result;
  }
  const auto opening = open_to(p.front, 0.5 * drape);
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
  add_allowances(draft.front, wishes.allowances);
  const Box box = box_of(draft.front.cut_line);
  draft.cloth_width = 2.0 * box.high.x();
  draft.cloth_length = box.height();
  if (box.low.x() < -1e-6) result.failure = Failure::crossing;
  if (draft.cloth_width > wishes.cloth_width) result.failure = Failure::too_wide;
  draft.base = p.base;
  draft.neckline_drop = wishes.neckline_drop;
  draft.facing_depth = wishes.facing_depth;
  const Polyline& centre = draft.front.edges.front().points;
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

[[noreturn]] void refuse(const Prepared& p, const CowlWishes& wishes, Failure failure) {
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
  Attempt result = attempt(prepared, wishes, wishes.drape);
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

}  // namespace cowlcast::drafting
