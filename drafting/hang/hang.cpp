#include "drafting/hang/hang.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>

#include "drafting/piece/assemble.h"
#include "drafting/refusal.h"

namespace cowlcast::drafting {
namespace {

constexpr double longest = 5000.0;  // mm

/// u = span / 2a from sinh(u) / u = ratio, for ratio > 1; Newton on the logarithm.
double half_angle(double ratio) {
  double u =
      ratio < 3.0 ? std::sqrt(6.0 * (ratio - 1.0)) : std::log(2.0 * ratio) + std::log(std::log(2.0 * ratio));
  for (int i = 0; i < 60; ++i) {
    const double value = std::log(std::sinh(u) / u) - std::log(ratio);
    const double slope = 1.0 / std::tanh(u) - 1.0 / u;
    const double step = value / slope;
    u -= step;
    if (std::abs(step) < 1e-15 * u) break;
  }
  return u;
}

void check_span(double span) {
  if (!(span > 0.0) || span > longest) {
    throw Refusal("The neck points' distance must be above 0 and at most 5000 mm. Check the base.");
  }
}

std::string line(double x1, double y1, double x2, double y2, const char* more) {
  char text[200];
  std::snprintf(text, sizeof text, "<line x1=\"%.2f\" y1=\"%.2f\" x2=\"%.2f\" y2=\"%.2f\" %s/>\n", x1, y1, x2,
                y2, more);
  return text;
}

}  // namespace

double hang_depth(double span, double length) {
  check_span(span);
  if (!(length > span) || length > longest) {
    throw Refusal("A cowl " + mm_in_words(length) + " long cannot hang between neck points " +
                  mm_in_words(span) + " apart. Make it longer than " + mm_in_words(span) + ".");
  }
  const double u = half_angle(length / span), a = 0.5 * span / u;
  // cosh(u) - 1 = 2 sinh²(u / 2), without loss of digits for shallow hangs.
  return 2.0 * a * std::sinh(0.5 * u) * std::sinh(0.5 * u);
}

double drape_for_depth(double span, double depth) {
  check_span(span);
  if (!(depth > 0.0) || depth > 0.5 * longest) {
    throw Refusal(
        "A cowl must hang more than 0 and less than 2500 mm deep. Measure from the neck point's height down "
        "to where its lowest point should be.");
  }
  // depth grows with the length; between span and span + 2 depth.
  double low = span, high = span + 2.0 * depth;
  double length = std::sqrt(span * span + 16.0 / 3.0 * depth * depth);  // shallow parabola
  for (int i = 0; i < 100; ++i) {
    if (!(length > low && length < high)) length = 0.5 * (low + high);
    const double u = half_angle(length / span), a = 0.5 * span / u;
    const double miss = 2.0 * a * std::sinh(0.5 * u) * std::sinh(0.5 * u) - depth;
    (miss < 0.0 ? low : high) = length;
    // d depth / d length along the family, by the chain rule in u.
    const double depth_u = 0.5 * span * (std::sinh(u) / u - (std::cosh(u) - 1.0) / (u * u));
    const double length_u = span * (std::cosh(u) / u - std::sinh(u) / (u * u));
    const double next = length - miss * length_u / depth_u;
    if (std::abs(next - length) < 1e-13 * length) return next;
    length = next;
  }
  return length;
}

HangLevels hang_levels(const BodyMeasures& measures) {
  return {measures.neck_girth / 5.0, measures.bust_girth / 8.0 + 95.0, measures.back_waist_length + 20.0};
}

std::string depth_in_words(double depth, const HangLevels& levels) {
  constexpr double near = 5.0;  // mm: a chain tells no finer of cloth
  const std::array<std::pair<double, const char*>, 3> marks = {
      {{levels.collar_bone, "collar bone"}, {levels.underarm, "underarm"}, {levels.waist, "waist"}}};
  const auto nearest = std::min_element(marks.begin(), marks.end(), [&](const auto& a, const auto& b) {
    return std::abs(a.first - depth) < std::abs(b.first - depth);
  });
  const double below = depth - nearest->first;
  if (std::abs(below) < near) return std::string("at the ") + nearest->second;
  return mm_in_words(std::abs(below)) + (below > 0.0 ? " below the " : " above the ") + nearest->second;
}

Polyline hang_line(double span, double length) {
  const double depth = hang_depth(span, length);
  const double a = 0.5 * span / half_angle(length / span);
  Polyline line;
  for (int i = 0; i <= 100; ++i) {
    const double x = span * (i / 100.0 - 0.5);
    // Height above the lowest place: a (cosh(x / a) - 1).
    const double half = std::sinh(0.5 * x / a);
    line.emplace_back(x, 2.0 * a * half * half - depth);
  }
  return line;
}

std::string hang_to_svg(double span, double length, const HangLevels& levels) {
  const double depth = hang_depth(span, length);
  const double width = std::max(span + 120.0, 320.0), height = std::max(depth, levels.waist) + 60.0;
  const double middle = 0.5 * width, top = 30.0;
  char text[300];
  std::snprintf(
      text, sizeof text,
      "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%.1fmm\" height=\"%.1fmm\" viewBox=\"0 0 %.1f "
      "%.1f\">\n"
      "<title>The hang from the front, true size in millimetres</title>\n<g fill=\"none\" stroke=\"#000000\" "
      "stroke-width=\"0.5\">\n",
      width, height, width, height);
  std::string svg = text;
  svg += "<path id=\"cowl-edge\" stroke-width=\"1\" d=\"";
  for (const Point& p : hang_line(span, length)) {
    std::snprintf(text, sizeof text, "%s%.3f %.3f", svg.back() == '"' ? "M" : " L", middle + p.x(),
                  top - p.y());
    svg += text;
  }
  svg += "\"/>\n" + line(middle, top, middle, top + depth, "id=\"depth\"");
  const std::array<std::pair<double, const char*>, 3> marks = {
      {{levels.collar_bone, "collar bone"}, {levels.underarm, "underarm"}, {levels.waist, "waist"}}};
  for (const auto& mark : marks)
    svg += line(10, top + mark.first, width - 10, top + mark.first, "stroke-dasharray=\"4 3\"");
  svg += "</g>\n<g font-family=\"sans-serif\" font-size=\"7\">\n";
  for (const auto& mark : marks) {
    std::snprintf(text, sizeof text, "<text x=\"10\" y=\"%.2f\">%s</text>\n", top + mark.first - 2.0,
                  mark.second);
    svg += text;
  }
  std::snprintf(text, sizeof text,
                "<text text-anchor=\"middle\" x=\"%.2f\" y=\"%.2f\">hangs %.0f mm deep, %s</text>\n", middle,
                top + depth + 12.0, depth, depth_in_words(depth, levels).c_str());
  return svg + text + "</g>\n</svg>\n";
}

}  // namespace cowlcast::drafting
