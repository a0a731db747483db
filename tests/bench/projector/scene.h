// The demo's front on a true table, ready to be looked at or timed.
#pragma once

#include <vector>

#include "projector/cutting/begin.h"
#include "tests/projector/true_table.h"

namespace cowlcast::projector::bench {

/// Laid in the middle of the light of that table, 1 mm of cloth of those colours. `stroke` from 1; 0: laying.
inline CuttingView demo_view(const testing::TrueTable& table, const drafting::Piece& piece,
                             const std::vector<QRgb>& cloth, int stroke) {
  Record record;
  record.cautions_read_at = "2000-01-01T08:00:00Z";
  CuttingView view = begun(table.map, piece, {.height = 1.0, .cloth = cloth}, record, "2000-01-01T09:00:00Z");
  for (int i = 0; i < stroke; ++i) view = after(std::move(view), Act::next, Pace::normal);
  return view;
}

}  // namespace cowlcast::projector::bench
