// CutWatch: what the fixed camera sees ahead of the blade, told on the table while she cuts.
//
//   watching.add(std::make_unique<CutWatch>([] { QApplication::beep(); }));
//
// The bare cloth is learnt together with the table, by the same pictures. From then
// on the corridor along the present stroke is watched: what lies or comes ahead of
// the blade gets a ring of light and everything else goes dim, until the way has
// been clear for a second. Where the corridor cannot be seen, that is said, and why.
// What it cannot tell at all stands in `watch.h`: an aid to the eye, no more, and
// the words on the table say so when cutting begins. No windows and no clock here.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "projector/cutting/watching.h"
#include "projector/guard/overlay.h"
#include "projector/guard/watch.h"

namespace cowlcast::projector {

class CutWatch : public Watcher {
 public:
  /// `sound` is called once whenever something begins to be marked; may be empty.
  explicit CutWatch(std::function<void()> sound = {});

  void learn(const Glimpse& glimpse, const calibration::StillFrames& taken) override;
  void look(const Glimpse& glimpse) override;
  CuttingView said(CuttingView view) const override;

  /// What is on the table of it.
  const Warning& warning() const { return calm_.shown(); }

 private:
  void know_cloth(const Glimpse& glimpse);
  bool follow_stroke(const Glimpse& glimpse);
  void follow_picture(const Glimpse& glimpse);

  std::function<void()> sound_;
  std::vector<std::vector<cv::Mat>> taken_;  // frames in colour, by picture
  std::optional<Backdrop> backdrop_;
  // Why there is none, or why the stroke cannot be watched.
  std::string unready_ = "The cloth is not learnt yet. R: the camera learns it.";
  std::optional<CorridorWatch> watch_;
  Corridor corridor_;
  long long shown_ = 0;  // which picture was projected last
  cv::Mat picture_;
  double pictured_ = 0.0;  // when, seconds
  CalmWatch calm_;
  double caution_until_ = -1.0, now_ = 0.0;  // seconds
};

/// Both watches of one fixed camera. `sound` is called by the thread that looks.
Watching watching_by(const calibration::TableMap& map, const calibration::FixedCamera& camera,
                     std::function<void()> sound);

}  // namespace cowlcast::projector
