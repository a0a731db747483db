#include "calibration/camera/still_frames.h"

#include <algorithm>
#include <opencv2/imgproc.hpp>

namespace cowlcast::calibration {
namespace {

constexpr int kSmall = 160;    // columns of a small frame
constexpr int kBlocks = 8;     // across, and as many down
constexpr double kStirs = 6;   // levels of a block: more than lamps flicker, less than a hand makes
constexpr double kRest = 0.4;  // seconds to wait after something moved

}  // namespace

cv::Mat small_frame(const cv::Mat& grey) {
  cv::Mat small;
  cv::resize(grey, small, cv::Size(kSmall, std::max(1, kSmall * grey.rows / grey.cols)), 0, 0,
             cv::INTER_AREA);
  small.convertTo(small, CV_32F);
  return small;
}

double largest_change(const cv::Mat& before, const cv::Mat& small) {
  if (before.empty() || before.size() != small.size()) return 255.0;
  const double gain = std::clamp((cv::mean(before)[0] + 1.0) / (cv::mean(small)[0] + 1.0), 0.7, 1.4);
  cv::Mat change;
  cv::absdiff(small * gain, before, change);
  cv::resize(change, change, cv::Size(kBlocks, kBlocks), 0, 0, cv::INTER_AREA);
  double most = 0.0;
  cv::minMaxLoc(change, nullptr, &most);
  return most;
}

StillFrames::StillFrames(const StillSettings& settings)
    : settings_(settings), taken_(static_cast<size_t>(settings.pictures)), needed_(settings.settle_seconds) {}

int StillFrames::wanted() const {
  return static_cast<int>(std::min(now_, taken_.size() - 1));
}

bool StillFrames::done() const {
  return now_ == taken_.size();
}

void StillFrames::look(const cv::Mat& grey, double seconds) {
  if (done()) return;
  if (since_ < 0.0) since_ = seconds;
  if (seconds - since_ < needed_) return;
  std::vector<cv::Mat>& taken = taken_[now_];
  const cv::Mat small = small_frame(grey);
  if (taken.empty()) first_ = small;
  disturbed_ = largest_change(first_, small) > kStirs;
  if (disturbed_) {
    taken.clear();
    since_ = seconds;
    needed_ = kRest;
    return;
  }
  taken.push_back(grey.clone());
  if (static_cast<int>(taken.size()) < settings_.frames) return;
  ++now_;
  since_ = seconds;
  needed_ = settings_.settle_seconds;
}

}  // namespace cowlcast::calibration
