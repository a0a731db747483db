// Which of mat, projector and camera moved, from how far tags and marks moved in the camera's frames.
//
//   Motions motions(map, camera, sights);
//   Motion found = motions.explain(shifts);
//   for (const Moved& moved : found.moved) tell(name_of(moved.what), moved.mm);
//
// Tags move with the mat, marks of light with the projector, and everything with
// the camera. Each move has few freedoms (mat 3, projector 6, camera 6), all
// small, so shifts are linear in them. Every likely set of moves is fitted by
// robust least squares, and the one that explains most with least is taken, in the
// manner of G. Schwarz, "Estimating the dimension of a model" (1978).
#pragma once

#include <Eigen/Core>
#include <array>
#include <optional>
#include <string>
#include <vector>

#include "calibration/camera/fixed_camera.h"
#include "calibration/table_map/table_map.h"

namespace cowlcast::calibration {

/// What a thing seen by the camera hangs on.
enum class SightKind {
  tag,   ///< on the mat
  mark,  ///< light of the projector
  room,  ///< beside the mat: a table, a floor
};

/// A thing the camera sees, where it was learnt.
struct Sight {
  SightKind kind = SightKind::tag;
  Eigen::Vector2d pixel = Eigen::Vector2d::Zero();    ///< of the camera
  Eigen::Vector2d picture = Eigen::Vector2d::Zero();  ///< of the projector; marks only
};

/// How far a sight is now from where it was learnt. Nothing: not seen.
struct SightShift {
  Eigen::Vector2d shift = Eigen::Vector2d::Zero();  ///< camera pixels
  double sigma = 0.05;                              ///< of each coordinate
};

enum class Mover { mat, projector, camera };  ///< the mat, or the table with it

/// "mat", "projector" or "camera".
std::string name_of(Mover mover);

struct Moved {
  Mover what = Mover::mat;
  double mm =
      0.0;  ///< farthest that any point of the lit mat is shifted by it: on the mat, in light, or as seen
};

struct Motion {
  std::vector<Moved> moved;  ///< empty: nothing is needed to explain the shifts
  double mm = 0.0;           ///< the largest of them
  bool sure =
      true;  ///< tags and marks are both in view: else a camera that moved looks like a mat or projector
  int strays = 0;  ///< sights whose shift the answer does not explain: covered, or blown about
};

class Motions {
 public:
  /// `sights` as learnt, with the map and the camera that held then.
  Motions(const TableMap& map, const FixedCamera& camera, const std::vector<Sight>& sights);

  /// The set of moves that explains the shifts, one for each sight.
  Motion explain(const std::vector<std::optional<SightShift>>& shifts) const;

 private:
  // Slopes of a sight's pixel against the freedoms: mat 3, projector 6, camera 6.
  struct Slopes {
    Eigen::Matrix<double, 2, 3> mat = Eigen::Matrix<double, 2, 3>::Zero();
    Eigen::Matrix<double, 2, 6> projector = Eigen::Matrix<double, 2, 6>::Zero(),
                                camera = Eigen::Matrix<double, 2, 6>::Zero();
  };
  struct Trial;
  Trial fit(const std::vector<std::optional<SightShift>>& shifts, const std::vector<Mover>& movers) const;
  double amount(Mover mover, const Eigen::VectorXd& freedoms) const;

  std::vector<Sight> sights_;
  std::vector<Slopes> slopes_;
  std::vector<Slopes> lit_;  // the same in millimetres, over a grid of the lit mat
};

}  // namespace cowlcast::calibration
