#include "projector/blade/order.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <utility>

#include "drafting/geometry/polyline.h"
#include "projector/frame/piece_marks.h"
#include "tests/projector/test_piece.h"

namespace cowlcast::projector {
namespace {

std::vector<Cut> front_cuts() {
  return cuts_of(cut_runs(testing::small_front()), Blade{}, {});
}

TEST(Order, KeepsEveryStrokeOnce) {
  const std::vector<Cut> cuts = front_cuts(), plan = ordered_cuts(cuts, {}, {});
  ASSERT_EQ(plan.size(), cuts.size());
  for (const Cut& cut : cuts)
    EXPECT_EQ(std::count_if(plan.begin(), plan.end(),
                            [&](const Cut& other) {
                              return other.path == cut.path || drafting::reversed(other.path) == cut.path;
                            }),
              1);
}

TEST(Order, LongRunsComeFirstAndAwayFromTheBody) {
  const Operator person{Hand::right, {0, -800}};
  for (const double angle : {0.0, 0.7, 1.6, 3.0}) {
    const Laying laying{.angle = angle};
    const std::vector<Cut> plan = ordered_cuts(front_cuts(), laying, person);
    double longest = 0.0;
    for (const Cut& cut : plan) longest = std::max(longest, drafting::length(cut.path));
    EXPECT_EQ(drafting::length(plan.front().path), longest);
    for (size_t i = 1; i < plan.size(); ++i)
      EXPECT_LE(drafting::length(plan[i].path), 1.25 * drafting::length(plan[i - 1].path) + 1e-9);
    for (const Cut& cut : plan) {
      const double away = (mat_from_piece(laying, cut.path.back()) - person.stands).norm() -
                          (mat_from_piece(laying, cut.path.front()) - person.stands).norm();
      EXPECT_GE(away, -0.2 * drafting::length(cut.path) - 1e-9) << "never much towards the body";
    }
  }
}

TEST(Order, AcrossTheBodyTheStrokeGoesTowardsTheBladesHand) {
  Cut cut;
  cut.path = {{100, 0}, {-100, 0}};
  cut.stop_at = 200;
  EXPECT_GT(ordered_cuts({cut}, {}, {Hand::right, {0, -800}}).front().path.back().x(), 0.0);
  EXPECT_LT(ordered_cuts({cut}, {}, {Hand::left, {0, -800}}).front().path.back().x(), 0.0);
}

std::vector<std::string> cautions_of(const Cut& cut, const Laying& laying, std::vector<Cut> before = {}) {
  Surroundings around{.lit = {{-200, -200}, {200, -200}, {200, 200}, {-200, 200}}};
  around.before = std::move(before);
  return stroke_cautions(cut, laying, around);
}

TEST(StrokeCautions, SpeakOfLightShearsCurvesAndCrossings) {
  Cut straight;
  straight.path = {{-100, 0}, {100, 0}};
  straight.stop_at = 200;
  EXPECT_TRUE(cautions_of(straight, {}).empty());
  EXPECT_EQ(cautions_of(straight, {.x = 150}).size(), 1u);
  Cut across = straight;
  across.path = {{0, -50}, {0, 50}};
  EXPECT_NE(cautions_of(straight, {}, {across}).front().find("crosses"), std::string::npos);
  Cut next = straight;
  next.path = {{100, 0}, {100, 90}};
  EXPECT_TRUE(cautions_of(next, {}, {straight}).empty());
  Cut tight = straight;
  tight.tight = {{10, 20, 30, 18.0}};
  EXPECT_NE(cautions_of(tight, {}).front().find("18 mm"), std::string::npos);
  Cut stub = straight;
  stub.stop_at = stub.start_at = 5;
  EXPECT_NE(cautions_of(stub, {}).front().find("shears"), std::string::npos);
}

TEST(StrokeCautions, SpeakOfTheMatAndTheFold) {
  Cut stroke;
  stroke.path = {{-100, 0}, {100, 0}};
  stroke.stop_at = 200;
  const auto said = [&](const Surroundings& around, const std::string& word) {
    const std::vector<std::string> cautions = stroke_cautions(stroke, {.x = 10, .angle = 0.1}, around);
    return cautions.size() == 1 && cautions.front().find(word) != std::string::npos;
  };
  const Polyline lit{{-500, -500}, {500, -500}, {500, 500}, {-500, 500}};
  const Polyline small{{-90, -90}, {90, -90}, {90, 90}, {-90, 90}},
      large{{-190, -90}, {190, -90}, {190, 90}, {-190, 90}};
  EXPECT_TRUE(said({.lit = lit, .mat = small}, "leaves the mat"));
  EXPECT_FALSE(said({.lit = lit, .mat = large}, "mat"));
  // The fold lies in the piece frame, as the stroke does.
  EXPECT_TRUE(said({.lit = lit, .fold = drafting::Segment{{100, -50}, {100, 50}}}, "Ends at the fold"));
  EXPECT_TRUE(said({.lit = lit, .fold = drafting::Segment{{-100, 0}, {-100, 50}}}, "Begins at the fold"));
  EXPECT_TRUE(said({.lit = lit, .fold = drafting::Segment{{20, -50}, {20, 50}}}, "runs into the fold"));
  EXPECT_FALSE(said({.lit = lit, .fold = drafting::Segment{{20, 10}, {20, 50}}}, "fold"));
}

TEST(StrokeCautions, OfAFoldedFrontTellWhichStrokesEndAtTheFold) {
  const drafting::Piece piece = testing::small_front();
  Surroundings around{.lit = {{-900, -900}, {900, -900}, {900, 900}, {-900, 900}}};
  around.fold = whole_fold(piece);
  int at_the_fold = 0;
  for (const Cut& cut : front_cuts())
    for (const std::string& caution : stroke_cautions(cut, {}, around))
      at_the_fold += caution.find("at the fold") != std::string::npos;
  EXPECT_EQ(at_the_fold, 2) << "hem and neckline";
}

}  // namespace
}  // namespace cowlcast::projector
