#include "projector/frame/render.h"

#include <algorithm>
#include <cmath>
#include <opencv2/core.hpp>
#include <optional>
#include <utility>

#include "calibration/watch/border_marks.h"
#include "drafting/geometry/polyline.h"
#include "projector/frame/coverage.h"

namespace cowlcast::projector {
namespace {

using calibration::TableMap;

constexpr double kChord = 0.01;  // mm: how far a drawn chord may stand off the lens's curve

// The projection without the exceptions: nothing for what the lens cannot reach
// and for what lies further off than the picture is large.
class Projection {
 public:
  Projection(const TableMap& map, double cloth) : map_(map), cloth_(cloth) {
    double unreached = 16.0;  // square of a ray's slope; no projector is wider
    for (int i = 0; i < 40; ++i) {
      const double middle = 0.5 * (farthest_ + unreached);
      (map.lens.covers({std::sqrt(middle), 0.0}) ? farthest_ : unreached) = middle;
    }
    step_ = step();
  }

  std::optional<Eigen::Vector2d> pixel(const Point& mat) const {
    const Eigen::Vector3d seen = map_.projector_from_mat_frame * Eigen::Vector3d(mat.x(), mat.y(), cloth_);
    if (!(seen.z() > 0.0)) return std::nullopt;
    const Eigen::Vector2d ray = seen.head<2>() / seen.z();
    if (!(ray.squaredNorm() < farthest_)) return std::nullopt;
    const Eigen::Vector2d at =
        map_.keystone.picture_from_panel(map_.lens.pixel_from_ray(ray), {map_.width, map_.height});
    if (!(at.x() > -map_.width && at.x() < 2.0 * map_.width && at.y() > -map_.height &&
          at.y() < 2.0 * map_.height))
      return std::nullopt;
    return at;
  }

  bool in_picture(const Eigen::Vector2d& at) const {
    return at.x() >= -0.5 && at.y() >= -0.5 && at.x() <= map_.width - 0.5 && at.y() <= map_.height - 0.5;
  }

  // Longest piece of a straight line in mm that the lens bends by less than kChord.
  double longest() const { return step_; }

 private:
  double step() const {
    const double try_step = 20.0;
    double worst = 0.0;
    for (const Point& at : lit_outline(map_, cloth_, 4)) {
      for (const Point& along : {Point(1, 0), Point(0, 1), Point(0.7, 0.7), Point(0.7, -0.7)}) {
        const auto a = pixel(at), b = pixel(at + try_step * along), m = pixel(at + 0.5 * try_step * along);
        if (!a || !b || !m || (*b - *a).norm() <= 0.0) continue;
        const Eigen::Vector2d chord = *b - *a, way = *m - *a;
        const double bend = std::abs(chord.x() * way.y() - chord.y() * way.x()) / chord.norm();
        worst = std::max(worst, bend * try_step / chord.norm());
      }
    }
    return std::clamp(try_step * std::sqrt(kChord / std::max(worst, 1e-9)), 2.0, 40.0);
  }

