// Style: the colours of light that a frame is drawn in.
//
//   FrameStyle style = style_for_cloth(0xff1b2a4a);    // on navy
//
// A line is seen as light sent back by the cloth, so a colour works only where
// the cloth sends that colour back: blue light is lost on yellow cloth. White
// is the strongest on every cloth and belongs to the cut line alone; the other
// lines take the first colour of their list that stands out enough.
#pragma once

#include <QRgb>

namespace cowlcast::projector {

/// Widths in mm of cloth, colours as sent to the projector.
struct FrameStyle {
  double cut_width = 1.0;
  double seam_width = 0.9;
  double mark_width = 1.1;
  double label_height = 14.0;  ///< of capitals
  QRgb cut = 0xffffffff;
  QRgb seam = 0xffffd24a;    ///< seam line and notches' heads
  QRgb guide = 0xff6fd3ff;   ///< grain, fold, marks, label
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

/// The style for a cloth of that colour (sRGB, as a photograph or a colour chart shows it).
FrameStyle style_for_cloth(QRgb cloth);

}  // namespace cowlcast::projector
