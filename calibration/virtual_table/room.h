// Room: everything on and above a simulated cutting table, as plain values.
//
//   Room room = random_session(7, options).room;       // an honest random room
//   room.sheets[1].place.x += 2.0;                      // somebody nudged sheet 2
//   cv::Mat photo = photograph(room, camera, target, 7);
//
// A room knows the truth (`truth.h`), can be photographed (`photograph.h`) and
// looked at from straight above (`top_view.h`), and tells how far a projected
// line lies from where it should (`read_back.h`). It knows nothing of the solver.
// A fault is an edit of a copy: photographs taken before and after something
// moved are photographs of two rooms. Images are shared between copies, so
// copies are cheap.
//
// Frames. Room: the mat's surface is z = 0, x to the operator's right, y away, z
// up, millimetres. Camera and projector: x right, y down, z along the view.
// Images: the centre of the first pixel is (0, 0), v down; this holds for
// photographs, for projected pictures and for the raster of a sheet's page.
// Page: millimetres from the page's top left corner, x right, y down, so raster
// pixel (i, j) is centred at ((i + 0.5) p, (j + 0.5) p) with p = `pixel_mm`.
#pragma once

#include <Eigen/Core>
#include <Eigen/Geometry>
#include <opencv2/core.hpp>
#include <optional>
#include <vector>

#include "calibration/virtual_table/optic.h"

