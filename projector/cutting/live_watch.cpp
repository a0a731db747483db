#include "projector/cutting/live_watch.h"

#include <utility>

namespace cowlcast::projector {

LiveWatch::LiveWatch(CuttingWindow& window, const calibration::CameraRequest& request, Watching watching,
                     calibration::OpenCamera open)
    : window_(window), watching_(std::move(watching)), feed_(request, std::move(open)) {
  QObject::connect(&timer_, &QTimer::timeout, [this] {
    try {
      look();
    } catch (...) {  // none may leave Qt's loop
      failed_ = std::current_exception();
      timer_.stop();
      window_.close();
    }
  });
  timer_.start(15);
}

void LiveWatch::look() {
  CuttingView view = window_.view();
  if (watching_.look(view, window_.frame(), feed_.newest(), feed_.complaint(), calibration::steady_seconds()))
    window_.set_view(std::move(view), watching_.map());
  if (watching_.table().found_again() == found_) return;
  found_ = watching_.table().found_again();
  if (found_again) found_again(watching_.table());
}

void LiveWatch::rethrow() const {
  if (failed_) std::rethrow_exception(failed_);
}

}  // namespace cowlcast::projector
