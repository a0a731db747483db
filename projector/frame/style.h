// Style: the colours of light that a frame is drawn in.
//
//   FrameStyle style = style_for_cloth(0xff1b2a4a);    // on navy
//
// A line is seen as light sent back by the cloth, so a colour works only where
// the cloth sends that colour back: blue light is lost on yellow cloth. White
// is the strongest on every cloth and of all lines belongs to the cut line alone; the
// others take the first colour of their list that stands out enough. Dark and
// patterned cloth gets wider lines, with the same middle. A pattern's own edges cut
// letters up, and light adds to it and never darkens it: there words are white
// and larger, and no faint light is laid over the piece.
#pragma once

#include <QRgb>
#include <vector>

namespace cowlcast::projector {

/// Widths in mm of cloth, colours as sent to the projector.
struct FrameStyle {
  double cut_width = 1.0;
  double seam_width = 0.9;
  double mark_width = 1.1;
  double label_height = 14.0;  ///< of the piece's name, capitals
  double word_height = 12.0;   ///< of all that is said on the table, capitals
  QRgb cut = 0xffffffff;
  QRgb seam = 0xffffd24a;    ///< seam line and notches' heads
  QRgb guide = 0xff6fd3ff;   ///< grain, fold, marks
  QRgb words = 0xff6fd3ff;   ///< all that is said but warnings; on even cloth as `guide`
  QRgb ground = 0xff383838;  ///< faint light over the piece, so that it stands out from the rest
  QRgb warn = 0xffff9d3c;    ///< the keep-out band and stop marks
};

/// Relative luminance 0..1 of an sRGB colour: WCAG 2.2, definition of relative luminance.
double relative_luminance(QRgb colour);

/// Contrast of two lights as the eye sees them on a cloth under room light:
/// (L1 + 0.05) / (L2 + 0.05) with L the luminance of light times cloth, WCAG 2.2.
/// `room` is the room's light as a share of the projector's white:
/// 0.15 is 150 lux against 1000, a lit room.
double contrast_on_cloth(QRgb light, QRgb other, QRgb cloth, double room = 0.15);

/// The same as an eye sees it that is set to the room around, not to the cloth: dark cloth sends back so
/// little that the glare within the eye, 0.05 of the brightest thing in view, hides the lines. White things
/// lie about in the room's light, and the line itself is seen.
double contrast_in_room(QRgb light, QRgb other, QRgb cloth, double room = 0.15);

/// The style for a cloth of that colour (sRGB, as a photograph or a colour chart shows it).
FrameStyle style_for_cloth(QRgb cloth);

/// The style for patterned cloth: lines that stand out on each of its colours. At least one.
FrameStyle style_for_cloth(const std::vector<QRgb>& cloth);

/// True when in a lit room some line of the style would be seen at less than 3:1 on one of these cloths, so
/// that the room should be dimmed. `room` as above; 0.15 when nobody has measured it.
bool wants_dim_room(const FrameStyle& style, const std::vector<QRgb>& cloth, double room = 0.15);

}  // namespace cowlcast::projector
