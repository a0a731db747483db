// Lesson: the draft played step by step, in light on the table or on any screen.
//
//   LessonView view{.draft = draft_cowl_front(base, wishes)};
//   LessonStage stage = stage_on_screen(1280, 800, view.draft);      // or stage_on_table(map, draft, cloth)
//   view = after(std::move(view), LessonAct::next);
//   QImage picture = rendered(stage.map, lesson_marks(view, stage, FrameStyle{}), stage.laying.height);
//
// On a table every line lies at true size; on a screen the whole is scaled to fit
// and the scale is said. The forms tell the lines apart without colour: parts and
// seam lines unbroken, slash lines in long dashes, the centre front a chain of
// long and short, the cowl edge two lines side by side, the facing in short
// dashes, the cut line the only white one; what earlier steps drew is dim.
#pragma once

#include <string>
#include <vector>

#include "calibration/table_map/table_map.h"
#include "drafting/teaching/steps.h"
#include "projector/frame/laying.h"
#include "projector/frame/render.h"
#include "projector/frame/style.h"

namespace cowlcast::projector {

/// What is shown; a plain value.
struct LessonView {
  drafting::CowlDraft draft;
  size_t step = 0;       ///< from 0 to drafting::step_count - 1
  double share = 0.0;    ///< of the opening, 0 closed to 1 open
  bool playing = false;  ///< the opening runs by itself
  bool legend = true;
};

enum class LessonAct { next, back, open, close, play, legend };

/// The view after an act. The opening begins closed when one comes from before it,
/// and open when one comes back to it; opening and closing go by a twentieth, and
/// do nothing in other steps.
LessonView after(LessonView view, LessonAct act);

inline constexpr double seconds_to_open = 4.0;

/// The view `seconds` later: moved on when it is playing.
LessonView later(LessonView view, double seconds);

/// Where a lesson is drawn.
struct LessonStage {
  calibration::TableMap map;
  Laying laying;                   ///< of the draft, mat mm
  double unit = 1.0;               ///< lines and letters are so many times as large as on a table
  Polyline lit;                    ///< what can be lit, mat mm
  std::vector<Point> column = {};  ///< on a screen: two corners of a column kept free for words
  double scale = 1.0;              ///< millimetres of the draft to one pixel, on a screen
};

/// At true size in the middle of the light, on its side as pieces are laid.
LessonStage stage_on_table(const calibration::TableMap& map, const drafting::CowlDraft& draft, double cloth);

/// Scaled to fit a picture of that size in pixels. Throws calibration::Refusal for one under 320 x 240.
LessonStage stage_on_screen(int width, int height, const drafting::CowlDraft& draft);

/// How far the lesson's farthest line lies outside the light, mm; 0 when all is lit.
double outside_of_light(const LessonStage& stage, const drafting::CowlDraft& draft);

/// Needs a QGuiApplication, for the letters.
std::vector<Mark> lesson_marks(const LessonView& view, const LessonStage& stage, const FrameStyle& style);

/// The keys in words, a line each.
std::string lesson_keys();

}  // namespace cowlcast::projector
