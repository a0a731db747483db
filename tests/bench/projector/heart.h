// The longest times between two beats of the event loop, with the processor time its thread spent in them.
#pragma once

#include <QElapsedTimer>
#include <QThread>
#include <QTimer>
#include <algorithm>
#include <cstdio>
#include <ctime>

namespace cowlcast::projector {

class Heart {
 public:
  Heart() {
    QObject::connect(&timer_, &QTimer::timeout, [this] { beat(); });
    timer_.start(0);
    restart();
  }
  void restart() {
    clock_.start();
    processor_ = processor_ms();
  }
  void say(const char* what) const {
    std::printf("%-32s deaf for %6.1f ms at most, %6.1f ms of processor\n", what, most_, most_processor_);
    std::fflush(stdout);
  }
  void forget() { most_ = most_processor_ = 0.0; }

 private:
  static double processor_ms() {
    timespec now{};
    clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
    return 1e3 * static_cast<double>(now.tv_sec) + 1e-6 * static_cast<double>(now.tv_nsec);
  }
  void beat() {
    most_ = std::max(most_, 1e-6 * static_cast<double>(clock_.nsecsElapsed()));
    most_processor_ = std::max(most_processor_, processor_ms() - processor_);
    QThread::usleep(500);  // leave the processor to the work beside
    restart();
  }
  QTimer timer_;
  QElapsedTimer clock_;
  double processor_ = 0.0, most_ = 0.0, most_processor_ = 0.0;
};

}  // namespace cowlcast::projector
