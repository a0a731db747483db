#include "projector/guard/following.h"

#include <algorithm>
#include <cmath>
#include <opencv2/imgproc.hpp>

namespace cowlcast::projector {
namespace {

constexpr double kFastest = 600.0;  // mm a second: nobody cuts faster
constexpr double kNear = 25.0;    // mm: what begins nearer than this before the front hangs together with it
constexpr double kNose = 60.0;    // mm: and if it ends within so much, it is a piece of the cutter
constexpr double kOnLine = 12.0;  // mm to both sides of the line, where the cutter itself is seen
constexpr double kSame = 80.0;    // mm: the farthest that one thing moves between two frames

}  // namespace

Following::Following(const Strip& strip) : strip_(strip) {
  objects_ = cv::Mat::zeros(strip.rows, strip.columns, CV_8U);
}

std::vector<Blob> Following::step(const cv::Mat& foreign, const cv::Mat& excess, const cv::Mat& lines,
                                  double seconds, bool goes) {
  const double since = last_ < 0.0 ? 0.1 : std::clamp(seconds - last_, 0.01, 0.3);
  last_ = seconds;
  cv::Mat labels, stats, centres;
  int count = cv::connectedComponentsWithStats(foreign, labels, stats, centres, 8, CV_32S);
  std::vector<char> cutter(static_cast<size_t>(count), 0);
  for (int label = 1; label < count; ++label)
    cutter[static_cast<size_t>(label)] = strip_.along(stats.at<int>(label, 0)) <= front_ + kNear;
  const double limit = front_ + kFastest * since + (front_ > 0.0 ? 0.0 : kNear);
  double front = front_;
  for (int r = 0; goes && r < strip_.rows; ++r) {
    if (std::abs(strip_.off(r)) > kOnLine) continue;
    const int* label = labels.ptr<int>(r);
    const uchar* object = objects_.ptr<uchar>(r);
    for (int c = 0; c < strip_.columns; ++c)
      if (cutter[static_cast<size_t>(label[c])] != 0 && label[c] != 0 && object[c] == 0 &&
          strip_.along(c) <= limit)
        front = std::max(front, strip_.along(c));
  }
  front_ = front;

  cv::Mat ahead = foreign.clone();
  // Where the cutter looks like the cloth it is seen in pieces.
  for (int label = 1; label < count; ++label) {
    const int end = stats.at<int>(label, 0) + stats.at<int>(label, 2);
    if (cutter[static_cast<size_t>(label)] != 0 && strip_.along(end) <= front_ + kNose)
      ahead.setTo(0, labels == label);
  }
  ahead.rowRange(0, strip_.corridor.start).setTo(0);
  ahead.rowRange(strip_.corridor.end, strip_.rows).setTo(0);
  const int first =
      std::clamp(static_cast<int>((front_ + kReach + Strip::before) / Strip::cell), 0, strip_.columns);
  ahead.colRange(0, first).setTo(0);
  count = cv::connectedComponentsWithStats(ahead, labels, stats, centres, 8, CV_32S);
  std::vector<Blob> blobs;
  objects_.setTo(0);
  for (int label = 1; label < count; ++label) {
    if (stats.at<int>(label, 4) * Strip::cell * Strip::cell < kLeastArea) continue;
    const double column = centres.at<double>(label, 0), row = centres.at<double>(label, 1);
    Blob blob;
    blob.place = strip_.place(static_cast<int>(std::lround(column)), static_cast<int>(std::lround(row)));
    blob.along = strip_.along(stats.at<int>(label, 0));
    blob.off = strip_.off(row);
    blob.length = stats.at<int>(label, 2) * Strip::cell;
    blob.width = stats.at<int>(label, 3) * Strip::cell;
    const cv::Mat own = labels == label;
    blob.excess = cv::mean(excess, own)[0];
    blob.on_lines = cv::mean(lines, own)[0] / 255.0;
    for (const Blob& old : blobs_)
      if ((old.place - blob.place).norm() < kSame + 0.5 * std::abs(old.length - blob.length))
        blob.frames = std::max(blob.frames, old.frames + 1);
    if (blob.frames >= 2) objects_.setTo(255, own);
    blobs.push_back(blob);
  }
  std::sort(blobs.begin(), blobs.end(), [](const Blob& a, const Blob& b) { return a.along < b.along; });
  blobs_ = blobs;
  return blobs;
}

}  // namespace cowlcast::projector
