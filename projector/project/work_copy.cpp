#include "projector/project/work_copy.h"

#include <QDateTime>
#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QStandardPaths>
#include <QUuid>
#include <algorithm>
#include <nlohmann/json.hpp>

#include "drafting/refusal.h"
#include "projector/project/project_file.h"

namespace cowlcast::projector {
namespace {

using drafting::Refusal;
using nlohmann::json;

constexpr const char* kFormat = "cowlcast work copy";
const QString kEnding = QStringLiteral(".work");
const QString kLockEnding = QStringLiteral(".lock");

QString new_file(const QString& folder) {
  if (!QDir().mkpath(folder))
    throw Refusal("The folder for work copies, \"" + folder.toStdString() +
                  "\", cannot be made. Make room on the disk, or check that you may write there.");
  return QDir(folder).filePath(QUuid::createUuid().toString(QUuid::WithoutBraces) + kEnding);
}

std::string copy_text(const Project& project, const QString& path) {
  const json out{{"format", kFormat},
                 {"schema", 1},
                 {"path", path.toStdString()},
                 {"kept_at", QDateTime::currentDateTimeUtc().toString(Qt::ISODate).toStdString()},
                 {"project", json::parse(project_to_json(project))}};
  return out.dump() + "\n";
}

/// Fills in what stands in the copy; false when it says the same as the project's own file.
bool read_copy(FoundWork& found) {
  try {
    const json in = json::parse(read_whole(found.file));
    found.path = QString::fromStdString(in.at("path"));
    found.kept_at = QString::fromStdString(in.at("kept_at"));
    found.project = project_from_json(in.at("project").dump());
  } catch (const json::exception&) {
    found.refusal = "A work copy is damaged and cannot be opened.";
    return true;
  } catch (const Refusal& reason) {
    found.refusal = reason.what();
    return true;
  }
  if (found.path.isEmpty() || !QFile::exists(found.path)) return true;
  try {
    return project_to_json(read_project(found.path)) != project_to_json(*found.project);
  } catch (const Refusal&) {
    return true;
  }
}

/// Takes a lock that nobody alive holds. A lock file without a word in it is one whose maker was stopped
/// while making it, unless it was made this moment.
bool locked(QLockFile& lock) {
  lock.setStaleLockTime(0);  // held as long as the program lives, however long that is
  if (lock.tryLock()) return true;
  const QFileInfo file(lock.fileName());
  const bool abandoned = lock.error() == QLockFile::LockFailedError && file.exists() && file.size() == 0 &&
                         file.lastModified().secsTo(QDateTime::currentDateTime()) > 5;
  return abandoned && QFile::remove(lock.fileName()) && lock.tryLock();
}

/// The copy's own files: itself, its lock, and what was being written when its writer was stopped.
void remove_all_of(const QString& file) {
  const QFileInfo info(file);
  const QDir folder = info.dir();
  for (const QString& name : folder.entryList({info.fileName() + QStringLiteral(".*")}, QDir::Files))
    if (!name.endsWith(kLockEnding)) QFile::remove(folder.filePath(name));
  QFile::remove(file);
}

}  // namespace

QString work_folder() {
  const QString data = QStandardPaths::writableLocation(QStandardPaths::GenericDataLocation);
  return QDir(data).filePath(QStringLiteral("cowlcast/work"));
}

WorkCopy::WorkCopy(const QString& folder)
    : file_(new_file(folder)),
      lock_(file_ + kLockEnding),
      writer_([this](const std::stop_token& stop) { run(stop); }) {
  if (!locked(lock_))
    throw Refusal("Work copies cannot be kept in \"" + folder.toStdString() +
                  "\". Make room on the disk, or check that you may write there.");
}

WorkCopy::~WorkCopy() {
  wait();
}

void WorkCopy::keep(Project project, const QString& path) {
  const std::lock_guard guard(mutex_);
  next_ = Work{std::move(project), path};
  told_.notify_all();
}

void WorkCopy::wait() {
  std::unique_lock guard(mutex_);
  told_.wait(guard, [this] { return !next_ && !writing_; });
}

void WorkCopy::drop() {
  std::unique_lock guard(mutex_);
  next_.reset();
  told_.wait(guard, [this] { return !writing_; });
  remove_all_of(file_);
}

std::string WorkCopy::trouble() const {
  const std::lock_guard guard(mutex_);
  return trouble_;
}

void WorkCopy::run(const std::stop_token& stop) {
  std::unique_lock guard(mutex_);
  while (told_.wait(guard, stop, [this] { return next_.has_value(); })) {
    const Work work = std::move(*next_);
    next_.reset();
    writing_ = true;
    guard.unlock();
    std::string trouble;
    try {
      write_whole(file_, copy_text(work.project, work.path));
    } catch (const std::exception& reason) {
      trouble = reason.what();
    }
    guard.lock();
    trouble_ = trouble;
    writing_ = false;
    told_.notify_all();
  }
}

std::vector<FoundWork> found_work(const QString& folder) {
  std::vector<FoundWork> all;
  const QDir dir(folder);
  QStringList names;  // of copies, also where only a lock or a part of one is left
  for (const QString& name : dir.entryList(QDir::Files))
    names << name.left(name.indexOf(kEnding) + kEnding.size());
  names.removeDuplicates();
  for (const QString& name : names) {
    FoundWork found;
    found.file = dir.filePath(name);
    if (!name.endsWith(kEnding)) continue;
    found.lock = std::make_shared<QLockFile>(found.file + kLockEnding);
    if (!locked(*found.lock)) continue;  // somebody works on it
    if (QFile::exists(found.file) && read_copy(found))
      all.push_back(std::move(found));
    else
      remove_all_of(found.file);
  }
  std::sort(all.begin(), all.end(),
            [](const FoundWork& a, const FoundWork& b) { return a.kept_at < b.kept_at; });
  return all;
}

void forget(const FoundWork& found) {
  remove_all_of(found.file);
}

ProjectLock::ProjectLock(const QString& path)
    : lock_(QFileInfo(path).absoluteDir().filePath(
          QStringLiteral(".%1%2").arg(QFileInfo(path).fileName(), kLockEnding))) {
  if (locked(lock_) || lock_.error() != QLockFile::LockFailedError) return;
  throw Refusal("\"" + QFileInfo(path).fileName().toStdString() +
                "\" is open in another window, and two windows would overwrite each other. Work on there, or "
                "close it first.");
}

}  // namespace cowlcast::projector
