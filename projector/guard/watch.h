// Watch: a fixed camera looks along the stroke that is cut and tells what lies ahead of the blade.
//
//   CorridorWatch watch(backdrop, {.stroke = path, .holding_left = true});
//   watch.project(picture, now);                       // whenever the projected picture changes
//   WatchReport report = watch.look(frame, now);       // for every frame, an empty one when there is none
//   if (report.state == WatchState::marked) draw(report.blobs);
//
// It knows the bare cloth (`Backdrop`) and what is projected; what looks otherwise and
// is not the cutter with its hand (`Following`) is told, from the second frame in
// which it is seen on. When it cannot see it says so, and why: silence never means
// "clear". Where the camera is slow (fewer than 12 frames a second), the second frame would be too late:
// plain things are told from their first frame on, and others too while light, picture and cloth keep still.
// With fewer than seven frames a second a thing may lie there for a fifth of a second before there is any
// frame of it: `slow`.
//
// What it does not do. It guards nothing: it tells, after a tenth of a second or two,
// and only what it can tell from the cloth. It does not tell
//   - what lies beside the cutter or nearer before its front than about 25 mm, small things up to 60 mm,
//   - what is smaller than a disc of about 8 mm, and thin things such as single pins,
//   - things of the cloth's own colour and brightness (within about a tenth), such as a hand on sand-coloured
//     cloth, least of all in the pattern of a printed cloth, whose own colours it takes for cloth,
//   - what lay on the cloth already when the bare cloth was learnt,
//   - a flat thing of the cloth's tint whose brightness is just that of the shadow it might stand in,
//     such as narrow steel blades on white,
//   - printed cloth from things, where it is dragged by more than about 4 mm, or 3 mm at once (`Slip`): it is
//     told as something ahead, or as cloth that is not the one that was learnt,
//   - that cloth was dragged: that is `ClothShift`'s, between strokes, where a print, chalk or edges show it.
// Shadows count as shadows where they are soft, or where the projector's light alone is missing; the hard
// shadow of a single lamp may be told as a thing, and so may the narrow shadow in the beam of what is higher
// than a hand over the cloth, or looks like the cloth itself. A lamp that lights only a part of the cloth
// around, so that a tenth of it stays as it was, is taken for a cover until the cloth is learnt again;
// something even over all that the camera sees within a hand's breadth of the corridor, from one frame to the
// next, for a change of light. The camera's exposure must be held while the bare cloth is learnt. An aid to
// the eye, no more.
#pragma once

#include <string>
#include <vector>

#include "projector/guard/anchors.h"
#include "projector/guard/expectation.h"
#include "projector/guard/following.h"

namespace cowlcast::projector {

enum class WatchState { clear, marked, cannot_see };

/// Why the watch cannot see.
enum class Blindness {
  none,
  no_picture,   ///< the camera is gone
  frozen,       ///< it sends the same picture again and again
  too_dark,     ///< the light is down to a fraction of what it was
  covered,      ///< most of the corridor is hidden, or the cloth is not the one that was learnt
  moved,        ///< the camera, or the table under it, has been moved
  out_of_view,  ///< part of the corridor lies outside of what camera or projector reach
};

/// A sentence or two for the person at the table: the cause, then the cure. Empty for `none`.
std::string words(Blindness reason);

struct WatchReport {
  WatchState state = WatchState::clear;
  Blindness reason = Blindness::none;
  std::vector<Blob> blobs;  ///< what lies ahead, nearest first; only when marked
  double front = 0.0;       ///< how far along the stroke the cutter has been seen, mm
  bool slow = false;        ///< frames come so seldom that it tells later than in a fifth of a second
};

class CorridorWatch {
 public:
  /// Throws drafting::Refusal for a stroke of no length. The backdrop must be ready.
  CorridorWatch(const Backdrop& backdrop, const Corridor& corridor);

  /// The light in which the stroke before was last seen: what differs from it in the first frame is told at
  /// once.
  void begin_in(const MeasuredLight& light);

  /// The projected picture from now on, 8-bit grey or BGR of the map's size.
  void project(const cv::Mat& picture, double seconds);

  /// `frame`: 8-bit BGR of the camera's size; of any other size, or empty, counts as none.
  WatchReport look(const cv::Mat& frame, double seconds);

  /// The cells of the strip as they were last compared, for looking at; and where they lie.
  const Compared& compared() const { return compared_; }
  const MeasuredLight& light() const { return light_; }
  const StripView& view() const { return view_; }

 private:
  Pictures seen_pictures(double seconds);
  Blindness blindness(const cv::Mat& frame, double seconds);
  bool covered() const;
  bool cloth_moves(const Blob& blob) const;
  bool told_at_once(const Blob& blob, bool steady, bool one_picture) const;

  TableSight sight_;
  Strip strip_;
  StripView view_;
  LightMeter meter_;
  Expectation expectation_;
  Following following_;
  double power_;  // of the projector's light
  Anchors anchors_;
  cv::Mat last_;  // frame
  MeasuredLight light_;
  Compared compared_;
  double projected_ = -1e9;
  bool arrived_ = true;   // the picture, at the camera
  bool hurried_ = false;  // it came before the one before had settled: a third may still be seen
  bool chased_ = false;   // so in this frame
  bool out_of_view_ = false, covered_ = false;
  double seen_last_ = -1.0, changed_last_ = 0.0, sound_last_ = 0.0, still_last_ = 0.0;
  bool slow_ = false;
  double step_ = 0.1, before_ = -1.0;  // seconds between frames; time of the last one
};

}  // namespace cowlcast::projector
