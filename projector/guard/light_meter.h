// LightMeter: how strong the room's light and the beam are now, measured around the corridor.
//
//   LightMeter meter(backdrop, box);                  // a box of the camera's frame
//   meter.project(picture);
//   MeasuredLight light = meter.measure(linear_light(frame(box)), true);
//
// The light of the room may change at any time, in strength and colour, and the
// camera's exposure with it. What is seen of cloth, mat and table around the
// corridor tells it from a thing: light changes everywhere, a thing only where it
// lies. So the gains are those with which most of what is seen in the box is
// what was learnt, and near to what they were. While a tenth of the box is still in
// the light of before, the light has not changed at a stroke: something was laid
// over the rest. Where less than `kLeastAgreeing` of it agrees with any, the light is
// not measured and keeps its old gains.
#pragma once

#include <array>
#include <opencv2/core.hpp>
#include <vector>

#include "projector/guard/backdrop.h"

namespace cowlcast::projector {

struct MeasuredLight {
  std::array<float, 3> room{1.0f, 1.0f, 1.0f};  ///< over what was learnt, by channel
  float beam = 1.0f;                            ///< the same: it changes with the camera's exposure alone
  cv::Mat local;          ///< what the room's light is place by place over `room`: three floats, coarse
  double agreeing = 0.0;  ///< share of the box that is what was learnt, in this light
  bool measured = false;
  double old_picture =
      1.0;  ///< misfit with the picture before (or that before it) over that with the present one
};

class LightMeter {
 public:
  static constexpr int kShrink = 6;  ///< pixels to one of its cells
  static constexpr double kLeastAgreeing = 0.25;

  LightMeter(const Backdrop& backdrop, const cv::Rect& box);

  /// The gains are known already, of another box.
  void begin_in(const MeasuredLight& light);

  /// The projected picture from now on. `chases`: the one before has hardly come either.
  void project(const cv::Mat& picture, bool chases = false);

  /// `linear`: the box of a frame in linear light. With `late` the picture before may still be the one seen.
  const MeasuredLight& measure(const cv::Mat& linear, bool late);

  const cv::Rect& box() const { return box_; }

 private:
  struct Cell {
    std::array<float, 3> room, beam, seen;
    float noise;
    int at;
  };
  static float misfit(const Cell& cell, size_t channel, float want);
  std::vector<Cell> cells(const cv::Mat& seen, const cv::Mat& picture, int step) const;
  void refine(const std::vector<Cell>& cells, bool beam, MeasuredLight& light) const;
  float likeliest_beam(const std::vector<Cell>& cells, const MeasuredLight& light) const;
  void locate(const std::vector<Cell>& cells, MeasuredLight& light) const;

  bool old_holds(const std::vector<Cell>& cells, const std::array<float, 3>& room, float beam) const;

  cv::Rect box_;
  double power_;
  cv::Mat room_, beam_, noise_;      // learnt, shrunk; noise as linear light
  cv::Mat picture_from_cell_;        // pixels of the projector's picture
  std::array<cv::Mat, 3> pictures_;  // on the cells, light 0 to 1: now, before, and before that or empty
  MeasuredLight light_;
  bool known_ = false;  // measured once
};

}  // namespace cowlcast::projector
