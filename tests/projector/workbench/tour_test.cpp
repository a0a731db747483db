#include "projector/workbench/tour.h"

#include <gtest/gtest.h>

#include "../test_map.h"

namespace cowlcast::projector {
namespace {

TourTask task_of(const Project& project) {
  return tour_task(project, garment_of(project));
}

TEST(Tour, FollowsTheProjectFromNothingToTheFirstStroke) {
  Project project;
  EXPECT_EQ(task_of(project), TourTask::photograph);
  project.table.photographs = {"1.jpg"};
  EXPECT_EQ(task_of(project), TourTask::calibrate);
  project.table.map = testing::map_of({});
  EXPECT_EQ(task_of(project), TourTask::base);
  project.pattern.source = PatternSource::size;
  project.pattern.size = std::string("8");
  EXPECT_EQ(task_of(project), TourTask::drape);
  project.cowl.drape = 540;
  EXPECT_EQ(task_of(project), TourTask::cut);
  project.cutting["cowl front"].cut = 1;
  EXPECT_EQ(task_of(project), TourTask::end);
  project.cutting.clear();  // begun anew, it goes on there
  EXPECT_EQ(task_of(project), TourTask::cut);
}

TEST(Tour, EveryTaskHasWordsAndAnOfferWithAKey) {
  TourBar bar;
  for (int i = 0; i < static_cast<int>(TourTask::end); ++i) {
    const auto task = static_cast<TourTask>(i);
    bar.show_task(task, false, false);
    EXPECT_NE(bar.offer()->text(), offer_of(task)) << "first to its place";
    bar.show_task(task, true, false);
    EXPECT_FALSE(words_of(task).isEmpty());
    EXPECT_EQ(bar.offer()->text(), offer_of(task));
    EXPECT_FALSE(bar.offer()->shortcut().isEmpty());
    EXPECT_TRUE(bar.offer()->isEnabled());
    bar.show_task(task, true, true);
    EXPECT_FALSE(bar.offer()->isEnabled()) << "it is being done";
  }
}

}  // namespace
}  // namespace cowlcast::projector
