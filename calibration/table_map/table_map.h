// TableMap: where every projector pixel lands on the mat, in true millimetres.
//
//   TableMap map = TableMap::from_json(text);
//   Eigen::Vector2d mm = map.mat_from_projector({960, 540});       // on the mat
//   Eigen::Vector2d px = map.projector_from_mat({100, 50}, 1.2);   // on cloth 1.2 mm thick
//   double mm95 = map.error_at({100, 50});                         // stated bound there
//
// Frames. Mat: the cutting surface is z = 0, x to the right and y up in the
// projected picture as the operator sees it, z up, millimetres, right-handed
// seen from above; the origin is the point of the mat lit by the middle of the
// picture. Projector: pixels, the centre of the first is (0, 0), v down.
//
// Guarantees: `mat_from_projector` and `projector_from_mat` undo each other to
// 1e-9 mm wherever both answer. What the map does not promise is truth beyond
// `error_at`: that is the 95 % bound of the calibration that made it.
#pragma once

#include <Eigen/Core>
#include <Eigen/Geometry>
#include <optional>
#include <string>
#include <vector>

#include "calibration/lens/keystone.h"
#include "calibration/lens/lens.h"

namespace cowlcast::calibration {

/// The stated error of a map on a regular grid of mat points.
struct ErrorGrid {
  Eigen::Vector2d first = Eigen::Vector2d::Zero();  ///< mat point of the first node, mm
  double step = 1.0;                                ///< spacing of nodes, mm
  int columns = 0, rows = 0;                        ///< nodes along x, along y
  std::vector<double>
      mm95;  ///< row by row from `first`: radius that holds the true point 95 times in 100, mm
  std::vector<double> mm95_per_mm;  ///< what each millimetre of cloth adds to it, squares added up

  /// Of `nodes`, by straight interpolation, held constant beyond the grid's edge.
  double at(const std::vector<double>& nodes, const Eigen::Vector2d& mat) const;

  /// The same errors at the places that `motion` brings theirs to, on a grid along the axes again.
  ErrorGrid moved_by(const Eigen::Isometry2d& motion) const;
};

/// What fixes the millimetre: how well the map's scale is known, and by what.
struct ScaleBasis {
  std::string source = "page";  ///< "page", "rulers", "span" or "rulers and span"
  double across = 1.0;          ///< printed size over nominal along the sheets' long side
  double down = 1.0;            ///< the same along the short side
  double relative_sigma = 0.0;  ///< one standard deviation of the map's scale
};

class TableMap {
 public:
  int width = 0, height = 0;  ///< projector picture, pixels
  Lens lens;                  ///< of the projector, as a camera run backwards
  Keystone keystone;          ///< when the projector squares its picture electronically
  Eigen::Isometry3d projector_from_mat_frame = Eigen::Isometry3d::Identity();  ///< mat mm to lens frame mm
  std::vector<Eigen::Vector2d> lit_area;  ///< outline of the picture on the mat, mm, counter-clockwise
  ErrorGrid error;
  ScaleBasis scale;
  double lamp_sigma =
      0.0;              ///< standard deviation of the lens's place over its distance, used for cloth height
  std::string made_at;  ///< ISO 8601 date and time of the calibration, UTC
  int revision = 0;     ///< how often it was mended since, by tape or watch; light of before is not its own

  /// Projector pixel that lights the point `mat` (mm) on cloth `cloth` mm thick.
  /// Throws Refusal for a point the lens cannot reach (behind it, beyond its valid radius).
  Eigen::Vector2d projector_from_mat(const Eigen::Vector2d& mat, double cloth = 0.0) const;

  /// Point (mm) that `pixel` lights on the upper face of cloth `cloth` mm thick.
  /// Throws Refusal where the ray misses the surface.
  Eigen::Vector2d mat_from_projector(const Eigen::Vector2d& pixel, double cloth = 0.0) const;

  /// Stated error at `mat`: the 95 % radius in mm, by linear interpolation in the
  /// grid and held constant beyond its edge. Cloth of `cloth` mm adds what the
  /// uncertain slant of the light makes of it. A slide or turn of all lines
  /// together is no error: no cut piece can notice it.
  double error_at(const Eigen::Vector2d& mat, double cloth = 0.0) const;

  /// The place of the projector's lens in the mat frame, mm.
  Eigen::Vector3d lamp() const;

  /// JSON text with "format": "cowlcast table map" and "schema": 1.
  std::string to_json() const;
  /// Throws Refusal for text that is not a complete map, saying what is wrong with it.
  static TableMap from_json(const std::string& text);
};

}  // namespace cowlcast::calibration
