#include "projector/table/live_capture.h"

#include <utility>

#include "calibration/target/target.h"
#include "projector/frame/png.h"
#include "projector/project/project_file.h"

namespace cowlcast::projector {

using namespace calibration;

LiveCapture::LiveCapture(const CaptureSettings& settings, std::string folder)
    : session_(settings), folder_(std::move(folder)) {}

LiveCapture::Seen LiveCapture::look(const CameraFrame& frame) {
  Seen seen{session_.look(grey_of(frame.picture), frame.seconds)};
  const bool of_target = shown_ == ShownPicture::target;
  shown_ = seen.step.show;
  if (!seen.step.take) return seen;
  seen.taken = "photograph-" + std::to_string(session_.taken()) + (of_target ? "-target.png" : "-plain.png");
  const std::string file = folder_ + "/" + seen.taken;
  write_whole(QString::fromStdString(file), png_bytes(frame.picture));
  files_.push_back(file);
  return seen;
}

LiveLocating::LiveLocating(const TableMap& map)
    : pictures_{image_from(target_picture(map.width, map.height)),
                image_from(plain_picture(map.width, map.height)),
                image_from(cv::Mat(map.height, map.width, CV_8UC1, cv::Scalar(0)))},
      still_({.pictures = 3, .settle_seconds = 1.5}) {}

void LiveLocating::look(const CameraFrame& frame) {
  still_.look(grey_of(frame.picture), frame.seconds);
}

LocateRequest LiveLocating::request() const {
  return {still_.frames(0), still_.frames(1), still_.frames(2), {}};
}

}  // namespace cowlcast::projector
