#include "drafting/intake/svg_path.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "drafting/geometry/curves.h"
#include "drafting/intake/svg_scan.h"
#include "drafting/refusal.h"

namespace cowlcast::drafting {
namespace {

class PathReader {
 public:
  PathReader(std::string_view data, const Eigen::Affine2d& mm_from_user)
      : scan_(data), mm_from_user_(mm_from_user) {}

  std::vector<Polyline> read() {
    scan_.skip_space();
    while (!scan_.at_end()) {
      const char command = scan_.take();
      if (lines_.empty() && command != 'M' && command != 'm') refuse("a path must begin with M");
      run(command);
      scan_.skip_space();
    }
    std::erase_if(lines_, [](const Polyline& line) { return line.size() < 2; });
    return std::move(lines_);
  }

 private:
  [[noreturn]] void refuse(const std::string& what) const {
    throw Refusal("the path data goes wrong at character " + std::to_string(scan_.place()) + ": " + what);
  }

  double number() {
    double value = 0.0;
    scan_.skip_separator();
    if (!scan_.number(value)) refuse("a number is missing or too large");
    return value;
  }

  bool flag() {
    bool value = false;
    scan_.skip_separator();
    if (!scan_.flag(value)) refuse("an arc flag must be 0 or 1");
    return value;
  }

  Point pair(bool relative) {
    const double x = number(), y = number();
    return relative ? Point(current_ + Point(x, y)) : Point(x, y);
  }

  bool more() {
    scan_.skip_space();
    if (scan_.peek() != ',') return scan_.at_number();
    scan_.skip_separator();
    if (!scan_.at_number()) refuse("a number is missing after a comma");
    return true;
  }

  Polyline& line() {
    if (closed_) {  // after Z the next command draws on from the start of that subpath
      lines_.push_back({mm_from_user_ * start_});
      closed_ = false;
    }
    return lines_.back();
  }

  void line_to(const Point& end) {
    line().push_back(mm_from_user_ * end);
    current_ = end;
  }

  void arc_to(double rx, double ry, double turn, bool large, bool sweep, const Point& end);

  void run(char command) {
    const bool relative = command >= 'a';
    const char kind = relative ? static_cast<char>(command - 'a' + 'A') : command;
    if (kind == 'Z') {
      if (!closed_) {
        Polyline& open = lines_.back();
        if ((open.front() - open.back()).norm() > 0.0) open.push_back(open.front());
        closed_ = true;
      }
      current_ = start_;
      last_kind_ = 'Z';
      return;
    }
    if (std::string_view("MLHVCSQTA").find(kind) == std::string_view::npos) {
      refuse(std::string("\"") + command + "\" is no path command");
    }
    bool first = true;
    do {
      step(kind, relative, first);
      last_kind_ = kind == 'M' && !first ? 'L' : kind;
      first = false;
    } while (more());
  }

  void step(char kind, bool relative, bool first) {
    const auto mm = [&](const Point& p) -> Point { return mm_from_user_ * p; };
    switch (kind) {
      case 'M': {
        const Point to = pair(relative);
        if (first) {
          lines_.push_back({mm(to)});
          start_ = current_ = to;
          closed_ = false;
        } else {
          line_to(to);
        }
        break;
      }
      case 'L':
        line_to(pair(relative));
        break;
      case 'H': {
        const double x = number();
        line_to({relative ? current_.x() + x : x, current_.y()});
        break;
      }
      case 'V': {
        const double y = number();
        line_to({current_.x(), relative ? current_.y() + y : y});
        break;
      }
      case 'C':
      case 'S': {
        const bool smooth = last_kind_ == 'C' || last_kind_ == 'S';
        const Point control_1 =
            kind == 'C' ? pair(relative) : (smooth ? Point(2.0 * current_ - control_) : current_);
        control_ = pair(relative);
        const Point end = pair(relative);
        add_cubic(line(), mm(control_1), mm(control_), mm(end));
        current_ = end;
        break;
      }
      case 'Q':
      case 'T': {
        const bool smooth = last_kind_ == 'Q' || last_kind_ == 'T';
        control_ = kind == 'Q' ? pair(relative) : (smooth ? Point(2.0 * current_ - control_) : current_);
        const Point end = pair(relative);
        add_quadratic(line(), mm(control_), mm(end));
        current_ = end;
        break;
      }
      default: {
        const double rx = number(), ry = number(), turn = number();
        const bool large = flag(), sweep = flag();
        arc_to(rx, ry, turn * std::numbers::pi / 180.0, large, sweep, pair(relative));
      }
    }
  }

