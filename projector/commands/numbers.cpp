#include "projector/commands/numbers.h"

#include <charconv>
#include <cmath>
#include <map>
#include <numbers>

namespace cowlcast::projector {
namespace {

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && (text.front() == ' ' || text.front() == '\t')) text.remove_prefix(1);
  while (!text.empty() && (text.back() == ' ' || text.back() == '\t' || text.back() == '\r'))
    text.remove_suffix(1);
  return text;
}

std::string in_small_letters(std::string_view text) {
  std::string small(text);
  for (char& c : small)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  return small;
}

struct NumberAndRest {
  double number = 0.0;
  std::string_view rest;
};

std::optional<NumberAndRest> leading_number(std::string_view text) {
  text = trimmed(text);
  if (text.starts_with('+')) text.remove_prefix(1);
  NumberAndRest out;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), out.number);
  if (error != std::errc() || !std::isfinite(out.number)) return std::nullopt;
  out.rest = trimmed(text.substr(static_cast<size_t>(end - text.data())));
  return out;
}

}  // namespace

std::optional<double> plain_number(std::string_view text) {
  const auto read = leading_number(text);
  if (!read || !read->rest.empty()) return std::nullopt;
  return read->number;
}

std::optional<double> length_mm(std::string_view text) {
  const auto read = leading_number(text);
  if (!read) return std::nullopt;
  static const std::map<std::string_view, double> units{
      {"", 1.0}, {"mm", 1.0}, {"cm", 10.0}, {"m", 1000.0}, {"in", kMmPerInch}, {"\"", kMmPerInch}};
  const auto unit = units.find(read->rest);
  if (unit == units.end()) return std::nullopt;
  return read->number * unit->second;
}

std::optional<double> angle_radians(std::string_view text) {
  const auto read = leading_number(text);
  if (!read || !(read->rest.empty() || read->rest == "deg" || read->rest == "°")) return std::nullopt;
  return read->number * std::numbers::pi / 180.0;
}

std::vector<std::string> parts_of(std::string_view text, char separator) {
  std::vector<std::string> parts(1);
  for (const char c : text) {
    if (c == separator)
      parts.emplace_back();
    else
      parts.back().push_back(c);
  }
  return parts;
}

std::optional<PictureSize> picture_size(std::string_view text) {
  const std::vector<std::string> parts = parts_of(in_small_letters(text), 'x');
  if (parts.size() != 2) return std::nullopt;
  PictureSize size;
  int* const values[] = {&size.width, &size.height};
  for (size_t i = 0; i < 2; ++i) {
    const std::string_view part = trimmed(parts[i]);
    const auto [end, error] = std::from_chars(part.data(), part.data() + part.size(), *values[i]);
    if (error != std::errc() || end != part.data() + part.size() || *values[i] < 1 || *values[i] > 99999)
      return std::nullopt;
  }
  return size;
}

std::optional<AreaSize> area_size(std::string_view text) {
  const std::vector<std::string> parts = parts_of(in_small_letters(text), 'x');
  if (parts.size() != 2) return std::nullopt;
  const auto width = length_mm(parts[0]), depth = length_mm(parts[1]);
  if (!width || !depth || !(*width > 0.0) || !(*depth > 0.0)) return std::nullopt;
  return AreaSize{*width, *depth};
}

std::optional<unsigned> colour_value(std::string_view text) {
  static const std::map<std::string_view, unsigned> names{
      {"black", 0xff101010}, {"white", 0xfff4f4f0}, {"grey", 0xff808080},  {"red", 0xffb01828},
      {"navy", 0xff18244c},  {"green", 0xff2c6b3c}, {"yellow", 0xffe8c83c}};
  const std::string small = in_small_letters(text);
  const auto named = names.find(small);
  if (named != names.end()) return named->second;
  if (text.size() != 7 || text.front() != '#') return std::nullopt;
  unsigned value = 0;
  const auto [end, error] = std::from_chars(text.data() + 1, text.data() + 7, value, 16);
  if (error != std::errc() || end != text.data() + 7) return std::nullopt;
  return 0xff000000u | value;
}

}  // namespace cowlcast::projector
