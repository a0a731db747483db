#include "projector/showing/aside.h"

#include <gtest/gtest.h>

#include <QCoreApplication>
#include <atomic>
#include <stdexcept>
#include <string>

namespace cowlcast::projector {
namespace {

void wait_for(const Aside& aside) {
  while (aside.busy()) QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
}

TEST(Aside, WorksBesideTheWindowAndAnswersInIt) {
  Aside aside;
  const std::thread::id here = std::this_thread::get_id();
  std::thread::id worked, answered;
  for (int round = 0; round < 3; ++round) {
    aside.start([&] { worked = std::this_thread::get_id(); },
                [&](const std::exception_ptr& failed) {
                  EXPECT_FALSE(failed);
                  answered = std::this_thread::get_id();
                });
    EXPECT_TRUE(aside.busy());
    wait_for(aside);
    EXPECT_NE(worked, here);
    EXPECT_EQ(answered, here);
  }
}

TEST(Aside, HandsOnWhatWentWrong) {
  Aside aside;
  std::string said;
  aside.start([] { throw std::runtime_error("the cable"); },
              [&](const std::exception_ptr& failed) {
                try {
                  std::rethrow_exception(failed);
                } catch (const std::exception& reason) {
                  said = reason.what();
                }
              });
  wait_for(aside);
  EXPECT_EQ(said, "the cable");
}

TEST(Aside, WaitsForItsWorkWhenItEndsAndAnswersNoMore) {
  std::atomic<bool> let_go = false, worked = false;
  bool answered = false;
  {
    Aside aside;
    aside.start(
        [&] {
          while (!let_go) std::this_thread::yield();
          worked = true;
        },
        [&](const std::exception_ptr&) { answered = true; });
    let_go = true;
  }
  EXPECT_TRUE(worked);
  QCoreApplication::processEvents();
  EXPECT_FALSE(answered);
}

}  // namespace
}  // namespace cowlcast::projector
