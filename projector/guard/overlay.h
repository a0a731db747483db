// Overlay: how the watch shows what it has found, calmly.
//
//   CalmWatch calm;
//   const Warning& warning = calm.after(report, now);   // once a frame
//   notice.marks.push_back(rings_of(warning, style));   // over all the rest, which is dimmed
//
// Around each spot a ring of light is drawn. Nothing ever flashes: a warning comes at once, stays for at
// least a second and goes only when the way has been clear for that long, so that light changes at most twice
// in a second. WCAG 2.2, success criterion 2.3.1, allows three flashes, that is pairs of opposing changes, in
// any second.
#pragma once

#include <vector>

#include "projector/frame/render.h"
#include "projector/frame/style.h"
#include "projector/guard/watch.h"

namespace cowlcast::projector {

/// What of the watch is on the table.
struct Warning {
  WatchState state = WatchState::clear;
  Blindness reason = Blindness::none;
  std::vector<Blob> blobs;  ///< while marked

  bool same_as(const Warning& other) const;
};

/// Steadies the watch's reports. Plain value; times are seconds, ever growing.
class CalmWatch {
 public:
  static constexpr double kHold = 1.0;  ///< s that a shown state lasts at least, before it is taken away
  static constexpr double kMove = 0.5;  ///< s between two redrawings of rings that follow a moving thing

  /// The warning to show from now on. It changes only when it must: compare with `same_as`.
  const Warning& after(const WatchReport& report, double seconds);
  const Warning& shown() const { return shown_; }
  /// True once for every warning that has just begun: the moment for a sound, if wanted.
  bool begun() const { return begun_; }

 private:
  Warning shown_;
  double since_ = -1e9;   // when the shown state was taken up
  double wanted_ = -1e9;  // when it was last reported
  double drawn_ = -1e9;   // when its rings were last moved
  bool begun_ = false;
};

/// A ring around every blob; no lines when there is none.
Mark rings_of(const Warning& warning, const FrameStyle& style);

}  // namespace cowlcast::projector
