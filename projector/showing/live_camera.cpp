#include "projector/showing/live_camera.h"

#include <QCoreApplication>
#include <utility>
#include <vector>

namespace cowlcast::projector {
namespace {

// Cameras being closed: a camera may take its time over its last picture.
std::vector<std::jthread>& closing() {
  static std::vector<std::jthread> threads;
  return threads;
}

void close_beside(std::shared_ptr<calibration::CameraFeed> feed) {
  if (closing().empty()) qAddPostRoutine([] { closing().clear(); });  // waits for them
  closing().emplace_back([feed = std::move(feed)]() mutable { feed.reset(); });
}

}  // namespace

LiveCamera::LiveCamera(const calibration::CameraRequest& request, calibration::OpenCamera open,
                       std::function<Look()> prepare, Aside::Done then)
    : feed_(std::make_shared<calibration::CameraFeed>(request, std::move(open))),
      prepare_(std::move(prepare)),
      then_(std::move(then)) {
  QObject::connect(&timer_, &QTimer::timeout, [this] { look(); });
  timer_.start(15);
}

LiveCamera::~LiveCamera() {
  close_beside(std::move(feed_));
}

void LiveCamera::stop() {
  timer_.stop();
  then_ = {};
}

void LiveCamera::look() {
  if (aside_.busy()) return;
  aside_.start(
      [look = prepare_(), seen = Glance{feed_->newest(), feed_->complaint(), feed_->remark(),
                                        feed_->state() == calibration::SourceState::ended}] { look(seen); },
      [this](const std::exception_ptr& failed) {
        const Aside::Done then = then_;  // it may stop this
        if (then) then(failed);
      });
}

}  // namespace cowlcast::projector
