#include "projector/project/history.h"

#include <gtest/gtest.h>

namespace cowlcast::projector {
namespace {

Project with_drape(Project project, double drape) {
  project.cowl.drape = drape;
  return project;
}

TEST(History, UndoesAndRedoesStepByStep) {
  History history;
  const double first = history.now().cowl.drape;
  history.step("Drape of 50 cm", with_drape(history.now(), 500));
  history.step("Drape of 60 cm", with_drape(history.now(), 600));
  EXPECT_EQ(history.undo_sentence(), "Drape of 60 cm");
  history.undo();
  EXPECT_EQ(history.now().cowl.drape, 500);
  EXPECT_EQ(history.redo_sentence(), "Drape of 60 cm");
  history.undo();
  EXPECT_EQ(history.now().cowl.drape, first);
  EXPECT_FALSE(history.can_undo());
  history.undo();
  history.redo();
  history.redo();
  history.redo();
  EXPECT_EQ(history.now().cowl.drape, 600);
  EXPECT_FALSE(history.can_redo());
}

TEST(History, ADragIsOneStep) {
  History history;
  history.step("Drape", with_drape(history.now(), 400), "drape");
  for (int i = 1; i <= 100; ++i) history.step("Drape", with_drape(history.now(), 400 + i), "drape");
  history.settle();
  history.step("Drape", with_drape(history.now(), 700), "drape");
  history.undo();
  EXPECT_EQ(history.now().cowl.drape, 500);
  history.undo();
  EXPECT_EQ(history.now().cowl.drape, Project().cowl.drape);
  EXPECT_FALSE(history.can_undo());
}

TEST(History, AStepAfterUndoingForgetsWhatWasUndone) {
  History history;
  history.step("a", with_drape(history.now(), 400), "drape");
  history.step("b", with_drape(history.now(), 500));
  history.undo();
  history.step("c", with_drape(history.now(), 450), "drape");  // after an undo it does not grow the old one
  EXPECT_FALSE(history.can_redo());
  history.undo();
  EXPECT_EQ(history.now().cowl.drape, 400);
}

TEST(History, KeepsTheNewestSteps) {
  History history({}, 5);
  for (int i = 0; i < 20; ++i) history.step("s", with_drape(history.now(), 400 + i));
  int undone = 0;
  for (; history.can_undo(); history.undo()) ++undone;
  EXPECT_EQ(undone, 5);
  EXPECT_EQ(history.now().cowl.drape, 414);
}

TEST(History, WhatIsCutStaysCut) {
  History history;
  history.step("a", with_drape(history.now(), 500));
  history.note([](Project& project) { project.cutting["front"].cut = 3; });
  history.undo();
  EXPECT_EQ(history.now().cutting.at("front").cut, 3);
  history.redo();
  EXPECT_EQ(history.now().cutting.at("front").cut, 3);
}

}  // namespace
}  // namespace cowlcast::projector
