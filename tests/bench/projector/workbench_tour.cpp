// The tour in the real window, from an empty project to the last stroke: how long the window was deaf at
// most, and pictures of each step.
//
//   QT_QPA_PLATFORM=offscreen workbench_tour OUT [dark]
#include <QApplication>
#include <QDir>
#include <QElapsedTimer>
#include <QTimer>
#include <cstdio>
#include <string>
#include <vector>

#include "projector/workbench/places/cutting_place.h"
#include "projector/workbench/places/table_place.h"
#include "projector/workbench/window.h"
#include "tests/bench/projector/heart.h"

using namespace cowlcast::projector;

int main(int argc, char** argv) {
  const QApplication application(argc, argv);
  if (argc < 2) {
    std::fprintf(stderr, "workbench_tour OUT [dark]\n");
    return 2;
  }
  const QDir out(QString::fromLocal8Bit(argv[1]));
  out.mkpath(QStringLiteral("."));
  const bool dark = argc > 2;
  QFile::remove(out.filePath(QStringLiteral("settings.ini")));
  Settings settings(out.filePath(QStringLiteral("settings.ini")));
  settings.set([&](Preferences& p) {
    p.units = Units::centimetres;
    p.theme = dark ? ThemeName::dark : ThemeName::light;
  });
  Document document(Keeping{out.filePath(QStringLiteral("work"))});
  WorkbenchWindow window(document, settings);
  window.resize(dark ? QSize(1920, 1080) : QSize(1280, 800));
  window.show();
  window.offer_tour();
  const auto& table = dynamic_cast<TablePlace&>(window.workplace(Place::table));
  auto& cutting = dynamic_cast<CuttingPlace&>(window.workplace(Place::cutting));
  Heart heart;
  int number = 0;
  const auto run_on = [&](const char* what) {
    heart.restart();
    for (int i = 0; i < 40 || table.busy() || cutting.busy(); ++i)
      QApplication::processEvents(QEventLoop::AllEvents, 10);
    heart.say(what);
    heart.forget();
    window.grab().save(out.filePath(QStringLiteral("tour-%1-%2%3.png")
                                        .arg(++number, 2, 10, QLatin1Char('0'))
                                        .arg(QLatin1String(what).mid(0, 20))
                                        .arg(dark ? QStringLiteral("-dark") : QString())
                                        .replace(QLatin1Char(' '), QLatin1Char('-'))));
    heart.restart();
  };
  QElapsedTimer whole;
  whole.start();
  run_on("first window");
  const auto press = [](QPushButton* button) {
    QTimer::singleShot(0, button, [button] { button->click(); });
  };
  press(window.notice().button());
  run_on("tour begun");
  for (int i = 0; i < 60 && window.tour().task() != TourTask::end; ++i) {
    const char* names[] = {"photographed", "calibrated", "base", "drape", "cutting", "end"};
    const int task = static_cast<int>(window.tour().task());
    press(window.tour().offer());
    run_on(names[task]);
  }
  while (!all_cut(*cutting.view())) {
    QTimer::singleShot(0, &cutting, [&] { cutting.act(Act::next); });
    run_on("stroke");
  }
  std::printf("the whole tour took %.1f s\n", 1e-3 * static_cast<double>(whole.elapsed()));
  document.give_up();
  return 0;
}
