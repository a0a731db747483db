#include "projector/workbench/places/table_place.h"

#include <gtest/gtest.h>

#include <QDir>
#include <QDropEvent>
#include <QFile>
#include <QMimeData>

#include "support.h"

namespace cowlcast::projector {
namespace {

using testing::Stand;
using testing::until;

void write(const QString& path, const QByteArray& bytes) {
  QFile file(path);
  ASSERT_TRUE(file.open(QIODevice::WriteOnly));
  file.write(bytes);
}

TEST(Background, GivesItsResultInTheWindowAndNothingAfterStop) {
  Background work;
  int result = 0;
  const auto start = [&](int value) {
    work.start<int>([value](const std::stop_token&) { return value; }, [&](int got) { result = got; },
                    [](const QString&) {});
  };
  start(7);
  EXPECT_TRUE(work.busy());
  EXPECT_TRUE(until([&] { return !work.busy(); }));
  EXPECT_EQ(result, 7);
  start(8);
  work.stop();
  EXPECT_FALSE(work.busy());
  start(9);
  EXPECT_TRUE(until([&] { return !work.busy(); }));
  EXPECT_EQ(result, 9);
  QString reason;
  work.start<int>([](const std::stop_token&) -> int { throw std::runtime_error("so it is"); }, [](int) {},
                  [&](const QString& words) { reason = words; });
  EXPECT_TRUE(until([&] { return !work.busy(); }));
  EXPECT_EQ(reason, QStringLiteral("so it is"));
}

TEST(FolderWatch, TellsOfPhotographsThatArriveWhole) {
  const QTemporaryDir folder;
  write(folder.filePath(QStringLiteral("old.jpg")), "there before");
  FolderWatch watch;
  QStringList arrived;
  QObject::connect(&watch, &FolderWatch::arrived, [&](const QStringList& files) { arrived += files; });
  watch.watch(folder.path());
  write(folder.filePath(QStringLiteral("new.JPG")), "a photograph");
  write(folder.filePath(QStringLiteral("notes.txt")), "none");
  EXPECT_TRUE(until([&] { return !arrived.isEmpty(); }, 10'000));
  EXPECT_EQ(arrived, QStringList{folder.filePath(QStringLiteral("new.JPG"))});
}

TEST(TablePlace, TakesDroppedPhotographsAndTellsWhatIsNone) {
  Stand stand;
  TablePlace place(stand.document, stand.settings, stand.garment);
  place.show_project();
  QMimeData data;
  data.setUrls(
      {QUrl::fromLocalFile(QStringLiteral("/x/1.jpg")), QUrl::fromLocalFile(QStringLiteral("/x/2.heic"))});
  QDropEvent drop({10, 10}, Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
  static_cast<QObject&>(place).event(&drop);  // as it comes once the drag has entered
  EXPECT_EQ(stand.document.project().table.photographs, std::vector<std::string>{"/x/1.jpg"});
  EXPECT_NE(place.notice().words().indexOf(QStringLiteral("2.heic")), -1);
  EXPECT_EQ(place.step(), TableStep::photograph);
  place.add_photographs({QStringLiteral("/x/1.jpg")});
  EXPECT_EQ(stand.document.project().table.photographs.size(), 1u) << "twice the same";
  stand.document.undo();
  EXPECT_TRUE(stand.document.project().table.photographs.empty());
}

TEST(TablePlace, SaysWhatIsMissingBeforeItCalibrates) {
  Stand stand;
  TablePlace place(stand.document, stand.settings, stand.garment);
  place.show_project();
  place.calibrate();
  EXPECT_FALSE(place.busy());
  EXPECT_FALSE(place.notice().words().isEmpty());
  place.notice().button()->click();
  EXPECT_EQ(place.step(), TableStep::photograph);
  const QString broken = stand.folder.filePath(QStringLiteral("broken.jpg"));
  write(broken, "no picture at all");
  place.add_photographs({broken});
  place.calibrate();
  EXPECT_NE(place.notice().words().indexOf(QStringLiteral("projector")), -1);
  stand.document.change("size", [](Project& project) {
    project.table.width = 1920;
    project.table.height = 1080;
    project.table.ruler_across = 239.4;
  });
  place.calibrate();
  EXPECT_FALSE(place.busy());
  EXPECT_NE(place.notice().words().indexOf(QStringLiteral("Only one of a sheet's two rulers")), -1);
  place.notice().button()->click();
  EXPECT_EQ(place.step(), TableStep::print);
  stand.document.change("ruler", [](Project& project) { project.table.ruler_down = 179.7; });
  place.calibrate();
  EXPECT_TRUE(until([&] { return !place.busy(); }));
  EXPECT_NE(place.notice().words().indexOf(QStringLiteral("broken.jpg")), -1) << "the refusal names the file";
  EXPECT_FALSE(stand.document.project().table.map);
}

TEST(TablePlace, WritesTheSheets) {
  Stand stand;
  TablePlace place(stand.document, stand.settings, stand.garment);
  const QString file = stand.folder.filePath(QStringLiteral("sheets.pdf"));
  place.save_sheets(file);
  QFile saved(file);
  ASSERT_TRUE(saved.open(QIODevice::ReadOnly));
  EXPECT_TRUE(saved.readAll().startsWith("%PDF"));
  place.save_sheets(stand.folder.filePath(QStringLiteral("no/folder/sheets.pdf")));
  EXPECT_FALSE(place.notice().words().isEmpty());
}

}  // namespace
}  // namespace cowlcast::projector
