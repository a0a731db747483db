// Background: long work beside the window, one at a time, which can be stopped.
//
//   background_.start<CalibrationOutcome>(
//       [job](const std::stop_token& stop) { return calibrated(job, stop); },
//       [this](CalibrationOutcome outcome) { show(outcome); },
//       [this](const QString& reason) { refuse(reason); });
//
// `done` and `failed` run in the window's own thread; neither runs after `stop`,
// nor when other work was started since. Work that does not heed its token runs
// to its end unseen.
#pragma once

#include <QObject>
#include <QString>
#include <exception>
#include <functional>
#include <map>
#include <stop_token>
#include <thread>
#include <utility>

namespace cowlcast::projector {

class Background : public QObject {
  Q_OBJECT

 public:
  explicit Background(QObject* parent = nullptr) : QObject(parent) {}
  /// Waits for what runs.
  ~Background() override;

  template <typename Result>
  void start(std::function<Result(const std::stop_token&)> work, std::function<void(Result)> done,
             std::function<void(const QString&)> failed) {
    run([work = std::move(work), done = std::move(done),
         failed = std::move(failed)](const std::stop_token& stop) -> std::function<void()> {
      try {
        return [done, result = work(stop)] { done(result); };
      } catch (const std::exception& reason) {
        return [failed, words = QString::fromUtf8(reason.what())] { failed(words); };
      } catch (...) {  // it heeded its stop
        return {};
      }
    });
  }

  void stop();
  bool busy() const { return current_ != 0; }

  /// To be called from within the work: `act` runs in the window, unless the work was stopped by then.
  void tell(std::function<void()> act);

 signals:
  void busy_changed(bool busy);

 private:
  using Ending = std::function<void()>;
  void run(std::function<Ending(const std::stop_token&)> work);
  void ended(int number, const Ending& ending);

  std::map<int, std::jthread> threads_;
  int current_ = 0, last_ = 0;  // 0: none
};

}  // namespace cowlcast::projector
