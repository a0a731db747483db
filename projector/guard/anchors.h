// Anchors: small still patches around the light by which a camera that has been moved is noticed.
//
//   Anchors anchors(backdrop);
//   if (anchors.moved(grey)) ...
//
// Only patches outside of the projected picture serve, since light changes there
// alone by brightness. Without at least `kFewest` of them nothing is noticed.
#pragma once

#include <opencv2/core.hpp>
#include <optional>
#include <vector>

#include "projector/guard/backdrop.h"

namespace cowlcast::projector {

class Anchors {
 public:
  static constexpr int kFewest = 5;

  /// By the backdrop's `still`; none when it is empty. Patches that hardly stand out of the camera's noise
  /// are left out: they would not be found again.
  explicit Anchors(const Backdrop& backdrop);

  /// Looks at a few of the patches; true when those looked at last agree that the view has shifted by more
  /// than 1.5 pixels. `frame` is 8-bit, grey or BGR.
  bool moved(const cv::Mat& frame);

  int count() const { return static_cast<int>(patches_.size()); }

 private:
  struct Patch {
    cv::Rect box;
    cv::Mat look;
    std::optional<double> shift = {};  // pixels; none: not found again
    bool looked_at = false;
  };
  std::vector<Patch> patches_;
  size_t next_ = 0;
};

}  // namespace cowlcast::projector
