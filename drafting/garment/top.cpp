#include "drafting/garment/top.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

#include "drafting/geometry/curves.h"
#include "drafting/geometry/polyline.h"
#include "drafting/piece/assemble.h"
#include "drafting/piece/marks.h"
#include "drafting/refusal.h"

namespace cowlcast::drafting {
namespace {

constexpr double drilled_inside = 12.0;  // mm from the side seam

void check(const TopWishes& wishes) {
  const auto within = [](double value, double least, double most, const char* what, const char* unit) {
    if (!(value >= least) || !(value <= most)) {
      char text[200];
      std::snprintf(text, sizeof text, "%s must be between %g and %g%s. Change it.", what, least, most, unit);
      throw Refusal(text);
    }
  };
  within(wishes.elastic_stretch, 1.0, 1.5, "The elastic's stretch", " times its length");
  within(wishes.sleeve_ease, 0.0, 60.0, "The sleeve cap's ease", " mm");
  within(wishes.elastic_tail, 0.0, 60.0, "The elastic's tail", " mm");
}

/// The allowances with those of finished edges as their finish needs them.
Allowances allowances_of(const TopWishes& wishes) {
  Allowances allowances = wishes.cowl.allowances;
  const auto set = [&](const char* role, const Finish& finish) {
    const auto& by_hand = wishes.allowances_set;
    if (std::find(by_hand.begin(), by_hand.end(), role) == by_hand.end())
      allowances[role] = allowance_for(finish);
  };
  set("camisole-top", wishes.camisole_finish);
  if (wishes.arm_finish) set("armhole", *wishes.arm_finish);
  return allowances;
}

/// The base front between a top edge over the chest and a hem below the armhole:
/// it is sewn in with armhole and side seam.
Piece camisole_of(const Piece& base, const TopWishes& wishes) {
  const Polyline &armhole = edge_of(base, "armhole").points, &side = edge_of(base, "side-seam").points;
  const Point neck = base.points.at("neck-point");
  const double top_height = neck.y() - wishes.camisole_depth;
  const double side_length = length(side), centre_top = edge_of(base, "centre-front").points.front().y();
  if (!(wishes.camisole_length >= 20.0) || wishes.camisole_length > side_length - 20.0) {
    throw Refusal("The inner panel must reach between 20 mm and " +
                  mm_in_words(std::floor(side_length - 20.0)) + " down the side seam. Change its length.");
  }
  // Its top corner lies up the armhole: at the notch, or two fifths of the way up.
  double up = 0.4 * length(armhole);
  for (const Notch& notch : base.notches) {
    if (notch.name == "armhole") up = nearest(armhole, notch.seam).along;
  }
  const Polyline arm = between(armhole, 0.0, up);
  const Polyline seam = between(side, side_length - wishes.camisole_length, side_length);
  const Point corner = arm.back();
  if (!(wishes.camisole_depth > 0.0) || top_height > centre_top || top_height < seam.front().y() + 30.0) {
    throw Refusal("The inner panel's top edge must lie between " +
                  mm_in_words(std::ceil(neck.y() - centre_top)) + " and " +
                  mm_in_words(std::floor(neck.y() - seam.front().y() - 30.0)) +
                  " below the neck point. Change its depth.");
  }
  Polyline top{corner};  // square to the centre front
  const Point centre(0.0, top_height);
  add_quadratic(top, {0.45 * corner.x(), top_height}, centre);
  const Point foot(0.0, seam.front().y());
  Piece piece;
  piece.name = "inner panel";
  piece.edges = {{"centre-front", {centre, foot}},
                 {"camisole-hem", {foot, seam.front()}},
                 {"side-seam", seam},
                 {"armhole", arm},
                 {"camisole-top", top}};
  piece.seam_line = outline_of(piece.edges);
  if (self_crossing(piece.seam_line)) {
    throw Refusal("The inner panel would cross itself. Set its top edge lower or its hem longer.");
  }
  piece.fold = Segment{centre, foot};
  const double across = 0.3 * corner.x();
  piece.grain = Segment{{across, foot.y() + 15.0}, {across, top_height - 15.0}};
  piece.notches.push_back({"armhole", corner, corner});
  add_allowances(piece, wishes.cowl.allowances, wishes.cowl.corners);
  set_notch_form(piece, wishes.cowl.notch_form);
  return piece;
}

/// Where the panel's hem comes to lie: a notch on the front's side seam, and a drill
/// mark beside it inside the front.
void mark_panel(CowlDraft& draft, const TopWishes& wishes) {
  Piece& front = draft.front;
  const Polyline& side = edge_of(front, "side-seam").points;
  double below = wishes.camisole_length;
  for (const Notch& notch : front.notches) {  // below a tuck the panel's hem lies lower by the tuck
    if (notch.name == "tack" && length(side) - nearest(side, notch.seam).along < below) {
      below += draft.tacked_length;
      break;
    }
  }
  const Point at = point_at(side, length(side) - below);
  add_notch(front, {"panel-hem", at, at, 1, wishes.cowl.notch_form});
  add_drill_mark(front, "panel-hem", at - Point(drilled_inside, 0.0));
}

/// A walk of part of an edge: the panel's seam against the start of the front's.
Walk partial_walk(const std::string& name, const Piece& panel, const Piece& base, const std::string& role) {
  const Polyline &small = edge_of(panel, role).points, &whole = edge_of(base, role).points;
  const double one = nearest(whole, small.front()).along, other_end = nearest(whole, small.back()).along;
  Walk walk;
  walk.name = name;
  walk.first_length = length(small);
  walk.second_length = std::abs(other_end - one);
  walk.difference = walk.first_length - walk.second_length;
  for (const Notch& notch : panel.notches) {
    const Foot foot = nearest(small, notch.seam);
    for (const Notch& other : base.notches) {
      const Foot place = nearest(whole, other.seam);
      if (notch.name == other.name && foot.distance < 1e-6 && place.distance < 1e-6)
        walk.notches.push_back({notch.name, std::abs(std::min(one, other_end) + foot.along - place.along)});
    }
  }
  return walk;
}

}  // namespace

Top draft_top(const Piece& base_front, const Piece& base_back, const TopWishes& asked) {
  check(asked);
  TopWishes wishes = asked;
  wishes.cowl.allowances = allowances_of(asked);
  if (wishes.back_cowl) wishes.back_cowl->allowances = wishes.cowl.allowances;
  Top top;
  top.cowl = draft_cowl_front(base_front, wishes.cowl);
  if (wishes.back_cowl) {
    top.back_cowl = draft_cowl_front(base_back, *wishes.back_cowl);
    top.back = top.back_cowl->front;
  } else {
    top.back = base_back;
    top.back.name = "back";
    add_allowances(top.back, wishes.cowl.allowances, wishes.cowl.corners);
    set_notch_form(top.back, wishes.cowl.notch_form);
  }
  for (Notch& notch : top.back.notches) notch.ticks = 2;
  top.carried = wishes.carried;
  if (wishes.camisole) {
    top.camisole = camisole_of(base_front, wishes);
    mark_panel(top.cowl, wishes);
  }

  const double back_tack = top.back_cowl ? top.back_cowl->tacked_length : 0.0;
  const Piece& front = top.cowl.front;
  top.walks.push_back(walk_seams("shoulder", front, "shoulder", top.back, "shoulder"));
  Walk side =
      walk_seams("side seam", front, "side-seam", top.back, "side-seam", top.cowl.tacked_length - back_tack);
  side.second_length -= back_tack;
  side.first_length -= back_tack;
  top.walks.push_back(side);
  if (top.camisole) {
    top.walks.push_back(partial_walk("inner panel side seam", *top.camisole, base_front, "side-seam"));
    top.walks.push_back(partial_walk("inner panel armhole", *top.camisole, base_front, "armhole"));
  }
  if (top.cowl.facing) {
    top.walks.push_back(walk_seams("facing", *top.cowl.facing, "neckline", front, "neckline"));
  }
  if (top.back_cowl && top.back_cowl->facing) {
    top.walks.push_back(walk_seams("back facing", *top.back_cowl->facing, "neckline", top.back, "neckline"));
  }
  for (const Piece& piece : top.carried) {
    if (has_edge(piece, "sleeve-cap"))
      top.walks.push_back(walk_sleeve(piece, front, top.back, wishes.sleeve_ease));
  }
  if (!top.back_cowl && has_edge(top.back, "neckline")) {  // a cowl is faced, not held by elastic

    top.elastic.seam_length = 2.0 * length(edge_of(top.back, "neckline").points);
    top.elastic.tail = wishes.elastic_tail;
    top.elastic.elastic_length = top.elastic.seam_length / wishes.elastic_stretch + 2.0 * wishes.elastic_tail;
  }
  if (top.camisole) {
    const double edge = 2.0 * length(edge_of(*top.camisole, "camisole-top").points);
    top.finishes.push_back(finished(wishes.camisole_finish, "inner panel top", edge, false));
  }
  if (wishes.arm_finish || top.carried.empty()) {
    const double arm = length(edge_of(front, "armhole").points) + length(edge_of(top.back, "armhole").points);
    const Finish finish = wishes.arm_finish.value_or(Finish{.kind = FinishKind::binding});
    top.finishes.push_back(finished(finish, "an armhole", arm, true));
  }
  return top;
}

void require_walk(const Top& top, bool cut_all_the_same) {
  if (cut_all_the_same) return;
  std::string bad;
  for (const Walk& walk : top.walks) {
    if (!walks(walk)) bad += (bad.empty() ? "" : "; ") + walk_in_words(walk);
  }
  if (!bad.empty()) {
    throw Refusal("These seams do not fit each other: " + bad +
                  ". Make front and back from one base, or say that the top is to be cut all the same.");
  }
}

std::vector<Piece> pieces_of(const Top& top) {
  std::vector<Piece> pieces{top.cowl.front};
  if (top.cowl.facing) pieces.push_back(*top.cowl.facing);
  pieces.push_back(top.back);
  if (top.back_cowl && top.back_cowl->facing) pieces.push_back(*top.back_cowl->facing);
  if (top.camisole) pieces.push_back(*top.camisole);
  pieces.insert(pieces.end(), top.carried.begin(), top.carried.end());
  return pieces;
}

}  // namespace cowlcast::drafting
