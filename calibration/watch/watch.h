// Watch: notices that mat, projector or camera moved after the table was calibrated.
//
//   Watch watch = Watch::learn(map, camera, pictures);       // border marks shown, nobody in the way
//   for (;;) {
//     const WatchReport report = watch.look(frame, seconds);
//     if (!report.trustworthy()) tell(report.message);       // and show no line as right
//   }
//
// It needs a camera that stays where it is and sees the whole light, printed tags
// at the mat's edge (`edge_tags.h`), and the border marks (`border_marks.h`) in
// every picture that is projected. It looks only around the places it learnt.
//
// Guarantees: a move of 1 mm or more anywhere on the lit mat is found within a
// second of frames at 10 a second or more, as long as four tags and six marks are in view.
// Cover over the others is tolerated. What it does not see: a move while it is not
// looking, and cloth laid over the marks, which lifts their light: keep the cloth
// clear of them, or learn again when it lies.
#pragma once

#include <deque>
#include <opencv2/core.hpp>
#include <optional>
#include <string>
#include <vector>

#include "calibration/camera/fixed_camera.h"
#include "calibration/table_map/table_map.h"
#include "calibration/watch/motion.h"
#include "calibration/watch/patch_tracker.h"

namespace cowlcast::calibration {

/// Frames of the fixed camera, 8-bit grey, a few of each, to learn from or to calibrate again by.
struct WatchPictures {
  std::vector<cv::Mat> dark;    ///< the projector shows black
  std::vector<cv::Mat> plain;   ///< plain light
  std::vector<cv::Mat> marked;  ///< the border marks on black
};

enum class WatchState {
  steady,  ///< all stands where it was learnt
  moved,   ///< something moved; stays so until learnt or calibrated again
  unseen,  ///< too little in view to tell
};

struct WatchReport {
  WatchState state = WatchState::steady;
  std::vector<Moved> moved;  ///< what moved and by how much; while `moved`
  std::string message;       ///< for the person at the table; empty while steady
  int tags = 0, marks = 0;   ///< in view in this frame
  double shift = 0.0;        ///< the largest shift that the frames speak for, mm; also while steady

  bool trustworthy() const { return state == WatchState::steady; }
};

/// A thing that is looked at: where, and how it is found again.
struct WatchedSight {
  Sight sight;
  int number = 0;  ///< tags: the tag's number; marks: index in `border_marks`
  PatchTracker tracker;
  double sigma = 0.05;  ///< of one frame's shift, pixels
};

class Watch {
 public:
  /// Learns where tags, marks and a few things beside the mat are seen. Throws Refusal when too few tags or
  /// marks are in view, saying which.
  static Watch learn(const TableMap& map, const FixedCamera& camera, const WatchPictures& pictures);

  /// One frame more, 8-bit grey, at `seconds` on a clock that does not go back.
  WatchReport look(const cv::Mat& grey, double seconds);

  const std::vector<WatchedSight>& sights() const { return sights_; }
  const TableMap& map() const { return map_; }
  const FixedCamera& camera() const { return camera_; }

 private:
  Watch(TableMap map, FixedCamera camera, std::vector<WatchedSight> sights);

  struct Glance {  // what one frame showed
    double seconds = 0.0;
    std::vector<std::optional<Eigen::Vector2d>> shifts;
  };
  Glance glance(const cv::Mat& grey, double seconds);
  void find_lost(const cv::Mat& grey, Glance& glance);
  std::vector<std::optional<SightShift>> settled() const;

  TableMap map_;
  FixedCamera camera_;
  std::vector<WatchedSight> sights_;
  Motions motions_;
  std::deque<Glance> glances_;           // of the last moments
  std::vector<Eigen::Vector2d> last_;    // last shift of each sight
  std::vector<int> lost_;                // frames since each was seen
  size_t next_lost_ = 0, next_tag_ = 0;  // whose turn it is to be searched for
  int agreeing_ = 0;                     // frames in a row that speak of a move
  std::optional<double> unseen_since_;   // seconds
  WatchReport latched_;
};

}  // namespace cowlcast::calibration
