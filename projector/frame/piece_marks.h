// What a piece looks like in light: its lines and marks, each with a form of its own.
//
//   std::vector<Mark> marks = piece_marks(front, laying, style_for_cloth(navy), {});
//   QImage frame = rendered(map, marks, laying.height);
//
// The forms, told apart without colour:
//   cut line     one unbroken line, the only white one
//   seam line    short dashes
//   fold         two fine lines side by side and the words FOLD OF THE CLOTH: never cut
//   facing fold  long fine dashes with a tick at each gap, towards the facing, and the
//                words FACING TURNS HERE: the edge the garment shows later, not cut either
//   notch        a pin: a short bar in from the cut line with a ring as its head,
//                two side by side on a back
//   mark         a square on its corner around an open middle, for chalk or thread
//   grainline    a chain of long and short with an open arrow at both ends
//   label        the piece's name and how to lay it
// Over the piece lies a faint light; around it the projector stays dark.
#pragma once

#include <optional>
#include <vector>

#include "drafting/piece/marks.h"
#include "drafting/piece/piece.h"
#include "projector/frame/laying.h"
#include "projector/frame/render.h"
#include "projector/frame/style.h"
#include "projector/frame/writing.h"

namespace cowlcast::projector {

/// What is shown.
struct Shown {
  bool cut_line = true, seam_line = true, notches = true, marks = true, grain = true, fold = true,
       label = true, ground = true;
};

/// The cut line as it is cut: the outline without the stretch that lies on the
/// fold, piece frame, in the outline's direction. A piece without a fold gives
/// one run that ends where it began.
std::vector<Polyline> cut_runs(const drafting::Piece& piece);

/// A laid piece, mat mm: marks in the order they are drawn, and words with the places they may have.
Drawing piece_drawing(const drafting::Piece& piece, const Laying& laying, const FrameStyle& style,
                      const Shown& shown);

/// The same with its words in place. Words need a QGuiApplication (any platform, "offscreen" too).
std::vector<Mark> piece_marks(const drafting::Piece& piece, const Laying& laying, const FrameStyle& style,
                              const Shown& shown);

/// The lines of the piece that words should not lie over, mat mm.
std::vector<Polyline> lines_to_keep_clear(const drafting::Piece& piece, const Laying& laying);

/// The closed cut line alone in white, `width` mm wide on the cloth; the part on the fold included.
std::vector<Mark> cut_line_alone(const drafting::Piece& piece, const Laying& laying, double width = 1.0);

}  // namespace cowlcast::projector
