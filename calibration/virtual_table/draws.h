// Draws: the single parts of a random room. Internal; see random_room.h.
#pragma once

#include <vector>

#include "calibration/virtual_table/random_room.h"
#include "calibration/virtual_table/textures.h"

namespace cowlcast::calibration::virtual_table {

/// A projector over the table; the room's origin is the point lit by the middle of its picture and the
/// picture's rows run along x there.
RoomProjector draw_projector(Dice& dice, const RoomOptions& options);

CuttingMat draw_mat(Dice& dice, const RoomProjector& projector);
RoomLight draw_light(Dice& dice, const RoomOptions& options);

/// A phone, not yet anywhere.
RoomCamera draw_camera(Dice& dice, const RoomOptions& options);

/// `phone` held in `count` places from which the lit area and all sheets are in view.
std::vector<RoomCamera> draw_poses(Dice& dice, const RoomOptions& options, const RoomCamera& phone,
                                   const Room& room, int count);

PhotographFile draw_file(Dice& dice, const RoomOptions& options, const RoomCamera& phone);

/// The EXIF orientation that makes a viewer show the operator's side of the table at the foot.
int orientation_of(const RoomCamera& camera);

/// Edits the session so that its fault happens.
void bring_fault(Dice& dice, const RoomOptions& options, Session& session);

}  // namespace cowlcast::calibration::virtual_table
