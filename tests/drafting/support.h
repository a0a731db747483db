// Shared by the drafting tests: random bases and small conversions.
#pragma once

#include <gtest/gtest.h>

#include <cmath>
#include <random>
#include <string>

#include "drafting/block/block.h"
#include "drafting/geometry/polyline.h"
#include "drafting/refusal.h"

namespace cowlcast::drafting::test {

inline double between(std::mt19937& random, double low, double high) {
  return low + (high - low) * (static_cast<double>(random()) / 4294967296.0);
}

/// Measures of an invented body, over a wide range of figures.
inline BodyMeasures random_measures(std::mt19937& random) {
  BodyMeasures m;
  m.bust_girth = between(random, 780, 1240);
  m.waist_girth = m.bust_girth * between(random, 0.76, 0.92);
  m.hip_girth = m.bust_girth * between(random, 1.0, 1.12);
  m.neck_girth = 330 + (m.bust_girth - 790) * 0.2 + between(random, -12, 12);
  m.shoulder_length = between(random, 108, 130);
  m.back_waist_length = between(random, 380, 440) + (m.bust_girth - 900) * 0.05;
  m.waist_to_hem = between(random, 80, 380);
  m.ease = between(random, -0.04, 0.08) * m.bust_girth;
  return m;
}

/// The words of the refusal that `call` throws; empty when it throws none.
template <typename Call>
std::string refusal_of(Call call) {
  try {
    call();
  } catch (const Refusal& reason) {
    return reason.what();
  }
  return "";
}

#define EXPECT_REFUSED(call, words) \
  EXPECT_PRED_FORMAT2(testing::IsSubstring, words, ::cowlcast::drafting::test::refusal_of([&] { call; }))

}  // namespace cowlcast::drafting::test
