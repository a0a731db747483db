// Scene: all that the joint fit knows and finds, as plain values.
//
// Sheets lie on the mat plane z = 0 of a working mat frame fixed to the first
// sheet, or on a board of known thickness above it; the finished map is turned
// into the mat frame of TableMap afterwards.
#pragma once

#include <Eigen/Core>
#include <Eigen/Geometry>
#include <array>
#include <optional>
#include <string>
#include <vector>

#include "calibration/lens/lens.h"
#include "calibration/sheet/sheet.h"
#include "calibration/table_map/table_map.h"

namespace cowlcast::calibration {

/// A turn and shift kept as six numbers: rotation vector (radians), then translation (mm).
struct Placement {
  std::array<double, 6> numbers{};

  Eigen::Isometry3d transform() const;
  static Placement of(const Eigen::Isometry3d& transform);
};

/// A lens as the fit keeps it: focal, centre x, y, k1, k2, k3, p1, p2.
struct LensNumbers {
  std::array<double, 8> numbers{};

  Lens lens(double focal_factor = 1.0) const;
};

struct ScenePhoto {
  std::string name;
  int lens = 0;        ///< index into Scene::lenses
  double focus = 0.0;  ///< natural logarithm of this photograph's own focal length over the lens's
  Placement camera_from_mat;
  bool target = false;  ///< taken under the target picture
};

/// Office paper of 80 g/m² is about a tenth of a millimetre thick (common practice, no source).
constexpr double kPaperThickness = 0.1;

struct SceneSheet {
  Paper paper = Paper::a4;
  int number = 0;
  std::array<double, 3> place{};    ///< x, y (mm) and turn (radians) of the sheet on the mat
  double height = kPaperThickness;  ///< of its printed face above the mat, mm
  std::optional<double> board;      ///< thickness of the board it lies on, as measured, mm
};

/// A paper corner seen in a photograph.
struct PaperSighting {
  int photo = 0, sheet = 0;                           ///< indices into the scene
  int corner = 0;                                     ///< index in the sheet's layout
  Eigen::Vector2d printed = Eigen::Vector2d::Zero();  ///< in the sheet frame, mm as designed
  Eigen::Vector2d pixel = Eigen::Vector2d::Zero();
  double sigma = 1.0;  ///< pixels, relative among paper sightings
  bool used = true;
};

/// A corner of the projected target seen in a photograph.
struct LightSighting {
  int photo = 0;
  int point = 0;  ///< index into Scene::lights
  Eigen::Vector2d pixel = Eigen::Vector2d::Zero();
  double sigma = 0.2;  ///< pixels, by the corner's own patch
  bool used = true;
  Eigen::Vector2d sought = Eigen::Vector2d::Zero();  ///< where it was looked for, pixels
};

/// A corner of the target: where it is in the picture and where it falls on the mat.
struct LightPoint {
  int corner = 0;                                     ///< index in the target's layout
  Eigen::Vector2d picture = Eigen::Vector2d::Zero();  ///< projector pixel, exact
  std::array<double, 2> mat{};                        ///< mm
  int sheet = -1;                                     ///< the raised sheet it falls on; -1: the mat
};

/// A place in the light, on the mat or on a raised sheet.
struct Spot {
  Eigen::Vector2d mat = Eigen::Vector2d::Zero();  ///< mm
  double height = 0.0;                            ///< above the mat, mm
  int sheet = -1;                                 ///< the raised sheet; -1: the mat
  bool certain = true;                            ///< false about the rim of a raised sheet and its board
};

struct ScaleReading {
  double across = 1.0, down = 1.0;  ///< printed over nominal, as measured or assumed
  double sigma_across = 0.006, sigma_down = 0.006;
};

/// A tape between the centre crosses of two of the scene's sheets.
struct SceneSpan {
  int from = 0, to = 0;
  double length = 0.0, sigma = 0.5;  ///< mm
};

/// A tape from the mat up to the projector's lens.
struct LampReading {
  double height = 0.0, sigma = 15.0;  ///< mm
};

/// What is remembered of a lens: focal length in its logarithm's sigma, the rest as they are.
struct LensBelief {
  std::array<double, 8> middle{}, sigma{};
};

struct Scene {
  std::vector<LensNumbers> lenses;
  std::vector<Eigen::Vector2d> lens_sizes;              ///< photograph size of each lens, pixels
  std::vector<std::optional<LensBelief>> beliefs = {};  ///< empty, or one for each lens
  std::vector<std::optional<double>> exif_focals;       ///< for each lens, pixels
  std::vector<ScenePhoto> photos;
  std::vector<SceneSheet> sheets;
  std::array<double, 2> print_scale{0.0,
                                    0.0};  ///< natural logarithm of printed over nominal, across and down
  LensNumbers projector_lens;
  Placement projector_from_mat;
  std::array<double, 4> keystone{};                          ///< across, down, aspect, skew: see Keystone
  bool keystone_free = false;                                ///< the fit may change it
  Eigen::Vector2d projector_size = Eigen::Vector2d::Zero();  ///< pixels
  std::vector<LightPoint> lights;
  std::vector<PaperSighting> paper;
  std::vector<LightSighting> light;
  ScaleReading reading;
  std::vector<SceneSpan> spans;
  std::optional<LampReading> lamp_height;

  /// The mat point of a printed point of a sheet, mm.
  Eigen::Vector2d mat_from_sheet(int sheet, const Eigen::Vector2d& printed) const;
  /// Pixel in a photograph of the point `height` mm above a mat point; nothing when it is behind the camera
  /// or beyond its lens.
  std::optional<Eigen::Vector2d> photo_from_mat(int photo, const Eigen::Vector2d& mat,
                                                double height = 0.0) const;
  /// The same of a sheet's printed point, at the sheet's own height.
  std::optional<Eigen::Vector2d> photo_from_sheet(int photo, int sheet, const Eigen::Vector2d& printed) const;
  /// Where the line of sight of a photograph's pixel meets the plane `height` mm above the mat. Throws
  /// Refusal where it does not.
  Eigen::Vector2d mat_from_photo(int photo, const Eigen::Vector2d& pixel, double height = 0.0) const;
  /// Height above the mat of the place where a corner of the target falls, mm.
  double height_of(const LightPoint& point) const {
    return point.sheet < 0 ? 0.0 : sheets[static_cast<size_t>(point.sheet)].height;
  }
  /// The projector as a map, its error aside, in the working frame.
  TableMap projector() const;
  /// Projector pixel of a mat point; nothing when the projector cannot reach it.
  std::optional<Eigen::Vector2d> projector_from_mat_point(const Eigen::Vector2d& mat) const;
};

}  // namespace cowlcast::calibration
