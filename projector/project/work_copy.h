// WorkCopy: the project as it stands, kept on the disk while it is worked on.
//
//   WorkCopy copy(work_folder());
//   copy.keep(project, path);             // returns at once; written in the background
//   copy.drop();                          // saved, or given up
//
//   for (const FoundWork& found : found_work(work_folder())) offer(found);    // after a crash
//
// One file and one lock a window. A copy whose lock nobody holds was left behind
// by a program that came to an end without saying so. Written whole or not at
// all, so what is found is complete. It does not keep what was changed after the
// last `keep` that reached the disk: how often to call it is the caller's.
#pragma once

#include <QLockFile>
#include <QString>
#include <condition_variable>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <thread>
#include <vector>

#include "projector/project/project.h"

namespace cowlcast::projector {

/// In the user's own data folder.
QString work_folder();

class WorkCopy {
 public:
  /// Throws drafting::Refusal when the folder cannot be made or written to.
  explicit WorkCopy(const QString& folder);
  /// Finishes writing what was handed over; the copy stays unless it was dropped.
  ~WorkCopy();
  WorkCopy(const WorkCopy&) = delete;
  WorkCopy& operator=(const WorkCopy&) = delete;

  /// Hands the project over; of several handed over while one is being written only the last is written.
  /// `path`: of its own file, empty for none.
  void keep(Project project, const QString& path);

  /// Returns when all that was handed over is on the disk.
  void wait();

  /// Removes the copy.
  void drop();

  /// Why the last writing failed; empty when it did not.
  std::string trouble() const;

 private:
  struct Work {
    Project project;
    QString path;
  };
  void run(const std::stop_token& stop);

  QString file_;
  QLockFile lock_;
  mutable std::mutex mutex_;
  std::condition_variable_any told_;
  std::optional<Work> next_;
  bool writing_ = false;
  std::string trouble_;
  std::jthread writer_;  // last: it uses all of the above
};

/// A copy that was left behind. While one of these is alive, no other window finds it.
struct FoundWork {
  QString file;  ///< of the copy
  QString path;  ///< the file of the project itself; empty: it was never saved
  QString kept_at;
  std::optional<Project> project;
  std::string refusal;  ///< why there is no project
  std::shared_ptr<QLockFile> lock;
};

/// All that nobody works on, oldest first. Copies that say the same as their project's file are removed, and
/// so is what a writer that was stopped left lying about.
std::vector<FoundWork> found_work(const QString& folder);

/// Removes it: its project was taken over, or is not wanted.
void forget(const FoundWork& found);

/// Held by the window that has a project open.
class ProjectLock {
 public:
  /// Throws drafting::Refusal when another window has the project open. Where no lock can be made (a folder
  /// that cannot be written to) there is none, nor can anyone save there.
  explicit ProjectLock(const QString& path);

 private:
  QLockFile lock_;
};

}  // namespace cowlcast::projector
