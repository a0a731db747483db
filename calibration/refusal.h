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

/// A refusal whose cause was found by a test of its own and is not in doubt.
class CertainRefusal : public Refusal {
 public:
  using Refusal::Refusal;
};

}  // namespace cowlcast::calibration
