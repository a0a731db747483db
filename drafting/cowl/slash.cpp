#include "drafting/cowl/slash.h"

#include <algorithm>
#include <cmath>

#include "drafting/geometry/polyline.h"
#include "drafting/piece/assemble.h"
#include "drafting/refusal.h"

namespace cowlcast::drafting {
namespace {

constexpr double below_underarm = 30.0;   // mm: where the last slash starts
constexpr double least_spacing = 12.0;    // mm between starts on the centre front
constexpr double least_clearance = 6.0;   // mm between neckline and first slash line
constexpr double least_above_hem = 40.0;  // mm
constexpr double off_the_edge = 10.0;     // mm: a hand-drawn end so near is brought onto its edge
constexpr int curve_steps = 16;
constexpr double squared_lead = 6.0;  // mm

double underarm_height(const LoweredBase& lowered) {
  return lowered.rim.front().y();
}

/// The highest start on the centre front from which a straight line to `hinge`
/// passes the neckline with some paper between.
double clear_of_neckline(const LoweredBase& lowered, const Point& hinge) {
  double highest = lowered.centre_top().y();
  for (const Point& p : lowered.neckline) {
    if (p.x() >= hinge.x() - 1.0) continue;
    const double low = p.y() - least_clearance;
    highest = std::min(highest, hinge.y() - (hinge.y() - low) * hinge.x() / (hinge.x() - p.x()));
  }
  return highest;
}

/// A smooth curve, square to the centre front at `start`; at the shoulder square to
/// it, at the armhole running straight out.
Polyline squared_line(const LoweredBase& lowered, const Point& start, const Point& hinge, double along) {
  const double lead =
      std::min(squared_lead, 0.05 * (hinge - start).norm());  // straight, to be seen as square
  const double reach = 0.4 * (hinge - start).norm();
  const Point leaves = start + Point(lead, 0.0);
  const Point first = start + Point(std::min(reach, 0.8 * hinge.x()), 0.0);
  Point out = (hinge - first).normalized();
  if (along > lowered.armhole_length) {
    const double total = length(lowered.rim);
    const Point way = point_at(lowered.rim, std::min(along + 1.0, total)) -
                      point_at(lowered.rim, std::max(along - 1.0, lowered.armhole_length));
    out = Point(way.y(), -way.x()).normalized();
  }
  const Point arrives = hinge - lead * out, second = hinge - reach * out;
  Polyline line{start};
  for (int i = 0; i <= curve_steps; ++i) {
    const double t = static_cast<double>(i) / curve_steps, u = 1.0 - t;
    line.push_back(u * u * u * leaves + 3.0 * u * u * t * first + 3.0 * u * t * t * second +
                   t * t * t * arrives);
  }
  line.push_back(hinge);
  return line;
}

Slash slash_between(const LoweredBase& lowered, const Point& start, double along, SlashForm form) {
  Slash slash;
  slash.start = start;
  slash.along_rim = along;
  slash.hinge = point_at(lowered.rim, along);
  slash.line = form == SlashForm::straight ? Polyline{start, slash.hinge}
                                           : squared_line(lowered, start, slash.hinge, along);
  return slash;
}

}  // namespace

LoweredBase lower_neckline(const Piece& base, double drop) {
  LoweredBase lowered;
  lowered.neckline = edge_of(base, "neckline").points;
  lowered.hem = edge_of(base, "hem").points;
  lowered.side_seam = edge_of(base, "side-seam").points;
  const Polyline& armhole = edge_of(base, "armhole").points;
  lowered.rim = armhole;
  append(lowered.rim, edge_of(base, "shoulder").points);
  lowered.armhole_length = length(armhole);
  for (const Notch& notch : base.notches) {
    if (notch.name == "armhole") lowered.notch = nearest(armhole, notch.seam).along;
  }
  const Point neck = lowered.neck_point(), centre = lowered.centre_top();
  const double room = centre.y() - lowered.centre_hem().y() - least_above_hem - 3.0 * least_spacing;
  if (!std::isfinite(drop) || drop < 0.0 || drop > room) {
    throw Refusal("The neckline drop must be between 0 mm and " +
                  mm_in_words(std::floor(std::max(room, 0.0))) +
                  " for this base. Give a drop in between; 40 to 100 mm suits most cowls.");
  }
  const double depth = neck.y() - centre.y();
  for (Point& p : lowered.neckline) {
    const double share = depth > 20.0 ? (neck.y() - p.y()) / depth : std::pow(1.0 - p.x() / neck.x(), 2.0);
    p.y() -= drop * share;
  }
  lowered.neckline.front() = neck;
  lowered.neckline.back() = {0.0, centre.y() - drop};
  return lowered;
}

std::vector<Slash> default_slashes(const LoweredBase& lowered, int count, SlashForm form) {
  if (count < 1 || count > 6) {
    throw Refusal("There can be 1 to 6 slash lines; " + std::to_string(count) +
                  " were asked for. Three suit most cowls.");
  }
  const double shoulder = length(lowered.rim) - lowered.armhole_length;
  const double top = lowered.centre_top().y(), bottom = lowered.centre_hem().y() + least_above_hem;
  const double first_along = count == 1 ? lowered.notch.value_or(0.5 * lowered.armhole_length)
                                        : lowered.armhole_length + shoulder * (count - 1) / count;
  double last = underarm_height(lowered) - below_underarm;
  double first = top + (last - top) / count;
  first =
      std::min({first, top - least_spacing, clear_of_neckline(lowered, point_at(lowered.rim, first_along))});
  last = std::min(last, first - (count - 1) * least_spacing);
  if (count == 1) last = first;
  if (last < bottom) {
    throw Refusal("The neckline is lowered so far that " + std::to_string(count) +
                  " slash lines find no room above the hem. Lower it less, or use fewer slash lines.");
  }
  std::vector<Slash> slashes;
  for (int i = 0; i < count; ++i) {
    const bool lowest = i + 1 == count;
    const double along = lowest ? lowered.notch.value_or(0.5 * lowered.armhole_length)
                                : lowered.armhole_length + shoulder * (count - 1 - i) / count;
    const Point start(0.0, count == 1 ? first : first + (last - first) * i / (count - 1));
    slashes.push_back(slash_between(lowered, start, along, form));
  }
  return slashes;
}

Slash slash_at(const LoweredBase& lowered, double below, const std::string& seam, double share,
               SlashForm form) {
  const double room = lowered.centre_top().y() - lowered.centre_hem().y() - least_above_hem;
  if (!(below > 0.0) || below > room) {
    throw Refusal("A slash line must start between 1 mm and " + mm_in_words(std::floor(room)) +
                  " below the lowered neckline. Move its start along the centre front.");
  }
  if ((seam != "shoulder" && seam != "armhole") || !(share > 0.0) || !(share < 1.0)) {
    throw Refusal(
        "A slash line must end on the shoulder or the armhole, between its two ends. Move its hinge.");
  }
  const double total = length(lowered.rim);
  const double along = seam == "shoulder" ? total - share * (total - lowered.armhole_length)
                                          : (1.0 - share) * lowered.armhole_length;
  return slash_between(lowered, lowered.centre_top() - Point(0.0, below), along, form);
}

Slash slash_along(const LoweredBase& lowered, const Polyline& line) {
  const auto is_number = [](const Point& p) { return p.allFinite(); };
  if (line.size() < 2 || !std::all_of(line.begin(), line.end(), is_number))
    throw Refusal(
        "A slash line has no length. Draw it from the centre front to the shoulder or the armhole.");
  const Foot foot = nearest(lowered.rim, line.back());
  const double top = lowered.centre_top().y(), bottom = lowered.centre_hem().y() + least_above_hem;
  const Point& begin = line.front();
  if (std::abs(begin.x()) > off_the_edge || begin.y() >= top || begin.y() <= bottom) {
    throw Refusal("A slash line starts " + place_in_words(begin) +
                  ", which is not on the centre front below the lowered neckline. Move its start there.");
  }
  if (foot.distance > off_the_edge || foot.along <= 0.0 || foot.along >= length(lowered.rim)) {
    throw Refusal("A slash line ends " + mm_in_words(foot.distance) +
                  " from the shoulder and the armhole. Move its hinge onto one of them.");
  }
  Slash slash{{0.0, begin.y()}, point_at(lowered.rim, foot.along), foot.along, line};
  slash.line.front() = slash.start;
  slash.line.back() = slash.hinge;
  for (size_t i = 1; i < line.size(); ++i) {
    const double before = (slash.line[i - 1] - slash.hinge).norm(),
                 after = (slash.line[i] - slash.hinge).norm();
    if (after >= before) {
      throw Refusal("A slash line turns away from its hinge " + place_in_words(slash.line[i]) +
                    ", so that opened parts would lie on each other. Draw it so that it comes nearer to the "
                    "hinge all the way.");
    }
  }
  return slash;
}

std::vector<Polyline> parts_of(const LoweredBase& lowered, const std::vector<Slash>& slashes) {
  const size_t n = slashes.size();
  const double total = length(lowered.rim);
  std::vector<Polyline> parts(n + 1);
  for (size_t k = 0; k <= n; ++k) {
    Polyline& part = parts[k];
    const double low = k == n ? 0.0 : slashes[k].along_rim;
    const double high = k == 0 ? total : slashes[k - 1].along_rim;
    const bool starts_fall = k == 0 || k == n || slashes[k].start.y() < slashes[k - 1].start.y();
    if (!(low < high) || !starts_fall) {
      throw Refusal(
          "The slash lines cross: their hinges must follow each other down shoulder and armhole in the "
          "same order as their starts down the centre front. Move them apart.");
    }
    part.push_back(k == 0 ? lowered.centre_top() : slashes[k - 1].start);
    if (k < n) {
      append(part, slashes[k].line);
    } else {
      append(part, lowered.hem);
      append(part, lowered.side_seam);
    }
    append(part, between(lowered.rim, low, high));
    if (k == 0) {
      append(part, lowered.neckline);
      part.pop_back();
    } else {
      append(part, reversed(slashes[k - 1].line));
      part.pop_back();
    }
    if (const auto place = self_crossing(part)) {
      throw Refusal("A slash line leaves the front or crosses another edge " + place_in_words(*place) +
                    ". Start the slash lines lower on the centre front, or lower the neckline less.");
    }
  }
  return parts;
}

}  // namespace cowlcast::drafting
