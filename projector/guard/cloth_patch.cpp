#include "projector/guard/cloth_patch.h"

#include <Eigen/Cholesky>
#include <Eigen/Eigenvalues>
#include <algorithm>
#include <cmath>
#include <opencv2/imgproc.hpp>

#include "calibration/refusal.h"

namespace cowlcast::projector {
namespace {

constexpr int kAround = ClothPatch::kFarthest + 2;
constexpr double kOff = 0.05;         // of a pixel's light that may be off for the model's sake
constexpr double kCompany = 10.0;     // pixels that tell no more than one, since they share light and lens
constexpr double kLikely = 4.0;       // pixels: by so much cloth is likely to have gone
constexpr double kTelling = 250.0;    // of a patch: its squared slopes, over what its light may be off
constexpr double kEdges = 0.06;       // contrast of a patch that tells, standard deviation over mean
constexpr double kFull = 0.9;         // linear light from which a level says nothing more
constexpr double kBelieved = 0.4;     // of the patch's own contrast: what the fit may leave
constexpr double kQuarter = 0.45;     // of what is left: more of it in one quarter is something that covers
constexpr double kAlong = 0.06;       // of what a patch tells across: less along is noise
constexpr double kKnown = 0.3;        // pixels
constexpr double kLeastLight = 10.0;  // pixels' worth that stand out of the noise
constexpr int kSteps = 8;
constexpr double kStill = 0.01;  // pixels
constexpr double kAlike = 1.2;   // of the least misfit: places that fit as well

// What would be seen within `size` at a place of `looks` that is `shift` off its middle.
cv::Mat at_shift(const cv::Mat& looks, const Point& shift) {
  constexpr int side = ClothPatch::kSide;
  cv::Mat out;
  const double middle = kAround + 0.5 * (side - 1);
  cv::getRectSubPix(
      looks, {side, side},
      cv::Point2f(static_cast<float>(middle - shift.x()), static_cast<float>(middle - shift.y())), out);
  return out;
}

// Smaller where a projected edge is near: its own place in the frame is known to a pixel alone.
cv::Mat trust_in(const cv::Mat& light) {
  static const cv::Mat around = cv::Mat::ones(5, 5, CV_8U);
  cv::Mat low, high;
  cv::erode(light, low, around);
  cv::dilate(light, high, around);
  return high - low;
}

}  // namespace

ClothLook::ClothLook(const Backdrop& backdrop) : sight(backdrop.sight()), power(backdrop.power()) {
  const Look look = backdrop.look({0, 0, sight.camera.width, sight.camera.height});
  cv::blur(look.room, room, {3, 3});
  cv::blur(look.projector, beam, {3, 3});
  noise = cv::Mat(room.size(), CV_32F);
  for (int r = 0; r < noise.rows; ++r)
    for (int c = 0; c < noise.cols; ++c)
      noise.at<float>(r, c) = backdrop.smoothed_noise(room.at<cv::Vec3f>(r, c)[1]);
}

std::vector<cv::Point> telling_places(const ClothLook& cloth) {
  constexpr int side = ClothPatch::kSide;
  const cv::Mat full = cloth.room + cloth.beam;
  std::vector<cv::Mat> channels;
  cv::split(full, channels);
  cv::Mat telling = cv::Mat::zeros(full.size(), CV_32F);
  for (const cv::Mat& channel : channels) {
    cv::Mat level, dx, dy, slopes, mean, squares;
    cv::log(channel + 3.0 * cloth.noise + 1e-4, level);
    cv::Sobel(level, dx, CV_32F, 1, 0, 1, 0.5);
    cv::Sobel(level, dy, CV_32F, 0, 1, 1, 0.5);
    slopes = dx.mul(dx) + dy.mul(dy);
    slopes.setTo(0.0, channel > kFull);
    cv::boxFilter(slopes, slopes, CV_32F, {side, side}, {-1, -1}, false);
    cv::boxFilter(channel, mean, CV_32F, {side, side});
    cv::boxFilter(channel.mul(channel), squares, CV_32F, {side, side});
    cv::Mat even = squares - mean.mul(mean) < kEdges * kEdges * mean.mul(mean);
    slopes.setTo(0.0, even);
    telling = cv::max(telling, slopes);
  }
  telling *= 1.0 / (kOff * kOff);
  constexpr int edge = side / 2 + kAround + 1;
  const cv::Rect inner(edge, edge, telling.cols - 2 * edge, telling.rows - 2 * edge);
  std::vector<std::pair<float, cv::Point>> found;
  // Every few pixels is enough to choose from.
  for (int r = inner.y; r < inner.br().y; r += 3)
    for (int c = inner.x; c < inner.br().x; c += 3)
      if (const float here = telling.at<float>(r, c); here > kTelling)
        found.emplace_back(here, cv::Point(c, r));
  std::stable_sort(found.begin(), found.end(),
                   [](const auto& a, const auto& b) { return a.first > b.first; });
  cv::Mat taken = cv::Mat::zeros(telling.size(), CV_8U);
  std::vector<cv::Point> places;
  for (const auto& [strength, at] : found) {
    if (taken.at<uchar>(at) != 0) continue;
    places.push_back(at);
    cv::rectangle(taken, at - cv::Point(side, side), at + cv::Point(side, side), cv::Scalar(255), cv::FILLED);
  }
  return places;
}

ClothPatch::ClothPatch(const ClothLook& cloth, const cv::Point& middle)
    : cloth_(&cloth), box_(middle - cv::Point(kSide / 2, kSide / 2), cv::Size(kSide, kSide)) {
  const cv::Rect grown(box_.x - kAround, box_.y - kAround, kSide + 2 * kAround, kSide + 2 * kAround);
  std::vector<cv::Mat> room, beam;
  cv::split(cloth.room(grown), room);
  cv::split(cloth.beam(grown), beam);
  double most = -1.0;
  for (int c = 0; c < 3; ++c) {  // the channel of the strongest contrast
    cv::Scalar mean, spread;
    cv::meanStdDev(room[static_cast<size_t>(c)] + beam[static_cast<size_t>(c)], mean, spread);
    const double contrast = spread[0] / (mean[0] + 0.01);
    if (contrast <= most || mean[0] > kFull) continue;
    most = contrast;
    channel_ = c;
  }
  room_ = room[static_cast<size_t>(channel_)];
  beam_ = beam[static_cast<size_t>(channel_)];
  noise_ = cloth.noise(grown).clone();
  const TableSight& sight = cloth.sight;
  place_ = sight.camera.mat_from_pixel(Point(middle.x, middle.y), sight.cloth);
  picture_from_pixel_ = cv::Mat(kSide, kSide, CV_32FC2, cv::Scalar::all(-1e4));
  try {  // so small a part is flat: its corners tell the rest
    Point corners[4];
    for (int k = 0; k < 4; ++k) {
      const Point pixel(box_.x + (k % 2) * (kSide - 1), box_.y + (k / 2) * (kSide - 1));
      corners[k] = sight.map.projector_from_mat(sight.camera.mat_from_pixel(pixel, sight.cloth), sight.cloth);
    }
    for (int r = 0; r < kSide; ++r)
      for (int c = 0; c < kSide; ++c) {
        const double u = static_cast<double>(c) / (kSide - 1), v = static_cast<double>(r) / (kSide - 1);
        const Point at = (1.0 - v) * ((1.0 - u) * corners[0] + u * corners[1]) +
                         v * ((1.0 - u) * corners[2] + u * corners[3]);
        picture_from_pixel_.at<cv::Vec2f>(r, c) = {static_cast<float>(at.x()), static_cast<float>(at.y())};
      }
  } catch (const calibration::Refusal&) {
    // The light does not reach there.
  }
}

// The projected light on the box, 0 to 1.
cv::Mat ClothPatch::light_here(const cv::Mat& picture) const {
  cv::Mat out = cv::Mat::zeros(box_.size(), CV_32F);
  cv::Rect part;
  for (int r = 0; r < kSide; ++r)
    for (int c = 0; c < kSide; ++c) {
      const cv::Vec2f at = picture_from_pixel_.at<cv::Vec2f>(r, c);
      const cv::Rect one(static_cast<int>(at[0]), static_cast<int>(at[1]), 1, 1);
      if (at[0] > -1e3f) part = part.empty() ? one : part | one;
    }
  part = cv::Rect(part.x - 4, part.y - 4, part.width + 8, part.height + 8) & cv::Rect({0, 0}, picture.size());
  if (part.empty()) return out;
  cv::Mat one = picture(part);
  if (picture.channels() == 3) cv::extractChannel(one, one, channel_);
  cv::Mat light = sent_light(one, cloth_->power);
  cv::GaussianBlur(light, light, {5, 5}, 1.2);
  cv::remap(light, out, cv::Mat(picture_from_pixel_ - cv::Scalar(part.x, part.y)), cv::noArray(),
            cv::INTER_LINEAR, cv::BORDER_CONSTANT, cv::Scalar(0.0));
  return out;
}

struct ClothPatch::Fit {
  Point shift;
  Point only{0.0, 0.0};
  double misfit = 0.0, sigma = 0.0;
};

std::optional<ClothPatch::Fit> ClothPatch::fit(const cv::Mat& seen, const cv::Mat& light, Point shift) const {
  using Row = Eigen::Matrix<double, 6, 1>;
  const cv::Mat edges = trust_in(light), noise = noise_(cv::Rect(kAround, kAround, kSide, kSide));
  Eigen::Vector4d gains(1.0, 1.0, 0.0, 0.0);  // of room and beam; the slopes of the room's, across and down
  Fit out;
  for (int step = 0; step < kSteps; ++step) {
    if (shift.cwiseAbs().maxCoeff() > kFarthest) return std::nullopt;
    const cv::Mat room = at_shift(room_, shift), beam = at_shift(beam_, shift);
    Eigen::Matrix<double, 6, 6> normal = Eigen::Matrix<double, 6, 6>::Zero();
    Row right = Row::Zero();
    double left = 0.0, weights = 0.0, sum = 0.0, squares = 0.0, quarters[4] = {};
    for (int r = 1; r + 1 < kSide; ++r)
      for (int c = 1; c + 1 < kSide; ++c) {
        const double p = light.at<float>(r, c), a = room.at<float>(r, c), b = p * beam.at<float>(r, c);
        const double y = seen.at<float>(r, c);
        if (y > kFull) continue;
        const double u = (2.0 * c + 1.0) / kSide - 1.0, v = (2.0 * r + 1.0) / kSide - 1.0;
        const double room_gain = gains[0] + u * gains[2] + v * gains[3];
        const auto slope = [&](int dr, int dc) {
          return 0.5 *
                 (room_gain *
                      static_cast<double>(room.at<float>(r + dr, c + dc) - room.at<float>(r - dr, c - dc)) +
                  gains[1] * p *
                      static_cast<double>(beam.at<float>(r + dr, c + dc) - beam.at<float>(r - dr, c - dc)));
        };
        const double want = room_gain * a + gains[1] * b;
        const double unsure = kOff * std::max(want, y) + noise.at<float>(r, c) +
                              0.5 * edges.at<float>(r, c) * beam.at<float>(r, c);
        Row row;
        row << a, b, u * a, v * a, -slope(0, 1), -slope(1, 0);
        const double off = (y - want) / unsure, weight = 1.0 / (1.0 + off * off / 9.0) / (unsure * unsure);
        normal += weight * row * row.transpose();
        right += weight * row * (y - want);
        const double tells = kOff * kOff * std::max(want, y) * std::max(want, y) / (unsure * unsure);
        const double rest = tells * std::min(off * off, 25.0);
        left += rest;
        quarters[2 * (2 * r / kSide) + 2 * c / kSide] += rest;
        weights += tells;
        sum += tells * want;
        squares += tells * want * want;
      }
    if (weights < kLeastLight) return std::nullopt;
    // The beam changes with the camera's exposure alone, and the room's light goes by place but slowly.
    const Eigen::Vector4d likely(gains[0], 1.0, 0.0, 0.0),
        hold(0.0, 0.05 * normal(1, 1) + 1e-9, 0.02 * normal(0, 0), 0.02 * normal(0, 0));
    normal.diagonal().head<4>() += hold;
    right.head<4>() += hold.cwiseProduct(likely - gains);
    // Of an edge nothing is known of the way along it, though noise may look like it.
    const Eigen::SelfAdjointEigenSolver<Eigen::Matrix2d> told(normal.block<2, 2>(4, 4));
    const Eigen::Vector2d values = told.eigenvalues();
    out.only = Point(0.0, 0.0);
    if (values[0] < kAlong * values[1]) out.only = told.eigenvectors().col(1);
    normal.block<2, 2>(4, 4).diagonal().array() += kCompany / (kLikely * kLikely);
    right.tail<2>() -= kCompany / (kLikely * kLikely) * shift;
    const Row change = normal.ldlt().solve(right);
    if (!change.allFinite()) return std::nullopt;
    gains += change.head<4>();
    Point way = change.tail<2>();
    if (!out.only.isZero()) way = out.only.dot(shift + way) * out.only - shift;
    if (way.norm() > 2.0) way *= 2.0 / way.norm();
    shift += way;
    if (!(gains[0] > 0.02) || !(gains[1] > 0.02)) return std::nullopt;
    const double mean = sum / weights, spread = std::sqrt(std::max(squares / weights - mean * mean, 1e-12));
    const double share = *std::max_element(quarters, quarters + 4) / std::max(left, 1e-9);
    out.misfit =
        std::sqrt(left / weights) * kOff * mean / spread * (1.0 + 3.0 * std::max(0.0, share - kQuarter));
    if (way.norm() > kStill && step + 1 < kSteps) continue;
    out.sigma = std::sqrt(kCompany / values[1]);
    out.shift = shift;
    return out;
  }
  return std::nullopt;
}

// Where within reach the look fits best, roughly; of places that fit alike the one nearest to `guess`.
Point ClothPatch::farther(const cv::Mat& seen, const cv::Mat& light, const Point& guess) const {
  struct Try {
    double misfit;
    Point shift;
  };
  std::vector<Try> tries;
  double least = 1e300;
  for (int dy = -kFarthest + 1; dy < kFarthest; ++dy)
    for (int dx = -kFarthest + 1; dx < kFarthest; ++dx) {
      double yy = 0.0, yw = 0.0, ww = 0.0;
      for (int r = 1; r < kSide; r += 2) {
        const auto *room = room_.ptr<float>(r + kAround - dy) + kAround - dx,
                   *beam = beam_.ptr<float>(r + kAround - dy) + kAround - dx, *y = seen.ptr<float>(r),
                   *p = light.ptr<float>(r);
        for (int c = 1; c < kSide; c += 2) {
          const auto want = static_cast<double>(room[c] + p[c] * beam[c]), is = static_cast<double>(y[c]);
          yy += is * is;
          yw += is * want;
          ww += want * want;
        }
      }
      const double misfit = yy - yw * yw / std::max(ww, 1e-12);
      tries.push_back({misfit, Point(dx, dy)});
      least = std::min(least, misfit);
    }
  Point best = guess;
  double nearest = 1e300;
  for (const Try& one : tries)
    if (one.misfit <= kAlike * least && (one.shift - guess).norm() < nearest) {
      nearest = (one.shift - guess).norm();
      best = one.shift;
    }
  return best;
}

std::optional<ClothPatch::Reading> ClothPatch::read(const cv::Mat& frame, const cv::Mat& picture,
                                                    const Point& guess) const {
  cv::Mat seen = linear_light(frame(cv::Rect(box_.x - 1, box_.y - 1, kSide + 2, kSide + 2)));
  cv::extractChannel(seen, seen, channel_);
  cv::blur(seen, seen, {3, 3});
  seen = seen(cv::Rect(1, 1, kSide, kSide)).clone();
  const cv::Mat light = light_here(picture);
  const auto good = [](const std::optional<Fit>& found) {
    return found && found->misfit < kBelieved && found->sigma < kKnown;
  };
  std::optional<Fit> found = fit(seen, light, guess);
  if (!good(found)) found = fit(seen, light, farther(seen, light, guess));
  if (!good(found)) return std::nullopt;
  const Point middle(box_.x + kSide / 2, box_.y + kSide / 2);
  const auto on_mat = [&](const Point& step) -> Point {
    return cloth_->sight.camera.mat_from_pixel(middle + step, cloth_->sight.cloth) - place_;
  };
  Reading reading{on_mat(found->shift), {0.0, 0.0}, found->shift, found->sigma};
  if (found->only.isZero()) return reading;
  // An edge's way across is square to it where it lies, on the mat as in the frame.
  const Point edge = on_mat(Point(-found->only.y(), found->only.x())).normalized();
  reading.only = Point(-edge.y(), edge.x());
  reading.shift = reading.only.dot(reading.shift) * reading.only;
  return reading;
}

}  // namespace cowlcast::projector
