// Pictures of every place of the workbench, in both themes and two sizes, to look at.
//
//   QT_QPA_PLATFORM=offscreen workbench_pictures OUT [language] [larger]
#include <QApplication>
#include <QDir>
#include <cstdio>

#include "projector/project/project_file.h"
#include "projector/workbench/window.h"

using namespace cowlcast::projector;

namespace {

void grab(WorkbenchWindow& window, const QDir& out, const QString& name) {
  QApplication::processEvents();
  QApplication::processEvents();
  window.grab().save(out.filePath(name + QStringLiteral(".png")));
}

const char* name_of(Place place) {
  constexpr const char* names[]{"table", "pattern", "cowl", "cloth", "cutting", "sewing"};
  return names[static_cast<int>(place)];
}

}  // namespace

int main(int argc, char** argv) {
  const QApplication application(argc, argv);
  if (argc < 2) {
    std::fprintf(stderr, "workbench_pictures OUT [language] [larger]\n");
    return 2;
  }
  const QDir out(QString::fromLocal8Bit(argv[1]));
  out.mkpath(QStringLiteral("."));
  const QString ini = out.filePath(QStringLiteral("settings.ini"));
  QFile::remove(ini);
  Settings settings(ini);
  settings.set([&](Preferences& p) {
    p.units = Units::centimetres;
    p.language = argc > 2 ? QString::fromLocal8Bit(argv[2]) : QStringLiteral("en");
    p.larger_type = argc > 3;
  });
  Document document(Keeping{out.filePath(QStringLiteral("work"))});
  WorkbenchWindow window(document, settings);
  window.show();
  for (const auto& [width, height] : {std::pair{1280, 800}, {1920, 1080}}) {
    window.resize(width, height);
    for (const ThemeName theme : {ThemeName::light, ThemeName::dark}) {
      settings.set([&](Preferences& p) { p.theme = theme; });
      const QString end =
          QStringLiteral("-%1-%2")
              .arg(theme == ThemeName::dark ? QStringLiteral("dark") : QStringLiteral("light"))
              .arg(width);
      document.start_new();
      for (int i = 0; i < 6; ++i) {
        const auto place = static_cast<Place>(i);
        window.go_to(place);
        if (window.current() == place)
          grab(window, out, QLatin1String(name_of(place)) + QStringLiteral("-empty") + end);
      }
      Project project;
      project.pattern.source = PatternSource::size;
      project.pattern.size = "12";
      document.start_new(project);
      for (int i = 0; i < 6; ++i) {
        const auto place = static_cast<Place>(i);
        window.go_to(place);
        if (window.current() == place) grab(window, out, QLatin1String(name_of(place)) + end);
      }
      Project other = project;
      other.pattern.source = PatternSource::body;
      document.start_new(other);
      window.go_to(Place::pattern);
      grab(window, out, QStringLiteral("pattern-body") + end);
      other.pattern.source = PatternSource::drawing;
      other.pattern.front = {
          "my front.svg", read_whole(QStringLiteral(COWLCAST_DATA_DIR "/demo-base.svg")), {}};
      document.start_new(other);
      grab(window, out, QStringLiteral("pattern-drawing") + end);
      project.cowl.drape = 1500.0;
      document.start_new(project);
      window.go_to(Place::cowl);
      grab(window, out, QStringLiteral("cowl-refused") + end);
    }
  }
  return 0;
}
