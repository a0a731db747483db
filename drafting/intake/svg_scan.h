// Scanner: numbers and separators of SVG attribute text.
#pragma once

#include <string>
#include <string_view>

namespace cowlcast::drafting {

class Scanner {
 public:
  explicit Scanner(std::string_view text) : text_(text) {}

  bool at_end() const { return place_ >= text_.size(); }
  size_t place() const { return place_; }
  char peek() const { return at_end() ? '\0' : text_[place_]; }
  char take() { return text_[place_++]; }

  void skip_space();
  /// White space with at most one comma among it.
  void skip_separator();
  /// True when a number could start here.
  bool at_number() const;
  /// A number as SVG writes it: sign, digits, point, exponent; "1.5.5" is two.
  /// False, and nothing taken, when there is none or it is not finite.
  bool number(double& value);
  /// A single 0 or 1, which needs no separator after it.
  bool flag(bool& value);
  /// Letters up to the next character that is none.
  std::string word();

 private:
  std::string_view text_;
  size_t place_ = 0;
};

}  // namespace cowlcast::drafting
