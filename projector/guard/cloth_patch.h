// ClothPatch: how far a small part of the cloth has gone since the bare cloth was learnt.
//
//   for (const cv::Point& middle : telling_places(cloth)) patches.emplace_back(cloth, middle);
//   if (auto reading = patch.read(frame, picture, {0, 0})) use(reading->shift);
//
// A print, the cloth's own edge, chalk or a pin goes along with the cloth; the projector's light does not.
// So what is seen is the learnt look under the room's light at another place, and the look under the
// projector's light at that place in the light that falls there now. Its place is found by least squares,
// after B. D. Lucas and T. Kanade, "An iterative image registration technique" (1981), the strength of both
// lights and the slope of the room's being free; where it went far, first by trying all places within
// `kFarthest` pixels. A straight edge tells of the way across it alone, and the way along it is then given as
// none. What does not fit, such as a hand over it, is not believed: no reading.
//
// A print that repeats is the same a repeat further on: of places that fit alike the nearest is taken.
#pragma once

#include <opencv2/core.hpp>
#include <optional>
#include <vector>

#include "projector/guard/backdrop.h"

namespace cowlcast::projector {

/// The learnt look of all that the camera sees, and what belongs to it.
struct ClothLook {
  explicit ClothLook(const Backdrop& backdrop);
  TableSight sight;
  double power;        ///< of the projector's light
  cv::Mat room, beam;  ///< three floats a pixel, linear light, a little smoothed
  cv::Mat noise;       ///< a float a pixel: of that light, linear
};

/// The middles of patches by which it would show that the cloth has moved, camera pixels, the most telling
/// first and none over another. Some may lie on the mat or on the table.
std::vector<cv::Point> telling_places(const ClothLook& cloth);

class ClothPatch {
 public:
  static constexpr int kSide = 25;     ///< pixels
  static constexpr int kFarthest = 9;  ///< pixels: of a shift

  /// `middle` is one of `telling_places`.
  ClothPatch(const ClothLook& cloth, const cv::Point& middle);

  struct Reading {
    Point shift;           ///< of the cloth there, mm on the mat
    Point only{0.0, 0.0};  ///< the one way, of length 1, along which it is told; zero: it is told both ways
    Point pixels;          ///< the shift in the camera's frame
    double sigma = 0.0;    ///< standard deviation along the way that is told best, pixels
  };
  /// `frame`: 8-bit BGR. `picture`: what is projected, 8-bit grey or BGR. `guess`: pixels.
  std::optional<Reading> read(const cv::Mat& frame, const cv::Mat& picture, const Point& guess) const;

  const Point& place() const { return place_; }  ///< on the mat, mm

 private:
  struct Fit;
  cv::Mat light_here(const cv::Mat& picture) const;
  Point farther(const cv::Mat& seen, const cv::Mat& light, const Point& guess) const;
  std::optional<Fit> fit(const cv::Mat& seen, const cv::Mat& light, Point shift) const;

  const ClothLook* cloth_;
  cv::Rect box_;
  int channel_ = 1;
  Point place_;
  cv::Mat room_, beam_, noise_;  // one float a pixel, of the box and kFarthest + 2 around it
  cv::Mat picture_from_pixel_;   // of the box
};

}  // namespace cowlcast::projector
