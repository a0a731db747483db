// Refusal: what calibration throws when it will not answer.
#pragma once

#include <stdexcept>
#include <string>

namespace cowlcast::calibration {

/// Thrown when an input does not support a trustworthy answer. The text is one
/// sentence or a few for the person at the table: the cause, then the cure.
class Refusal : public std::runtime_error {
 public:
  explicit Refusal(const std::string& reason) : std::runtime_error(reason) {}
};

}  // namespace cowlcast::calibration
