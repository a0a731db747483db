#include "projector/table/simulated_table.h"

#include <gtest/gtest.h>

#include "drafting/block/block.h"
#include "drafting/cowl/cowl_front.h"
#include "drafting/geometry/polyline.h"

namespace cowlcast::projector {
namespace {

Polyline corners(const SimulatedCloth& cloth) {
  Polyline all;
  for (const Point& share : {Point(-0.5, -0.5), Point(0.5, -0.5), Point(0.5, 0.5), Point(-0.5, 0.5)})
    all.push_back(cloth.middle + Eigen::Rotation2Dd(cloth.turn) * Point(share.cwiseProduct(cloth.size)));
  return all;
}

TEST(SimulatedCloth, EndsAtThePiecesFoldAndReachesBeyondItElsewhere) {
  const drafting::Piece front =
      drafting::draft_cowl_front(drafting::block_front(drafting::demo_measures()), {}).front;
  ASSERT_TRUE(front.fold);
  for (const bool mirrored : {false, true})
    for (const double angle : {0.0, 0.3, -1.6}) {
      const Laying laying{.x = 30, .y = -40, .angle = angle, .mirrored = mirrored, .height = 1.6};
      const SimulatedCloth cloth = cloth_for(front, laying, 80.0);
      Polyline edge = corners(cloth);
      edge.push_back(edge.front());
      const Polyline fold = laid(laying, {front.fold->from, front.fold->to});
      for (const Point& end : fold) EXPECT_LT(drafting::nearest(edge, end).distance, 1e-9);
      double least = 1e9;
      for (const Point& p : laid(laying, front.cut_line)) {
        const Point there = Eigen::Rotation2Dd(-cloth.turn) * Point(p - cloth.middle);
        EXPECT_LE(std::abs(there.x()), 0.5 * cloth.size.x() + 1e-9);
        EXPECT_LE(std::abs(there.y()), 0.5 * cloth.size.y() + 1e-9);
        least = std::min(least, 0.5 * cloth.size.y() - std::abs(there.y()));
      }
      EXPECT_NEAR(least, 80.0, 1e-6);
      EXPECT_EQ(cloth.height, 1.6);
    }
}

}  // namespace
}  // namespace cowlcast::projector