namespace cowlcast::calibration::virtual_table {

/// A colour of light or of a surface, linear (not sRGB), red green blue.
using Colour = Eigen::Vector3f;

/// Where a flat thing lies: its centre and its turn, anticlockwise from above.
struct Place {
  double x = 0.0, y = 0.0;  ///< mm
  double turn = 0.0;        ///< radians; 0: the page's foot is nearest the operator
};

/// One corner or edge of a sheet that does not lie flat. The paper rises by
/// `height` at the page point `towards` and rolls down to the mat over `reach`.
struct Curl {
  Eigen::Vector2d from{0.0, 0.0};     ///< page point where the paper leaves the mat, mm
  Eigen::Vector2d towards{0.0, 0.0};  ///< page point in the direction of which it rises, mm
  double height = 0.0;                ///< rise at `towards`, mm; 0 is flat; grows with the square of the way
};

/// A printed sheet lying on the mat.
struct PaperSheet {
  cv::Mat page = {};                    ///< whole page, 8 bit grey or BGR, white is bare paper
  double pixel_mm = 25.4 / 300.0;       ///< raster pitch at a print scale of exactly 1
  Eigen::Vector2d paper{297.0, 210.0};  ///< size of the paper, mm: across, down
  double across = 1.0,
         down = 1.0;  ///< true print scale: printed length over nominal; about the paper's centre
  Eigen::Vector2d shift{0.0, 0.0};  ///< how far the printer shifted the print on the paper, mm
  Place place = {};
  double thickness = 0.1;  ///< height of the printed face above the mat, mm
  Curl curl = {};
  Colour paper_albedo{0.80f, 0.80f, 0.79f};
  Colour ink_albedo{0.045f, 0.045f, 0.05f};
  float gloss = 0.0f;         ///< 0 matt; 0.05 office paper under a lamp; 0.5 coated
  float gloss_width = 0.15f;  ///< half-width of the highlight, radians
};

/// The cutting mat and the table under it.
struct CuttingMat {
  Eigen::Vector2d size{1500.0, 900.0};  ///< mm
  Place place = {};                     ///< of its middle
  Colour albedo{0.03f, 0.12f, 0.07f};
  Colour print_albedo{0.45f, 0.45f, 0.25f};
  double fine_step = 10.0, fine_line = 0.25;   ///< mm; step 0: no lines
  double heavy_step = 50.0, heavy_line = 0.6;  ///< mm
  bool diagonals = true;                       ///< lines at 45 and 60 degrees
  bool numerals = true;                        ///< at the heavy lines along the edges
  float grain = 0.05f;                         ///< relative roughness of the surface's tone
  Colour table_albedo{0.35f, 0.22f, 0.12f};
  bool wooden_table = true;  ///< else a woven cloth
};

/// Fabric laid over the mat: a rectangle, for pictures and for watching it being cut.
struct Cloth {
  Eigen::Vector2d size{900.0, 600.0};  ///< mm
  Place place = {};
  double height = 1.0;  ///< of the upper face above the mat, mm
  Colour albedo{0.25f, 0.05f, 0.09f};
  double wale = 1.2;     ///< spacing of the knit's columns, mm
  float relief = 0.25f;  ///< relative contrast of the knit
};

/// Somebody's shadow: an ellipse with soft edges on the table.
struct Shadow {
  Place place = {};
  Eigen::Vector2d radii{150.0, 300.0};  ///< mm
  double softness = 60.0;               ///< width of the edge, mm
  float ambient_left = 0.5f;            ///< share of the room light that still arrives
  float projector_left = 1.0f;          ///< share of the projector's light that still arrives
};

/// The light of the room without the projector.
struct RoomLight {
  double lux = 150.0;                        ///< on the mat under the middle of the picture
  Colour tint{1.0f, 0.93f, 0.82f};           ///< relative
  Eigen::Vector2d gradient{0.0, 0.0};        ///< relative change a metre along x and y, at every place
  std::optional<Eigen::Vector3d> lamp = {};  ///< place of a lamp that mirrors in glossy paper, mm
  std::vector<Shadow> shadows = {};
};

/// A projector over the table.
struct RoomProjector {
  int width = 1920, height = 1080;  ///< panel and picture, pixels
  Optic optic = {};                 ///< panel pixel from ray
  Eigen::Isometry3d projector_from_room = Eigen::Isometry3d::Identity();
  std::optional<Eigen::Matrix3d> panel_from_picture = {};  ///< electronic keystone: homography of pixels
  double white_lux = 900.0;   ///< on a surface square to the axis at `reference` mm, for white
  double reference = 1500.0;  ///< mm
  Colour tint{0.96f, 1.0f, 1.05f};
  double gamma = 2.2;
  double black = 0.0012;        ///< light of black over light of white
  double fill = 0.95;           ///< side of a pixel's lit square over the pitch
  double blur = 0.45;           ///< standard deviation of the defocus, pixels
  double vignetting = 0.15;     ///< share of light lost at the farthest corner of the panel
  double bounce = 0.0;          ///< share of the picture's mean light scattered evenly by room and glass
  double flicker = 0.0;         ///< relative height of brightness bands that a rolling shutter records
  double flicker_rows = 900.0;  ///< rows of the photograph to a band
};

/// A camera held over the table, or fixed.
struct RoomCamera {
  int width = 3264, height = 2448;
  Optic optic = {};
  Eigen::Isometry3d camera_from_room = Eigen::Isometry3d::Identity();
  double blur = 0.6;                       ///< standard deviation of lens and focus blur, pixels
  Eigen::Vector2d shake{0.0, 0.0};         ///< path of the hand during the exposure, pixels
  Eigen::Vector2d rolling{0.0, 0.0};       ///< drift of the image from the first row to the last, pixels
  double vignetting = 0.35;                ///< share of light lost at the farthest corner
  double electrons_per_lux = 12.0;         ///< from a white surface at the longest hand-held exposure
  double full_well = 9000.0;               ///< electrons of a pixel at white, at most
  double read_noise = 3.0;                 ///< electrons
  Colour white_balance{1.0f, 1.0f, 1.0f};  ///< error left after balancing, relative
  double exposure_stops = 0.0;             ///< away from the automatic exposure
  double sharpening = 0.0;                 ///< strength of the phone's edge boost; 0 none, 0.5 strong
};

/// Everything above, at one moment.
struct Room {
  RoomProjector projector = {};
  CuttingMat mat = {};
  std::vector<PaperSheet> sheets = {};  ///< later ones lie on top
  std::optional<Cloth> cloth = {};      ///< over mat and sheets
  RoomLight light = {};
};

}  // namespace cowlcast::calibration::virtual_table
