// Project: everything a maker decides and does for one garment, as plain values.
//
//   Project project;                              // an empty one, as File > New has it
//   project.pattern.source = PatternSource::size;
//   project.pattern.size = "12";
//   project.cowl.drape = 480;
//
// Only what a person chose or did stands here. What follows from it (pieces, walks,
// strokes) is worked out anew when it is shown, so that a project never disagrees
// with itself. Lengths are millimetres. No window, no file: `project_file.h` reads and
// writes it, `history.h` undoes, `work_copy.h` keeps it over a crash.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "calibration/camera/fixed_camera.h"
#include "calibration/check/hand_check.h"
#include "calibration/table_map/table_map.h"
#include "drafting/block/block.h"
#include "drafting/cowl/cowl_front.h"
#include "projector/cutting/record.h"

namespace cowlcast::projector {

enum class PatternSource {
  none,     ///< not chosen yet
  size,     ///< the built-in block in a standard size
  body,     ///< the built-in block by body measures
  drawing,  ///< the maker's own, from SVG
};

/// A drawing as it was opened; its text is kept, so the project needs no other file.
struct PatternDrawing {
  std::string name;                          ///< of the file, without its folder
  std::string svg;                           ///< its text; empty: none
  std::map<std::string, std::string> roles;  ///< set by hand: a path's id, and the role it has
};

struct PatternChoice {
  PatternSource source = PatternSource::none;
  std::string size;
  drafting::BodyMeasures body = drafting::demo_measures();  ///< a sample to begin with
  bool body_is_own = false;  ///< said to be the wearer's, where a length is still the sample's
  PatternDrawing front, back;
};

enum class ClothKind { knit, woven };

struct ClothChoice {
  double width = 1500.0;
  ClothKind kind = ClothKind::knit;
  double thickness = 0.8;                     ///< of one layer
  std::vector<unsigned> colours{0xff808080};  ///< ARGB; more than one: patterned
};

/// What the cowl is to be, and what of the top is wanted with it.
struct TopChoice {
  bool back = true;
  bool camisole = true;
  double camisole_depth = 130.0;
};

/// What a tape said between two crosses of light, as it was judged then.
struct KeptCheck {
  std::string at;  ///< when
  calibration::CheckedReading checked;
};

struct TableChoice {
  int width = 0, height = 0;                    ///< of the projector's picture, pixels; 0: not chosen
  double ruler_across = 0.0, ruler_down = 0.0;  ///< what a sheet's two rulers measure; 0: not measured
  double lamp_height = 0.0;                  ///< the projector's lens over the mat, by tape; 0: not measured
  std::vector<std::string> photographs;      ///< files to calibrate from
  std::optional<calibration::TableMap> map;  ///< as calibrated; none: not yet
  bool simulated = false;              ///< the map is of the tour's table: no light on a real one goes by it
  std::vector<KeptCheck> checks = {};  ///< of this map by hand, in the order they were made
  std::string camera = {};  ///< number, device, film or address of the camera on a cable; empty: none
  std::optional<calibration::FixedCamera> fixed_camera = {};  ///< it stays, and where it stands over this map
};

/// The checks by hand without their times.
inline std::vector<calibration::CheckedReading> readings_of(const TableChoice& table) {
  std::vector<calibration::CheckedReading> readings;
  for (const KeptCheck& kept : table.checks) readings.push_back(kept.checked);
  return readings;
}

struct Project {
  std::string name;
  PatternChoice pattern;
  drafting::CowlWishes cowl;
  TopChoice top;
  ClothChoice cloth;
  TableChoice table;
  std::map<std::string, Record> cutting;  ///< by the piece's name; no entry: not begun
};

/// The same choices for another garment: nothing of it is cut yet.
inline Project variant_of(Project project) {
  project.cutting.clear();
  return project;
}

}  // namespace cowlcast::projector
