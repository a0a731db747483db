#include "projector/workbench/document.h"

#include <gtest/gtest.h>

#include <QTemporaryDir>

#include "drafting/refusal.h"
#include "projector/project/project_file.h"

namespace cowlcast::projector {
namespace {

void set_drape(Document& document, double drape) {
  document.change("Drape", [drape](Project& project) { project.cowl.drape = drape; });
}

TEST(Document, TellsOfEveryChangeAndUndoesIt) {
  const QTemporaryDir folder;
  Document document(Keeping{folder.path()});
  int told = 0;
  QObject::connect(&document, &Document::changed, [&] { ++told; });
  set_drape(document, 500);
  EXPECT_FALSE(document.saved());
  EXPECT_EQ(document.undo_sentence(), QStringLiteral("Drape"));
  document.undo();
  EXPECT_EQ(document.project().cowl.drape, Project().cowl.drape);
  document.redo();
  EXPECT_EQ(document.project().cowl.drape, 500);
  EXPECT_EQ(told, 3);
  document.redo();
  EXPECT_EQ(told, 3);
}

TEST(Document, SavesAndOpens) {
  const QTemporaryDir folder;
  const QString path = folder.filePath(QStringLiteral("blue top.cowlcast"));
  Document document(Keeping{folder.filePath(QStringLiteral("work"))});
  EXPECT_THROW(document.save(), drafting::Refusal);
  set_drape(document, 512);
  document.save_as(path);
  EXPECT_TRUE(document.saved());
  EXPECT_EQ(document.title(), QStringLiteral("blue top"));
  document.start_new();
  EXPECT_TRUE(document.path().isEmpty());
  EXPECT_FALSE(document.can_undo());
  document.open(path);
  EXPECT_EQ(document.project().cowl.drape, 512);
  EXPECT_THROW(document.open(folder.filePath(QStringLiteral("none.cowlcast"))), drafting::Refusal);
  EXPECT_EQ(document.path(), path);
  EXPECT_EQ(document.project().cowl.drape, 512);
}

TEST(Document, TwoWindowsDoNotOverwriteEachOther) {
  const QTemporaryDir folder;
  const QString path = folder.filePath(QStringLiteral("top.cowlcast"));
  Document one(Keeping{folder.filePath(QStringLiteral("work"))});
  Document two(Keeping{folder.filePath(QStringLiteral("work"))});
  one.save_as(path);
  EXPECT_THROW(two.open(path), drafting::Refusal);
  EXPECT_THROW(two.save_as(path), drafting::Refusal);
  one.start_new();
  two.open(path);
  EXPECT_THROW(one.save_as(path), drafting::Refusal);
  two.open(path);  // its own: as it was saved
  EXPECT_EQ(two.path(), path);
}

TEST(Document, WorkThatWasNotSavedIsGoneOnWith) {
  const QTemporaryDir folder;
  const QString path = folder.filePath(QStringLiteral("top.cowlcast"));
  const QString work = folder.filePath(QStringLiteral("work"));
  {
    Document document(Keeping{work});
    document.save_as(path);
    set_drape(document, 555);
  }  // ends without having saved
  Document document(Keeping{work});
  {
    const auto found = found_work(work);
    ASSERT_EQ(found.size(), 1u);
    document.recover(found[0]);
  }
  EXPECT_EQ(document.project().cowl.drape, 555);
  EXPECT_EQ(document.path(), path);
  EXPECT_FALSE(document.saved());
  document.save();
  EXPECT_TRUE(found_work(work).empty());
  EXPECT_EQ(read_project(path).cowl.drape, 555);
  EXPECT_FALSE(thumbnail_from_json(read_whole(path)).isEmpty());
}

TEST(Document, AVariantHasTheChoicesAndNothingCut) {
  const QTemporaryDir folder;
  Document document(Keeping{folder.filePath(QStringLiteral("work"))});
  document.change("a", [](Project& project) {
    project.cowl.drape = 600;
    project.cutting["front"].cut = 2;
  });
  document.save_as(folder.filePath(QStringLiteral("top.cowlcast")));
  document.begin_variant();
  EXPECT_EQ(document.project().cowl.drape, 600);
  EXPECT_TRUE(document.project().cutting.empty());
  EXPECT_TRUE(document.path().isEmpty());
  EXPECT_FALSE(document.saved());
  EXPECT_NE(document.title().indexOf(QStringLiteral("top")), -1);
  document.give_up();
}

}  // namespace
}  // namespace cowlcast::projector
