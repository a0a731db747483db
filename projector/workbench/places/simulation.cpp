#include "projector/workbench/places/simulation.h"

#include <QDir>
#include <QFileInfo>
#include <QStandardPaths>

#include "drafting/refusal.h"
#include "projector/project/project_file.h"
#include "projector/table/calibration_job.h"

namespace cowlcast::projector {
namespace {

const QString kName = QStringLiteral("cowlcast/simulated-table");

}  // namespace

QString simulation_folder() {
  return QDir(QStandardPaths::writableLocation(QStandardPaths::GenericDataLocation)).filePath(kName);
}

bool is_simulated(const std::string& photograph) {
  return QFileInfo(QString::fromStdString(photograph)).path().endsWith(kName);
}

SimulatedPhotographs simulated_photographs(const QString& folder, const std::stop_token& stop,
                                           const std::function<void(int, int)>& made) {
  if (!QDir().mkpath(folder))
    throw drafting::Refusal("The folder \"" + folder.toStdString() +
                            "\" cannot be made. Make room on the disk, or check that you may write there.");
  const SimulatedTable table = simulated_table();
  SimulatedPhotographs all;
  all.request = request_for(table);
  const int count = photograph_count(table);
  for (int i = 0; i < count; ++i) {
    if (stop.stop_requested()) throw Stopped();
    made(i, count);
    const QString file = QDir(folder).filePath(QStringLiteral("photo-%1.jpg").arg(i + 1));
    const std::vector<unsigned char> bytes = photograph_file(table, i);
    write_whole(file, std::string(bytes.begin(), bytes.end()));
    all.files.push_back(file.toStdString());
  }
  return all;
}

}  // namespace cowlcast::projector
