// The job with the simulated table's camera in the real window, from the first frame to a bumped projector:
// how long the window was deaf at most, and pictures to look at.
//
//   QT_QPA_PLATFORM=offscreen live_pictures OUT [dark] [language]
#include <QApplication>
#include <QDir>
#include <QScrollBar>
#include <cstdio>

#include "projector/workbench/places/cutting_place.h"
#include "projector/workbench/places/table_place.h"
#include "projector/workbench/window.h"
#include "tests/bench/projector/heart.h"

using namespace cowlcast::projector;

int main(int argc, char** argv) {
  const QApplication application(argc, argv);
  if (argc < 2) {
    std::fprintf(stderr, "live_pictures OUT [dark] [language]\n");
    return 2;
  }
  const QDir out(QString::fromLocal8Bit(argv[1]));
  out.mkpath(QStringLiteral("."));
  const bool dark = argc > 2 && QLatin1String(argv[2]) == QLatin1String("dark");
  QFile::remove(out.filePath(QStringLiteral("settings.ini")));
  Settings settings(out.filePath(QStringLiteral("settings.ini")));
  settings.set([&](Preferences& p) {
    p.units = Units::centimetres;
    p.theme = dark ? ThemeName::dark : ThemeName::light;
    p.language = QString::fromLocal8Bit(argc > 3 ? argv[3] : "en");
  });
  Document document(Keeping{out.filePath(QStringLiteral("work"))});
  WorkbenchWindow window(document, settings);
  window.resize(dark ? QSize(1920, 1080) : QSize(1280, 800));
  window.show();
  auto& table = dynamic_cast<TablePlace&>(window.workplace(Place::table));
  auto& cutting = dynamic_cast<CuttingPlace&>(window.workplace(Place::cutting));
  Heart heart;
  int number = 0;
  const auto run_until = [&](const char* what, const std::function<bool()>& so) {
    heart.restart();
    heart.forget();
    QElapsedTimer clock;
    clock.start();
    while (!so() && clock.elapsed() < 90'000) QApplication::processEvents(QEventLoop::AllEvents, 10);
    for (int i = 0; i < 20; ++i) QApplication::processEvents(QEventLoop::AllEvents, 10);
    heart.say(so() ? what : "NOT REACHED");
    window.grab().save(
        out.filePath(QStringLiteral("live-%1-%2%3.png")
                         .arg(++number, 2, 10, QLatin1Char('0'))
                         .arg(QString::fromLatin1(what).replace(QLatin1Char(' '), QLatin1Char('-')))
                         .arg(dark ? QStringLiteral("-dark") : QString())));
  };
  const auto later = [&](const std::function<void()>& act) { QTimer::singleShot(0, &window, act); };
  document.change("begin", [](Project& project) {
    project.table.camera = kSimulatedCamera;
    project.pattern.source = PatternSource::size;
    project.pattern.size = std::string("8");
  });
  window.go_to(Place::table);
  table.photograph_with_camera(true);
  int frames = 0;
  QObject::connect(&table.camera(), &CameraWork::seen, [&](const CameraSight&) { ++frames; });
  later([&] { table.camera_panel().begin(); });
  run_until("camera opened", [&] { return frames > 6; });
  table.camera().simulated()->plug(false);
  run_until("pulled out", [&] { return !table.notice().words().isEmpty(); });
  table.camera().simulated()->plug(true);
  run_until("calibrated", [&] { return document.project().table.map && !table.busy(); });
  later([&] { table.go_to_step(TableStep::check); });
  run_until("check", [&] { return table.step() == TableStep::check; });
  const auto& map = *document.project().table.map;
  const auto figure = cowlcast::calibration::check_figure(map);
  const double tape = tape_on_simulated_table(map, figure.at('A'), figure.at('C'));
  later([&] { table.check().judge(tape); });
  later([&] { table.check().judge(tape + 7.0); });
  run_until("checked", [&] { return document.project().table.checks.size() == 2; });
  later([&] { table.go_to_step(TableStep::stay); });
  later([&] { table.stay().begin(); });
  run_until("looks where it stands", [&] { return table.camera().running(); });
  run_until("located", [&] { return document.project().table.fixed_camera.has_value(); });
  window.go_to(Place::cutting);
  while (cutting.view()->phase == Phase::cautions) cutting.act(Act::next);
  for (auto* panel : cutting.findChildren<Panel*>()) panel->verticalScrollBar()->setValue(300);
  later([&] { cutting.watch().want(true); });
  later([&] { cutting.act(Act::next); });
  run_until("asks to learn", [&] { return cutting.view()->camera == CameraAsk::by_next; });
  later([&] { cutting.act(Act::next); });
  using Kind = WatchStanding::Kind;
  run_until("learning", [&] { return cutting.watch().standing().kind == Kind::learning; });
  run_until("watching", [&] { return cutting.watch().standing().kind == Kind::watching; });
  cutting.watch().simulated()->knock_projector(7.0);
  run_until("bumped", [&] { return cutting.watch().standing().kind == Kind::moved; });
  later([&] { cutting.act(Act::look); });
  run_until("found again", [&] { return cutting.watch().standing().kind == Kind::watching; });
  document.give_up();
  return 0;
}
