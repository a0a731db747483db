#include "drafting/cowl/cowl_front.h"

#include <numbers>

#include "drafting/cowl/opening.h"
#include "drafting/cowl/quadratic_program.h"
#include "drafting/cowl/slash.h"
#include "drafting/export/piece_svg.h"
#include "drafting/export/summary.h"
#include "drafting/piece/marks.h"
#include "tests/drafting/geos_reference.h"
#include "tests/drafting/support.h"

namespace cowlcast::drafting {
namespace {

constexpr double degrees = 180.0 / std::numbers::pi;

double area_of(const Polyline& outline) {
  return test::GeosOutline(outline).area();
}

/// Everything that holds for every draft.
void expect_sound(const Piece& base, const CowlDraft& draft, double drape) {
  const Piece& front = draft.front;
  const Point neck = front.points.at("neck-point");
  EXPECT_NEAR(neck.x(), 0.5 * drape, 1e-9);
  for (const char* role : {"shoulder", "armhole", "side-seam"}) {
    EXPECT_NEAR(length(edge_of(front, role).points), length(edge_of(base, role).points), 1e-9) << role;
  }
  const Polyline& cowl_edge = edge_of(front, "cowl-edge").points;
  const Point along = cowl_edge.back() - cowl_edge.front();
  EXPECT_LT(std::abs(std::atan2(along.y(), along.x())), 1e-12);
  EXPECT_EQ(cowl_edge.front().x(), 0.0);
  double part_area = 0.0;
  for (const auto& part : front.cowl->parts) {
    ASSERT_EQ(part.before.size(), part.after.size());
    for (size_t i = 0; i < part.after.size(); ++i) {
      EXPECT_GE(part.after[i].x(), -1e-7);
      EXPECT_LE(part.after[i].y(), neck.y() + 1e-7);
      // Rigid: every distance to the first point kept.
      EXPECT_NEAR((part.after[i] - part.after[0]).norm(), (part.before[i] - part.before[0]).norm(), 1e-9);
    }
    part_area += area_of(part.after);
  }
  for (const double angle : front.cowl->hinge_angles) EXPECT_GE(angle, 0.0);
  // The hem leaves the centre front square.
  const Polyline& hem = edge_of(front, "hem").points;
  EXPECT_EQ(hem[0].x(), 0.0);
  EXPECT_NEAR(hem[1].y(), hem[0].y(), 1e-9);
  EXPECT_TRUE(test::GeosOutline(front.seam_line).simple());
  EXPECT_TRUE(test::GeosOutline(front.cut_line).simple());
  // The parts do not lie on each other, so the front is never smaller than they are together.
  EXPECT_GT(area_of(front.seam_line), part_area - 200.0);
  EXPECT_GT(area_of(front.cut_line), area_of(front.seam_line));
}

TEST(CowlFront, HoldsItsGuaranteesOverRandomBasesAndDrapes) {
  std::mt19937 random(31);
  for (int i = 0; i < 120; ++i) {
    const Piece base = block_front(test::random_measures(random));
    CowlWishes wishes;
    wishes.slash_form = i % 3 == 0 ? SlashForm::straight : SlashForm::squared;
    wishes.neckline_drop = test::between(random, 0, 110);
    wishes.slash_count = 2 + static_cast<int>(random() % 5);
    wishes.facing_depth = test::between(random, 20, 80);
    const DrapeRange range = drape_range(base, wishes);
    EXPECT_LT(range.least, 2.0 * base.points.at("neck-point").x() + 1.0);
    EXPECT_GT(range.most, 400.0);
    wishes.drape = i % 10 == 0   ? range.least
                   : i % 10 == 1 ? range.most
                                 : test::between(random, range.least, range.most);
    SCOPED_TRACE("base " + std::to_string(i) + " drape " + std::to_string(wishes.drape));
    expect_sound(base, draft_cowl_front(base, wishes), wishes.drape);
  }
}

TEST(CowlFront, TheHandbooksSpread) {
  // NIMI, CITS Dress Making, Trade Practical, p. 175: the tape's length from neck
  // point to neck point, halved, is where the neck point goes; the neckline of a
  // knit top lowered to 5 in below the collar bones.
  const Piece base = block_front(demo_measures());
  CowlWishes wishes;
  wishes.drape = 18.0 * 25.4;
  wishes.neckline_drop = 5.0 * 25.4 - 50.0;
  const CowlDraft draft = draft_cowl_front(base, wishes);
  EXPECT_NEAR(draft.front.points.at("neck-point").x(), 9.0 * 25.4, 1e-9);
  // The facing: about 2 in by common practice, no source.
  EXPECT_NEAR(draft.facing_depth, 50.8, 1e-12);
  // The facing is the top mirrored in the fold: its shoulder is the shoulder's reflection.
  const Polyline& facing = edge_of(draft.front, "facing-shoulder").points;
  const double fold = draft.front.points.at("neck-point").y();
  const Polyline& shoulder = edge_of(draft.front, "shoulder").points;
  for (const Point& p : facing) EXPECT_LT(nearest(shoulder, {p.x(), 2.0 * fold - p.y()}).distance, 1e-9);
  EXPECT_NEAR(facing.back().y(), fold + 50.8, 1e-9);
}

TEST(CowlFront, MoreDrapeMeansMoreClothAndGrowsSmoothly) {
  const Piece base = block_front(demo_measures());
  CowlWishes wishes;
  double area = 0.0, swing = 0.0, first = 0.0;
  for (double drape = 130.0; drape <= 800.0; drape += 2.0) {
    wishes.drape = drape;
    const CowlDraft draft = draft_cowl_front(base, wishes);
    const double now = area_of(draft.front.seam_line);
    if (drape > 130.0) {
      EXPECT_GT(now, area - 1e-6) << drape;
      // No jump in how the front opens: a small change of wish is a small change of draft.
      EXPECT_LT(std::abs(draft.front.cowl->swing - swing), 0.5 / degrees) << drape;
      EXPECT_LT(std::abs(draft.front.cowl->hinge_angles[0] - first), 0.8 / degrees) << drape;
    }
    area = now;
    swing = draft.front.cowl->swing;
    first = draft.front.cowl->hinge_angles[0];
  }
}

TEST(CowlFront, RefusesImpossibleDrapesWithTheNearestThatWorks) {
  std::mt19937 random(33);
  for (int i = 0; i < 20; ++i) {
    const Piece base = block_front(test::random_measures(random));
    CowlWishes wishes;
    for (const double drape : {40.0, 2.0 * base.points.at("neck-point").x() - 0.01, 1700.0, 1e7}) {
      wishes.drape = drape;
      const std::string words = test::refusal_of([&] { draft_cowl_front(base, wishes); });
      ASSERT_FALSE(words.empty()) << drape;
      const bool is_short = drape < 200.0;
      EXPECT_NE(words.find(is_short ? "too short" : "too long"), std::string::npos) << words;
      const std::string marker = "that works is ";
      const size_t at = words.find(marker);
      ASSERT_NE(at, std::string::npos) << words;
      CowlWishes nearest_wishes = wishes;
      nearest_wishes.drape = std::stod(words.substr(at + marker.size()));
      EXPECT_NO_THROW(draft_cowl_front(base, nearest_wishes)) << words;
      // Nearest: a millimetre further on the asked side fails too.
      nearest_wishes.drape += is_short ? -1.0 : 1.0;
      EXPECT_THROW(draft_cowl_front(base, nearest_wishes), Refusal) << words;
    }
  }
}

TEST(CowlFront, RefusesNarrowClothAndBadWishes) {
  const Piece base = block_front(demo_measures());
  CowlWishes wishes;
  wishes.drape = 800.0;
  wishes.cloth_width = 700.0;
  EXPECT_REFUSED(draft_cowl_front(base, wishes), "wider than the cloth");
  const auto with = [&](auto change) {
    CowlWishes changed;
    change(changed);
    return test::refusal_of([&] { draft_cowl_front(base, changed); });
  };
  EXPECT_NE(with([](CowlWishes& w) { w.drape = NAN; }).find("drape must be a length"), std::string::npos);
  EXPECT_NE(with([](CowlWishes& w) { w.neckline_drop = 900; }).find("neckline drop must be"),
            std::string::npos);
  EXPECT_NE(with([](CowlWishes& w) { w.slash_count = 9; }).find("1 to 6 slash lines"), std::string::npos);
  EXPECT_NE(with([](CowlWishes& w) { w.facing_depth = -4; }).find("facing depth"), std::string::npos);
  const std::string deep = with([](CowlWishes&w) { w.facing_depth = 200; }), marker = "One of ";
  ASSERT_NE(deep.find("facing 200 mm deep"), std::string::npos) << deep;
  const double works = std::stod(deep.substr(deep.find(marker) + marker.size()));
  EXPECT_EQ(with([&](CowlWishes& w) { w.facing_depth = works; }), "");
  EXPECT_NE(with([](CowlWishes& w) { w.allowances["hem"] = 500; }).find("between 0 and 100"),
            std::string::npos);
}

TEST(CowlFront, TheDefaultSlashesEndAtShoulderAndNotch) {
  const Piece base = block_front(demo_measures());
  const LoweredBase lowered = lower_neckline(base, 60.0);
  EXPECT_NEAR(lowered.centre_top().y(), edge_of(base, "neckline").points.back().y() - 60.0, 1e-12);
  EXPECT_EQ(lowered.neck_point(), base.points.at("neck-point"));
  const auto slashes = default_slashes(lowered, 3, SlashForm::squared);
  ASSERT_EQ(slashes.size(), 3u);
  const Polyline& shoulder = edge_of(base, "shoulder").points;
  EXPECT_NEAR(nearest(shoulder, slashes[0].hinge).distance, 0.0, 1e-9);
  EXPECT_NEAR(nearest(shoulder, slashes[1].hinge).distance, 0.0, 1e-9);
  EXPECT_NEAR((slashes[2].hinge - base.notches[0].seam).norm(), 0.0, 1e-9);
  for (const Slash& slash : slashes) EXPECT_EQ(slash.start.x(), 0.0);
  double whole = 0.0;
  for (const Polyline& part : parts_of(lowered, slashes)) whole += area_of(part);
  Polyline outline{{0, 0}};
  append(outline, lowered.hem);
  append(outline, lowered.side_seam);
  append(outline, lowered.rim);
  append(outline, lowered.neckline);
  EXPECT_NEAR(whole, area_of(outline), 1e-6);
}

TEST(Slashes, SquaredOnesLeaveTheCentreSquareAndMeetTheShoulderSquare) {
  // Common practice, no source.
  std::mt19937 random(36);
  for (int i = 0; i < 40; ++i) {
    const Piece base = block_front(test::random_measures(random));
    const LoweredBase lowered = lower_neckline(base, test::between(random, 0, 100));
    const Polyline& shoulder = edge_of(base, "shoulder").points;
    const Point seam = (shoulder.back() - shoulder.front()).normalized();
    for (const Slash& slash : default_slashes(lowered, 2 + i % 5, SlashForm::squared)) {
      const Polyline& line = slash.line;
      ASSERT_GT(line.size(), 8u);
      const Point out = (line[1] - line[0]).normalized(),
                  in = (line.back() - line[line.size() - 2]).normalized();
      EXPECT_EQ(out.y(), 0.0);
      if (slash.along_rim > lowered.armhole_length) {
        EXPECT_NEAR(in.dot(seam), 0.0, 1e-9);
      }
      for (size_t k = 1; k < line.size(); ++k)
        EXPECT_LT((line[k] - slash.hinge).norm(), (line[k - 1] - slash.hinge).norm());
    }
  }
}

TEST(Slashes, LinesDrawnByHandAreTakenAsTheyAre) {
  const Piece base = block_front(demo_measures());
  CowlWishes wishes;
  const double top = edge_of(base, "neckline").points.back().y() - wishes.neckline_drop;
  SlashWish first, second;
  first.line = {{1.0, top - 40}, {60, top - 10}, {110, top + 60}, {128, 606}};
  second.line = {{0.0, top - 110}, {80, top - 105}, {163, 489}};
  wishes.slashes = {first, second};
  const CowlDraft draft = draft_cowl_front(base, wishes);
  expect_sound(base, draft, 480.0);
  const auto& paths = draft.front.cowl->slash_paths;
  ASSERT_EQ(paths.size(), 2u);
  EXPECT_EQ(paths[0].front(), Point(0.0, top - 40));
  EXPECT_EQ(paths[0][1], first.line[1]);
  EXPECT_LT(nearest(edge_of(base, "shoulder").points, paths[0].back()).distance, 1e-9);
  const auto& parts = draft.front.cowl->parts;
  for (size_t a = 0; a + 1 < parts.size(); ++a) {
    const test::GeosOutline upper(parts[a].after), lower(parts[a + 1].after);
    EXPECT_NEAR(upper.area_outside(lower), upper.area(), 1e-3);
  }
  wishes.slashes[0].line = {{0, top - 40}, {120, top - 150}, {128, 602}};
  EXPECT_REFUSED(draft_cowl_front(base, wishes), "turns away from its hinge");
  wishes.slashes[0].line = {{0, top - 40}, {90, 400}};
  EXPECT_REFUSED(draft_cowl_front(base, wishes), "from the shoulder and the armhole");
  wishes.slashes[0].line = {{0, top + 40}, {128, 602}};
  EXPECT_REFUSED(draft_cowl_front(base, wishes), "not on the centre front");
}

TEST(Slashes, TheLongestDrapeIsThatOfTheSwingAndTheLowestLineAlone) {
  const Piece base = block_front(demo_measures());
  double longest = 0.0;
  for (int count = 2; count <= 6; ++count) {
    CowlWishes wishes;
    wishes.slash_count = count;
    const DrapeRange range = drape_range(base, wishes);
    if (count > 2) {
      EXPECT_NEAR(range.most, longest, 0.11);
    }
    longest = range.most;
    wishes.drape = range.most;
    const CowlRecord cowl = *draft_cowl_front(base, wishes).front.cowl;
    EXPECT_NEAR(cowl.swing * degrees, 30.0, 0.1);
    for (size_t i = 0; i + 1 < cowl.hinge_angles.size(); ++i) EXPECT_LT(cowl.hinge_angles[i] * degrees, 0.2);
  }
}

TEST(Slashes, OpeningRangesCanBeSetAtBothEnds) {
  const Piece base = block_front(demo_measures());
  CowlWishes wishes;
  const OpeningRanges ranges = opening_ranges(base, wishes);
  ASSERT_EQ(ranges.openings.size(), 3u);
  for (size_t i = 0; i < 3; ++i) {
    const OpeningRange& range = ranges.openings[i];
    EXPECT_LT(range.least, range.drafted - 1.0 / degrees);
    EXPECT_GT(range.most, range.drafted + 1.0 / degrees);
    EXPECT_GE(range.least, 0.0);
    EXPECT_LE(range.most, 40.0 / degrees + 1e-9);
  }
}

TEST(Opening, SeparatePartsNeverOverlap) {
  std::mt19937 random(35);
  for (int i = 0; i < 40; ++i) {
    const Piece base = block_front(test::random_measures(random));
    CowlWishes wishes;
    wishes.drape = test::between(random, 200, 700);
    const CowlDraft draft = draft_cowl_front(base, wishes);
    const auto& parts = draft.front.cowl->parts;
    for (size_t a = 0; a < parts.size(); ++a) {
      for (size_t b = a + 1; b < parts.size(); ++b) {
        const test::GeosOutline first(parts[a].after), second(parts[b].after);
        EXPECT_NEAR(first.area_outside(second), first.area(), 1e-3);
      }
    }
  }
}

TEST(Opening, NoNearbyOpeningIsMoreEvenWithLessSwing) {
  // Feasible neighbours of the answer, found by small random moves and one
  // correction of the swing, never have a better objective than the answer's.
  const Piece base = block_front(demo_measures());
  for (const double drape : {200.0, 420.0, 700.0}) {
    CowlWishes wishes;
    wishes.drape = drape;
    const CowlDraft draft = draft_cowl_front(base, wishes);
    const LoweredBase lowered = lower_neckline(base, wishes.neckline_drop);
    const auto slashes = default_slashes(lowered, 3, wishes.slash_form);
    SlashedFront front;
    for (const Slash& slash : slashes) front.hinges.push_back(slash.hinge);
    front.corners = parts_of(lowered, slashes);
    front.neck_point = lowered.neck_point();
    front.pivot = lowered.centre_hem();
    front.weights = {1, 1, 1};
    front.max_opening = front.max_swing = 1.0;
    const auto cost = [](const Opening& o) {
      const double mean = (o.angles[0] + o.angles[1] + o.angles[2]) / 3.0;
      double sum = 0.5 * o.swing * o.swing;
      for (const double a : o.angles) sum += (a - mean) * (a - mean) + 1e-4 * a * a;
      return sum;
    };
    Opening best;
    best.angles = draft.front.cowl->hinge_angles;
    best.swing = draft.front.cowl->swing;
    std::mt19937 random(37);
    int feasible = 0;
    for (int i = 0; i < 4000; ++i) {
      Opening other = best;
      for (double& angle : other.angles) angle = std::max(0.0, angle + test::between(random, -0.03, 0.03));
      double low = 0.0, high = 1.0;
      for (int k = 0; k < 60; ++k) {
        other.swing = 0.5 * (low + high);
        const double x = (motions_of(front, other)[0] * front.neck_point).x();
        (x < 0.5 * drape ? low : high) = other.swing;
      }
      const Trespass trespass = trespass_of(front, other);
      if (trespass.over_centre > 1e-9 || trespass.above_edge > 1e-9 || other.swing < 1e-9) continue;
      ++feasible;
      EXPECT_GT(cost(other), cost(best) - 1e-9) << drape;
    }
    EXPECT_GT(feasible, 50) << drape;
  }
}

TEST(QuadraticProgram, SolvesAHandWorkedCase) {
  // min (x - 3)² + (y - 2)² with x + y = 3 and x at most 1.5: (1.5, 1.5).
  QuadraticProgram qp(2);
  qp.hessian = 2.0 * SmallMatrix::Identity(2, 2);
  qp.gradient = Eigen::Vector2d(-6, -4);
  qp.equal(Eigen::Vector2d(1, 1), 3.0);
  qp.at_least(Eigen::Vector2d(-1, 0), -1.5);
  const auto x = qp.solve();
  ASSERT_TRUE(x);
  EXPECT_NEAR((*x)[0], 1.5, 1e-12);
  EXPECT_NEAR((*x)[1], 1.5, 1e-12);
  qp.at_least(Eigen::Vector2d(0, -1), -1.0);  // now y at most 1: no answer
  EXPECT_FALSE(qp.solve());
}

TEST(Export, SvgHasRealSizeAndOnePathAnEdge) {
  CowlWishes wishes;
  const CowlDraft draft = draft_cowl_front(block_front(demo_measures()), wishes);
  const std::string svg = piece_to_svg(draft.front);
  const Box box = box_of(draft.front.cut_line);
  char size[64];
  std::snprintf(size, sizeof size, "width=\"%.4fmm\"", box.width() + 30.0);
  EXPECT_NE(svg.find(size), std::string::npos) << size;
  for (const char* id : {"cut-line", "centre-front", "hem", "side-seam", "armhole", "shoulder",
                         "facing-shoulder", "facing-edge", "cowl-edge", "fold", "grain", "notches"}) {
    const std::string wanted = "id=\"" + std::string(id) + "\"";
    const size_t at = svg.find(wanted);
    EXPECT_NE(at, std::string::npos) << id;
    EXPECT_EQ(svg.find(wanted, at + 1), std::string::npos) << id;
  }
  const std::string text = summary(draft);
  EXPECT_NE(text.find("480.0 mm, shoulder seam"), std::string::npos) << text;
  EXPECT_NE(text.find("240.0 mm, neck point"), std::string::npos) << text;
}

TEST(CowlFront, DrillMarksOfTheBaseStayOnTheirPart) {
  std::mt19937 random(11);
  int opened = 0;
  for (int i = 0; i < 40; ++i) {
    Piece base = block_front(test::random_measures(random));
    const Box box = box_of(base.seam_line);
    CowlWishes wishes;
    const CowlDraft plain = draft_cowl_front(base, wishes);
    Point at;
    do {
      at = Point(test::between(random, 5.0, box.high.x()), test::between(random, 0.0, box.high.y()));
    } while (std::none_of(plain.front.cowl->parts.begin(), plain.front.cowl->parts.end(),
                          [&](const auto& part) { return contains(part.before, at); }));
    add_drill_mark(base, "pocket", at);
    add_drill_mark(base, "pocket", at);  // a second of that name is kept as well
    const CowlDraft draft = draft_cowl_front(base, wishes);
    ASSERT_EQ(drill_marks(draft.front).size(), 2u);
    const Point after = draft.front.points.at("drill-pocket");
    EXPECT_EQ(after, draft.front.points.at("drill-pocket-2"));
    for (const CowlRecord::Part& part : draft.front.cowl->parts) {
      if (!contains(part.before, at)) continue;
      for (size_t k = 0; k < part.before.size(); ++k)
        EXPECT_NEAR((part.before[k] - at).norm(), (part.after[k] - after).norm(), 1e-9);
      EXPECT_TRUE(contains(part.after, after));
    }
    opened += (after - at).norm() > 1.0;
  }
  EXPECT_GT(opened, 20);
  Piece base = block_front(demo_measures());
  add_drill_mark(base, "high",
                 edge_of(base, "centre-front").points.front() + Point(5, -20));  // cut away with the neckline
  EXPECT_REFUSED(draft_cowl_front(base, {}), "above the lowered neckline");
}

}  // namespace
}  // namespace cowlcast::drafting
