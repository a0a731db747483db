#include "projector/blade/order.h"

#include <gtest/gtest.h>

#include <algorithm>

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

TEST(StrokeCautions, SpeakOfLightShearsCurvesAndCrossings) {
  const Polyline lit{{-200, -200}, {200, -200}, {200, 200}, {-200, 200}};
  Cut straight;
  straight.path = {{-100, 0}, {100, 0}};
  straight.stop_at = 200;
  EXPECT_TRUE(stroke_cautions(straight, {}, lit, {}).empty());
  EXPECT_EQ(stroke_cautions(straight, {.x = 150}, lit, {}).size(), 1u);
  Cut across = straight;
  across.path = {{0, -50}, {0, 50}};
  EXPECT_NE(stroke_cautions(straight, {}, lit, {across}).front().find("crosses"), std::string::npos);
  Cut next = straight;
  next.path = {{100, 0}, {100, 90}};
  EXPECT_TRUE(stroke_cautions(next, {}, lit, {straight}).empty());
  Cut tight = straight;
  tight.tight = {{10, 20, 30, 18.0}};
  EXPECT_NE(stroke_cautions(tight, {}, lit, {}).front().find("18 mm"), std::string::npos);
  Cut stub = straight;
  stub.stop_at = stub.start_at = 5;
  EXPECT_NE(stroke_cautions(stub, {}, lit, {}).front().find("shears"), std::string::npos);
}

}  // namespace
}  // namespace cowlcast::projector
