// Random rooms: honest draws of tables, lamps, projectors, printers and hands.
//
//   RoomOptions options{.pages = pages, .paper = {297, 210}};
//   Session session = random_session(7, options);
//   for (const Shot& shot : session.shots)
//     photos.push_back(photograph(shot.room, shot.camera, shot.target ? target : plain, shot.seed));
//
// The same seed and options give the same session, whatever pages are handed
// in, as long as their number is the same.
#pragma once

#include <cstdint>
#include <opencv2/core.hpp>
#include <optional>
#include <string>
#include <vector>

#include "calibration/virtual_table/photograph.h"
#include "calibration/virtual_table/room.h"

namespace cowlcast::calibration::virtual_table {

/// What goes wrong in a session; at most one thing does.
enum class Fault {
  none,
  sheet_moved,         ///< one sheet is nudged between two photographs
  projector_moved,     ///< the projector is bumped between two photographs
  sheet_other_scale,   ///< one sheet comes from another printer setting
  curled_sheet,        ///< a corner of one sheet stands up
  blurred_photograph,  ///< one photograph is out of focus or shaken
  too_dark,            ///< hardly any light
  glare,               ///< glossy paper mirrors lamp and projector
  shadow,              ///< somebody leans over the table
  refocused,  ///< autofocus changes the focal length between photographs (honest: not a reason to refuse)
  sheets_to_one_side,  ///< all sheets in one third of the picture
  one_sheet,           ///< only one sheet on the table
};

/// The fault's name, as in the enumeration.
std::string name_of(Fault fault);

struct RoomOptions {
  std::vector<cv::Mat> pages = {};      ///< one image a sheet; may be empty images to draw the geometry only
  Eigen::Vector2d paper{297.0, 210.0};  ///< mm, across and down
  double pixel_mm = 25.4 / 300.0;       ///< of the pages
  cv::Size projector{1920, 1080};       ///< 0 x 0: draw one of the usual sizes
  int target_photographs = 2, plain_photographs = 1;
  Fault fault = Fault::none;
  double hardness = 0.5;  ///< 0 gentle .. 1 the wide ranges: short throw, poor light, wobble, JPEG 60
  bool electronic_keystone = false;  ///< the projector squares its picture by resampling
  bool rolling_shutter = false;      ///< drift of the hand and brightness bands between rows
  double board = 0.0;                ///< thickness of a board under the last of the sheets, mm
  bool turned_files = false;  ///< photographs carry an EXIF orientation other than 1, as phones write it
  double breathing = 4.5;     ///< mm: focal length f at infinity becomes f (1 + breathing / distance)
  double ruler_sigma = 0.05;  ///< error of reading the sheets' rulers, mm
  double tape_sigma = 0.25;   ///< error of the tape between two sheets, mm
};

/// One photograph to take.
struct Shot {
  Room room = {};  ///< as it stands at that moment
  RoomCamera camera = {};
  bool target = true;  ///< the coded picture is shown, else plain light
  PhotographFile file = {};
  std::uint64_t seed = 1;
};

/// A tape laid between the centres of two sheets' pages.
struct Tape {
  int from = 0, to = 0;  ///< index of the sheets, the first is 0
  double mm = 0.0;       ///< as read
};

/// One visit to a table.
struct Session {
  Room room = {};                ///< as it is when all is done: the truth that a calibration must meet
  std::vector<Shot> shots = {};  ///< in the order taken, targets and plain mixed
  double ruler_across = 240.0,
         ruler_down = 180.0;      ///< lengths on paper of nominal 240 and 180 mm, as read, mm
  std::optional<Tape> tape = {};  ///< between the two sheets farthest apart; none with fewer than two
  Fault fault = Fault::none;
  int faulty_sheet = -1;  ///< index of the sheet at fault
  int faulty_shot = -1;   ///< index of the photograph at fault or the first one after the change
};

/// Draws a session. Throws std::invalid_argument for options without pages.
Session random_session(std::uint64_t seed, const RoomOptions& options);

}  // namespace cowlcast::calibration::virtual_table
