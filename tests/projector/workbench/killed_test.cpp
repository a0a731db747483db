// Killed in the middle of work: it always opens again, and what was done longer ago than the work copies'
// pause is there.
#include <gtest/gtest.h>

#include <QTemporaryDir>

#include "killed_work.h"

namespace cowlcast::projector {
namespace {

TEST(Killed, TwentyTimesAndAllOpensAgain) {
  constexpr int pause_ms = 50;
  std::mt19937 random(6);
  int worked = 0;
  for (unsigned i = 0; i < 20; ++i) {
    const QTemporaryDir folder;
    const int life_ms = 60 + static_cast<int>(random() % 120);
    const testing::Killed killed = testing::kill_after(life_ms, folder.path(), pause_ms, i + 1);
    EXPECT_EQ(killed.unreadable, "") << i;
    if (killed.changes > 0) ++worked;
    EXPECT_LE(killed.found, killed.changes + 1);
    EXPECT_TRUE(found_work(folder.filePath(QStringLiteral("work"))).empty()) << "found twice";
  }
  EXPECT_GE(worked, 10) << "the workers hardly came to work: nothing was tried";
}

TEST(Killed, LosesNoMoreThanThePauseAndTheWriting) {
  const QTemporaryDir folder;
  const testing::Killed killed = testing::kill_after(3000, folder.path(), 50, 7);
  ASSERT_GT(killed.changes, 10);
  EXPECT_GT(killed.found, 0);
  EXPECT_LT(killed.lost_s, 2.0) << "of three seconds' work, kept every 50 ms; killed_work measures the rest";
}

}  // namespace
}  // namespace cowlcast::projector

int main(int argc, char** argv) {
  qputenv("QT_QPA_PLATFORM", "offscreen");
  ::testing::InitGoogleTest(&argc, argv);
  const QCoreApplication application(argc, argv);
  const QStringList words = QCoreApplication::arguments();
  if (words.size() == 5 && words[1] == cowlcast::projector::testing::kWorker)
    return cowlcast::projector::testing::work_until_killed(words[2], words[3].toInt(), words[4].toUInt());
  return RUN_ALL_TESTS();
}
