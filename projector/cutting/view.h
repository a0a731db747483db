// The cutting view: what is on the table and what a key does to it. No window here.
//
//   CuttingView view = new_view(front, blade, {});
//   view = after(view, Act::left, Pace::coarse);            // 10 mm to the left
//   QImage frame = rendered(map, view_marks(view, map), view.laying.height);
//
// Before the first stroke of a day the cautions are read, one a press. Then the
// piece is laid: moved, turned, flipped, or found again by chalk marks. Then it
// is cut stroke by stroke: `Act::next` marks the present stroke as cut and goes
// to the next, `Act::back` takes that back. One action a key, so that a
// presenter's remote or a page-turning pedal is enough. While cutting, the
// laying is locked.
#pragma once

#include <string>
#include <vector>

#include "calibration/table_map/table_map.h"
#include "projector/blade/blade_marks.h"
#include "projector/blade/order.h"
#include "projector/cutting/record.h"
#include "projector/cutting/registration.h"
#include "projector/frame/piece_marks.h"

namespace cowlcast::projector {

enum class Act {
  left,
  right,
  away,
  nearer,
  turn_left,
  turn_right,
  flip,
  next,    ///< read on; begin to cut; this stroke is cut
  back,    ///< take that back
  legend,  ///< show or hide
  band,    ///< show or hide
  grain,   ///< a line along the grain across the whole light, to lay the cloth by
  part,    ///< show the next part of a piece that is larger than the light
  unlock,  ///< lay the piece again; what is cut stays cut
};

enum class Phase { cautions, laying, cutting };

/// How far one key press goes.
enum class Pace { fine, normal, coarse };

/// One step of moving, mm, and of turning, radians.
double move_step(Pace pace);
double turn_step(Pace pace);

struct CuttingView {
  drafting::Piece piece;
  Laying laying;
  FrameStyle style;
  Shown shown;
  BladeOverlay overlay;
  Operator person;
  Phase phase = Phase::laying;
  int cautions_shown = 0;
  bool cautions_read = false;  ///< in this sitting
  std::vector<Cut> plan;       ///< strokes, piece frame; in the order they are cut once `ordered`
  bool ordered = false;
  int cut = 0;  ///< strokes that are cut; the present one is plan[cut]
  bool legend = true;
  bool grain_line = false;
  std::vector<LightStep> parts;  ///< when the piece is larger than the light
  size_t part = 0;               ///< the one shown
  std::vector<Point> crosses;    ///< chalked at the last part, to be met again, piece frame
  std::vector<Point> pointed;    ///< of these, those pointed out so far, mat mm
  std::string message;           ///< of the last action, one sentence
};

/// What is to be read before the first stroke of a day.
const std::vector<std::string>& cautions();

/// A view that begins with laying; the strokes are put in order when cutting begins.
CuttingView new_view(drafting::Piece piece, std::vector<Cut> plan, const Laying& laying,
                     const FrameStyle& style);

/// The view after an action; the same view when the action does nothing there.
CuttingView after(CuttingView view, Act act, Pace pace);

/// The view with its piece divided into parts when `lit` cannot show all of it (else unchanged). Throws
/// drafting::Refusal as `light_steps` does.
CuttingView in_parts(CuttingView view, const Polyline& lit);

/// The view after a chalk mark was pointed out on the mat: with the last of them the piece is found again
/// and `message` tells the residual, or why not. Without crosses to meet nothing changes.
CuttingView after_pointing(CuttingView view, const Point& mat);

/// Begun where a record stopped, and the record as the view stands now.
CuttingView resumed(CuttingView view, const Record& record);
Record recorded(const CuttingView& view, Record record, const std::string& now);

bool is_laying(const CuttingView& view);
bool all_cut(const CuttingView& view);

/// What the legend says now, a line each.
std::vector<std::string> legend_lines(const CuttingView& view);

/// Everything to draw, mat mm. Needs a QGuiApplication for writing.
std::vector<Mark> view_marks(const CuttingView& view, const calibration::TableMap& map);

}  // namespace cowlcast::projector
