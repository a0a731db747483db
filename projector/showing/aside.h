// Aside: one thread beside the window, for work that comes again and again.
//
//   Aside aside;
//   if (!aside.busy()) aside.start([&] { watching.look(...); }, [&](std::exception_ptr failed) { show(); });
//
// One piece of work at a time; what it touches belongs to it until `done` is called, which happens in the
// event loop of the thread that made the Aside. Ending waits for the work, and `done` is not called then.
#pragma once

#include <QObject>
#include <condition_variable>
#include <exception>
#include <functional>
#include <mutex>
#include <thread>

namespace cowlcast::projector {

class Aside {
 public:
  using Done = std::function<void(std::exception_ptr failed)>;  ///< null: it went well; must not throw

  Aside();
  ~Aside();
  Aside(const Aside&) = delete;
  Aside& operator=(const Aside&) = delete;

  bool busy() const { return busy_; }

  /// Must not be called while busy.
  void start(std::function<void()> work, Done done);

 private:
  void run(const std::stop_token& stop);

  QObject here_;
  bool busy_ = false;  // of the making thread alone
  std::mutex mutex_;
  std::condition_variable_any wake_;
  std::function<void()> work_;
  Done done_;
  std::jthread thread_;  // last: it ends before what it uses
};

}  // namespace cowlcast::projector
