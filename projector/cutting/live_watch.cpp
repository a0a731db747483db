#include "projector/cutting/live_watch.h"

#include <QApplication>
#include <utility>

namespace cowlcast::projector {

ShownLines lines_of(CuttingWindow& window) {
  return {[&window] { return window.view(); }, [&window] { return window.frame(); },
          [&window](CuttingView view, const calibration::TableMap& map) {
            window.set_view(std::move(view), map);
          }};
}

void beep_soon() {
  QMetaObject::invokeMethod(
      qApp, [] { QApplication::beep(); }, Qt::QueuedConnection);
}

LiveWatch::LiveWatch(ShownLines lines, const calibration::CameraRequest& request, Watching& watching,
                     calibration::OpenCamera open)
    : lines_(std::move(lines)),
      watching_(watching),
      found_(watching.table().found_again()),
      standing_(watching.table().standing()),
      camera_(
          request, std::move(open),
          [this] {
            return [this, view = lines_.view(), shown = lines_.frame()](const LiveCamera::Glance& seen) {
              watching_.look(view, shown, seen.frame, seen.complaint, calibration::steady_seconds());
            };
          },
          [this](const std::exception_ptr& failed) { take_in(failed); }) {}

void LiveWatch::take_in(const std::exception_ptr& failed) {
  failed_ = failed;
  try {
    if (!failed_) {
      CuttingView view = lines_.view();
      const bool changed = watching_.said(view);
      standing_ = watching_.table().standing();
      if (changed) lines_.show(std::move(view), watching_.map());
      if (const int found = watching_.table().found_again(); found != std::exchange(found_, found))
        if (found_again) found_again(watching_.table());
      return;
    }
  } catch (...) {  // none may leave Qt's loop
    failed_ = std::current_exception();
  }
  camera_.stop();
  if (ended) ended();
}

void LiveWatch::rethrow() const {
  if (failed_) std::rethrow_exception(failed_);
}

}  // namespace cowlcast::projector
