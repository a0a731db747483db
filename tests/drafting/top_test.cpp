#include "drafting/garment/top.h"

#include <numbers>

#include "drafting/hang/hang.h"
#include "drafting/piece/marks.h"
#include "tests/drafting/geos_reference.h"
#include "tests/drafting/support.h"

namespace cowlcast::drafting {
namespace {

constexpr double degrees = 180.0 / std::numbers::pi;

/// Random wishes with all of a maker's choices.
CowlWishes random_wishes(std::mt19937& random) {
  CowlWishes wishes;
  wishes.neckline_drop = test::between(random, 0, 110);
  wishes.slash_count = 2 + static_cast<int>(random() % 5);
  wishes.slash_form = random() % 3 == 0 ? SlashForm::straight : SlashForm::squared;
  wishes.notch_form = static_cast<NotchForm>(random() % 3);
  if (random() % 3 == 0) wishes.corners.list.push_back({"shoulder", "armhole"});
  if (random() % 3 == 0) wishes.corners.others = CornerForm::squared;
  wishes.facing_depth = test::between(random, 20, 80);
  wishes.separate_facing = random() % 4 == 0;
  wishes.on_bias = random() % 4 == 0;
  if (random() % 4 == 0) wishes.tacked_length = test::between(random, 10, 120);
  if (random() % 4 == 0) wishes.trial_hang = test::between(random, 2, 25);
  if (random() % 3 == 0) {
    for (int i = 0; i < wishes.slash_count; ++i)
      wishes.proportions.push_back(test::between(random, 0.4, 2.5));
  }
  if (random() % 4 == 0) {
    wishes.slashes = {{test::between(random, 60, 80), "shoulder", test::between(random, 0.3, 0.5)},
                      {test::between(random, 100, 120), "armhole", test::between(random, 0.3, 0.6)}};
    wishes.proportions.clear();
  }
  return wishes;
}

void expect_sound(const Piece& base, const Top& top, const TopWishes& wishes) {
  const CowlWishes& cowl = wishes.cowl;
  const Piece& front = top.cowl.front;
  const Point neck = front.points.at("neck-point");
  EXPECT_NEAR(neck.x(), 0.5 * cowl.drape, 1e-9);
  for (const char* role : {"shoulder", "armhole"}) {
    EXPECT_NEAR(length(edge_of(front, role).points), length(edge_of(base, role).points), 1e-9) << role;
  }
  EXPECT_NEAR(length(edge_of(front, "side-seam").points) - cowl.tacked_length,
              length(edge_of(base, "side-seam").points), 1e-9);
  const Polyline& edge = edge_of(front, "cowl-edge").points;
  EXPECT_EQ(edge.front().y(), edge.back().y());
  EXPECT_EQ(edge.front().x(), 0.0);
  for (const auto& part : front.cowl->parts) {
    for (const Point& p : part.after) {
      EXPECT_GE(p.x(), -1e-7);
      EXPECT_LE(p.y(), neck.y() + 1e-7);
    }
  }
  const Polyline& hem = edge_of(front, "hem").points;
  EXPECT_EQ(hem[0].x(), 0.0);
  EXPECT_NEAR(hem[1].y(), hem[0].y(), 1e-9);
  for (const Walk& walk : top.walks) EXPECT_TRUE(walks(walk)) << walk_in_words(walk);
  for (const Piece& piece : pieces_of(top)) {
    EXPECT_TRUE(test::GeosOutline(piece.seam_line).simple()) << piece.name;
    EXPECT_TRUE(test::GeosOutline(piece.cut_line).simple()) << piece.name;
    EXPECT_NEAR(signed_area(piece.seam_line), test::GeosOutline(piece.seam_line).area(), 1e-6) << piece.name;
  }
}

TEST(Top, AThousandRandomBasesAndChoices) {
  std::mt19937 random(41);
  int drafted = 0, refused = 0;
  for (int i = 0; i < 1000; ++i) {
    const BodyMeasures measures = test::random_measures(random);
    const Piece front = block_front(measures), back = block_back(measures);
    TopWishes wishes;
    wishes.cowl = random_wishes(random);
    wishes.cowl.drape = test::between(random, 60, 1000);
    SCOPED_TRACE("top " + std::to_string(i));
    try {
      expect_sound(front, draft_top(front, back, wishes), wishes);
      ++drafted;
    } catch (const Refusal& reason) {
      ++refused;
      const std::string words = reason.what(), marker = "that works is ";
      const size_t at = words.find(marker);
      if (at == std::string::npos) {
        // A slash line that has no room: no drape would help, and the words say what does.
        EXPECT_NE(words.find("slash line"), std::string::npos) << words;
        continue;
      }
      wishes.cowl.drape = std::stod(words.substr(at + marker.size()));
      expect_sound(front, draft_top(front, back, wishes), wishes);
    }
  }
  EXPECT_GT(drafted, 600);
  EXPECT_GT(refused, 50);
}

TEST(Top, SetOpeningsAreKeptOrRefusedWithTheNearestThatWork) {
  const Piece base = block_front(demo_measures());
  CowlWishes wishes;
  wishes.drape = 480.0;
  const CowlDraft free_draft = draft_cowl_front(base, wishes);
  wishes.set_openings = free_draft.front.cowl->hinge_angles;
  const CowlDraft same = draft_cowl_front(base, wishes);
  EXPECT_NEAR(same.front.cowl->swing, free_draft.front.cowl->swing, 1e-9);
  wishes.set_openings = {30 / degrees, 30 / degrees, 30 / degrees};
  EXPECT_REFUSED(draft_cowl_front(base, wishes), "With these openings");
  const std::string words = test::refusal_of([&] { draft_cowl_front(base, wishes); });
  const std::string marker = "that work are ";
  double a = 0, b = 0, c = 0;
  ASSERT_EQ(std::sscanf(words.c_str() + words.find(marker) + marker.size(), "%lf, %lf, %lf", &a, &b, &c), 3)
      << words;
  EXPECT_LT(std::abs(a - 30) + std::abs(b - 30) + std::abs(c - 30), 60.0);
  wishes.set_openings = {15 / degrees, 15 / degrees, 15 / degrees};
  const CowlDraft even = draft_cowl_front(base, wishes);
  for (const double angle : even.front.cowl->hinge_angles) EXPECT_NEAR(angle * degrees, 15.0, 1e-12);
  EXPECT_NEAR(even.front.points.at("neck-point").x(), 240.0, 1e-9);
  wishes.set_openings = {0.1};
  EXPECT_REFUSED(draft_cowl_front(base, wishes), "Give one opening for each slash line");
}

TEST(Top, ProportionsLeanTheOpenings) {
  const Piece base = block_front(demo_measures());
  CowlWishes wishes;
  wishes.drape = 360.0;
  wishes.proportions = {2, 1, 1};
  const auto high = draft_cowl_front(base, wishes).front.cowl->hinge_angles;
  wishes.proportions = {1, 1, 2};
  const auto low = draft_cowl_front(base, wishes).front.cowl->hinge_angles;
  EXPECT_GT(high[0], 1.5 * high[2]);
  EXPECT_GT(low[2], 1.5 * low[0]);
}

TEST(Top, ACrossingIsAcceptedOnlyAsFarAsAllowed) {
  const Piece base = block_front(demo_measures());
  CowlWishes wishes;
  wishes.drape = 300.0;
  const double strict = draft_cowl_front(base, wishes).front.cowl->swing;
  wishes.allowed_crossing = 15.0;
  const CowlDraft loose = draft_cowl_front(base, wishes);
  EXPECT_LE(loose.crossing, 15.0 + 1e-8);
  EXPECT_GT(loose.crossing, 1.0);
  EXPECT_LT(loose.front.cowl->swing, strict - 0.5 / degrees);
  for (const Point& p : loose.front.seam_line) EXPECT_GE(p.x(), -1e-12);
  // A swing about a higher point takes the front's lower end over the centre front.
  wishes.allowed_crossing = 0.0;
  wishes.pivot_height = 150.0;
  EXPECT_THROW(draft_cowl_front(base, wishes), Refusal);
  wishes.allowed_crossing = 40.0;
  const CowlDraft raised = draft_cowl_front(base, wishes);
  EXPECT_GT(raised.crossing, 0.0);
  EXPECT_EQ(edge_of(raised.front, "hem").points.front().x(), 0.0);
}

TEST(Top, ATackedFrontIsLongerByItsTack) {
  const BodyMeasures m = demo_measures();
  TopWishes wishes;
  const Top plain = draft_top(block_front(m), block_back(m), wishes);
  wishes.cowl.tacked_length = 60.0;
  const Top tacked = draft_top(block_front(m), block_back(m), wishes);
  EXPECT_NEAR(tacked.cowl.front_length - plain.cowl.front_length, 60.0, 1e-9);
  std::vector<Point> marks;
  for (const Notch& notch : tacked.cowl.front.notches) {
    if (notch.name == "tack") marks.push_back(notch.seam);
  }
  ASSERT_EQ(marks.size(), 2u);
  const Polyline& side = edge_of(tacked.cowl.front, "side-seam").points;
  EXPECT_NEAR(nearest(side, marks[0]).along - nearest(side, marks[1]).along, 60.0, 1e-9);
  EXPECT_NO_THROW(require_walk(tacked, false));
}

TEST(Top, BiasGrainAndTrialHang) {
  CowlWishes wishes;
  const Piece base = block_front(demo_measures());
  const CowlDraft plain = draft_cowl_front(base, wishes);
  wishes.on_bias = true;
  wishes.trial_hang = 18.0;
  const CowlDraft bias = draft_cowl_front(base, wishes);
  // True bias: NIMI, CITS Dress Making, Trade Theory (2024), p. 224.
  const Point along = bias.front.grain->to - bias.front.grain->from;
  EXPECT_NEAR(std::atan2(along.y(), along.x()) * degrees, 45.0, 1e-9);
  EXPECT_NEAR(plain.front_length - bias.front_length, 18.0, 0.01);
  EXPECT_TRUE(bias.front.mirror && !bias.front.fold);  // cut full, in one layer
  EXPECT_EQ(edge_of(bias.front, "side-seam").points.front(),
            edge_of(plain.front, "side-seam").points.front());
}

TEST(Top, ABackCowlComesFromTheSameEngine) {
  const BodyMeasures m = demo_measures();
  TopWishes wishes;
  wishes.back_cowl = CowlWishes{};
  wishes.back_cowl->drape = 300.0;
  wishes.back_cowl->neckline_drop = 40.0;
  const Top top = draft_top(block_front(m), block_back(m), wishes);
  EXPECT_EQ(top.back.name, "cowl back");
  EXPECT_TRUE(has_edge(top.back, "centre-back"));
  EXPECT_NEAR(top.back.points.at("neck-point").x(), 150.0, 1e-9);
  EXPECT_NO_THROW(require_walk(top, false));
}

TEST(Top, ATopThatDoesNotWalkIsNotCutWithoutAYes) {
  BodyMeasures m = demo_measures();
  const Piece front = block_front(m);
  m.waist_to_hem += 12.0;
  const Top top = draft_top(front, block_back(m), {});
  EXPECT_REFUSED(require_walk(top, false), "side seam");
  EXPECT_NO_THROW(require_walk(top, true));
}

TEST(Top, ElasticLandsOnTheSeamLine) {
  // ⅜ in clear elastic set ⅛ in from the edge ends on a ½ in seam line: common practice, no source.
  const BodyMeasures m = demo_measures();
  const Top top = draft_top(block_front(m), block_back(m), {});
  EXPECT_NEAR(top.elastic.off_seam_line(0.5 * 25.4), 0.0, 1e-12);
  EXPECT_NEAR(default_allowances().at("neckline"), 0.5 * 25.4, 1e-12);
  EXPECT_NEAR(top.elastic.seam_length, 2.0 * length(edge_of(top.back, "neckline").points), 1e-12);
  EXPECT_NEAR(top.elastic.elastic_length, top.elastic.seam_length + 26.0, 1e-9);
  for (const Notch& notch : top.back.notches) EXPECT_EQ(notch.ticks, 2);
}

TEST(Top, TheCamisolePanelFitsItsSeams) {
  const BodyMeasures m = demo_measures();
  const Piece front = block_front(m);
  const Top top = draft_top(front, block_back(m), {});
  ASSERT_TRUE(top.camisole);
  const Polyline& edge = edge_of(*top.camisole, "camisole-top").points;
  EXPECT_NEAR(front.points.at("neck-point").y() - edge.back().y(), 130.0, 1e-9);
  EXPECT_NEAR(length(edge_of(*top.camisole, "side-seam").points), 110.0, 1e-9);
  TopWishes wishes;
  wishes.camisole_depth = 20.0;
  EXPECT_REFUSED(draft_top(front, block_back(m), wishes), "inner panel's top edge");
}

TEST(Top, FinishesAreReckonedAndSetTheirAllowance) {
  // Common practice, no source: a binding goes around the raw edge, a band is sewn on with a seam.
  const BodyMeasures m = demo_measures();
  const Piece front = block_front(m), back = block_back(m);
  TopWishes wishes;
  wishes.camisole_finish = {.kind = FinishKind::elastic, .stretch = 1.2, .width = 9.525};
  wishes.arm_finish = Finish{.kind = FinishKind::binding, .stretch = 1.1, .width = 8.0};
  const Top top = draft_top(front, back, wishes);
  ASSERT_EQ(top.finishes.size(), 2u);
  const double edge = 2.0 * length(edge_of(*top.camisole, "camisole-top").points);
  EXPECT_NEAR(top.finishes[0].cut_length, edge / 1.2 + 26.0, 1e-9);
  const double arm = length(edge_of(front, "armhole").points) + length(edge_of(back, "armhole").points);
  EXPECT_NEAR(top.finishes[1].edge_length, arm, 1e-6);
  EXPECT_NEAR(top.finishes[1].cut_length, arm / 1.1 + 20.0, 1e-6);
  EXPECT_NEAR(top.finishes[1].cut_width, 32.0, 1e-12);
  const auto allowance_of = [](const Piece& piece, const char* role) {
    const Polyline& line = edge_of(piece, role).points;
    return distance_to_outline(piece.cut_line, point_at(line, 0.5 * length(line)));
  };
  EXPECT_NEAR(allowance_of(top.back, "armhole"), 0.0, 1e-6);
  EXPECT_NEAR(allowance_of(top.cowl.front, "armhole"), 0.0, 1e-6);
  EXPECT_NEAR(allowance_of(*top.camisole, "camisole-top"), 12.7, 0.02);  // elastic and 1/8 in
  wishes.allowances_set = {"armhole"};
  EXPECT_NEAR(allowance_of(draft_top(front, back, wishes).back, "armhole"), 10.0, 0.02);
  wishes.arm_finish->stretch = 2.0;
  EXPECT_REFUSED(draft_top(front, back, wishes), "between 1 and 1.5");
}

TEST(Top, TheFrontShowsWhereThePanelsHemComes) {
  const BodyMeasures m = demo_measures();
  for (const double tacked : {0.0, 50.0}) {
    TopWishes wishes;
    wishes.cowl.tacked_length = tacked;
    wishes.camisole_length = 200.0;  // below the tuck
    const Piece front = draft_top(block_front(m), block_back(m), wishes).cowl.front;
    const Polyline& side = edge_of(front, "side-seam").points;
    const auto notch = std::find_if(front.notches.begin(), front.notches.end(),
                                    [](const Notch& one) { return one.name == "panel-hem"; });
    ASSERT_NE(notch, front.notches.end());
    EXPECT_NEAR(length(side) - nearest(side, notch->seam).along, 200.0 + tacked, 1e-6);
    EXPECT_TRUE(contains(front.seam_line, front.points.at("drill-panel-hem")));
  }
}

TEST(SeamWalk, ReportsLengthNotchesAndBends) {
  Piece a;
  a.name = "a";
  a.edges = {{"hem", {{0, 0}, {100, 0}}},
             {"side-seam", {{100, 0}, {100, 200}}},
             {"top", {{100, 200}, {0, 200}}},
             {"centre-front", {{0, 200}, {0, 0}}}};
  a.notches = {{"n", {100, 80}, {110, 80}}};
  Piece b = a;
  b.edges[1].points.back() = {100, 203};
  b.edges[0].points[0] = {0, 10};
  b.notches[0].seam = {100, 82};
  const Walk walk = walk_seams("side", a, "side-seam", b, "side-seam");
  EXPECT_NEAR(walk.difference, -3.0, 1e-12);
  ASSERT_EQ(walk.notches.size(), 1u);
  EXPECT_NEAR(walk.notches[0].apart, 2.0, 1e-12);
  // b's hem falls 10 in 100 towards its side seam: its corner is that much narrower.
  EXPECT_NEAR(walk.bend_at_start, -std::atan(0.1), 1e-12);
  EXPECT_FALSE(walks(walk));
}

TEST(SeamWalk, LaysTheSleeveCapAroundBothArmholes) {
  const Piece front = block_front(demo_measures()), back = block_back(demo_measures());
  const double f = length(edge_of(front, "armhole").points), b = length(edge_of(back, "armhole").points);
  const auto up = [](const Piece& piece) {
    return nearest(edge_of(piece, "armhole").points, piece.notches.at(0).seam).along;
  };
  Piece sleeve;  // a cap drawn straight: only its length and notches count
  sleeve.name = "sleeve";
  const double around = f + b + 8.0;
  sleeve.edges = {{"sleeve-cap", {{around, 100}, {0, 100}}}};
  for (const bool front_last : {false, true}) {
    const auto place = [&](double from_front) {
      return Point(front_last ? from_front : around - from_front, 100);
    };
    sleeve.notches = {{"armhole", place(around - up(back)), {}, 2},
                      {"armhole", place(up(front) + 3.0), {}, 1}};
    const Walk eased = walk_sleeve(sleeve, front, back, 8.0);
    EXPECT_NEAR(eased.difference, 0.0, 1e-9);
    ASSERT_EQ(eased.notches.size(), 2u);
    EXPECT_NEAR(eased.notches[0].apart, 0.0, 1e-9);
    EXPECT_NEAR(eased.notches[1].apart, 3.0, 1e-9);
    EXPECT_FALSE(walks(eased));  // a notch 3 mm off
    sleeve.notches[1].seam = place(up(front));
    EXPECT_TRUE(walks(walk_sleeve(sleeve, front, back, 8.0)));
    EXPECT_FALSE(walks(walk_sleeve(sleeve, front, back)));
  }
  TopWishes wishes;
  wishes.sleeve_ease = 8.0;
  wishes.carried = {sleeve};
  const Top top = draft_top(front, back, wishes);
  EXPECT_EQ(top.walks.back().name, "sleeve cap");
  EXPECT_TRUE(walks(top.walks.back())) << walk_in_words(top.walks.back());
  EXPECT_NE(walk_in_words(top.walks.back()).find("(front)"), std::string::npos);
}

TEST(Hang, AgreesWithTheCatenarysOwnNumbers) {
  // a = 100, d = 200: s = 200 sinh 1 = 235.0402387, sag = 100 (cosh 1 - 1) = 54.3080635.
  // sinh 1 = 1.1752011936 and cosh 1 = 1.5430806348: Abramowitz and Stegun, Handbook of
  // Mathematical Functions, table 4.15 (from memory).
  EXPECT_NEAR(hang_depth(200.0, 235.04023873), 54.30806348, 1e-6);
  EXPECT_NEAR(drape_for_depth(200.0, 54.30806348), 235.04023873, 1e-6);
  // a = 100, d = 400: sinh 2 = 3.6268604079, cosh 2 = 3.7621956911.
  EXPECT_NEAR(hang_depth(400.0, 725.37208157), 276.21956911, 1e-6);
}

TEST(Hang, DepthAndLengthUndoEachOther) {
  for (double span = 40.0; span < 400.0; span += 37.0) {
    for (double depth = 0.5; depth < 900.0; depth *= 1.4) {
      EXPECT_NEAR(hang_depth(span, drape_for_depth(span, depth)), depth, 1e-7 * depth + 1e-7);
    }
  }
  EXPECT_REFUSED(hang_depth(200, 180), "cannot hang");
  EXPECT_REFUSED(drape_for_depth(200, 0), "must hang more than 0");
  EXPECT_EQ(depth_in_words(209.5, hang_levels(demo_measures())), "at the underarm");
  const std::string svg = hang_to_svg(130.0, 480.0, hang_levels(demo_measures()));
  for (const char* words : {"collar bone", "underarm", "waist", "mm deep"}) {
    EXPECT_NE(svg.find(words), std::string::npos) << words;
  }
}

}  // namespace
}  // namespace cowlcast::drafting
