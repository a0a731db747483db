// A simulated table and the map that is exactly true for it: what is measured through both is drawing alone.
#pragma once

#include <opencv2/core.hpp>
#include <stdexcept>
#include <vector>

#include "calibration/table_map/table_map.h"
#include "calibration/virtual_table/random_room.h"
#include "calibration/virtual_table/truth.h"
#include "drafting/block/block.h"
#include "drafting/cowl/cowl_front.h"

namespace cowlcast::projector::testing {

namespace room_model = calibration::virtual_table;

struct TrueTable {
  room_model::Room room;
  calibration::TableMap map;
};

/// The room of that seed; `size` 0 x 0 draws one of the usual ones. Its projector's glass is brought into the
/// map's own lens model by leaving out the wobble; electronic keystone, which the map has no words for, is
/// off.
inline TrueTable true_table(std::uint64_t seed, cv::Size size = {0, 0}, double hardness = 0.5) {
  room_model::RoomOptions options{.pages = std::vector<cv::Mat>(4)};
  options.projector = size;
  options.hardness = hardness;
  TrueTable table{room_model::random_session(seed, options).room, {}};
  table.room.sheets.clear();
  room_model::RoomProjector& projector = table.room.projector;
  room_model::Optic& optic = projector.optic;
  optic.wobble = 0.0;
  if (optic.focal.x() != optic.focal.y() || projector.panel_from_picture)
    throw std::logic_error("the map's lens cannot be this projector's");
  calibration::TableMap& map = table.map;
  map.width = projector.width;
  map.height = projector.height;
  map.lens = {.focal = optic.focal.x(),
              .centre = optic.centre,
              .k1 = optic.k1,
              .k2 = optic.k2,
              .k3 = optic.k3,
              .p1 = optic.p1,
              .p2 = optic.p2};
  map.projector_from_mat_frame = projector.projector_from_room;
  map.lit_area = room_model::lit_outline(projector);
  return table;
}

/// The demo's cowl front, cut on the fold.
inline drafting::Piece cowl_front() {
  drafting::CowlWishes wishes;
  wishes.drape = 480.0;
  return drafting::draft_cowl_front(drafting::block_front(drafting::demo_measures()), wishes).front;
}

}  // namespace cowlcast::projector::testing
