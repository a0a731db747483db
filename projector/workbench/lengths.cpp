#include "projector/workbench/lengths.h"

#include <array>
#include <charconv>
#include <cmath>
#include <cstdio>
#include <regex>
#include <utility>

namespace cowlcast::projector {
namespace {

constexpr double mm_per_inch = 25.4;  // exactly
constexpr std::array<const char*, 8> eighths{"", "⅛", "¼", "⅜", "½", "⅝", "¾", "⅞"};

void trim(std::string_view& text) {
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
}

bool take_ending(std::string_view& text, std::string_view ending) {
  if (!text.ends_with(ending)) return false;
  text.remove_suffix(ending.size());
  trim(text);
  return true;
}

/// A plain number, with point or comma; nothing left unread.
std::optional<double> number(std::string_view text) {
  trim(text);
  std::string plain(text);
  for (char& c : plain) c = c == ',' ? '.' : c;
  double value = 0.0;
  const auto read = std::from_chars(plain.data(), plain.data() + plain.size(), value);
  if (read.ec != std::errc() || read.ptr != plain.data() + plain.size() || !std::isfinite(value))
    return std::nullopt;
  return value;
}

/// "1/2", or one of the eighths in one sign.
std::optional<double> fraction(std::string_view text) {
  trim(text);
  for (size_t i = 1; i < eighths.size(); ++i)
    if (text == eighths[i]) return 0.125 * static_cast<double>(i);
  const size_t slash = text.find('/');
  if (slash == std::string_view::npos) return std::nullopt;
  const auto above = number(text.substr(0, slash)), below = number(text.substr(slash + 1));
  if (!above || !below || *above < 0.0 || *below <= 0.0) return std::nullopt;
  return *above / *below;
}

/// "19", "19.5", "1/2", "19 1/2", "19½".
std::optional<double> mixed_number(std::string_view text) {
  if (const auto plain = number(text)) return plain;
  if (const auto alone = fraction(text)) return alone;
  size_t whole = 0;
  while (whole < text.size() && text[whole] >= '0' && text[whole] <= '9') ++whole;
  if (whole == 0 || whole == text.size()) return std::nullopt;
  const auto before = number(text.substr(0, whole)), after = fraction(text.substr(whole));
  if (!before || !after || *after >= 1.0) return std::nullopt;
  return *before + *after;
}

}  // namespace

std::string length_in_figures(double mm, Units units) {
  char text[40];
  if (units == Units::centimetres) {
    std::snprintf(text, sizeof text, "%.1f", std::round(mm) / 10.0 + 0.0);
    return text;
  }
  const long long count = std::llround(std::abs(mm) / mm_per_inch * 8.0);
  std::snprintf(text, sizeof text, "%s%lld", mm < 0.0 && count > 0 ? "-" : "", count / 8);
  std::string words = count >= 8 || count % 8 == 0 ? text : (mm < 0.0 ? "-" : "");
  return words + eighths[static_cast<size_t>(count % 8)];
}

std::string length_in_words(double mm, Units units) {
  return length_in_figures(mm, units) + (units == Units::inches ? " in" : " cm");
}

std::string lengths_in_own_units(const std::string& sentence, Units units) {
  static const std::regex length(R"((\d+(?:\.\d+)?) mm\b)");
  std::string result;
  auto rest = sentence.cbegin();
  for (std::sregex_iterator found(sentence.cbegin(), sentence.cend(), length), none; found != none; ++found) {
    result.append(rest, (*found)[0].first);
    result += length_in_words(number((*found)[1].str()).value_or(0.0), units);
    rest = (*found)[0].second;
  }
  return result.append(rest, sentence.cend());
}

std::optional<double> typed_length(std::string_view text, Units units) {
  trim(text);
  double unit = units == Units::inches ? mm_per_inch : 10.0;
  for (const auto& [ending, mm] : {std::pair<std::string_view, double>{"mm", 1.0},
                                   {"cm", 10.0},
                                   {"inches", mm_per_inch},
                                   {"in", mm_per_inch},
                                   {"″", mm_per_inch},
                                   {"\"", mm_per_inch}}) {
    if (take_ending(text, ending)) {
      unit = mm;
      break;
    }
  }
  const auto value = mixed_number(text);
  if (!value) return std::nullopt;
  return *value * unit;
}

double length_step(Units units) {
  return units == Units::inches ? mm_per_inch / 8.0 : 5.0;
}

double on_step(double mm, double step) {
  return std::round(mm / step) * step;
}

}  // namespace cowlcast::projector
