#include "projector/table/check_light.h"

#include <cmath>
#include <string>

#include "projector/frame/render.h"
#include "projector/frame/writing.h"

namespace cowlcast::projector {
namespace {

constexpr double kMmPerInch = 25.4;

// Lines of light: squares of 1 cm, every tenth brighter; or of 1 in, every sixth.
void add_grid(std::vector<Mark>& marks, const Polyline& lit, bool inches) {
  const double step = inches ? kMmPerInch : 10.0;
  const int heavy = inches ? 6 : 10;
  Point low = lit.front(), high = lit.front();
  for (const Point& p : lit) {
    low = low.cwiseMin(p);
    high = high.cwiseMax(p);
  }
  Mark fine{.lines = {}, .closed = false, .width = 0.6, .colour = 0xff404040}, bold = fine;
  bold.width = 0.9;
  bold.colour = 0xff8a8a8a;
  for (int axis = 0; axis < 2; ++axis) {
    const int from = static_cast<int>(std::ceil(low[axis] / step)), to = static_cast<int>(high[axis] / step);
    for (int k = from; k <= to; ++k) {
      Point a = low, b = high;
      a[axis] = b[axis] = k * step;
      Polyline line;  // in pieces, since light bends
      for (int i = 0; i <= 24; ++i) line.push_back(a + (b - a) * (i / 24.0));
      (k % heavy == 0 ? bold : fine).lines.push_back(line);
    }
  }
  marks.push_back(fine);
  marks.push_back(bold);
}

std::vector<Mark> figure_marks(const calibration::TableMap& map, const calibration::CheckFigure& figure,
                               const CheckLight& light) {
  std::vector<Mark> marks;
  if (light.grid != CheckGrid::none) add_grid(marks, lit_outline(map, 0.0), light.grid == CheckGrid::inches);
  constexpr double kArm = 20.0;  // mm
  Mark crosses{.lines = {}, .closed = false, .width = 0.8, .colour = 0xffffffff};
  for (const calibration::CheckCross& cross : figure.crosses) {
    if (light.quick && cross.name != 'A' && cross.name != 'C') continue;
    const Point right(kArm, 0.0), up(0.0, kArm);
    crosses.lines.push_back({cross.mat - right, cross.mat, cross.mat + right});
    crosses.lines.push_back({cross.mat - up, cross.mat, cross.mat + up});
    marks.push_back(writing(figure.label(cross.name), cross.mat + Point(kArm, -kArm), 14.0, 0xffffd24a));
  }
  if (!light.quick) {
    const Point p = figure.at('P'), q = figure.at('Q'), r = figure.at('R'), s = figure.at('S');
    marks.push_back({.lines = {{p, q, r, s}}, .closed = true, .width = 0.8, .colour = 0xffffffff});
    marks.push_back({.lines = {{p, r}, {q, s}}, .closed = false, .width = 0.8, .colour = 0xffffffff});
  }
  marks.push_back(crosses);
  return marks;
}

}  // namespace

calibration::CheckFigure check_light_figure(const calibration::TableMap& map, CheckGrid grid) {
  return calibration::check_figure(map, grid == CheckGrid::inches ? 2.0 * kMmPerInch : 50.0);
}

QImage check_light(const calibration::TableMap& map, const calibration::CheckFigure& figure,
                   const CheckLight& light) {
  return rendered(map, figure_marks(map, figure, light), 0.0);
}

std::vector<std::pair<char, char>> distances_to_measure(bool quick) {
  if (quick) return {{'A', 'C'}};
  return {{'A', 'C'}, {'B', 'D'}, {'A', 'B'}, {'B', 'C'}, {'P', 'Q'}, {'P', 'R'}};
}

}  // namespace cowlcast::projector
