#include "drafting/piece/piece.h"

#include <nlohmann/json.hpp>

#include "drafting/cowl/cowl_front.h"
#include "drafting/piece/marks.h"
#include "tests/drafting/geos_reference.h"
#include "tests/drafting/support.h"

namespace cowlcast::drafting {
namespace {

CowlDraft draft(bool on_fold = true) {
  CowlWishes wishes;
  wishes.on_fold = on_fold;
  return draft_cowl_front(block_front(demo_measures()), wishes);
}

void expect_same(const Polyline& a, const Polyline& b) {
  ASSERT_EQ(a.size(), b.size());
  for (size_t i = 0; i < a.size(); ++i) EXPECT_EQ(a[i], b[i]);
}

TEST(PieceJson, RoundTripKeepsEveryDigit) {
  const CowlDraft drafted = draft();
  for (const Piece& piece : {drafted.front, drafted.base}) {
    const Piece back = piece_from_json(piece_to_json(piece));
    EXPECT_EQ(back.name, piece.name);
    expect_same(back.seam_line, piece.seam_line);
    expect_same(back.cut_line, piece.cut_line);
    ASSERT_EQ(back.edges.size(), piece.edges.size());
    for (size_t i = 0; i < piece.edges.size(); ++i) {
      EXPECT_EQ(back.edges[i].role, piece.edges[i].role);
      expect_same(back.edges[i].points, piece.edges[i].points);
    }
    EXPECT_EQ(back.points, piece.points);
    EXPECT_EQ(back.notches.size(), piece.notches.size());
    EXPECT_EQ(back.fold.has_value(), piece.fold.has_value());
    EXPECT_EQ(back.cowl.has_value(), piece.cowl.has_value());
    if (piece.cowl) {
      EXPECT_EQ(back.cowl->drape, piece.cowl->drape);
      EXPECT_NEAR(back.cowl->swing, piece.cowl->swing, 1e-15);
      ASSERT_EQ(back.cowl->parts.size(), piece.cowl->parts.size());
      for (size_t k = 0; k < piece.cowl->parts.size(); ++k) {
        expect_same(back.cowl->parts[k].after, piece.cowl->parts[k].after);
      }
    }
    EXPECT_EQ(piece_to_json(back), piece_to_json(piece));
  }
}

TEST(PieceJson, HasTheMembersOtherProgramsRely) {
  const auto json = nlohmann::json::parse(piece_to_json(draft().front));
  EXPECT_EQ(json["units"], "mm");
  for (const char* key : {"seam_line", "cut_line", "edges", "points", "notches", "grain", "fold", "cowl"}) {
    EXPECT_TRUE(json.contains(key)) << key;
  }
  for (const char* key : {"drape", "hinge_angles_deg", "swing_deg", "slash_lines", "parts"}) {
    EXPECT_TRUE(json["cowl"].contains(key)) << key;
  }
  EXPECT_TRUE(json["points"].contains("neck-point"));
  EXPECT_TRUE(json["points"].contains("shoulder-point"));
  EXPECT_EQ(json["cowl"]["parts"].size(), 4u);
  std::vector<std::string> roles;
  for (const auto& edge : json["edges"]) roles.push_back(edge["role"]);
  EXPECT_EQ(roles, (std::vector<std::string>{"centre-front", "hem", "side-seam", "armhole", "shoulder",
                                             "facing-shoulder", "facing-edge", "cowl-edge"}));
}

TEST(PieceJson, RefusesWhatIsNotACompletePiece) {
  const std::string good = piece_to_json(draft().front);
  EXPECT_REFUSED(piece_from_json("[]"), "does not say that it is a cowlcast piece");
  EXPECT_REFUSED(piece_from_json(good.substr(0, good.size() / 2)), "cut short");
  const auto without = [&](const char* key) {
    auto json = nlohmann::json::parse(good);
    json.erase(key);
    return json.dump();
  };
  EXPECT_REFUSED(piece_from_json(without("cut_line")), "no \"cut_line\"");
  EXPECT_REFUSED(piece_from_json(without("edges")), "no \"edges\"");
  EXPECT_REFUSED(piece_from_json(without("schema")), "another version");
  auto json = nlohmann::json::parse(good);
  json["units"] = "in";
  EXPECT_REFUSED(piece_from_json(json.dump()), "units are not mm");
  json = nlohmann::json::parse(good);
  json["seam_line"][3] = {1, "two"};
  EXPECT_REFUSED(piece_from_json(json.dump()), "seam_line should be a number");
  json = nlohmann::json::parse(good);
  json["seam_line"][3] = {1, 1e300};
  EXPECT_REFUSED(piece_from_json(json.dump()), "out of all measure");
}

TEST(Unfolded, DoublesThePieceAboutItsFold) {
  for (const bool on_fold : {true, false}) {
    const Piece half = draft(on_fold).front;
    EXPECT_EQ(half.fold.has_value(), on_fold);
    EXPECT_EQ(half.mirror.has_value(), !on_fold);
    const Piece whole = unfolded(half);
    EXPECT_FALSE(whole.fold || whole.mirror);
    EXPECT_NEAR(test::GeosOutline(whole.cut_line).area(), 2.0 * test::GeosOutline(half.cut_line).area(),
                1e-6);
    EXPECT_NEAR(signed_area(whole.seam_line), 2.0 * signed_area(half.seam_line), 1e-6);
    EXPECT_TRUE(test::GeosOutline(whole.cut_line).simple());
    EXPECT_EQ(whole.notches.size(), 2 * half.notches.size() - 1);  // the one on the fold stays single
    for (const Edge& edge : whole.edges) EXPECT_NE(edge.role, "centre-front");
  }
}

TEST(Allowances, MoveEachEdgeByItsOwnWidthAndNoneOnTheFold) {
  Piece front = draft().front;
  const Allowances allowances{
      {"shoulder", 12}, {"armhole", 8}, {"side-seam", 15}, {"hem", 30}, {"facing-shoulder", 12}};
  add_allowances(front, allowances);
  for (const Edge& edge : front.edges) {
    if (edge.role == "cowl-edge") continue;
    const auto found = allowances.find(edge.role);
    const double width = found == allowances.end() ? 0.0 : found->second;
    const Point middle = point_at(edge.points, 0.5 * length(edge.points));
    EXPECT_NEAR(distance_to_outline(front.cut_line, middle), width, 0.02) << edge.role;
  }
  for (const Point& p : front.cut_line) EXPECT_GE(p.x(), -1e-9);
  for (const Notch& notch : front.notches) {
    EXPECT_LT(distance_to_outline(front.cut_line, notch.cut), 1e-6);
    EXPECT_LT(distance_to_outline(front.seam_line, notch.seam), 1e-6);
  }
  EXPECT_REFUSED(add_allowances(front, {{"hemline", 10}}), "no edge called \"hemline\"");
  EXPECT_REFUSED(add_allowances(front, {{"hem", -1}}), "between 0 and 100 mm");
}

TEST(Allowances, AHemTurnedUpLiesOnItsSideSeam) {
  // Fold the hem allowance up on the hem line: its end must lie on the side seam's cut line.
  Piece front = draft().front;
  add_allowances(front, {{"side-seam", 12}, {"hem", 30}});
  const Polyline& hem = edge_of(front, "hem").points;
  const Point corner = hem.back(), before = hem[hem.size() - 2];
  Point lowest = corner;  // the cut line's corner below the side seam
  for (const Point& p : front.cut_line) {
    if ((p - corner).norm() < 60.0 && p.x() > corner.x() && p.y() < lowest.y()) lowest = p;
  }
  ASSERT_LT(lowest.y(), corner.y() - 20.0);
  const Point folded = mirrored(lowest, {before, corner});
  EXPECT_LT(distance_to_outline(front.cut_line, folded), 0.05);
  EXPECT_NEAR(distance_to_outline(front.seam_line, folded), 12.0, 0.05);
}

TEST(Allowances, SquaredCornersAreCutShorterThanMitredOnes) {
  Piece front = draft().front;
  add_allowances(front, default_allowances());
  const double mitred = signed_area(front.cut_line);
  Corners corners;
  corners.others = CornerForm::squared;
  add_allowances(front, default_allowances(), corners);
  EXPECT_LT(signed_area(front.cut_line), mitred - 20.0);
  EXPECT_TRUE(test::GeosOutline(front.cut_line).simple());
}

/// The corner of the cut line farthest along `way` within 60 mm of a seam corner.
Point farthest(const Piece& piece, const Point& corner, const Point& way) {
  Point best = corner;
  for (const Point& p : piece.cut_line)
    if ((p - corner).norm() < 60.0 && way.dot(p - best) > 0.0) best = p;
  return best;
}

TEST(Corners, AMirroredCornerLiesOnTheOtherEdgeWhenPressedBack) {
  // Press the shoulder's allowance back over the shoulder seam: its end must lie on the armhole's cut line.
  Piece base = block_front(demo_measures());
  Corners corners;
  corners.list.push_back({"shoulder", "armhole"});
  corners.list.push_back({"shoulder", "neckline"});
  for (const double width : {8.0, 15.0}) {
    add_allowances(base, {{"shoulder", width}, {"armhole", 11}, {"neckline", 9}}, corners);
    const Polyline& shoulder = edge_of(base, "shoulder").points;
    const Point along = (shoulder.back() - shoulder.front()).normalized(), up(along.y(), -along.x());
    for (const bool at_neck : {false, true}) {
      const Point corner = at_neck ? shoulder.back() : shoulder.front();
      const Point out = at_neck ? along : Point(-along);
      const Point tip = farthest(base, corner, up + 0.2 * out);
      EXPECT_NEAR(up.dot(tip - corner), width, 1e-6);
      const Point folded = mirrored(tip, {shoulder.front(), shoulder.back()});
      EXPECT_LT(distance_to_outline(base.cut_line, folded), 1e-6) << at_neck;
      EXPECT_NEAR(distance_to_outline(base.seam_line, folded), at_neck ? 9.0 : 11.0, 0.1);
    }
    EXPECT_TRUE(test::GeosOutline(base.cut_line).simple());
  }
}

TEST(Corners, EachCornerCanBeChosenAlone) {
  const Piece base = block_front(demo_measures());
  const auto area_with = [&](const Corners& corners) {
    Piece piece = base;
    add_allowances(piece, default_allowances(), corners);
    return test::GeosOutline(piece.cut_line).area();
  };
  const Corners plain{CornerForm::mitred, {}};
  Corners one = plain, other = plain, both = plain;
  one.list = {{"armhole", "shoulder", CornerForm::squared}};
  other.list = {{"side-seam", "armhole", CornerForm::squared}};
  both.list = {one.list[0], other.list[0]};
  const double all = area_with(plain);
  EXPECT_LT(area_with(one), all - 1.0);
  EXPECT_LT(area_with(other), all - 1.0);
  EXPECT_NEAR(area_with(both), area_with(one) + area_with(other) - all, 1e-6);
}

TEST(Allowances, RandomOnesEndSimpleAndAroundTheSeamOrAreRefused) {
  const CowlDraft drafted = draft();
  std::mt19937 random(8);
  int refused = 0;
  for (int i = 0; i < 300; ++i) {
    Piece piece = i % 2 == 0 ? drafted.front : drafted.base;
    Allowances allowances;
    double widest = 0.0;
    for (const std::string& role : roles_with_allowance(piece)) {
      allowances[role] = test::between(random, 0, 100) * (random() % 3 == 0 ? 1.0 : 0.2);
      widest = std::max(widest, allowances[role]);
    }
    Corners corners;
    if (random() % 2 == 0) corners.list.push_back({"shoulder", "armhole"});
    if (random() % 2 == 0) corners.list.push_back({"side-seam", "armhole"});
    if (random() % 3 == 0) corners.others = CornerForm::squared;
    try {
      add_allowances(piece, allowances, corners);
    } catch (const Refusal&) {
      ++refused;
      continue;
    }
    const test::GeosOutline cut(piece.cut_line);
    EXPECT_TRUE(cut.simple());
    EXPECT_LT(test::GeosOutline(piece.seam_line).area_outside(cut), 0.5);
    for (const Point& p : piece.cut_line)
      EXPECT_LT(distance_to_outline(piece.seam_line, p), 3.0 * widest + 1e-6);
  }
  EXPECT_LT(refused, 100);
}

TEST(Allowances, TooWideForACurveIsRefusedWithTheWidestThatWorks) {
  Piece front = draft().front;
  Allowances wide = default_allowances();
  wide["armhole"] = 90.0;
  const std::string words = test::refusal_of([&] { add_allowances(front, wide); });
  const std::string marker = "wider than ";
  ASSERT_NE(words.find("armhole of the cowl front curves too tightly"), std::string::npos) << words;
  wide["armhole"] = std::stod(words.substr(words.find(marker) + marker.size()));
  EXPECT_GT(wide["armhole"], 20.0);
  EXPECT_NO_THROW(add_allowances(front, wide));
}

TEST(Notches, CutOnesStayInTheOuterHalfOfTheAllowanceAndMarksAtTheFold) {
  for (const NotchForm form : {NotchForm::slit, NotchForm::vee}) {
    CowlWishes wishes;
    wishes.notch_form = form;
    wishes.tacked_length = 40.0;
    const Piece front =
        piece_from_json(piece_to_json(draft_cowl_front(block_front(demo_measures()), wishes).front));
    int cut = 0;
    for (const Notch& notch : front.notches) {
      if (notch.name == "cowl-edge") {
        EXPECT_EQ(notch.form, NotchForm::mark);  // a cut there would show at the fold
        continue;
      }
      EXPECT_EQ(notch.form, form) << notch.name;
      ++cut;
      for (const Polyline& line : notch_lines(notch)) {
        EXPECT_EQ(line.size(), form == NotchForm::slit ? 2u : 3u);
        for (const Point& p : line) EXPECT_GE(distance_to_outline(front.seam_line, p), 5.0 - 0.1);
      }
    }
    EXPECT_EQ(cut, 3);  // the armhole's and both tacks
    const std::vector<DrillMark> drills = drill_marks(front);
    ASSERT_EQ(drills.size(), 2u);
    for (const DrillMark& drill : drills) {
      EXPECT_TRUE(contains(front.seam_line, drill.at));
      EXPECT_NEAR(distance_to_outline(front.seam_line, drill.at), 12.0, 1.0);
    }
    EXPECT_EQ(drill_marks(unfolded(front)).size(), 4u);
  }
}

TEST(LinesToCut, LeaveOutTheFold) {
  const Piece front = draft().front;
  const std::vector<Polyline> runs = lines_to_cut(front);
  ASSERT_EQ(runs.size(), 1u);
  const Segment fold = *whole_fold(front);
  EXPECT_NEAR(length(runs[0]) + (fold.to - fold.from).norm(), test::GeosOutline(front.cut_line).perimeter(),
              1e-6);
  EXPECT_GT((fold.to - fold.from).norm(),
            (front.fold->to - front.fold->from).norm() + 20.0);  // the hem's allowance
}

}  // namespace
}  // namespace cowlcast::drafting
