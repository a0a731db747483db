// TableWatch: a fixed camera sees whether mat, projector or it itself is moved while she cuts.
//
//   TableWatch watch(map, camera);
//   for (;;) {
//     if (frame) watch.look(grey, seconds); else watch.without_picture(complaint, seconds);
//     if (view.camera_asked) watch.ask(seconds);
//     show(watch.map(), view = watch.said(view));   // the pictures to learn by, a block, a few words
//   }
//
// When cutting begins she is asked to stand clear, and the camera learns the table by a dark, a plain, a
// marked and a grey picture. From then on a move takes the lines away and says what moved by how much. Asked
// again, the camera looks for tags and marks: where they settle it, `map` follows the move and the lines come
// back; else the sheets are asked for. A camera that is pulled out takes nothing away but the watch, and that
// is said. No windows and no clock here.
//
// What it cannot see: a move before it has learnt that is too small for `calibration/watch/since_located.h`,
// and those that `calibration/watch/watch.h` names.
#pragma once

#include <optional>
#include <string>

#include "calibration/camera/fixed_camera.h"
#include "calibration/camera/still_frames.h"
#include "calibration/table_map/table_map.h"
#include "calibration/watch/watch.h"
#include "projector/cutting/view.h"

namespace cowlcast::projector {

/// How the watch stands, for whoever sits beside the table.
struct WatchStanding {
  enum class Kind {
    not_learnt,  ///< the table is not watched yet
    learning,    ///< the pictures are shown; stand clear
    watching,
    moved,   ///< lines are withheld
    unseen,  ///< too little in view
    gone,    ///< no pictures come
  };
  Kind kind = Kind::not_learnt;
  std::string words = {};  ///< what moved and by how much, or why not; may be empty
};

class TableWatch {
 public:
  TableWatch(calibration::TableMap map, calibration::FixedCamera camera);

  /// One frame, 8-bit grey, at `seconds` on a clock that does not go back.
  void look(const cv::Mat& grey, double seconds);

  /// No picture has come, for the reason given; empty: it is only a moment.
  void without_picture(const std::string& complaint, double seconds);

  /// Learn the table; after a move: find it again.
  void ask(double seconds);

  /// The view with what is to be shown, withheld or said now. While cutting has not begun, nobody is asked
  /// to stand clear.
  CuttingView said(CuttingView view) const;

  /// The frames taken so far while the table is learnt, by the pictures dark, plain, marked and grey; null at
  /// any other time. The watch of moves has no use for the grey; who judges brightness has.
  const calibration::StillFrames* learning() const { return still_ ? &*still_ : nullptr; }

  /// The table learnt, in view, and as it was: what else the camera sees can be told in mat millimetres.
  bool steady() const { return state_ == State::watching && gone_.empty() && !unseen_; }

  WatchStanding standing() const;

  /// What holds now.
  const calibration::TableMap& map() const { return map_; }
  const calibration::FixedCamera& camera() const { return camera_; }
  /// Counts how often the camera has found the table again at another place: map or camera are others then.
  int found_again() const { return found_again_; }

 private:
  enum class State {
    waiting,   ///< for her to stand clear
    learning,  ///< the pictures are shown
    watching,
    moved,  ///< lines are withheld
  };
  void begin_learning(double seconds);
  void finish(double seconds);
  void learn(const calibration::WatchPictures& pictures);
  void find_again(const calibration::WatchPictures& pictures, double seconds);
  void judge(const calibration::WatchReport& report);
  void give_up(const std::string& reason, double seconds);

  calibration::TableMap map_;
  calibration::FixedCamera camera_;
  State state_ = State::waiting;
  std::optional<calibration::Watch> watch_;  // once learnt
  std::optional<calibration::StillFrames> still_;
  double since_ = 0.0;       // when learning began
  double frame_ = 0.0;       // when the last frame came
  std::string reason_;       // why the lines are withheld, or why learning has failed
  double told_ = 0.0;        // mm that `reason_` speaks of
  std::string gone_;         // why no pictures come
  bool unseen_ = false;      // too little in view
  std::string news_;         // what came of the last look
  double news_until_ = 0.0;  // seconds
  int found_again_ = 0;
};

}  // namespace cowlcast::projector
