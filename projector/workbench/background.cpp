#include "projector/workbench/background.h"

namespace cowlcast::projector {
namespace {

thread_local int own_number = 0;  // of the work this thread does

}  // namespace

Background::~Background() {
  current_ = 0;
  threads_.clear();  // asks each to stop, and waits
}

void Background::run(std::function<Ending(const std::stop_token&)> work) {
  stop();
  const int number = ++last_;
  current_ = number;
  threads_.emplace(number, std::jthread([this, number, work = std::move(work)](const std::stop_token& stop) {
                     own_number = number;
                     const Ending ending = work(stop);
                     QMetaObject::invokeMethod(
                         this, [this, number, ending] { ended(number, ending); }, Qt::QueuedConnection);
                   }));
  emit busy_changed(true);
}

void Background::ended(int number, const Ending& ending) {
  threads_.erase(number);
  if (number != current_) return;
  current_ = 0;
  emit busy_changed(false);
  if (ending) ending();
}

void Background::stop() {
  if (current_ == 0) return;
  threads_.at(current_).request_stop();
  current_ = 0;
  emit busy_changed(false);
}

void Background::tell(std::function<void()> act) {
  QMetaObject::invokeMethod(
      this,
      [this, number = own_number, act = std::move(act)] {
        if (number == current_) act();
      },
      Qt::QueuedConnection);
}

}  // namespace cowlcast::projector
