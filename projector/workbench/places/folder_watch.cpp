#include "projector/workbench/places/folder_watch.h"

#include <QDir>
#include <QFileInfo>

namespace cowlcast::projector {
namespace {

constexpr int kPause = 500;  // ms

}  // namespace

bool is_photograph(const QString& file) {
  for (const char* ending : {".jpg", ".jpeg", ".png"})
    if (file.endsWith(QLatin1String(ending), Qt::CaseInsensitive)) return true;
  return false;
}

FolderWatch::FolderWatch(QObject* parent) : QObject(parent) {
  timer_.setInterval(kPause);
  connect(&timer_, &QTimer::timeout, this, &FolderWatch::look);
  connect(&watcher_, &QFileSystemWatcher::directoryChanged, this, &FolderWatch::look);
}

void FolderWatch::watch(const QString& folder) {
  if (!folder_.isEmpty()) watcher_.removePath(folder_);
  folder_ = folder;
  growing_.clear();
  known_.clear();
  folder.isEmpty() ? timer_.stop() : timer_.start();
  if (folder.isEmpty()) return;
  watcher_.addPath(folder);
  for (const QString& file : photographs()) known_.insert(file);
}

QStringList FolderWatch::photographs() const {
  QStringList files;
  const QDir dir(folder_);
  for (const QString& name : dir.entryList(QDir::Files, QDir::Name))
    if (is_photograph(name)) files << dir.filePath(name);
  return files;
}

void FolderWatch::look() {
  QStringList whole;
  const bool by_clock = sender() == &timer_;
  for (const QString& file : photographs()) {
    if (known_.contains(file)) continue;
    const qint64 size = QFileInfo(file).size();
    if (by_clock && size > 0 && growing_.value(file, -1) == size) {
      known_.insert(file);
      growing_.remove(file);
      whole << file;
    } else if (by_clock || !growing_.contains(file)) {
      growing_[file] = by_clock ? size : -1;
    }
  }
  if (!whole.isEmpty()) emit arrived(whole);
}

}  // namespace cowlcast::projector
