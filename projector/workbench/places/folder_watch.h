// FolderWatch: photographs that arrive in a folder, each told once it is there whole.
//
//   FolderWatch watch;
//   connect(&watch, &FolderWatch::arrived, this, &TablePlace::add_photographs);
//   watch.watch("/home/me/Phone");
//
// What lies there when watching begins is left alone. A file counts as whole when
// it has not grown for half a second.
#pragma once

#include <QFileSystemWatcher>
#include <QHash>
#include <QObject>
#include <QSet>
#include <QStringList>
#include <QTimer>

namespace cowlcast::projector {

/// JPEG or PNG, by its ending.
bool is_photograph(const QString& file);

class FolderWatch : public QObject {
  Q_OBJECT

 public:
  explicit FolderWatch(QObject* parent = nullptr);

  /// An empty folder ends the watching.
  void watch(const QString& folder);
  const QString& folder() const { return folder_; }

 signals:
  void arrived(const QStringList& files);

 private:
  void look();
  QStringList photographs() const;

  QString folder_;
  QFileSystemWatcher watcher_;
  QTimer timer_;  // for growing files, and for folders whose system tells nothing
  QSet<QString> known_;
  QHash<QString, qint64> growing_;
};

}  // namespace cowlcast::projector
