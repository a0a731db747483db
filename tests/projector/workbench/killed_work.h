// A window that is killed in the middle of work, and what is found of it afterwards.
//
// The program that uses this runs itself again as the worker (`work_until_killed`), which changes a document
// again and again, saves now and then, and says each change on its standard output before going on. The
// watcher kills it (SIGKILL: no destructor runs) and looks at what is on the disk.
#pragma once

#include <QCoreApplication>
#include <QElapsedTimer>
#include <QFile>
#include <QProcess>
#include <QTimer>
#include <algorithm>
#include <cstdio>
#include <optional>
#include <random>
#include <string>
#include <vector>

#include "projector/project/project_file.h"
#include "projector/workbench/document.h"

namespace cowlcast::projector::testing {

inline const QString kWorker = QStringLiteral("--work-until-killed");

/// The worker: never returns by itself. Change n makes the drape n.
inline int work_until_killed(const QString& folder, int keep_after_ms, unsigned seed) {
  Document document(Keeping{folder + QStringLiteral("/work"), keep_after_ms});
  const QString file = folder + QStringLiteral("/top.cowlcast");
  std::mt19937 random(seed);
  int count = 0;
  QTimer timer;
  QObject::connect(&timer, &QTimer::timeout, [&] {
    ++count;
    document.change(
        "Drape", [&](Project& project) { project.cowl.drape = count; }, random() % 3 == 0 ? "drape" : "");
    std::printf("%d\n", count);
    std::fflush(stdout);
    if (random() % 10 == 0) document.undo();
    if (document.can_redo()) document.redo();
    if (random() % 40 == 0) document.save_as(file);
    timer.setInterval(static_cast<int>(random() % 30));
  });
  timer.start(0);
  return QCoreApplication::exec();
}

struct Killed {
  int changes = 0;         ///< said by the worker
  int found = 0;           ///< the latest on the disk, in file or copy
  double lost_s = 0.0;     ///< how long before the end the first change was made that is gone
  std::string unreadable;  ///< why something does not open; empty: all opens
};

/// Runs a worker for `life_ms` after its first change, kills it and looks.
inline Killed kill_after(int life_ms, const QString& folder, int keep_after_ms, unsigned seed) {
  QProcess worker;
  worker.start(QCoreApplication::applicationFilePath(),
               {kWorker, folder, QString::number(keep_after_ms), QString::number(seed)});
  worker.waitForStarted();
  QElapsedTimer clock;
  clock.start();
  std::vector<std::pair<int, qint64>> said;
  QByteArray text;
  const auto listen = [&] {
    text += worker.readAllStandardOutput();
    for (int end = 0; (end = static_cast<int>(text.indexOf('\n'))) >= 0; text.remove(0, end + 1))
      said.emplace_back(text.left(end).toInt(), clock.elapsed());
  };
  while (said.empty() && clock.elapsed() < 30000) {  // however long it takes to come to work
    worker.waitForReadyRead(100);
    listen();
  }
  clock.restart();
  for (auto& change : said) change.second = 0;
  while (clock.elapsed() < life_ms) {
    worker.waitForReadyRead(std::max(1, static_cast<int>(life_ms - clock.elapsed())));
    listen();
  }
  worker.kill();
  const qint64 end = clock.elapsed();
  worker.waitForFinished();
  listen();

  Killed result;
  result.changes = said.empty() ? 0 : said.back().first;
  const QString file = folder + QStringLiteral("/top.cowlcast");
  try {
    if (QFile::exists(file)) result.found = static_cast<int>(read_project(file).cowl.drape);
  } catch (const std::exception& reason) {
    result.unreadable = reason.what();
  }
  for (const FoundWork& work : found_work(folder + QStringLiteral("/work"))) {
    if (work.project)
      result.found = std::max(result.found, static_cast<int>(work.project->cowl.drape));
    else
      result.unreadable += work.refusal;
    forget(work);
  }
  for (const auto& [number, at] : said)
    if (number > result.found) {
      result.lost_s = 1e-3 * static_cast<double>(end - std::min(at, end));
      break;
    }
  return result;
}

}  // namespace cowlcast::projector::testing
