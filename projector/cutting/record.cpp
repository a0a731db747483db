#include "projector/cutting/record.h"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdint>
#include <cstdio>
#include <nlohmann/json.hpp>

#include "drafting/refusal.h"

namespace cowlcast::projector {
namespace {

using nlohmann::json;

constexpr const char* kFormat = "cowlcast cutting record";

json point_to(const Point& point) {
  return {point.x(), point.y()};
}

Point point_from(const json& in) {
  return {in.at(0).get<double>(), in.at(1).get<double>()};
}

json strokes_to(const std::vector<StrokePlace>& strokes) {
  json list = json::array();
  for (const StrokePlace& stroke : strokes)
    list.push_back({{"seam", stroke.seam},
                    {"from", point_to(stroke.from)},
                    {"middle", point_to(stroke.middle)},
                    {"to", point_to(stroke.to)}});
  return list;
}

std::vector<StrokePlace> strokes_from(const json& in) {
  std::vector<StrokePlace> strokes;
  for (const json& item : in)
    strokes.push_back({item.at("seam"), point_from(item.at("from")), point_from(item.at("middle")),
                       point_from(item.at("to"))});
  return strokes;
}

}  // namespace

std::string record_to_json(const Record& record) {
  json waivers = json::array();
  for (const Waiver& waiver : record.waivers)
    waivers.push_back({{"at", waiver.at}, {"reason", waiver.reason}, {"table", waiver.table}});
  json out{{"format", kFormat},
           {"schema", 1},
           {"piece", record.piece},
           {"table_made_at", record.table_made_at},
           {"laying",
            {{"x", record.laying.x},
             {"y", record.laying.y},
             {"angle", record.laying.angle},
             {"mirrored", record.laying.mirrored},
             {"height", record.laying.height}}},
           {"strokes", record.strokes},
           {"cut", record.cut},
           {"seconds", record.seconds},
           {"cautions_read_at", record.cautions_read_at},
           {"waivers", waivers}};
  if (!record.shape.empty()) out["shape"] = record.shape;
  if (!record.cut_strokes.empty()) out["cut_strokes"] = strokes_to(record.cut_strokes);
  return out.dump(2) + "\n";
}

std::string shape_of(const drafting::Piece& piece) {
  // FNV-1a, 64 bits: http://www.isthe.com/chongo/tech/comp/fnv/
  std::uint64_t hash = 0xcbf29ce484222325ULL;
  const auto take = [&hash](double mm) {
    auto hundredths = static_cast<std::uint64_t>(static_cast<std::int64_t>(std::llround(100.0 * mm)));
    for (int byte = 0; byte < 8; ++byte, hundredths >>= 8)
      hash = (hash ^ (hundredths & 0xffu)) * 0x100000001b3ULL;
  };
  for (const drafting::Point& point : piece.cut_line) {
    take(point.x());
    take(point.y());
  }
  char text[20];
  std::snprintf(text, sizeof text, "%016llx", static_cast<unsigned long long>(hash));
  return text;
}

bool belongs_to(const Record& record, const drafting::Piece& piece) {
  return record.cut == 0 || record.shape == shape_of(piece);
}

Record record_from_json(const std::string& text) {
  try {
    const json in = json::parse(text);
    if (in.at("format") != kFormat || in.at("schema") != 1)
      throw drafting::Refusal(
          "This is not a cutting record of this program. Choose another file name for it.");
    Record record;
    record.piece = in.at("piece");
    record.table_made_at = in.at("table_made_at");
    const json& laying = in.at("laying");
    record.laying = {laying.at("x"), laying.at("y"), laying.at("angle"), laying.at("mirrored"),
                     laying.at("height")};
    record.strokes = in.at("strokes");
    record.cut = in.at("cut");
    record.seconds = in.at("seconds");
    record.cautions_read_at = in.at("cautions_read_at");
    for (const json& waiver : in.at("waivers"))
      record.waivers.push_back({waiver.at("at"), waiver.at("reason"), waiver.value("table", std::string())});
    if (in.contains("shape")) record.shape = in.at("shape");
    if (in.contains("cut_strokes")) record.cut_strokes = strokes_from(in.at("cut_strokes"));
    const Laying& l = record.laying;
    const size_t known = record.cut_strokes.size();
    if (record.cut < 0 || (known > 0 && known != static_cast<size_t>(record.cut)) ||
        record.strokes < record.cut || !(record.seconds >= 0.0) ||
        !std::isfinite(l.x + l.y + l.angle + l.height))
      throw drafting::Refusal("The cutting record contradicts itself. Delete it to begin the piece anew.");
    return record;
  } catch (const json::exception&) {
    throw drafting::Refusal("The cutting record is damaged. Delete it to begin the piece anew.");
  }
}

std::optional<double> seconds_between(const std::string& from, const std::string& to) {
  const auto seconds = [](const std::string& text) -> std::optional<double> {
    int year = 0, month = 0, day = 0, hour = 0, minute = 0, second = 0, length = 0;
    if (std::sscanf(text.c_str(), "%4d-%2d-%2dT%2d:%2d:%2dZ%n", &year, &month, &day, &hour, &minute, &second,
                    &length) != 6 ||
        length != static_cast<int>(text.size()))
      return std::nullopt;
    const std::chrono::year_month_day date{std::chrono::year(year),
                                           std::chrono::month(static_cast<unsigned>(month)),
                                           std::chrono::day(static_cast<unsigned>(day))};
    if (!date.ok() || hour > 23 || minute > 59 || second > 60) return std::nullopt;
    const double days = static_cast<double>(std::chrono::sys_days(date).time_since_epoch().count());
    return days * 86400.0 + hour * 3600.0 + minute * 60.0 + second;
  };
  const auto a = seconds(from), b = seconds(to);
  if (!a || !b) return std::nullopt;
  return *b - *a;
}

bool cautions_due(const Record& record, const std::string& now) {
  const size_t day = 10;  // "2000-01-31"
  return record.cautions_read_at.size() < day || now.substr(0, day) != record.cautions_read_at.substr(0, day);
}

namespace {

bool holds(const Waiver& waiver, const std::string& reason, const std::string& table,
           const std::string& now) {
  const auto age = seconds_between(waiver.at, now);
  return !table.empty() && waiver.table == table && waiver.reason.find(reason) != std::string::npos && age &&
         *age >= 0.0 && *age <= kTrusted * 3600.0;
}

std::string age_block(const std::string& made_at, const std::string& now) {
  const auto age = seconds_between(made_at, now);
  if (!age) return "The calibration does not say when it was made. Calibrate again.";
  if (*age < 0.0)
    return "The calibration is dated later than this computer's clock, so its age is not known. Set the "
           "clock right, or calibrate again.";
  if (*age <= kTrusted * 3600.0) return {};
  return "The table was calibrated more than " + std::to_string(static_cast<int>(kTrusted)) +
         " hours ago and anything may have moved since. Calibrate again.";
}

std::string check_block(const calibration::CheckedReading& check) {
  calibration::CheckFigure figure;
  figure.number = check.reading.figure;
  char text[320];
  std::snprintf(text, sizeof text,
                "A check by hand did not agree with this calibration: from %s to %s the tape read %.1f mm "
                "where %.1f mm are drawn. Measure the same again; if it stays so, calibrate again.",
                figure.label(check.reading.from).c_str(), figure.label(check.reading.to).c_str(),
                check.reading.mm, check.drawn);
  return text;
}

}  // namespace

std::optional<std::string> calibration_block(const calibration::TableMap& map,
                                             const std::vector<calibration::CheckedReading>& checks,
                                             const Record& record, const std::string& now) {
  std::vector<std::string> reasons;
  if (record.cut > 0 && record.cut < record.strokes && record.table_made_at != map.made_at)
    reasons.emplace_back(
        "The table was calibrated anew since this piece was begun, so the strokes left may not meet those "
        "that are cut. Lay the piece to the cut edges first.");
  if (const auto failed = failed_check(checks)) reasons.push_back(check_block(*failed));
  reasons.push_back(age_block(map.made_at, now));
  std::string block;
  for (const std::string& reason : reasons) {
    const auto covers = [&](const Waiver& waiver) { return holds(waiver, reason, map.made_at, now); };
    if (!reason.empty() && std::none_of(record.waivers.begin(), record.waivers.end(), covers))
      block += (block.empty() ? "" : " ") + reason;
  }
  return block.empty() ? std::nullopt : std::optional(block);
}

Record waived(Record record, const std::string& reason, const std::string& table, const std::string& now) {
  for (const Waiver& waiver : record.waivers)
    if (holds(waiver, reason, table, now)) return record;
  record.waivers.push_back({now, reason, table});
  return record;
}

}  // namespace cowlcast::projector
