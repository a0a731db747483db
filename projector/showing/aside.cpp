#include "projector/showing/aside.h"

#include <utility>

namespace cowlcast::projector {

Aside::Aside() : thread_([this](const std::stop_token& stop) { run(stop); }) {}

Aside::~Aside() {
  thread_.request_stop();
  thread_.join();  // before what it posts to is gone
}

void Aside::start(std::function<void()> work, Done done) {
  busy_ = true;
  {
    const std::lock_guard lock(mutex_);
    work_ = std::move(work);
    done_ = std::move(done);
  }
  wake_.notify_one();
}

void Aside::run(const std::stop_token& stop) {
  for (;;) {
    std::function<void()> work;
    Done done;
    {
      std::unique_lock lock(mutex_);
      if (!wake_.wait(lock, stop, [this] { return static_cast<bool>(work_); })) return;
      work = std::exchange(work_, {});
      done = std::exchange(done_, {});
    }
    std::exception_ptr failed;
    try {
      work();
    } catch (...) {
      failed = std::current_exception();
    }
    work = {};  // what it held is let go before the window goes on
    QMetaObject::invokeMethod(
        &here_,
        [this, done = std::move(done), failed] {
          busy_ = false;
          done(failed);
        },
        Qt::QueuedConnection);
  }
}

}  // namespace cowlcast::projector
