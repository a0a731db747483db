// Pairs of sides of an outline that may meet, found by a sweep up the page.
#pragma once

#include <algorithm>
#include <vector>

#include "drafting/piece/piece.h"

namespace cowlcast::drafting {

/// Calls `visit(i, j)` once for every two sides i and j (side i runs from point i
/// to the next) whose bounding boxes touch, until it returns true.
template <typename Visit>
void for_close_pairs(const Polyline& outline, Visit visit) {
  struct Side {
    double low, high, left, right;
    size_t index;
  };
  const size_t n = outline.size();
  std::vector<Side> sides(n);
  for (size_t i = 0; i < n; ++i) {
    const Point &a = outline[i], &b = outline[i + 1 == n ? 0 : i + 1];
    sides[i] = {std::min(a.y(), b.y()), std::max(a.y(), b.y()), std::min(a.x(), b.x()),
                std::max(a.x(), b.x()), i};
  }
  std::sort(sides.begin(), sides.end(), [](const Side& a, const Side& b) {
    return a.low < b.low || (a.low == b.low && a.index < b.index);
  });
  for (size_t k = 0; k < n; ++k) {
    for (size_t m = k + 1; m < n && sides[m].low <= sides[k].high; ++m) {
      if (sides[m].left > sides[k].right || sides[m].right < sides[k].left) continue;
      if (visit(sides[k].index, sides[m].index)) return;
    }
  }
}

}  // namespace cowlcast::drafting
