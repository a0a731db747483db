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

std::vector<Slash> default_slashes(const LoweredBase& lowered, int count) {
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
    Slash slash;
    slash.along_rim = along;
    slash.hinge = point_at(lowered.rim, along);
    slash.start = {0.0, count == 1 ? first : first + (last - first) * i / (count - 1)};
    slashes.push_back(slash);
  }
  return slashes;
}

Slash slash_at(const LoweredBase& lowered, double below, const std::string& seam, double share) {
  const double room = lowered.centre_top().y() - lowered.centre_hem().y() - least_above_hem;
  if (!(below > 0.0) || below > room) {
    throw Refusal("A slash line must start between 1 mm and " + mm_in_words(std::floor(room)) +
                  " below the lowered neckline. Move its start along the centre front.");
  }
  if ((seam != "shoulder" && seam != "armhole") || !(share > 0.0) || !(share < 1.0)) {
    throw Refusal(
        "A slash line must end on the shoulder or the armhole, between its two ends. Move its hinge.");
  }
  Slash slash;
  const double total = length(lowered.rim);
  slash.along_rim = seam == "shoulder" ? total - share * (total - lowered.armhole_length)
                                       : (1.0 - share) * lowered.armhole_length;
  slash.hinge = point_at(lowered.rim, slash.along_rim);
  slash.start = lowered.centre_top() - Point(0.0, below);
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
      part.push_back(slashes[k].start);
    } else {
      append(part, lowered.hem);
      append(part, lowered.side_seam);
    }
    append(part, between(lowered.rim, low, high));
    if (k == 0) {
      append(part, lowered.neckline);
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
