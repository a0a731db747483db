// A simulated table to try everything on: photographs to calibrate from, and lines of light on cloth.
//
//   const SimulatedTable table = simulated_table();
//   for (int i = 0; i < photograph_count(table); ++i) save(photograph_file(table, i));
//   CalibrationOutcome outcome = calibrated({.files = ..., .request = request_for(table)});
//   QImage picture = seen_from_above(table, outcome.report.map, frame, cloth, 1.0);
//
// The scenario is invented: four A4 sheets from an office printer, a phone in the
// hand, a full-HD projector over a green mat. The calibration knows nothing of the
// truth: it gets the photographs' files and what the rulers measure, as from a
// real table. A photograph takes some seconds to make.
#pragma once

#include <QImage>
#include <vector>

#include "calibration/solve/calibrate.h"
#include "calibration/virtual_table/random_room.h"
#include "calibration/virtual_table/read_back.h"
#include "projector/frame/laying.h"

namespace cowlcast::projector {

struct SimulatedTable {
  calibration::virtual_table::Session session;
};

/// `pages`: the sheets' pictures; none: four A4 sheets are drawn.
SimulatedTable simulated_table(std::vector<cv::Mat> pages = {});

/// The same without what is printed on the sheets: quick to make, for where things are, not how they look.
SimulatedTable bare_simulated_table();

/// What a steel tape reads there between two crosses of light that are drawn at `from` and `to` by the map,
/// on the bare mat, mm.
double tape_on_simulated_table(const calibration::TableMap& map, const Point& from, const Point& to);

int photograph_count(const SimulatedTable& table);

/// The JPEG file as the phone would have saved it; `index` from 0.
std::vector<unsigned char> photograph_file(const SimulatedTable& table, int index);

/// Picture size and rulers, read to a tenth of a millimetre, as a person would type them.
calibration::CalibrationRequest request_for(const SimulatedTable& table);

/// Cloth on the simulated table, in the map's mat frame.
struct SimulatedCloth {
  Point middle = Point::Zero(), size = Point::Zero();  ///< mm
  double turn = 0.0;                                   ///< anticlockwise, radians
  double height = 1.0;                                 ///< of its upper face, mm
  unsigned colour = 0xff8a3a4c;                        ///< sRGB
  double room_light = 1.0;                             ///< of the room's own light, how much is left on
};

/// Cloth as a person would lay it for a piece: `around` mm beyond the piece on every side, but doubled along
/// the piece's fold, where it ends.
SimulatedCloth cloth_for(const drafting::Piece& piece, const Laying& laying, double around);

/// Where that cloth lies in the room.
calibration::virtual_table::Cloth laid_on(const SimulatedTable& table, const calibration::TableMap& map,
                                          const SimulatedCloth& cloth);

/// What one sees from straight above while the projector shows `frame`: the lit mat and a little around it,
/// the sheets put away.
QImage seen_from_above(const SimulatedTable& table, const calibration::TableMap& map, const QImage& frame,
                       const SimulatedCloth& cloth, double pixels_per_mm);

/// How far a line that is drawn alone lies from where it should on the cloth. `line` in the map's mat frame;
/// where the whole lies is the maker's to say, so only its shape counts.
calibration::virtual_table::ReadBack line_on_cloth(const SimulatedTable& table,
                                                   const calibration::TableMap& map, const Polyline& line,
                                                   bool closed, double height);

}  // namespace cowlcast::projector
