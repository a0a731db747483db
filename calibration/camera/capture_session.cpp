#include "calibration/camera/capture_session.h"

#include <algorithm>
#include <cmath>
#include <opencv2/calib3d.hpp>
#include <opencv2/imgproc.hpp>
#include <utility>

#include "calibration/camera/still_frames.h"
#include "calibration/detect/markers.h"
#include "calibration/detect/paper.h"
#include "calibration/detect/quality.h"
#include "calibration/target/target.h"
#include "calibration/words.h"

namespace cowlcast::calibration {
namespace {

constexpr double kMotion = 4.0;       // levels of a block that changed
constexpr double kOtherSide = 14.0;   // levels: the view from another side
constexpr double kEvery = 0.4;        // seconds between appraisals
constexpr double kWhileMoving = 1.5;  // the same while the view moves
constexpr double kBlurred = 4.5;      // pixels from dark to light
constexpr double kDark = 28.0;        // levels
constexpr double kBurnt = 0.5;        // share of the light parts
constexpr double kLeastLight = 0.35;  // of a third of the target
constexpr const char* kThirds[] = {"left", "middle", "right"};

double median(std::vector<double> values) {
  if (values.empty()) return 0.0;
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::nth_element(values.begin(), middle, values.end());
  return *middle;
}

// Dark to light at a chessboard corner: the step over the steepest slope.
void look_at_corner(const cv::Mat& grey, const Eigen::Vector2d& at, std::vector<double>& widths,
                    std::vector<double>& steps, int& light, int& burnt) {
  constexpr int kHalf = 7;
  const int x = static_cast<int>(std::lround(at.x())), y = static_cast<int>(std::lround(at.y()));
  if (x < kHalf + 1 || y < kHalf + 1 || x + kHalf + 1 >= grey.cols || y + kHalf + 1 >= grey.rows) return;
  double low = 255.0, high = 0.0, slope = 0.0;
  for (int i = y - kHalf; i <= y + kHalf; ++i)
    for (int j = x - kHalf; j <= x + kHalf; ++j) {
      const double level = grey.at<unsigned char>(i, j);
      low = std::min(low, level);
      high = std::max(high, level);
      const double across = grey.at<unsigned char>(i, j + 1) - grey.at<unsigned char>(i, j - 1),
                   down = grey.at<unsigned char>(i + 1, j) - grey.at<unsigned char>(i - 1, j);
      slope = std::max(slope, 0.5 * std::hypot(across, down));
    }
  steps.push_back(high - low);
  widths.push_back((high - low) / std::max(slope, 0.5));
  for (int i = y - kHalf; i <= y + kHalf; ++i)
    for (int j = x - kHalf; j <= x + kHalf; ++j) {
      const int level = grey.at<unsigned char>(i, j);
      if (level < 0.5 * (low + high)) continue;
      ++light;
      burnt += level >= 252 ? 1 : 0;
    }
}

int third_of(double x, int width) {
  return std::clamp(static_cast<int>(3.0 * x / width), 0, 2);
}

}  // namespace

FrameAppraisal appraise(const cv::Mat& grey, const CaptureSettings& settings, bool target_shown) {
  FrameAppraisal out;
  const std::vector<SheetView> sheets = find_sheets(grey);
  out.sheets = static_cast<int>(sheets.size());
  std::vector<double> widths, steps;
  int light = 0, burnt = 0;
  for (const SheetView& sheet : sheets)
    for (const SeenCorner& corner : sheet.corners)
      look_at_corner(grey, corner.pixel, widths, steps, light, burnt);
  out.edge_width = median(widths);
  out.contrast = median(steps);
  out.burnt = light > 0 ? static_cast<double>(burnt) / light : 0.0;
  if (!target_shown) return out;

  const TargetLayout layout = target_layout(settings.width, settings.height);
  std::vector<cv::Point2d> in_frame, in_picture;
  for (const FoundMarker& marker : find_markers(grey, MarkerFamily::light, 12.0)) {
    if (marker.code >= layout.marker_count()) continue;
    const auto corners = layout.marker_corners(marker.code);
    for (size_t c = 0; c < 4; ++c) {
      in_frame.emplace_back(marker.corners[c].x(), marker.corners[c].y());
      in_picture.emplace_back(corners[c].x(), corners[c].y());
    }
  }
  if (in_frame.size() < 16) return out;
  const cv::Mat picture_from_frame = cv::findHomography(in_frame, in_picture, cv::RANSAC, 8.0);
  if (picture_from_frame.empty()) return out;
  out.light_found = true;
  std::vector<cv::Point2d> all, all_in_frame;
  for (int index = 0; index < layout.corner_count(); ++index)
    all.emplace_back(layout.corner(index).x(), layout.corner(index).y());
  cv::perspectiveTransform(all, all_in_frame, picture_from_frame.inv());
  std::array<double, 3> there{};
  for (size_t i = 0; i < all.size(); ++i) {
    const auto third = static_cast<size_t>(third_of(all[i].x, settings.width));
    ++there[third];
    const bool in_view = cv::Rect2d(0, 0, grey.cols, grey.rows).contains(all_in_frame[i]);
    out.light_seen[third] += in_view ? 1.0 : 0.0;
  }
  for (size_t k = 0; k < 3; ++k) out.light_seen[k] /= std::max(1.0, there[k]);
  for (const SheetView& sheet : sheets) {
    std::vector<cv::Point2d> corners, picture;
    for (const SeenCorner& corner : sheet.corners) corners.emplace_back(corner.pixel.x(), corner.pixel.y());
    cv::perspectiveTransform(corners, picture, picture_from_frame);
    for (const cv::Point2d& p : picture)
      if (p.x >= 0 && p.x < settings.width)
        out.sheet_in[static_cast<size_t>(third_of(p.x, settings.width))] = true;
  }
  return out;
}

CaptureSession::CaptureSession(const CaptureSettings& settings) : settings_(settings) {
  target_layout(settings.width, settings.height);
  if (settings_.fixed) settings_.sides = 1;
}

CaptureStep CaptureSession::look(const cv::Mat& grey, double seconds) {
  CaptureStep out;
  const cv::Mat small = small_frame(grey);
  const bool moving = largest_change(before_, small) > kMotion;
  before_ = small;
  if (since_ < 0.0) since_ = seconds;
  const auto enter = [&](Phase phase) {
    phase_ = phase;
    since_ = seconds;
    appraised_ = -1.0;
    blocking_.clear();
    advice_.clear();
  };

  if (phase_ == Phase::leaving) {
    cv::Mat change;
    cv::absdiff(small, left_, change);
    if (cv::mean(change)[0] > kOtherSide) enter(Phase::settling);
  } else if (phase_ == Phase::settling) {
    if (seconds - since_ >= settings_.settle_seconds) enter(Phase::steadying);
  }
  if (!done() && phase_ == Phase::steadying) {
    if (moving) since_ = seconds;
    if (appraised_ < 0.0 || seconds - appraised_ >= (moving ? kWhileMoving : kEvery)) {
      appraised_ = seconds;
      blocking_.clear();
      advice_.clear();
      const FrameAppraisal seen = appraise(grey, settings_, shown_ == ShownPicture::target);
      const FrameAppraisal before = std::exchange(seen_, seen);
      if (!seen.light_found) {  // plain light shows no thirds: those of the target stand
        seen_.light_seen = before.light_seen;
        seen_.sheet_in = before.sheet_in;
      }
      const PictureQuality whole = seen.sheets == 0 ? picture_quality(grey) : PictureQuality{};
      if (seen.sheets == 0 && whole.blurred())
        blocking_.push_back("The view is not sharp. Focus on the mat, or hold the camera still.");
      else if (seen.sheets == 0)
        blocking_.push_back("No sheet is seen. Turn the camera so that sheets and light fill its view.");
      else if (seen.contrast < kDark)
        blocking_.push_back("The sheets are too dark. Give the room more light.");
      else if (seen.edge_width > kBlurred)
        blocking_.push_back("The view is not sharp. Focus on the mat, or hold the camera still.");
      else if (seen.burnt > kBurnt)
        blocking_.push_back("The paper is burnt out white. Lower the camera's exposure.");
      if (seen.sheets > 0 && seen.sheets < 4)
        advice_.push_back("Only " + std::to_string(seen.sheets) +
                          (seen.sheets == 1 ? " sheet is" : " sheets are") + " seen; four are better.");
      if (seen.light_found)
        for (size_t k = 0; k < 3; ++k) {
          if (seen.light_seen[k] < kLeastLight)
            advice_.push_back(std::string("The ") + kThirds[k] +
                              " third of the light is not wholly in view. Bring it in.");
          else if (!seen.sheet_in[k] && k != 1)
            advice_.push_back(std::string("No sheet lies in the ") + kThirds[k] +
                              " third of the light. Lay one there.");
        }
      else if (shown_ == ShownPicture::target && seen.sheets > 0)
        blocking_.push_back("The target in the light is not read. Dim the room, or check that it is shown.");
    }
    if (!moving && blocking_.empty() && seconds - since_ >= settings_.steady_seconds) {
      out.take = true;
      ++taken_;
      if (shown_ == ShownPicture::target) {
        left_ = small;
        shown_ = ShownPicture::plain;
        enter(Phase::settling);
      } else {
        shown_ = ShownPicture::target;
        ++side_;
        enter(settings_.fixed || done() ? Phase::settling : Phase::leaving);
      }
    }
  }
  out.show = shown_;
  out.seen = seen_;
  out.hints = blocking_;
  out.hints.insert(out.hints.end(), advice_.begin(), advice_.end());
  if (done())
    out.say = "All photographs are taken.";
  else if (phase_ == Phase::leaving)
    out.say = "Carry the camera to another side of the table.";
  else if (phase_ == Phase::settling)
    out.say = "Wait.";
  else
    out.say = moving ? "Hold the camera still." : blocking_.empty() ? "Hold still." : "Waiting.";
  return out;
}

}  // namespace cowlcast::calibration
