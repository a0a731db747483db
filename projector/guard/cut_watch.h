// CutWatch: what the fixed camera sees ahead of the blade, told on the table while she cuts.
//
//   watching.add(std::make_unique<CutWatch>([] { QApplication::beep(); }));
//
// The bare cloth is learnt together with the table, by the same pictures. From then
// on the corridor along the present stroke is watched: what lies or comes ahead of
// the blade gets a ring of light and everything else goes dim, until the way has
// been clear for a second. Where the corridor cannot be seen, that is said, and why.
// What it cannot tell at all stands in `watch.h`: an aid to the eye, no more, and
// the words on the table say so when cutting begins.
//
// Whether the cloth still lies as it was laid is watched as well (`ClothShift`). Between strokes cloth that
// has shifted takes the lines away until it is put back, the piece is laid anew, or she cuts in spite of it;
// while the blade is on its way it is said alone. No windows and no clock here.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "projector/cutting/watching.h"
#include "projector/guard/cloth_shift.h"
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
  void follow_cloth(const Glimpse& glimpse, const cv::Mat& frame);
  const cv::Mat& picture_of(const Glimpse& glimpse);
  bool blade_under_way() const;

  std::function<void()> sound_;
  std::vector<std::vector<cv::Mat>> taken_;  // frames in colour, by picture
  std::optional<Backdrop> backdrop_;
  // Why there is none, or why the stroke cannot be watched.
  std::string unready_ = "The cloth is not learnt yet. R: the camera learns it.";
  std::optional<CorridorWatch> watch_;
  Corridor corridor_;
  long long shown_ = 0, light_key_ = 0;  // which picture was projected last
  cv::Mat light_;
  cv::Mat picture_;
  double pictured_ = 0.0;  // when, seconds
  CalmWatch calm_;
  bool slow_ = false;  // the camera
  std::optional<ClothShift> shift_;
  ClothShift::Where where_;
  bool laid_ = false;                                              // the piece, since the cloth was learnt
  double front_ = 0.0;                                             // mm of the stroke that the blade has gone
  std::string shifted_;                                            // what is said of the cloth
  Point by_{0.0, 0.0};                                             // of which shift, mm
  double caution_until_ = -1.0, learnt_until_ = -1.0, now_ = 0.0;  // seconds
};

/// Both watches of one fixed camera. `sound` is called by the thread that looks.
Watching watching_by(const calibration::TableMap& map, const calibration::FixedCamera& camera,
                     std::function<void()> sound);

}  // namespace cowlcast::projector
