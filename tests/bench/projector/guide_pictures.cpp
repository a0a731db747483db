// The guide's pictures, made from the real window on the simulated table.
//
//   xvfb-run -s "-screen 0 1920x1080x24" guide_pictures data/guide/pictures
//
// One folder for each language. Made anew whenever the window's looks have changed.
#include <QApplication>
#include <QDir>
#include <QTemporaryDir>
#include <cstdio>

#include "projector/workbench/places/cutting_place.h"
#include "projector/workbench/places/table_place.h"
#include "projector/workbench/window.h"

using namespace cowlcast::projector;

namespace {

constexpr Place kPlaces[] = {Place::table, Place::pattern, Place::cowl,
                             Place::cloth, Place::cutting, Place::sewing};
constexpr const char* kNames[] = {"table", "pattern", "cowl", "cloth", "cutting", "sewing"};

template <typename AtWork>
void wait_for(const AtWork& at_work) {
  for (int i = 0; i < 30 || at_work.busy(); ++i) QApplication::processEvents(QEventLoop::AllEvents, 10);
}

/// An invented garment on the calibrated simulated table.
void make_garment(Document& document) {
  document.change("an invented garment", [](Project& project) {
    project.pattern.source = PatternSource::size;
    project.pattern.size = "12";
    project.cowl.drape = 540.0;
    project.cloth.colours = {0xff8a3a4c};
  });
}

/// On to the second stroke of the first piece.
void begin_to_cut(CuttingPlace& cutting) {
  for (int acts = 0; acts < 20 && cutting.view() && cutting.view()->cut < 1; ++acts) {
    cutting.act(Act::next);
    wait_for(cutting);
  }
}

void take(const QString& language, const QDir& out, const QDir& scratch) {
  Settings settings(scratch.filePath(language + QStringLiteral(".ini")));
  settings.set([&](Preferences& one) {
    one.units = Units::centimetres;
    one.language = language;
  });
  Document document(Keeping{scratch.filePath(language)});
  WorkbenchWindow window(document, settings);
  window.resize(1280, 800);
  window.show();
  auto& table = dynamic_cast<TablePlace&>(window.workplace(Place::table));
  auto& cutting = dynamic_cast<CuttingPlace&>(window.workplace(Place::cutting));
  window.go_to(Place::table);
  table.lay_out_simulated_table();
  wait_for(table);
  table.calibrate();
  wait_for(table);
  make_garment(document);
  for (int i = 0; i < 6; ++i) {
    window.go_to(kPlaces[i]);
    if (kPlaces[i] == Place::cutting) begin_to_cut(cutting);
    wait_for(cutting);
    window.grab().save(out.filePath(QLatin1String(kNames[i]) + QStringLiteral(".png")));
  }
  document.give_up();
}

}  // namespace

int main(int argc, char** argv) {
  const QApplication application(argc, argv);
  if (argc != 2) {
    std::fprintf(stderr, "guide_pictures OUT\n");
    return 2;
  }
  const QTemporaryDir scratch;
  for (const char* language : {"en", "de"}) {
    const QDir out(QDir(QString::fromLocal8Bit(argv[1])).filePath(QLatin1String(language)));
    out.mkpath(QStringLiteral("."));
    take(QLatin1String(language), out, QDir(scratch.path()));
  }
  return 0;
}
