// The program without a command: its window.
#include <QApplication>

#include "projector/commands/command.h"
#include "projector/commands/display.h"
#include "projector/workbench/window.h"

namespace cowlcast::projector {

void open_workbench() {
  const auto application = open_display();
  Settings settings;
  Document document;
  WorkbenchWindow window(document, settings);
  window.open();
  window.offer(found_work(work_folder()));
  window.offer_tour();
  QApplication::exec();
}

}  // namespace cowlcast::projector
