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
  std::vector<Place> wanted;
  QObject::connect(&bar, &TourBar::wanted, [&](Place place) { wanted.push_back(place); });
  for (int i = 0; i < static_cast<int>(TourTask::end); ++i) {
    const auto task = static_cast<TourTask>(i);
    bar.show_task(task, false);
    bar.show_task(task, true);
    EXPECT_FALSE(words_of(task).isEmpty());
    EXPECT_EQ(bar.offer()->text(), offer_of(task));
    EXPECT_FALSE(bar.offer()->shortcut().isEmpty());
    EXPECT_FALSE(bar.offer()->isEnabled()) << "it is being done";
  }
  EXPECT_EQ(wanted, (std::vector{Place::table, Place::table, Place::pattern, Place::cowl, Place::cutting}));
}

}  // namespace
}  // namespace cowlcast::projector
