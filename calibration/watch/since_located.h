// Whether anything was moved between locating the camera and learning to watch by it.
//
//   Watch watch = Watch::learn(map, camera, pictures);
//   if (auto reason = moved_since_located(watch, pictures)) tell(*reason);
//
// Learning takes the table as it stands for the one that was calibrated. The camera file keeps where edge
// tags lay, and the map says where the marks of light should: a move of about two millimetres or more shows
// against these. Smaller ones pass unseen, and all of them where the file has fewer than four of the tags.
#pragma once

#include <optional>
#include <string>

#include "calibration/watch/watch.h"

namespace cowlcast::calibration {

/// What moved, by how much, and what to do, in words; nothing when all stands as it was or nothing is known.
std::optional<std::string> moved_since_located(const Watch& learnt, const WatchPictures& pictures);

}  // namespace cowlcast::calibration
