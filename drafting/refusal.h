// Refusal: what drafting throws when it will not answer.
#pragma once

#include <stdexcept>
#include <string>

namespace cowlcast::drafting {

/// Thrown when an input or a wish cannot give a right piece. The text is one
/// sentence or a few for the person who sews: the cause, then the cure.
class Refusal : public std::runtime_error {
 public:
  explicit Refusal(const std::string& reason) : std::runtime_error(reason) {}
};

}  // namespace cowlcast::drafting
