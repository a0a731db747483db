// The program without a command, or with a project's file in its place: its window.
#include <QApplication>
#include <QFile>

#include "projector/commands/command.h"
#include "projector/commands/display.h"
#include "projector/workbench/window.h"

namespace cowlcast::projector {

void open_workbench(const std::string& file) {
  const auto application = open_display();
  Settings settings;
  Document document;
  WorkbenchWindow window(document, settings);
  window.open();
  if (file.empty() || window.open_file(QFile::decodeName(file.c_str()))) {
    window.offer(found_work(work_folder()));
    if (file.empty()) window.offer_tour();
  }
  QApplication::exec();
}

}  // namespace cowlcast::projector
