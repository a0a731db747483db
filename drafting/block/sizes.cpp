#include "drafting/block/sizes.h"

#include <algorithm>

#include "drafting/refusal.h"

namespace cowlcast::drafting {
namespace {

constexpr double inch = 25.4;

}  // namespace

const std::vector<StandardSize>& standard_sizes() {
  // ASTM D5585-11e1, Table 1.
  static const std::vector<StandardSize> sizes = {
      {"00", 31.125 * inch, 13.25 * inch}, {"0", 31.75 * inch, 13.5 * inch},
      {"2", 33.0 * inch, 13.75 * inch},    {"4", 34.125 * inch, 14.0 * inch},
      {"6", 35.25 * inch, 14.25 * inch},   {"8", 36.25 * inch, 14.625 * inch},
      {"10", 37.25 * inch, 14.875 * inch}, {"12", 38.75 * inch, 15.125 * inch},
      {"14", 40.375 * inch, 15.5 * inch},  {"16", 42.125 * inch, 15.75 * inch},
      {"18", 44.0 * inch, 16.0 * inch},    {"20", 46.0 * inch, 16.375 * inch}};
  return sizes;
}

BodyMeasures measures_for_bust(double bust_girth) {
  const auto& sizes = standard_sizes();
  size_t upper = 1;
  while (upper + 1 < sizes.size() && sizes[upper].bust < bust_girth) ++upper;
  const StandardSize &low = sizes[upper - 1], &high = sizes[upper];
  const double share = (bust_girth - low.bust) / (high.bust - low.bust);
  // In the demo wearer's proportions; frames grow less than girths.
  const BodyMeasures demo = demo_measures();
  const double more = bust_girth - demo.bust_girth;
  BodyMeasures m = demo;
  m.bust_girth = bust_girth;
  m.neck_girth = low.neck + share * (high.neck - low.neck);
  m.waist_girth = bust_girth * demo.waist_girth / demo.bust_girth;
  m.hip_girth = bust_girth * demo.hip_girth / demo.bust_girth;
  m.shoulder_length = demo.shoulder_length + 0.03 * more;
  m.back_waist_length = demo.back_waist_length + 0.08 * more;
  return m;
}

BodyMeasures measures_of_size(const std::string& name) {
  std::string known;
  for (const StandardSize& size : standard_sizes()) {
    if (size.name == name) {
      BodyMeasures m = measures_for_bust(size.bust);
      m.neck_girth = size.neck;
      return m;
    }
    known += (known.empty() ? "" : ", ") + size.name;
  }
  throw Refusal("There is no size \"" + name + "\". The sizes are " + known +
                " (ASTM D5585-11e1). Give one of them, or the body's own measures.");
}

}  // namespace cowlcast::drafting