  Scanner scan_;
  Eigen::Affine2d mm_from_user_;
  std::vector<Polyline> lines_;
  Point current_ = Point::Zero(), start_ = Point::Zero(), control_ = Point::Zero();
  char last_kind_ = 'M';
  bool closed_ = false;
};

// W3C SVG 1.1, F.6.5: from end points to centre; F.6.6: radii too small grow.
void PathReader::arc_to(double rx, double ry, double turn, bool large, bool sweep, const Point& end) {
  rx = std::abs(rx);
  ry = std::abs(ry);
  if (end == current_) return;
  if (rx == 0.0 || ry == 0.0) return line_to(end);
  const Eigen::Rotation2Dd user_from_ellipse(turn);
  Point half = user_from_ellipse.inverse() * Point(0.5 * (current_ - end));
  const double stretch = half.cwiseQuotient(Point(rx, ry)).squaredNorm();
  if (stretch > 1.0) {
    rx *= std::sqrt(stretch);
    ry *= std::sqrt(stretch);
  }
  const Point unit = half.cwiseQuotient(Point(rx, ry));  // the chord's half on the unit circle
  const double squared = unit.squaredNorm();
  const double away = std::sqrt(std::max(0.0, (1.0 - squared) / squared)) * (large == sweep ? -1.0 : 1.0);
  const Point unit_centre = away * Point(unit.y(), -unit.x());
  const Point from = unit - unit_centre, to = -unit - unit_centre;
  const double first = std::atan2(from.y(), from.x());
  double angle = std::atan2(to.y(), to.x()) - first;
  if (sweep && angle < 0.0) angle += 2.0 * std::numbers::pi;
  if (!sweep && angle > 0.0) angle -= 2.0 * std::numbers::pi;
  const Point centre = user_from_ellipse * unit_centre.cwiseProduct(Point(rx, ry)) + 0.5 * (current_ + end);
  const Point axis_1 = user_from_ellipse * Point(rx, 0.0), axis_2 = user_from_ellipse * Point(0.0, ry);
  const Eigen::Matrix2d linear = mm_from_user_.linear();
  Polyline& target = line();
  add_ellipse_arc(target, mm_from_user_ * centre, linear * axis_1, linear * axis_2, first, first + angle);
  target.back() = mm_from_user_ * end;
  current_ = end;
}

}  // namespace

std::vector<Polyline> polylines_from_path(std::string_view data, const Eigen::Affine2d& mm_from_user) {
  return PathReader(data, mm_from_user).read();
}

Eigen::Affine2d transform_from_text(std::string_view text) {
  Eigen::Affine2d result = Eigen::Affine2d::Identity();
  Scanner scan(text);
  const auto refuse = [&]() {
    throw Refusal("the transform \"" + std::string(text) + "\" is not one that SVG knows");
  };
  for (scan.skip_separator(); !scan.at_end(); scan.skip_separator()) {
    const std::string name = scan.word();
    std::vector<double> v;
    scan.skip_space();
    if (name.empty() || scan.at_end() || scan.take() != '(') refuse();
    for (scan.skip_space(); scan.at_number(); scan.skip_separator()) {
      double value = 0.0;
      if (!scan.number(value)) refuse();
      v.push_back(value);
    }
    if (scan.at_end() || scan.take() != ')') refuse();
    const double degree = std::numbers::pi / 180.0;
    Eigen::Affine2d next = Eigen::Affine2d::Identity();
    if (name == "matrix" && v.size() == 6) {
      next.matrix() << v[0], v[2], v[4], v[1], v[3], v[5], 0, 0, 1;
    } else if (name == "translate" && (v.size() == 1 || v.size() == 2)) {
      next.translate(Point(v[0], v.size() == 2 ? v[1] : 0.0));
    } else if (name == "scale" && (v.size() == 1 || v.size() == 2)) {
      next.scale(Point(v[0], v.size() == 2 ? v[1] : v[0]));
    } else if (name == "rotate" && (v.size() == 1 || v.size() == 3)) {
      const Point centre = v.size() == 3 ? Point(v[1], v[2]) : Point(0, 0);
      next.translate(centre).rotate(v[0] * degree).translate(Point(-centre));
    } else if (name == "skewX" && v.size() == 1) {
      next.matrix()(0, 1) = std::tan(v[0] * degree);
    } else if (name == "skewY" && v.size() == 1) {
      next.matrix()(1, 0) = std::tan(v[0] * degree);
    } else {
      refuse();
    }
    result = result * next;
  }
  return result;
}

}  // namespace cowlcast::drafting
