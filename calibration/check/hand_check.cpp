#include "calibration/check/hand_check.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>

#include "calibration/refusal.h"
#include "calibration/words.h"

namespace cowlcast::calibration {
namespace {

constexpr double kRayleigh95 = 2.4477;     // 95 % radius over sigma, two coordinates
constexpr double kNormal95 = 1.96;         // the same along a line
constexpr double kInset = 0.95;            // of the way out to the light's border
constexpr double kLeastScaleSigma = 1e-5;  // relative: no scale is known better
constexpr double kContradicts = 4.0;       // standard deviations
constexpr double kSameReading = 0.05;      // mm: a tape is read no finer

bool inside(const std::vector<Eigen::Vector2d>& outline, const Eigen::Vector2d& p) {
  bool in = false;
  for (size_t i = 0, j = outline.size() - 1; i < outline.size(); j = i++) {
    const Eigen::Vector2d &a = outline[i], &b = outline[j];
    if ((a.y() > p.y()) != (b.y() > p.y()) &&
        p.x() < (b.x() - a.x()) * (p.y() - a.y()) / (b.y() - a.y()) + a.x())
      in = !in;
  }
  return in;
}

Eigen::Vector2d middle_of(const std::vector<Eigen::Vector2d>& outline) {
  Eigen::Vector2d sum = Eigen::Vector2d::Zero();
  for (const Eigen::Vector2d& p : outline) sum += p / static_cast<double>(outline.size());
  return sum;
}

// What the scale's uncertainty alone makes of the 95 % radius at a point.
double scale95(const TableMap& map, double sigma, const Eigen::Vector2d& mat) {
  return kRayleigh95 * std::sqrt(0.5) * sigma * (mat - middle_of(map.lit_area)).norm();
}

// The rest of it.
double shape95(const TableMap& map, const Eigen::Vector2d& mat) {
  const double all = map.error_at(mat), scale = scale95(map, map.scale.relative_sigma, mat);
  return std::sqrt(std::max(all * all - scale * scale, 0.04 * all * all));
}

bool same_pair(const HandReading& a, const HandReading& b) {
  return std::minmax(a.from, a.to) == std::minmax(b.from, b.to);
}

// The last reading between two crosses counts.
bool is_last_of_pair(const std::vector<CheckedReading>& checked, const CheckedReading& which) {
  return std::none_of(checked.begin() + (&which - checked.data()) + 1, checked.end(),
                      [&](const CheckedReading& later) { return same_pair(later.reading, which.reading); });
}

// What a tape says of the scale.
struct Ratio {
  double log, sigma;
  const CheckedReading* from;
  double weight;  // of the readings between the same two crosses each has its share
};

std::vector<Ratio> ratios_of(const TableMap& map, const CheckFigure& figure,
                             const std::vector<CheckedReading>& checked) {
  std::vector<Ratio> out;
  for (const CheckedReading& c : checked) {
    const double ends =
        std::hypot(shape95(map, figure.at(c.reading.from)), shape95(map, figure.at(c.reading.to))) /
        kRayleigh95;
    const auto of_pair = std::count_if(checked.begin(), checked.end(), [&](const CheckedReading& other) {
      return same_pair(other.reading, c.reading);
    });
    const double sigma = std::hypot(c.reading.sigma, ends) / c.drawn;
    out.push_back(
        {std::log(c.reading.mm / c.drawn), sigma, &c, 1.0 / (sigma * sigma * static_cast<double>(of_pair))});
  }
  return out;
}

// What reading and map may differ by. The ends may err against each other: their errors are added up.
double allowed_between(const TableMap& map, const Eigen::Vector2d& from, const Eigen::Vector2d& to,
                       double reading_sigma) {
  const double ends = kNormal95 / kRayleigh95 * (map.error_at(from) + map.error_at(to));
  return std::hypot(kNormal95 * reading_sigma, ends);
}

void refuse_left_off(const RefinedScale& refined, const CheckFigure& figure,
                     const std::vector<CheckedReading>& checked) {
  for (const CheckedReading& before : checked) {
    CheckedReading now = before;
    now.drawn *= refined.factor;
    now.allowed = allowed_between(refined.map, refined.factor * figure.at(now.reading.from),
                                  refined.factor * figure.at(now.reading.to), now.reading.sigma);
    if (is_last_of_pair(checked, before) && !now.agrees())
      throw Refusal("Mended by the tape, the table would still not agree with it: from " +
                    figure.label(now.reading.from) + " to " + figure.label(now.reading.to) + " it reads " +
                    fixed(now.reading.mm, 1) + " mm where " + fixed(now.drawn, 1) +
                    " mm would be drawn. Measure again; if it stays so, calibrate again.");
  }
}

}  // namespace

Eigen::Vector2d CheckFigure::at(char name) const {
  std::string names;
  for (const CheckCross& cross : crosses) {
    if (cross.name == name) return cross.mat;
    names += names.empty() ? "" : " ";
    names += cross.name;
  }
  throw Refusal(std::string("The check figure has no cross ") + name + ". Its crosses are " + names + ".");
}

std::string CheckFigure::label(char name) const {
  return number > 1 ? name + std::to_string(number) : std::string(1, name);
}

CheckFigure check_figure(const TableMap& map, double step) {
  CheckFigure out;
  out.step = step;
  out.number = map.revision + 1;
  Eigen::AlignedBox2d box;
  for (const Eigen::Vector2d& p : map.lit_area) box.extend(p);
  const Eigen::Vector2d middle = middle_of(map.lit_area);
  const auto round_down = [&](double length) { return step * std::floor(length / step); };
  for (double share = 1.0; share > 0.15; share -= 0.02) {
    const double wide = round_down(share * box.sizes().x()), high = round_down(share * box.sizes().y());
    if (wide < 4.0 * step || high < 2.0 * step) break;
    const Eigen::Vector2d half(0.5 * wide, 0.5 * high);
    const Eigen::Vector2d corners[] = {{-half.x(), half.y()}, half, {half.x(), -half.y()}, -half};
    if (!std::all_of(std::begin(corners), std::end(corners), [&](const Eigen::Vector2d& corner) {
          return inside(map.lit_area, middle + corner / kInset);
        }))
      continue;
    for (int i = 0; i < 4; ++i) out.crosses.push_back({static_cast<char>('A' + i), middle + corners[i]});
    out.crosses.push_back({'M', middle});
    const double square = 0.5 * std::max(step, round_down(0.6 * high));
    const Eigen::Vector2d around[] = {
        {-square, square}, {square, square}, {square, -square}, {-square, -square}};
    for (int i = 0; i < 4; ++i) out.crosses.push_back({static_cast<char>('P' + i), middle + around[i]});
    return out;
  }
  throw Refusal("The light on the mat is too small for a check figure. Calibrate with a larger picture.");
}

bool CheckedReading::agrees() const {
  return std::abs(reading.mm - drawn) <= allowed;
}

std::vector<CheckedReading> judged(const TableMap& map, const CheckFigure& figure,
                                   const std::vector<HandReading>& readings) {
  std::vector<CheckedReading> out;
  for (const HandReading& reading : readings) {
    const Eigen::Vector2d from = figure.at(reading.from), to = figure.at(reading.to);
    if (reading.from == reading.to || !(reading.mm > 0.0))
      throw Refusal("A tape is laid between two different crosses and reads more than nothing.");
    if (reading.figure != figure.number)
      throw Refusal(
          "The reading is of a figure that was lit before the table was mended or calibrated anew, "
          "and says nothing of the light as it is now. Light the figure again, whose crosses are "
          "called " +
          figure.label('A') + ", " + figure.label('B') + " and so on, and measure that.");
    out.push_back({reading, (to - from).norm(), allowed_between(map, from, to, reading.sigma)});
  }
  return out;
}

RefinedScale refine_scale(const TableMap& map, const CheckFigure& figure,
                          const std::vector<HandReading>& readings) {
  if (readings.empty()) throw Refusal("To refine the scale, give what a tape reads between two far crosses.");
  const double known = std::max(map.scale.relative_sigma, kLeastScaleSigma);
  const std::vector<CheckedReading> checked = judged(map, figure, readings);
  const std::vector<Ratio> ratios = ratios_of(map, figure, checked);
  double weights = 0.0, sum = 0.0;
  for (const Ratio& ratio : ratios) {
    weights += ratio.weight;
    sum += ratio.log * ratio.weight;
  }
  const double tape = sum / weights, tape_sigma = 1.0 / std::sqrt(weights);
  for (const Ratio& ratio : ratios)
    if (std::abs(ratio.log - tape) > kContradicts * ratio.sigma)
      throw Refusal("The tape from " + figure.label(ratio.from->reading.from) + " to " +
                    figure.label(ratio.from->reading.to) + " does not go with the others: " +
                    fixed(ratio.from->reading.mm, 1) + " mm where they say " +
                    fixed(ratio.from->drawn * std::exp(tape), 1) + ". Measure again.");
  if (std::abs(tape) > kContradicts * std::hypot(known, tape_sigma))
    throw Refusal(
        "The tape says that the scale is off by " + fixed(100.0 * (std::exp(tape) - 1.0), 2) +
        " %, more than this calibration leaves open. Measure again, straight from cross to cross; if it "
        "stays so, calibrate again.");
  const double all = weights + 1.0 / (known * known);
  RefinedScale out;
  out.factor = std::exp(sum / all);
  const double sigma = 1.0 / std::sqrt(all);
  out.map = map;
  ++out.map.revision;
  for (int r = 0; r < map.error.rows; ++r)
    for (int c = 0; c < map.error.columns; ++c) {
      const Eigen::Vector2d node = map.error.first + map.error.step * Eigen::Vector2d(c, r);
      out.map.error.mm95[static_cast<size_t>(r * map.error.columns + c)] =
          out.factor * std::hypot(shape95(map, node), scale95(map, sigma, node));
    }
  out.map.error.first *= out.factor;
  out.map.error.step *= out.factor;
  // A larger millimetre moves the lens as well: rays stay what they are.
  out.map.projector_from_mat_frame.translation() *= out.factor;
  for (Eigen::Vector2d& p : out.map.lit_area) p *= out.factor;
  out.map.scale.across *= out.factor;
  out.map.scale.down *= out.factor;
  out.map.scale.relative_sigma = sigma;
  if (out.map.scale.source.find("tape") == std::string::npos) out.map.scale.source += " and tape";
  refuse_left_off(out, figure, checked);
  return out;
}

void refuse_used(const std::vector<CheckedReading>& kept, const std::vector<HandReading>& readings) {
  for (const HandReading& reading : readings)
    for (const CheckedReading& before : kept)
      if (before.used && same_pair(before.reading, reading) &&
          std::abs(before.reading.mm - reading.mm) < kSameReading)
        throw Refusal("The scale was mended before by this very reading, " + fixed(reading.mm, 1) +
                      " mm. It counts once. Light the figure anew and lay the tape there; if it reads the "
                      "same again, or agrees, nothing is left to mend.");
}

std::optional<CheckedReading> failed_check(const std::vector<CheckedReading>& kept) {
  for (auto check = kept.rbegin(); check != kept.rend(); ++check)
    if (!check->agrees() && !check->used && is_last_of_pair(kept, *check)) return *check;
  return std::nullopt;
}

std::string check_json(const CheckedReading& checked, const std::string& when) {
  return nlohmann::json({{"made_at", when},
                         {"from", std::string(1, checked.reading.from)},
                         {"to", std::string(1, checked.reading.to)},
                         {"figure", checked.reading.figure},
                         {"measured", checked.reading.mm},
                         {"reading_sigma", checked.reading.sigma},
                         {"drawn", checked.drawn},
                         {"allowed", checked.allowed},
                         {"agrees", checked.agrees()},
                         {"used", checked.used}})
      .dump();
}

CheckedReading check_from_json(const std::string& text) {
  const nlohmann::json in = nlohmann::json::parse(text);
  const std::string from = in.at("from").get<std::string>(), to = in.at("to").get<std::string>();
  if (from.size() != 1 || to.size() != 1)
    throw Refusal("A reading kept with the table is between no crosses.");
  CheckedReading out;
  out.reading = {from.front(), to.front(), in.at("measured").get<double>(),
                 in.at("reading_sigma").get<double>(), in.value("figure", 1)};
  out.drawn = in.at("drawn").get<double>();
  out.allowed = in.at("allowed").get<double>();
  out.used = in.value("used", false);
  return out;
}

std::vector<CheckedReading> kept_checks(const std::string& table) {
  try {
    std::vector<CheckedReading> out;
    const nlohmann::json in = nlohmann::json::parse(table);
    if (!in.contains("checks")) return out;
    for (const nlohmann::json& item : in.at("checks")) out.push_back(check_from_json(item.dump()));
    return out;
  } catch (const nlohmann::json::exception&) {
    throw Refusal("The readings kept in the table file are damaged. Calibrate again, or use a copy.");
  }
}

std::string with_checks(const std::string& table, const TableMap* map,
                        const std::vector<CheckedReading>& checked, const std::string& when) {
  using nlohmann::json;
  TableMap::from_json(table);  // refuses what is no map
  const json before = json::parse(table);
  json out = map != nullptr ? json::parse(map->to_json()) : before;
  json list = before.value("checks", json::array());
  for (const CheckedReading& c : checked) list.push_back(json::parse(check_json(c, when)));
  out["checks"] = list;
  return out.dump(1) + "\n";
}

}  // namespace cowlcast::calibration
