#include "projector/guard/strip.h"

#include <algorithm>
#include <cmath>
#include <opencv2/imgproc.hpp>

#include "calibration/refusal.h"
#include "drafting/refusal.h"

namespace cowlcast::projector {
namespace {

constexpr double kAfter = 15.0;  // mm of the strip past the stroke's end
constexpr float kNowhere = -1e4f;

// From a place of the cloth to where the camera sees, as if on the cloth, what is `kTallest` over it between
// that place and the projector; mm.
Point to_thrower(const Point& place, const TableSight& sight) {
  const Eigen::Vector3d lamp = sight.map.projector_from_mat_frame.inverse().translation(),
                        eye = sight.camera.camera_from_mat.inverse().translation();
  const double tall = StripView::kTallest, lamp_over = lamp.z() - sight.cloth,
               eye_over = eye.z() - sight.cloth;
  if (lamp_over < 2.0 * tall || eye_over < 2.0 * tall) return {1e4, 1e4};  // so near that it may be anywhere
  const Point thing = place + tall / lamp_over * (lamp.head<2>() - place);
  const Point seen = eye.head<2>() + eye_over / (eye_over - tall) * (thing - eye.head<2>());
  return seen - place;
}

// The same in cells, along and across.
cv::Vec2f to_thrower(const Strip& strip, int column, int row, const TableSight& sight) {
  const Point across = strip.place(column, 1) - strip.place(column, 0);
  const int from = std::max(column - 1, 0), to = std::min(column + 1, strip.columns - 1);
  const Point along = (strip.place(to, row) - strip.place(from, row)).normalized();
  const Point way = to_thrower(strip.place(column, row), sight) / across.norm();
  return {static_cast<float>(way.dot(along)), static_cast<float>(way.dot(across.normalized()))};
}

}  // namespace

Strip corridor_strip(const Corridor& corridor) {
  Polyline line;
  for (const Point& p : corridor.stroke)
    if (line.empty() || (p - line.back()).norm() > 1e-6) line.push_back(p);
  if (line.size() < 2)
    throw drafting::Refusal("A stroke of no length cannot be watched. Choose another stroke.");
  std::vector<double> lengths{0.0};
  for (size_t i = 1; i < line.size(); ++i) lengths.push_back(lengths.back() + (line[i] - line[i - 1]).norm());
  Strip strip;
  strip.other = corridor.other + Strip::margin;
  strip.columns = static_cast<int>(std::ceil((Strip::before + lengths.back() + kAfter) / Strip::cell));
  const int beside = static_cast<int>(Strip::margin / Strip::cell);
  const int within = static_cast<int>(std::ceil((corridor.holding + corridor.other) / Strip::cell));
  strip.rows = within + 2 * beside;
  strip.corridor = {beside, beside + within};
  strip.places.resize(static_cast<size_t>(strip.columns) * static_cast<size_t>(strip.rows));
  size_t i = 1;
  for (int c = 0; c < strip.columns; ++c) {
    const double along = strip.along(c);
    while (i + 1 < lengths.size() && lengths[i] < along) ++i;
    const Point way = (line[i] - line[i - 1]).normalized();
    const Point on = line[i - 1] + (along - lengths[i - 1]) * way;
    const Point side = corridor.holding_left ? Point(-way.y(), way.x()) : Point(way.y(), -way.x());
    for (int r = 0; r < strip.rows; ++r)
      strip.places[static_cast<size_t>(r * strip.columns + c)] = on + strip.off(r) * side;
  }
  return strip;
}

Strip area_strip(const Point& low, const Point& high, double cell_mm) {
  Strip strip;
  strip.columns = std::max(2, static_cast<int>(std::ceil((high.x() - low.x()) / cell_mm)));
  strip.rows = std::max(2, static_cast<int>(std::ceil((high.y() - low.y()) / cell_mm)));
  strip.corridor = {0, strip.rows};
  strip.places.reserve(static_cast<size_t>(strip.columns) * static_cast<size_t>(strip.rows));
  for (int r = 0; r < strip.rows; ++r)
    for (int c = 0; c < strip.columns; ++c) strip.places.push_back(low + cell_mm * Point(c, r));
  return strip;
}

StripView seen_by(const Strip& strip, const TableSight& sight) {
  StripView view;
  view.camera = cv::Mat(strip.rows, strip.columns, CV_32FC2, cv::Scalar::all(static_cast<double>(kNowhere)));
  view.projector = view.camera.clone();
  view.seen = cv::Mat::zeros(strip.rows, strip.columns, CV_8U);
  view.thrower = cv::Mat(strip.rows, strip.columns, CV_32FC2);
  for (int r = 0; r < strip.rows; ++r)
    for (int c = 0; c < strip.columns; ++c) {
      const Point place = strip.place(c, r);
      view.thrower.at<cv::Vec2f>(r, c) = to_thrower(strip, c, r, sight);
      const auto pixel = sight.camera.pixel_from_mat(place, sight.cloth);
      if (!pixel) continue;
      view.camera.at<cv::Vec2f>(r, c) = {static_cast<float>(pixel->x()), static_cast<float>(pixel->y())};
      try {
        const Eigen::Vector2d light = sight.map.projector_from_mat(place, sight.cloth);
        if (light.x() < 0.0 || light.y() < 0.0 || light.x() > sight.map.width - 1.0 ||
            light.y() > sight.map.height - 1.0)
          continue;
        view.projector.at<cv::Vec2f>(r, c) = {static_cast<float>(light.x()), static_cast<float>(light.y())};
      } catch (const calibration::Refusal&) {
        continue;  // beyond the projector's lens
      }
      view.seen.at<uchar>(r, c) = 255;
    }
  return view;
}

cv::Mat camera_strip(const StripView& view, const cv::Mat& frame) {
  cv::Mat out;
  cv::remap(frame, out, view.camera, cv::noArray(), cv::INTER_LINEAR, cv::BORDER_REPLICATE);
  return out;
}

cv::Mat sent_light(const cv::Mat& picture, double power) {
  cv::Mat table(1, 256, CV_32F);
  for (int v = 0; v < 256; ++v) table.at<float>(v) = static_cast<float>(std::pow(v / 255.0, power));
  cv::Mat light;
  cv::LUT(picture, table, light);
  return light;
}

cv::Mat light_strip(const StripView& view, const cv::Mat& picture, double power) {
  // Only the part of the picture that falls on the strip.
  cv::Rect box;
  for (int r = 0; r < view.seen.rows; ++r)
    for (int c = 0; c < view.seen.cols; ++c)
      if (view.seen.at<uchar>(r, c) != 0) {
        const cv::Vec2f at = view.projector.at<cv::Vec2f>(r, c);
        const cv::Rect one(static_cast<int>(at[0]), static_cast<int>(at[1]), 1, 1);
        box = box.empty() ? one : box | one;
      }
  cv::Mat out = cv::Mat::zeros(view.seen.size(), CV_32FC3);
  box = cv::Rect(box.x - 4, box.y - 4, box.width + 8, box.height + 8) & cv::Rect({0, 0}, picture.size());
  if (box.empty()) return out;
  cv::Mat light = sent_light(picture(box), power);
  if (light.channels() == 1) cv::merge(std::vector<cv::Mat>(3, light), light);
  cv::GaussianBlur(light, light, cv::Size(5, 5), 0.8);
  const cv::Mat at = view.projector - cv::Scalar(box.x, box.y);
  cv::remap(light, out, at, cv::noArray(), cv::INTER_LINEAR, cv::BORDER_CONSTANT, cv::Scalar::all(0.0));
  return out;
}

}  // namespace cowlcast::projector
