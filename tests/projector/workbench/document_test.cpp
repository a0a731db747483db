#include "projector/workbench/document.h"

#include <gtest/gtest.h>

#include <QTemporaryDir>

#include "drafting/refusal.h"

namespace cowlcast::projector {
namespace {

void set_drape(Document& document, double drape) {
  document.change("Drape", [drape](Project& project) { project.cowl.drape = drape; });
}

TEST(Document, TellsOfEveryChangeAndUndoesIt) {
  Document document;
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
  Document document;
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

}  // namespace
}  // namespace cowlcast::projector
