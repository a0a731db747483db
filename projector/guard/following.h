// Following: which of the foreign cells of a strip are the cutter and its hand, and which lie ahead.
//
//   Following following(strip);
//   std::vector<Blob> ahead = following.step(foreign, excess, seconds);
//
// The cutter comes to the stroke's start and goes along it. What hangs together
// with what is at or behind its front belongs to it; the front follows what is seen
// on the line, no faster than a hand cuts. Whatever is farther on is ahead, whether
// it hangs together with the hand or not. What has once been told to lie ahead is
// not taken for the cutter while it stays where it is.
//
// What lies nearer before the front than `kReach` is not told from the cutter, nor is what begins within
// 25 mm of the front and ends within 60 mm.
#pragma once

#include <opencv2/core.hpp>
#include <vector>

#include "projector/guard/strip.h"

namespace cowlcast::projector {

/// Something ahead of the cutter.
struct Blob {
  Point place;                       ///< its middle on the mat, mm
  double along = 0.0;                ///< way along the stroke to its nearest part, mm
  double off = 0.0;                  ///< of its middle from the line, towards the holding side, mm
  double length = 0.0, width = 0.0;  ///< along and across the stroke, as far as it is in the corridor, mm
  double excess = 0.0;               ///< how much it differs from the cloth; 1 is just enough
  double on_lines = 0.0;             ///< share of it that lies on or beside projected lines
  int frames = 1;                    ///< seen in so many frames without a gap
};

class Following {
 public:
  static constexpr double kReach = 20.0;      ///< mm
  static constexpr double kLeastArea = 90.0;  ///< mm²: less is not told. A disc of 12 mm has 113

  explicit Following(const Strip& strip);

  /// The blobs ahead in this frame, nearest first; `excess` and `lines` as of `Compared`, `seconds` ever
  /// growing. The cutter stays where it is unless it `goes`: where all is covered nobody can tell.
  std::vector<Blob> step(const cv::Mat& foreign, const cv::Mat& excess, const cv::Mat& lines, double seconds,
                         bool goes = true);

  /// How far along the stroke the cutter has been seen, mm; 0 before it came.
  double front() const { return front_; }

 private:
  Strip strip_;
  double front_ = 0.0, last_ = -1.0;
  cv::Mat objects_;  // cells told to lie ahead, twice in a row
  std::vector<Blob> blobs_;
};

}  // namespace cowlcast::projector
