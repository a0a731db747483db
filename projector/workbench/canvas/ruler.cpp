#include "projector/workbench/canvas/ruler.h"

#include <algorithm>
#include <cmath>

namespace cowlcast::projector {
namespace {

constexpr double mm_per_inch = 25.4;

/// Divisions from the finest, mm; each is a whole number of some of those before it.
std::vector<double> divisions(Units units) {
  if (units == Units::centimetres) return {1, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000};
  std::vector<double> inches;
  for (const double part : {1.0 / 16, 1.0 / 8, 1.0 / 4, 1.0 / 2, 1.0, 2.0, 4.0, 12.0, 24.0, 48.0, 96.0})
    inches.push_back(part * mm_per_inch);
  return inches;
}

double unit_of(Units units) {
  return units == Units::inches ? mm_per_inch : 10.0;
}

bool on(double at, double division) {
  const double count = at / division;
  return std::abs(count - std::round(count)) < 1e-6;
}

}  // namespace

double snap_step(double pixels_per_mm, Units units, double least_gap) {
  const std::vector<double> all = divisions(units);
  for (const double division : all)
    if (division * pixels_per_mm >= least_gap) return division;
  return all.back();
}

std::vector<Tick> ruler_ticks(double from, double to, double pixels_per_mm, Units units, double least_gap,
                              double least_word_gap) {
  const double finest = snap_step(pixels_per_mm, units, least_gap);
  double worded = unit_of(units);
  for (const double division : divisions(units)) {
    worded = division;
    if (division >= unit_of(units) - 1e-9 && division * pixels_per_mm >= least_word_gap) break;
  }
  worded = std::max(worded, finest);
  std::vector<double> between;  // from the longest tick to the shortest
  for (const double division : divisions(units))
    if (division >= finest - 1e-9 && division < worded - 1e-9 && on(worded, division))
      between.insert(between.begin(), division);
  std::vector<Tick> ticks;
  for (double count = std::ceil(from / finest - 1e-9); count * finest <= to + 1e-9; ++count) {
    Tick tick{count * finest, 0, {}};
    if (on(tick.at, worded)) {
      tick.words = std::to_string(std::llround(tick.at / unit_of(units)));
    } else {
      tick.rank = 1;
      while (static_cast<size_t>(tick.rank) < between.size() && !on(tick.at, between[tick.rank - 1]))
        ++tick.rank;
    }
    ticks.push_back(tick);
  }
  return ticks;
}

}  // namespace cowlcast::projector