  const TableMap& map_;
  double cloth_;
  double farthest_ = 0.0;  // rays up to this squared slope are within the lens
  double step_ = 0.0;
};

Polyline closed_up(const Polyline& line, bool closed) {
  Polyline out = line;
  if (closed && !out.empty()) out.push_back(out.front());
  return out;
}

// The line with points close enough together for the lens, cut into the runs it can reach.
struct Runs {
  std::vector<Polyline> runs;
  bool whole = true;
};
Runs reachable(const Projection& projection, const Polyline& line, bool closed) {
  Runs out;
  Polyline run;
  for (const Point& point : drafting::subdivided(closed_up(line, closed), projection.longest())) {
    if (projection.pixel(point)) {
      run.push_back(point);
      continue;
    }
    out.whole = false;
    if (run.size() > 1) out.runs.push_back(run);
    run.clear();
  }
  if (run.size() > 1) out.runs.push_back(run);
  return out;
}

void add_ring(Coverage& coverage, const Projection& projection, const Polyline& ring, Polyline& pixels) {
  pixels.clear();
  for (const Point& point : ring)
    if (const auto at = projection.pixel(point)) pixels.push_back(*at);
  if (pixels.size() > 2) coverage.add(pixels);
}

void add_mark(Coverage& coverage, const Projection& projection, const Mark& mark) {
  Polyline pixels;
  for (const Polyline& line : mark.lines) {
    if (mark.width <= 0.0) {
      add_ring(coverage, projection, drafting::subdivided(closed_up(line, true), projection.longest()),
               pixels);
      continue;
    }
    const Runs reached = reachable(projection, line, mark.closed);
    for (Polyline run : reached.runs) {
      const bool closed = mark.closed && reached.whole;
      if (closed) run.pop_back();
      for (const Polyline& ring : stroke_rings(run, {.closed = closed, .width = mark.width}))
        add_ring(coverage, projection, ring, pixels);
    }
  }
}

}  // namespace

Polyline lit_outline(const TableMap& map, double cloth, int per_side) {
  const double right = map.width - 0.5, below = map.height - 0.5;
  const Eigen::Vector2d corners[] = {{-0.5, below}, {right, below}, {right, -0.5}, {-0.5, -0.5}};
  Polyline outline;
  for (int side = 0; side < 4; ++side)
    for (int i = 0; i < per_side; ++i) {
      const double share = static_cast<double>(i) / per_side;
      outline.push_back(
          map.mat_from_projector(corners[side] + share * (corners[(side + 1) % 4] - corners[side]), cloth));
    }
  return outline;
}

void FramePainter::note_changed(const std::vector<Coverage::Span>& before) {
  constexpr int kRows = 32;  // a rectangle's height: few of them, and each close around what changed
  changed_.clear();
  for (int top = 0; top < picture_.height(); top += kRows) {
    const int below = std::min(top + kRows, picture_.height());
    Coverage::Span span;
    for (int row = top; row < below; ++row)
      for (const std::vector<Coverage::Span>* spans : {&before, &std::as_const(painted_)}) {
        const Coverage::Span& one = (*spans)[static_cast<size_t>(row)];
        if (one.from == one.to) continue;
        span = span.from == span.to
                   ? one
                   : Coverage::Span{std::min(span.from, one.from), std::max(span.to, one.to)};
      }
    if (span.from < span.to) changed_.emplace_back(span.from, top, span.to - span.from, below - top);
  }
}

const QImage& FramePainter::draw(const TableMap& map, const std::vector<Mark>& marks, double cloth,
                                 bool border) {
  constexpr QRgb kBlack = 0xff000000;
  const bool anew = picture_.width() != map.width || picture_.height() != map.height || border != border_;
  if (anew) {
    picture_ = QImage(map.width, map.height, QImage::Format_RGB32);
    picture_.fill(kBlack);
    coverage_.emplace(map.width, map.height);
    painted_.assign(static_cast<size_t>(map.height), {});
  }
  const std::vector<Coverage::Span> before = painted_;
  for (int row = 0; row < map.height; ++row) {
    Coverage::Span& span = painted_[static_cast<size_t>(row)];
    if (span.from == span.to) continue;
    auto* line = reinterpret_cast<QRgb*>(picture_.scanLine(row));
    std::fill(line + span.from, line + span.to, kBlack);
    span = {};
  }
  const Projection projection(map, cloth);
  for (const Mark& mark : marks) {
    add_mark(*coverage_, projection, mark);
    coverage_->paint(picture_, mark.colour, &painted_);
  }
  note_changed(before);
  if (anew) changed_ = {picture_.rect()};
  border_ = border;
  if (border) {
    cv::Mat pixels(picture_.height(), picture_.width(), CV_8UC4, picture_.bits(),
                   static_cast<size_t>(picture_.bytesPerLine()));
    calibration::draw_border_marks(pixels);
  }
  return picture_;
}

QImage rendered(const TableMap& map, const std::vector<Mark>& marks, double cloth) {
  FramePainter painter;
  return painter.draw(map, marks, cloth);
}

Reach reach_of(const TableMap& map, const std::vector<Polyline>& lines, double cloth) {
  const Projection projection(map, cloth);
  const Polyline lit = lit_outline(map, cloth);
  Reach reach;
  for (const Polyline& line : lines)
    for (const Point& point : drafting::subdivided(line, 5.0)) {
      const auto at = projection.pixel(point);
      if (at && projection.in_picture(*at))
        reach.any_inside = true;
      else
        reach.outside = std::max(reach.outside, drafting::distance_to_outline(lit, point));
    }
  return reach;
}

}  // namespace cowlcast::projector
