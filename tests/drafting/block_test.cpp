#include "drafting/block/block.h"

#include "drafting/cowl/cowl_front.h"
#include "tests/drafting/support.h"

namespace cowlcast::drafting {
namespace {

// ASTM D5585-11e1, Table 1, sizes 00 to 20, inches.
constexpr double bust_in[12] = {31.125, 31.75, 33,     34.125, 35.25, 36.25,
                                37.25,  38.75, 40.375, 42.125, 44,    46};
constexpr double neck_in[12] = {13.25,  13.5,   13.75, 14,    14.25, 14.625,
                                14.875, 15.125, 15.5,  15.75, 16,    16.375};

BodyMeasures of_size(int size) {
  BodyMeasures m = demo_measures();
  m.bust_girth = bust_in[size] * 25.4;
  m.neck_girth = neck_in[size] * 25.4;
  // The rest in the demo wearer's proportions to the bust.
  m.waist_girth = 0.84 * m.bust_girth;
  m.hip_girth = 1.06 * m.bust_girth;
  m.back_waist_length = 400 + 0.08 * (m.bust_girth - 900);
  return m;
}

double neckline_length(const Piece& piece) {
  return length(edge_of(piece, "neckline").points);
}

TEST(Block, MeasuresTheGirthsOfEachStandardSize) {
  for (int size = 0; size < 12; ++size) {
    for (const double ease : {-40.0, 0.0, 30.0}) {
      BodyMeasures m = of_size(size);
      m.ease = ease;
      const Piece front = block_front(m), back = block_back(m);
      const double bust =
          2.0 * (edge_of(front, "armhole").points.front().x() + edge_of(back, "armhole").points.front().x());
      EXPECT_NEAR(bust, bust_in[size] * 25.4 + ease, 1e-9);
      EXPECT_NEAR(2.0 * (neckline_length(front) + neckline_length(back)), neck_in[size] * 25.4, 0.01);
    }
  }
}

TEST(Block, FrontAndBackWalk) {
  std::mt19937 random(21);
  for (int i = 0; i < 200; ++i) {
    const BodyMeasures m = test::random_measures(random);
    const Piece front = block_front(m), back = block_back(m);
    for (const char* role : {"side-seam", "shoulder", "hem"}) {
      EXPECT_NEAR(length(edge_of(front, role).points), length(edge_of(back, role).points), 1e-9);
    }
    EXPECT_NEAR(length(edge_of(front, "shoulder").points), m.shoulder_length, 1e-9);
    EXPECT_GT(length(edge_of(back, "armhole").points), length(edge_of(front, "armhole").points) - 12.0);
  }
}

TEST(Block, EdgesFollowEachOtherAroundTheOutline) {
  const Piece front = block_front(demo_measures());
  const auto& edges = front.edges;
  ASSERT_EQ(edges.size(), 6u);
  for (size_t i = 0; i < 6; ++i) {
    EXPECT_LT((edges[i].points.back() - edges[(i + 1) % 6].points.front()).norm(), 1e-9) << edges[i].role;
  }
  EXPECT_GT(signed_area(front.seam_line), 0.0);
  for (const Point& p : front.seam_line) EXPECT_GE(p.x(), 0.0);
  // Neckline square to the centre front, so that it opens out without a dip.
  const Polyline& neck = edges[5].points;
  const Point end = neck.back() - neck[neck.size() - 2];
  EXPECT_LT(std::abs(end.y() / end.x()), 0.03);
}

TEST(Block, RefusesMeasuresThatCannotBelongTogether) {
  const auto with = [](auto change) {
    BodyMeasures m = demo_measures();
    change(m);
    return test::refusal_of([&] { block_front(m); });
  };
  EXPECT_NE(with([](BodyMeasures& m) { m.bust_girth = 91; }).find("bust girth of 91 mm"), std::string::npos);
  EXPECT_NE(with([](BodyMeasures& m) { m.neck_girth = NAN; }).find("no number"), std::string::npos);
  EXPECT_NE(with([](BodyMeasures& m) { m.bust_girth = 520; }).find("too small for a shoulder"),
            std::string::npos);
  EXPECT_NE(with([](BodyMeasures& m) {
              m.back_waist_length = 255;
              m.bust_girth = 1300;
            }).find("no side seam above the waist"),
            std::string::npos);
  EXPECT_NE(with([](BodyMeasures& m) { m.back_waist_length = 100; }).find("back waist length of 100 mm"),
            std::string::npos);
}

}  // namespace
}  // namespace cowlcast::drafting
