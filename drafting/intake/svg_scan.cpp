#include "drafting/intake/svg_scan.h"

#include <charconv>
#include <cmath>

namespace cowlcast::drafting {
namespace {

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}
bool is_space(char c) {
  return c == ' ' || c == '\t' || c == '\n' || c == '\r' || c == '\f';
}
bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

}  // namespace

void Scanner::skip_space() {
  while (!at_end() && is_space(peek())) ++place_;
}

void Scanner::skip_separator() {
  skip_space();
  if (peek() == ',') {
    ++place_;
    skip_space();
  }
}

bool Scanner::at_number() const {
  const char c = peek();
  return is_digit(c) || c == '.' || c == '+' || c == '-';
}

bool Scanner::number(double& value) {
  size_t end = place_;
  const auto at = [&](size_t i) { return i < text_.size() ? text_[i] : '\0'; };
  if (at(end) == '+' || at(end) == '-') ++end;
  const size_t start_of_digits = end;
  size_t digits = 0;
  while (is_digit(at(end))) ++end, ++digits;
  if (at(end) == '.') {
    ++end;
    while (is_digit(at(end))) ++end, ++digits;
  }
  if (digits == 0) return false;
  if (at(end) == 'e' || at(end) == 'E') {
    size_t exponent = end + 1;
    if (at(exponent) == '+' || at(exponent) == '-') ++exponent;
    if (is_digit(at(exponent))) {
      while (is_digit(at(exponent))) ++exponent;
      end = exponent;
    }
  }
  // from_chars reads no plus sign, and is untouched by the user's locale.
  double parsed = 0.0;
  const auto read = std::from_chars(text_.data() + start_of_digits, text_.data() + end, parsed);
  if (read.ec != std::errc() || !std::isfinite(parsed)) return false;
  value = text_[place_] == '-' ? -parsed : parsed;
  place_ = end;
  return true;
}

bool Scanner::flag(bool& value) {
  if (peek() != '0' && peek() != '1') return false;
  value = take() == '1';
  return true;
}

std::string Scanner::word() {
  std::string result;
  while (!at_end() && is_letter(peek())) result += take();
  return result;
}

}  // namespace cowlcast::drafting
