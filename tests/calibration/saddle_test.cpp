#include "calibration/detect/saddle.h"

#include <gtest/gtest.h>

#include <cmath>
#include <opencv2/imgproc.hpp>
#include <random>

namespace cowlcast::calibration {
namespace {

// A corner drawn as exact areas of light, 16 × 16 points a sample: no formula of the fit's own.
Eigen::MatrixXd drawn(int n, const Eigen::Vector2d& at, double slant, double blur, double noise, int seed) {
  constexpr int kFine = 16;
  cv::Mat fine(n * kFine, n * kFine, CV_32FC1);
  for (int i = 0; i < fine.rows; ++i)
    for (int j = 0; j < fine.cols; ++j) {
      const double x = (j + 0.5) / kFine - 0.5 * n - at.x(), y = (i + 0.5) / kFine - 0.5 * n - at.y();
      fine.at<float>(i, j) = (x + slant * y) * (y - slant * x) > 0 ? 200.0F : 60.0F;
    }
  cv::GaussianBlur(fine, fine, {}, blur * kFine, blur * kFine, cv::BORDER_REPLICATE);
  cv::Mat coarse;
  cv::resize(fine, coarse, {n, n}, 0, 0, cv::INTER_AREA);
  std::mt19937 random(static_cast<unsigned>(seed));
  std::normal_distribution<double> spread(0.0, noise);
  Eigen::MatrixXd out(n, n);
  for (int i = 0; i < n; ++i)
    for (int j = 0; j < n; ++j) out(i, j) = coarse.at<float>(i, j) + (noise > 0 ? spread(random) : 0.0);
  return out;
}

TEST(Saddle, FindsACleanCornerWithinAFewHundredths) {
  for (const double slant : {0.0, 0.1, -0.15})
    for (const Eigen::Vector2d& at :
         {Eigen::Vector2d(0, 0), Eigen::Vector2d(0.7, -1.3), Eigen::Vector2d(-2.0, 1.1)}) {
      const auto saddle = fit_saddle(drawn(15, at, slant, 1.0, 0.0, 0), 1);
      ASSERT_TRUE(saddle);
      EXPECT_LT((saddle->offset - at).norm(), 0.03) << slant;
    }
}

TEST(Saddle, StatesItsNoise) {
  double square = 0.0, stated = 0.0;
  constexpr int kTrials = 60;
  for (int i = 0; i < kTrials; ++i) {
    const Eigen::Vector2d at(0.02 * i - 0.6, 0.3);
    const auto saddle = fit_saddle(drawn(15, at, 0.05, 1.0, 12.0, i + 1), 1);
    ASSERT_TRUE(saddle);
    square += (saddle->offset - at).squaredNorm() / 2.0;
    stated += saddle->sigma * saddle->sigma;
  }
  EXPECT_NEAR(std::sqrt(square / stated), 1.0, 0.35);
}

TEST(Saddle, ShrugsOffAStrayEdge) {
  Eigen::MatrixXd patch = drawn(17, {0.4, -0.2}, 0.0, 1.0, 2.0, 5);
  patch.rightCols(2).array() += 90.0;  // a printed line runs through
  const auto saddle = fit_saddle(patch, 1);
  ASSERT_TRUE(saddle);
  EXPECT_LT((saddle->offset - Eigen::Vector2d(0.4, -0.2)).norm(), 0.15);
}

TEST(Saddle, SaysNothingWhereThereIsNoCorner) {
  EXPECT_FALSE(fit_saddle(Eigen::MatrixXd::Constant(15, 15, 90.0), 1));
  EXPECT_FALSE(fit_saddle(drawn(15, {0, 0}, 0.0, 1.0, 0.0, 0), -1));  // the other sign
  Eigen::MatrixXd edge = Eigen::MatrixXd::Constant(15, 15, 50.0);
  edge.rightCols(7).array() = 200.0;
  EXPECT_FALSE(fit_saddle(edge, 1));
  std::mt19937 random(9);
  std::normal_distribution<double> spread(100.0, 20.0);
  int claimed = 0;
  for (int i = 0; i < 50; ++i) {
    Eigen::MatrixXd noise(15, 15);
    for (double& value : noise.reshaped()) value = spread(random);
    claimed += fit_saddle(noise, 1).has_value();
  }
  EXPECT_LE(claimed, 2);
}

}  // namespace
}  // namespace cowlcast::calibration
