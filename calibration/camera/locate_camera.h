// Where a fixed camera stands, by the light of the target on the calibrated mat.
//
//   LocateRequest request{.target = frames_of_the_target, .plain = frames_of_plain_light};
//   LocatedCamera found = locate_camera(map, request);
//   save(found.camera.to_json());
//
// The map tells where on the mat each corner of the target falls, so the corners seen in the camera's frames
// are known places, and lens and pose follow from them. Nothing else need lie on the table. What is in view
// besides helps: printed sheets show whether the light still lies as the map has it, and the places of edge
// tags are kept, by which it is seen later whether mat or camera were moved in between.
//
// Beyond the outermost corners of the target, a square from the picture's edge, nothing holds the lens: in
// the very corners of the light places may be off by a millimetre though all else is right to a tenth. What
// is stated covers them, so it is mostly theirs.
//
// It cannot see that the light has slid or turned as a whole since the map was made; no cut piece notices.
#pragma once

#include <opencv2/core.hpp>
#include <optional>
#include <string>
#include <vector>

#include "calibration/camera/fixed_camera.h"
#include "calibration/solve/scene.h"
#include "calibration/table_map/table_map.h"

namespace cowlcast::calibration {

struct LocateRequest {
  std::vector<cv::Mat> target, plain;  ///< frames, 8-bit grey, of one size; at least one of each
  std::vector<cv::Mat> dark = {};      ///< the projector shows black: for tags beside the light; may be empty
  std::optional<LensBelief> lens;      ///< what is remembered of the camera's lens
};

struct LocatedCamera {
  FixedCamera camera;
  int corners = 0;      ///< of the target that bear it out
  double within = 0.0;  ///< mm: 95 % radius of the places it tells, where that is largest over the light, its
                        ///< very corners included; the map's own error comes on top
  int sheets = 0;       ///< by which the light was checked
  std::vector<std::string> warnings;  ///< plain sentences
  std::string summary;                ///< a few lines
};

/// Throws Refusal, with cause and cure, when the target is not seen over enough of the light, when no lens
/// and place explain what is seen within a millimetre, or when sheets in view say that the light lies
/// otherwise than the map has it.
LocatedCamera locate_camera(const TableMap& map, const LocateRequest& request);

}  // namespace cowlcast::calibration
