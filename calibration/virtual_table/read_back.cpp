#include "calibration/virtual_table/read_back.h"

#include <algorithm>
#include <cmath>
#include <opencv2/imgproc.hpp>
#include <stdexcept>

#include "calibration/virtual_table/textures.h"
#include "calibration/virtual_table/truth.h"

namespace cowlcast::calibration::virtual_table {

namespace {

constexpr double least_light = 0.05;  // share of white below which nothing is seen to be drawn
constexpr double foot = 0.35;         // share of a ridge's height below which its light is left out

// A line cut into places at even distances, with what is needed to know corners.
struct Walk {
  std::vector<LineSample> places;
  std::vector<Eigen::Vector2d> ways;  // unit tangents
  std::vector<double> corners;        // where along the line
  double length = 0.0;
};

Walk walk_along(std::vector<Eigen::Vector2d> line, const ReadBackOptions& options) {
  if (options.closed && (line.front() - line.back()).norm() > 1e-9) line.push_back(line.front());
  std::vector<Eigen::Vector2d> points;
  for (const auto& point : line)
    if (points.empty() || (point - points.back()).norm() > 1e-9) points.push_back(point);
  Walk walk;
  if (points.size() < 2) return walk;
  const auto turn = [](const Eigen::Vector2d& a, const Eigen::Vector2d& b) {
    return std::abs(std::atan2(a.x() * b.y() - a.y() * b.x(), a.dot(b)));
  };
  std::vector<double> reached{0.0};
  for (std::size_t i = 1; i < points.size(); ++i) {
    if (i >= 2 && turn(points[i - 1] - points[i - 2], points[i] - points[i - 1]) > options.corner_angle)
      walk.corners.push_back(reached.back());
    reached.push_back(reached.back() + (points[i] - points[i - 1]).norm());
  }
  walk.length = reached.back();
  if (!options.closed) {
    walk.corners.insert(walk.corners.end(), {0.0, walk.length});
  } else if (turn(points.back() - points[points.size() - 2], points[1] - points[0]) > options.corner_angle) {
    walk.corners.insert(walk.corners.end(), {0.0, walk.length});
  }
  const int count = std::max(1, static_cast<int>(std::floor(walk.length / options.spacing)));
  std::size_t piece = 1;
  for (int k = 0; k < count; ++k) {
    const double along = walk.length * (k + 0.5) / count;
    while (reached[piece] < along) ++piece;
    const Eigen::Vector2d way = (points[piece] - points[piece - 1]).normalized();
    LineSample sample;
    sample.place = points[piece - 1] + (along - reached[piece - 1]) * way;
    sample.along = along;
    walk.places.push_back(sample);
    walk.ways.push_back(way);
  }
  return walk;
}

bool near_segment(const Eigen::Vector2d& point, const Eigen::Vector2d& a, const Eigen::Vector2d& b,
                  double reach) {
  const Eigen::Vector2d way = b - a;
  const double length2 = way.squaredNorm();
  const double t = length2 > 0.0 ? std::clamp((point - a).dot(way) / length2, 0.0, 1.0) : 0.0;
  return (point - a - t * way).squaredNorm() < reach * reach;
}

// Whether strokes mix at a place: a corner, an end, another stretch or another line is near.
bool crowded(const Walk& walk, std::size_t index, const ReadBackOptions& options) {
  const LineSample& here = walk.places[index];
  for (double corner : walk.corners)
    if (std::abs(corner - here.along) < options.clearance) return true;
  const double near2 = options.clearance * options.clearance;
  for (const LineSample& other : walk.places) {
    double apart = std::abs(other.along - here.along);
    if (options.closed) apart = std::min(apart, walk.length - apart);
    if (apart > 2.0 * options.clearance && (other.place - here.place).squaredNorm() < near2) return true;
  }
  for (const auto& line : options.others)
    for (std::size_t i = 1; i < line.size(); ++i)
      if (near_segment(here.place, line[i - 1], line[i], options.clearance)) return true;
  return false;
}

// Finds the ridge nearest the true line in a profile from -reach to reach; false where there is none.
bool find_ridge(const std::vector<double>& profile, double reach, LineSample& sample) {
  const double peak = *std::max_element(profile.begin(), profile.end());
  if (peak < least_light) return false;
  const double step = 2.0 * reach / static_cast<double>(profile.size() - 1);
  const double base = foot * peak;
  bool found = false;
  for (std::size_t i = 0; i < profile.size();) {
    if (profile[i] <= base) {
      ++i;
      continue;
    }
    const std::size_t from = i;
    double weight = 0.0, moment = 0.0, top = 0.0;
    for (; i < profile.size() && profile[i] > base; ++i) {
      weight += profile[i] - base;
      moment += (profile[i] - base) * (static_cast<double>(i) * step - reach);
      top = std::max(top, profile[i]);
    }
    if (from == 0 || i == profile.size()) continue;  // runs out of sight: an area or a line too far off
    const double offset = moment / weight;
    if (found && std::abs(offset) >= std::abs(sample.offset)) continue;
    found = true;
    sample.offset = offset;
    sample.width = 0.0;
    for (std::size_t k = from; k < i; ++k) sample.width += profile[k] > 0.5 * top ? step : 0.0;
  }
  return found;
}

void summarise(ReadBack& result) {
  std::vector<double> away;
  double sum = 0.0, squares = 0.0;
  for (const LineSample& sample : result.samples) {
    switch (sample.state) {
      case LineSample::State::measured:
        ++result.measured;
        away.push_back(std::abs(sample.offset));
        sum += sample.offset;
        squares += sample.offset * sample.offset;
        break;
      case LineSample::State::missing:
        ++result.missing;
        break;
      case LineSample::State::skipped:
        ++result.skipped;
        break;
      case LineSample::State::unlit:
        ++result.unlit;
        break;
    }
  }
  if (away.empty()) return;
  std::sort(away.begin(), away.end());
  const auto count = static_cast<double>(away.size());
  result.mean = sum / count;
  result.rms = std::sqrt(squares / count);
  result.mm95 = away[static_cast<std::size_t>(std::ceil(0.95 * count)) - 1];
  result.worst = away.back();
}

}  // namespace

ProjectedLight::ProjectedLight(const RoomProjector& projector, const cv::Mat& frame) : projector_(projector) {
  cv::Mat light = panel_light(projector, frame);
  if (light.channels() == 3) cv::transform(light, light, cv::Matx13f(1.0f / 3.0f, 1.0f / 3.0f, 1.0f / 3.0f));
  light.convertTo(linear_, CV_32F, 1.0 / (1.0 - projector.black), -projector.black / (1.0 - projector.black));
}

double ProjectedLight::at_panel(const Eigen::Vector2d& pixel) const {
  const int reach = static_cast<int>(std::ceil(4.0 * projector_.blur + 1.0));
  const int x0 = static_cast<int>(std::lround(pixel.x())), y0 = static_cast<int>(std::lround(pixel.y()));
  double sum = 0.0;
  for (int y = std::max(y0 - reach, 0); y <= std::min(y0 + reach, linear_.rows - 1); ++y) {
    const double down = pixel_spread(projector_, y - pixel.y());
    const float* row = linear_.ptr<float>(y);
    double across = 0.0;
    for (int x = std::max(x0 - reach, 0); x <= std::min(x0 + reach, linear_.cols - 1); ++x)
      if (row[x] > 0.0f) across += pixel_spread(projector_, x - pixel.x()) * static_cast<double>(row[x]);
    sum += down * across;
  }
  return sum;
}

double ProjectedLight::at_mat(const Eigen::Vector2d& mat, double height) const {
  RoomProjector plain = projector_;
  plain.panel_from_picture.reset();
  const auto panel = projector_from_mat(plain, mat, height);
  if (!panel || panel->cwiseAbs().maxCoeff() > 1e6) return 0.0;
  return at_panel(*panel);
}

ReadBack read_back(const RoomProjector& projector, const cv::Mat& frame,
                   const std::vector<Eigen::Vector2d>& line, const ReadBackOptions& options) {
  if (!(options.spacing > 0.0) || !(options.reach > 0.0) || options.samples_per_mm < 1)
    throw std::invalid_argument("read_back: spacing, reach and samples per mm must be above zero");
  ReadBack result;
  if (line.size() < 2) return result;
  const ProjectedLight light(projector, frame);
  const Walk walk = walk_along(line, options);
  result.samples = walk.places;
  const int half = std::max(2, static_cast<int>(std::ceil(options.reach * options.samples_per_mm)));
  cv::parallel_for_(cv::Range(0, static_cast<int>(walk.places.size())), [&](const cv::Range& range) {
    std::vector<double> profile(static_cast<std::size_t>(2 * half + 1));
    for (int k = range.start; k < range.end; ++k) {
      const auto index = static_cast<std::size_t>(k);
      LineSample& sample = result.samples[index];
      const auto pixel = projector_from_mat(projector, sample.place, options.height);
      if (!pixel || pixel->x() < -0.5 || pixel->y() < -0.5 || pixel->x() > projector.width - 0.5 ||
          pixel->y() > projector.height - 0.5) {
        sample.state = LineSample::State::unlit;
        continue;
      }
      if (crowded(walk, index, options)) continue;
      const Eigen::Vector2d left(-walk.ways[index].y(), walk.ways[index].x());
      for (int i = -half; i <= half; ++i)
        profile[static_cast<std::size_t>(i + half)] =
            light.at_mat(sample.place + left * (options.reach * i / half), options.height);
      sample.state = find_ridge(profile, options.reach, sample) ? LineSample::State::measured
                                                                : LineSample::State::missing;
    }
  });
  summarise(result);
  return result;
}

ReadBack joined(const std::vector<ReadBack>& parts) {
  ReadBack whole;
  for (const ReadBack& part : parts)
    whole.samples.insert(whole.samples.end(), part.samples.begin(), part.samples.end());
  summarise(whole);
  return whole;
}

}  // namespace cowlcast::calibration::virtual_table
