#include "projector/project/work_copy.h"

#include <gtest/gtest.h>

#include <QDir>
#include <QFile>
#include <QTemporaryDir>

#include "drafting/refusal.h"
#include "projector/project/project_file.h"

namespace cowlcast::projector {
namespace {

Project with_drape(double drape) {
  Project project;
  project.cowl.drape = drape;
  return project;
}

void write(const QString& path, const QByteArray& bytes) {
  QFile file(path);
  ASSERT_TRUE(file.open(QIODevice::WriteOnly));
  file.write(bytes);
}

TEST(WorkCopy, IsFoundOnceItsWindowIsGoneAndNotBefore) {
  const QTemporaryDir folder;
  {
    WorkCopy copy(folder.path());
    for (int i = 1; i <= 50; ++i) copy.keep(with_drape(i), QStringLiteral("/x/top.cowlcast"));
    copy.wait();
    EXPECT_EQ(copy.trouble(), "");
    EXPECT_TRUE(found_work(folder.path()).empty());
  }
  {
    const auto found = found_work(folder.path());
    ASSERT_EQ(found.size(), 1u);
    EXPECT_EQ(found[0].project->cowl.drape, 50);
    EXPECT_EQ(found[0].path, QStringLiteral("/x/top.cowlcast"));
    EXPECT_TRUE(found_work(folder.path()).empty()) << "offered in two windows at once";
  }
  const auto found = found_work(folder.path());
  ASSERT_EQ(found.size(), 1u);
  forget(found[0]);
  EXPECT_TRUE(found_work(folder.path()).empty());
}

TEST(WorkCopy, LeavesNothingWhenDropped) {
  const QTemporaryDir folder;
  {
    WorkCopy copy(folder.path());
    copy.keep(with_drape(1), {});
    copy.drop();
  }
  EXPECT_TRUE(QDir(folder.path()).isEmpty());
}

TEST(WorkCopy, OneThatSaysWhatTheFileSaysIsNotOffered) {
  const QTemporaryDir folder;
  const QString file = folder.filePath(QStringLiteral("top.cowlcast"));
  write_project(file, with_drape(5), "picture");
  const QString work = folder.filePath(QStringLiteral("work"));
  WorkCopy(work).keep(with_drape(5), file);
  EXPECT_TRUE(found_work(work).empty());
  WorkCopy(work).keep(with_drape(6), file);
  EXPECT_EQ(found_work(work).size(), 1u);
}

TEST(WorkCopy, WhatAStoppedWriterLeftIsClearedAndADamagedCopyTold) {
  const QTemporaryDir folder;
  write(folder.filePath(QStringLiteral("a.work.Qx12")), "{half");
  write(folder.filePath(QStringLiteral("b.work")), "{half");
  const auto found = found_work(folder.path());
  ASSERT_EQ(found.size(), 1u);
  EXPECT_FALSE(found[0].project);
  EXPECT_FALSE(found[0].refusal.empty());
  EXPECT_FALSE(QFile::exists(folder.filePath(QStringLiteral("a.work.Qx12"))));
}

TEST(WorkCopy, TellsWhenItCannotWrite) {
  const QTemporaryDir folder;
  const QString blocked = folder.filePath(QStringLiteral("file"));
  write(blocked, "");
  EXPECT_THROW(WorkCopy{blocked}, drafting::Refusal);
}

TEST(ProjectLock, OneWindowAProject) {
  const QTemporaryDir folder;
  const QString file = folder.filePath(QStringLiteral("top.cowlcast"));
  {
    const ProjectLock lock(file);
    EXPECT_THROW(ProjectLock{file}, drafting::Refusal);
    const ProjectLock other(folder.filePath(QStringLiteral("other.cowlcast")));
  }
  const ProjectLock again(file);
  EXPECT_NO_THROW(ProjectLock(QStringLiteral("/proc/none/top.cowlcast"))) << "no lock can be made there";
}

}  // namespace
}  // namespace cowlcast::projector
