#include "projector/project/derive.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "../test_map.h"
#include "drafting/geometry/polyline.h"
#include "drafting/piece/marks.h"
#include "projector/project/drawn_slashes.h"
#include "projector/project/on_cloth.h"
#include "projector/project/sewing_order.h"
#include "projector/project/thumbnail.h"

namespace cowlcast::projector {
namespace {

Project of_size(const std::string& size) {
  Project project;
  project.pattern.source = PatternSource::size;
  project.pattern.size = size;
  return project;
}

std::vector<Place> places_missing(const Project& project) {
  std::vector<Place> places;
  for (const Missing& gap : missing_in(project, garment_of(project))) {
    EXPECT_TRUE(gap.sentence.ends_with('.')) << gap.sentence;
    EXPECT_FALSE(gap.brief.empty());
    EXPECT_LE(gap.brief.size(), 20u) << gap.brief;
    places.push_back(gap.place);
  }
  return places;
}

const char* const demo_front =
    R"(<svg xmlns="http://www.w3.org/2000/svg" width="300mm" height="700mm" viewBox="0 0 300 700">
<path id="a" d="M20 104V660"/><path id="b" d="M86 20C70 60 60 104 20 104"/><path id="c" d="M86 20L196 62"/>
<path id="d" d="M196 62C183 95 181 123 181 164S214 232 256 232"/><path id="e" d="M256 232L262 660"/>
<path id="f" d="M20 660H262"/></svg>)";

TEST(Derive, AnEmptyProjectSaysWhatIsMissing) {
  EXPECT_EQ(places_missing({}), (std::vector{Place::table, Place::pattern, Place::cutting}));
  EXPECT_TRUE(garment_of({}).pieces.empty());
}

TEST(Derive, EverySizeGivesAWholeTop) {
  for (const auto& size : {"00", "8", "20"}) {
    const Garment garment = garment_of(of_size(size));
    ASSERT_TRUE(garment.top) << size << ": " << garment.refusal;
    EXPECT_EQ(garment.pieces.size(), 3u);
    EXPECT_TRUE(garment.bases.cautions.empty());
    EXPECT_NEAR(garment.cowl->front.cowl->drape, 480.0, 1e-9);
  }
}

TEST(Derive, PiecesFollowWhatTheTopIsToHave) {
  Project project = of_size("8");
  project.top.back = project.top.camisole = false;
  EXPECT_EQ(garment_of(project).pieces.size(), 1u);
  project.cowl.separate_facing = true;
  EXPECT_EQ(garment_of(project).pieces.size(), 2u);
  project.cloth.kind = ClothKind::woven;
  EXPECT_FALSE(garment_of(project).pieces.front().fold) << "on the bias it is cut full, in one layer";
}

TEST(Derive, ADrapeThatCannotBeIsSaidAtTheCowl) {
  Project project = of_size("8");
  project.table.map = testing::map_of({});
  project.cowl.drape = 40.0;
  const Garment garment = garment_of(project);
  EXPECT_FALSE(garment.cowl);
  EXPECT_FALSE(garment.refusal.empty());
  EXPECT_EQ(places_missing(project), (std::vector{Place::cowl, Place::cutting}));
}

TEST(Derive, ADrawingWithRolesByHandGivesAFrontAlone) {
  Project project;
  project.pattern.source = PatternSource::drawing;
  project.pattern.front.svg = demo_front;
  EXPECT_FALSE(bases_of(project.pattern).front_refusal.empty());
  EXPECT_EQ(places_missing(project), (std::vector{Place::table, Place::pattern, Place::cutting}));
  project.pattern.front.roles = {{"a", "centre-front"}, {"b", "neckline"},  {"c", "shoulder"},
                                 {"d", "armhole"},      {"e", "side-seam"}, {"f", "hem"}};
  const Garment garment = garment_of(project);
  EXPECT_EQ(garment.pieces.size(), 1u) << garment.refusal;
  EXPECT_FALSE(garment.top);
  EXPECT_EQ(places_missing(project),
            (std::vector{Place::table, Place::pattern, Place::cutting, Place::sewing}));
  project.top.back = false;
  EXPECT_EQ(places_missing(project), (std::vector{Place::table, Place::cutting}));
}

TEST(Derive, APanelThatCannotBeLeavesTheCowl) {
  Project project = of_size("8");
  project.top.camisole_depth = 5.0;
  const Garment garment = garment_of(project);
  EXPECT_TRUE(garment.cowl);
  EXPECT_NE(garment.refusal.find("inner panel"), std::string::npos) << garment.refusal;
}

TEST(Derive, DoubledClothIsTwiceAsHigh) {
  const Project project = of_size("8");
  const drafting::Piece front = garment_of(project).pieces.front();
  ASSERT_TRUE(front.fold);
  EXPECT_DOUBLE_EQ(cutting_wishes_of(project, front, {}).height, 2.0 * project.cloth.thickness);
  EXPECT_DOUBLE_EQ(cutting_wishes_of(project, front, {}).blade.cloth, 2.0 * project.cloth.thickness);
}

TEST(Derive, ARecordOfAnotherShapeIsToldNotFollowed) {
  Project project = of_size("8");
  const drafting::Piece front = garment_of(project).pieces.front();
  Record record;
  record.strokes = static_cast<int>(strokes_of(front, {}).size());
  record.cut = record.strokes - 1;
  record.shape = shape_of(front);
  project.cutting[front.name] = record;
  std::string why;
  EXPECT_EQ(record_of(project, front, &why).cut, record.cut);
  EXPECT_TRUE(why.empty());
  project.cowl.drape += 0.1;  // as many strokes as before, elsewhere
  EXPECT_EQ(record_of(project, garment_of(project).pieces.front(), &why).cut, 0);
  EXPECT_FALSE(why.empty());
}

TEST(Derive, ACutPieceThatIsChangedIsNamed) {
  Project project = of_size("8");
  const Garment before = garment_of(project);
  for (const drafting::Piece& piece : before.pieces) {
    Record& record = project.cutting[piece.name];
    record.strokes = 5;
    record.cut = piece.name == "back" ? 0 : 2;
    record.shape = shape_of(piece);
  }
  EXPECT_TRUE(changed_after_cutting(project, before).empty());
  project.cowl.drape += 20.0;
  EXPECT_EQ(changed_after_cutting(project, garment_of(project)), std::vector<std::string>{"cowl front"});
  project.pattern.size = "10";  // the back, too, but none of it is cut
  EXPECT_EQ(changed_after_cutting(project, garment_of(project)),
            (std::vector<std::string>{"cowl front", "inner panel"}));
}

TEST(Derive, ABodyIsReadyWhenItsMeasuresAreTypedOrSaidToBeRight) {
  Project project;
  project.table.map = testing::map_of({});
  project.pattern.source = PatternSource::body;
  EXPECT_EQ(sample_measures(project.pattern).size(), 7u);
  EXPECT_EQ(places_missing(project), (std::vector{Place::pattern, Place::cutting}));
  project.pattern.body.bust_girth += 10.0;
  EXPECT_EQ(sample_measures(project.pattern).size(), 6u);
  Project said = project;
  said.pattern.body_is_own = true;
  EXPECT_EQ(places_missing(said), (std::vector{Place::cutting}));
  using Body = drafting::BodyMeasures;
  for (const auto member : {&Body::waist_girth, &Body::hip_girth, &Body::neck_girth, &Body::shoulder_length,
                            &Body::back_waist_length, &Body::waist_to_hem})
    project.pattern.body.*member += 1.0;
  EXPECT_EQ(places_missing(project), (std::vector{Place::cutting}));
}

TEST(Derive, SlashLinesDrawnInTheFrontAreTaken) {
  Project project;
  project.pattern.source = PatternSource::drawing;
  project.cowl.slash_count = 4;
  std::string svg = demo_front;
  svg.insert(svg.find("</svg>"),
             R"(<path id="slash-1" d="M20 240L130 36.8"/><path id="slash-2" d="M20 330L188 90"/>
<circle id="drill-pocket" cx="120" cy="400" r="2"/>)");
  project.pattern.front.svg = svg;
  EXPECT_FALSE(take_drawn_slashes(project)) << "its edges are not named yet";
  project.pattern.front.roles = {{"a", "centre-front"}, {"b", "neckline"},  {"c", "shoulder"},
                                 {"d", "armhole"},      {"e", "side-seam"}, {"f", "hem"}};
  ASSERT_TRUE(take_drawn_slashes(project));
  EXPECT_EQ(drawn_slashes(project), 2);
  const Garment garment = garment_of(project);
  ASSERT_TRUE(garment.cowl) << garment.refusal;
  const drafting::CowlRecord& cowl = *garment.cowl->front.cowl;
  ASSERT_EQ(cowl.slash_lines.size(), 2u);
  EXPECT_NEAR(cowl.slash_lines[0].from.y(), 660.0 - 240.0, 1e-6);
  EXPECT_NEAR(cowl.slash_lines[1].to.x(), 168.0, 2.0) << "its hinge lies on the armhole where it was drawn";
  EXPECT_EQ(drafting::drill_marks(garment.pieces.front()).size(), 1u) << "the maker's mark comes along";
  project.pattern.front.svg = demo_front;  // another drawing, without slash lines
  EXPECT_FALSE(take_drawn_slashes(project));
  EXPECT_TRUE(project.cowl.slashes.empty()) << "those of the first drawing do not stay";
}

TEST(SewingOrder, FollowsFromThePiecesThereAre) {  // the order itself: common practice, no source
  Project project = of_size("8");
  const auto step_with = [&](const char* words) {
    const auto steps = sewing_order(*garment_of(project).top);
    const auto found = std::find_if(steps.begin(), steps.end(), [&](const std::string& step) {
      return step.find(words) != std::string::npos;
    });
    return found == steps.end() ? -1 : static_cast<int>(found - steps.begin());
  };
  const int basted = step_with("Lay the inner panel"), shoulders = step_with("Sew the shoulders");
  const int sides = step_with("side seams, notch"), armholes = step_with("armhole's strip");
  EXPECT_GT(basted, 0);
  EXPECT_GT(shoulders, step_with("facing inside along the cowl edge"));
  EXPECT_GT(sides, basted) << "the side seams catch the panel";
  EXPECT_GT(sides, shoulders) << "what can be sewn flat comes before what closes a ring";
  EXPECT_GT(armholes, sides);
  EXPECT_GT(step_with("Turn up the hem"), armholes);
  EXPECT_EQ(step_with("tuck"), -1);
  project.top.camisole = false;
  project.cowl.separate_facing = true;
  project.cowl.tacked_length = 40.0;
  EXPECT_EQ(step_with("inner panel"), -1);
  EXPECT_GE(step_with("Sew the facing to the cowl edge"), 0);
  EXPECT_LT(step_with("Tack up the front's tuck"), step_with("side seams, notch"));
}

TEST(OnCloth, EveryPieceLiesWholeBetweenTheSelvedgesAndNoneOnAnother) {
  const Project project = of_size("12");
  const Garment garment = garment_of(project);
  const ClothUse use = on_cloth(garment.pieces, project.cloth.width);
  ASSERT_EQ(use.pieces.size(), garment.pieces.size());
  std::vector<drafting::Box> boxes;
  for (size_t i = 0; i < use.pieces.size(); ++i) {
    const LaidOut& one = use.pieces[i];
    EXPECT_TRUE(one.fits);
    EXPECT_EQ(one.name, garment.pieces[i].name);
    EXPECT_NEAR(std::abs(drafting::signed_area(one.cut_line)),
                std::abs(drafting::signed_area(drafting::unfolded(garment.pieces[i]).cut_line)), 1e-6);
    const drafting::Box box = drafting::box_of(one.cut_line);
    EXPECT_GE(box.low.x(), -0.5 * project.cloth.width);
    EXPECT_LE(box.high.x(), 0.5 * project.cloth.width);
    EXPECT_GE(box.low.y(), 0.0);
    EXPECT_LE(box.high.y(), use.length);
    for (const drafting::Box& other : boxes)
      EXPECT_TRUE(box.low.x() >= other.high.x() || box.high.x() <= other.low.x() ||
                  box.low.y() >= other.high.y() || box.high.y() <= other.low.y());
    boxes.push_back(box);
  }
  EXPECT_TRUE(too_wide_for_cloth(project, garment).empty());
}

TEST(OnCloth, WhatIsWiderThanTheClothIsMissingAtTheCloth) {
  Project project = of_size("12");
  project.table.map = testing::map_of({});
  project.cloth.width = 400.0;  // even the back is wider
  EXPECT_EQ(places_missing(project), (std::vector{Place::cowl, Place::cloth, Place::cutting}));
  project.cloth.width = 1500.0;
  project.cloth.kind = ClothKind::woven;  // turned onto the bias it is wider than as it is worn
  const Garment garment = garment_of(project);
  const ClothUse use = on_cloth(garment.pieces, project.cloth.width);
  const LaidOut& front = use.pieces.front();
  EXPECT_NEAR(front.grain[0].x(), front.grain[1].x(), 1e-6);
  project.cloth.width = front.width - 0.01;
  EXPECT_EQ(missing_in(project, garment_of(project)).front().place, Place::cloth);
  project.cloth.width = front.width + 0.01;
  EXPECT_EQ(missing_in(project, garment_of(project)).front().place, Place::cutting);
}

TEST(Derive, CutPiecesAreNoLongerMissing) {
  Project project = of_size("8");
  project.table.map = testing::map_of({});
  for (const drafting::Piece& piece : garment_of(project).pieces) {
    EXPECT_EQ(places_missing(project), (std::vector{Place::cutting}));
    Record& record = project.cutting[piece.name];
    record.strokes = record.cut = 5;
    record.shape = shape_of(piece);
  }
  EXPECT_TRUE(places_missing(project).empty());
  project.table.simulated = true;
  EXPECT_EQ(places_missing(project), (std::vector{Place::table}));
}

TEST(Thumbnail, ShowsBothHalvesOfTheFront) {
  EXPECT_EQ(thumbnail(garment_of({}), 64).pixelColor(32, 32).alpha(), 0);
  const QImage picture = thumbnail(garment_of(of_size("8")), 96);
  int left = 0, right = 0;
  for (int y = 0; y < 96; ++y)
    for (int x = 0; x < 48; ++x) {
      left += picture.pixelColor(x, y).alpha() > 128;
      right += picture.pixelColor(95 - x, y).alpha() > 128;
    }
  EXPECT_GT(left, 500);
  EXPECT_NEAR(left, right, 60);
  EXPECT_TRUE(thumbnail_png(garment_of(of_size("8")), 96).startsWith("\x89PNG"));
}

}  // namespace
}  // namespace cowlcast::projector
