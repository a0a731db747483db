// The cutting view: what is on the table and what a key does to it. No window here.
//
//   CuttingView view = new_view(front, cuts, laying, style);
//   view = after(view, Act::left, Pace::coarse);            // 10 mm to the left
//   QImage frame = rendered(map, view_marks(view, map), view.laying.height);
//
// Before the first stroke of a day the cautions are read, one a press. Then the
// piece is laid: moved, turned, flipped, or found again by chalk marks. Then it
// is cut stroke by stroke: `Act::next` marks the present stroke as cut and goes
// to the next, `Act::back` takes that back. One action a key, so that a
// presenter's remote or a page-turning pedal is enough. While cutting, the
// laying is locked. A piece larger than the light is shown part by part; each part but
// the first is found again by chalk marks before it is cut.
//
// A watcher (of the calibration, of the path ahead of the blade) has two ways to
// speak: `blocked` puts a reason in the place of the lines until it is cleared or
// waived, and `notice` draws over them.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "projector/blade/blade_marks.h"
#include "projector/blade/order.h"
#include "projector/cutting/light_steps.h"
#include "projector/cutting/record.h"
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
  home,    ///< back to the laid-out place
  next,    ///< read on; begin to cut; this stroke is cut
  back,    ///< take that back; while laying: a mark, or the step to this part
  legend,  ///< show or hide
  band,    ///< show or hide
  grain,   ///< a line along the grain across the whole light, to lay the cloth by
  part,    ///< show the next part of a piece that is larger than the light
  unlock,  ///< lay the piece again; what is cut stays cut
  waive,   ///< cut in spite of a block: asks once, then waives it
  look,    ///< let the fixed camera learn the table, or find it again after a move
  end,     ///< end the sitting; between strokes it asks once
};

enum class Phase { cautions, laying, cutting };

/// How far one key press goes.
enum class Pace { fine, normal, coarse };

/// One step of moving, mm, and of turning, radians.
double move_step(Pace pace);
double turn_step(Pace pace);

/// What a watcher wants seen above all.
struct Notice {
  std::vector<Mark> marks = {};  ///< mat mm, drawn last
  bool dim = false;              ///< everything else goes dim
  std::string words = {};        ///< a sentence, shown even when the legend is hidden; empty: none
};

/// What the projector shows.
enum class Light {
  lines,   ///< the piece, the blade's path, words
  dark,    ///< nothing
  plain,   ///< white all over
  marked,  ///< the border marks alone
  grey,    ///< an even grey of `kGreyLevel`
};
inline constexpr int kGreyLevel = 96;  ///< 8-bit

/// What the fixed camera can be asked for in a view.
enum class CameraAsk {
  none,     ///< there is no camera, or it is at work
  by_look,  ///< `Act::look` asks it to learn the table, or to find it again
  by_next,  ///< and so does `Act::next`
};

/// How a part stood when it was left for the next.
struct PartBefore {
  Laying laying;
  std::optional<Laying> kept;
  Phase phase = Phase::laying;
  std::vector<Cut> plan;
  bool ordered = false;
  int cut = 0;
  std::vector<Point> crosses;
  std::optional<LayingDoubt> doubt;
};

struct CuttingView {
  drafting::Piece piece;
  Laying laying;
  std::optional<Laying> kept;  ///< the laid-out place, which moves near it go to
  FrameStyle style;
  Shown shown;
  BladeOverlay overlay;
  Operator person;
  Polyline mat;  ///< outline of the cutting mat, mat mm; empty: not known
  Phase phase = Phase::laying;
  int cautions_shown = 0;
  bool cautions_read = false;  ///< in this sitting
  std::vector<Cut> plan;       ///< strokes, piece frame; in the order they are cut once `ordered`
  bool ordered = false;
  int cut = 0;           ///< strokes that are cut; the present one is plan[cut]
  double seconds = 0.0;  ///< at the table, earlier sittings included
  bool legend = true;
  bool inches = false;  ///< lengths in the legend; else mm
  bool grain_line = false;
  std::vector<LightStep> parts;    ///< when the piece is larger than the light
  Polyline lit;                    ///< the light's outline that the parts were divided for, mat mm
  size_t part = 0;                 ///< the one shown
  std::vector<PartBefore> before;  ///< the parts before that one
  bool to_find = false;            ///< this part has yet to be found by `crosses`; nothing is cut before
  std::vector<Point> crosses;      ///< chalked at the last part, piece frame
  std::vector<Point> pointed;      ///< of these, in their order, those pointed out so far, mat mm
  /// Of this part's place next to the parts before, back to the last that was laid by hand; none: this one.
  std::optional<LayingDoubt> doubt;
  std::string message;              ///< of the last action, one sentence
  std::string block;                ///< why not to cut by this light now; empty: no reason
  std::vector<std::string> waived;  ///< blocks waived in this sitting
  std::string table_made_at;        ///< of the calibration that is cut by
  std::string begun_at;             ///< when this sitting began, as records have it
  bool asked = false;               ///< the last act asked whether to waive, or to end
  bool ended = false;
  Notice notice;
  Light light = Light::lines;  ///< else: the camera learns, and nothing but Act::end does anything
  bool border_marks = false;   ///< shown with the lines, for a fixed camera
  CameraAsk camera = CameraAsk::none;
  bool camera_asked = false;  ///< by the last act
  std::string way_out;        ///< what may be done about the block, besides waiving it
};

/// What is to be read before the first stroke of a day.
const std::vector<std::string>& cautions();

/// A view that begins with laying; the strokes are put in order when cutting begins. The laying is the
/// laid-out place.
CuttingView new_view(drafting::Piece piece, std::vector<Cut> plan, const Laying& laying,
                     const FrameStyle& style);

/// The view after an action; the same view when the action does nothing there.
CuttingView after(CuttingView view, Act act, Pace pace);

/// The piece dragged by `shift` mm while it is laid.
CuttingView dragged(CuttingView view, const Point& shift);

/// The view with its piece divided into parts when `lit` cannot show all of it (else it stays where it lies).
/// Throws drafting::Refusal as `light_steps` does.
CuttingView in_parts(CuttingView view, const Polyline& lit);

/// The view after a chalk mark was pointed out on the mat: with the last of them the piece is found again
/// and `message` tells how far each is off and what that leaves of error at the cut lines, or why not.
/// Nothing changes but when there is something `to_find`.
CuttingView after_pointing(CuttingView view, const Point& mat);

/// The view with a reason not to cut in place of its lines, and what may be done about it; an empty one
/// clears it. A reason that was waived in this sitting does not block again.
CuttingView blocked(CuttingView view, const std::string& reason, const std::string& way_out = {});

/// Begun where a record stopped, on cloth as high as the view has it: what is cut stays cut, what is left is
/// put in the order of this laying and person. Throws drafting::Refusal as `taken_as_cut` does. And the
/// record as the view stands now.
CuttingView resumed(CuttingView view, const Record& record);
Record recorded(const CuttingView& view, Record record, const std::string& now);

bool is_laying(const CuttingView& view);
bool all_cut(const CuttingView& view);

/// The seam a stroke runs along, in words: "armhole".
std::string stroke_name(const drafting::Piece& piece, const Cut& cut);

}  // namespace cowlcast::projector
