// The cutting view: what is on the table and what a key does to it. No window here.
//
//   CuttingView view = new_view(front, blade, {});
//   view = after(view, Act::left, Pace::coarse);            // 10 mm to the left
//   QImage frame = rendered(map, view_marks(view, map), view.laying.height);
//
// First the piece is laid: moved, turned, flipped. Then it is cut stroke by
// stroke: `Act::next` marks the present stroke as cut and goes to the next,
// `Act::back` takes that back. One action a key, so that a presenter's remote or
// a page-turning pedal is enough. While cutting, the laying is locked.
#pragma once

#include <string>
#include <vector>

#include "calibration/table_map/table_map.h"
#include "projector/blade/blade_marks.h"
#include "projector/frame/piece_marks.h"

namespace cowlcast::projector {

enum class Act { left, right, away, nearer, turn_left, turn_right, flip, next, back, legend, band, unlock };

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
  std::vector<Cut> plan;  ///< strokes in the order they are cut, piece frame
  int stroke = -1;        ///< index of the present stroke; -1: laying; plan.size(): all cut
  bool legend = true;
};

/// A view that begins with laying. `plan` is in the order it shall be cut.
CuttingView new_view(drafting::Piece piece, std::vector<Cut> plan, const Laying& laying,
                     const FrameStyle& style);

/// The view after an action; the same view when the action does nothing there.
CuttingView after(CuttingView view, Act act, Pace pace);

bool is_laying(const CuttingView& view);
bool all_cut(const CuttingView& view);

/// What the legend says now, a line each.
std::vector<std::string> legend_lines(const CuttingView& view);

/// Everything to draw, mat mm. Needs a QGuiApplication for writing.
std::vector<Mark> view_marks(const CuttingView& view, const calibration::TableMap& map);

}  // namespace cowlcast::projector
