// The table's place and the cutting place with a camera on a cable: the simulated table's own.
#include <gtest/gtest.h>

#include <cmath>

#include "projector/cutting/now.h"
#include "projector/workbench/places/cutting_place.h"
#include "projector/workbench/places/table_place.h"
#include "support.h"

namespace cowlcast::projector {
namespace {

using testing::Stand;
using testing::until;

void choose_simulated_camera(Document& document) {
  document.change("camera", [](Project& project) { project.table.camera = kSimulatedCamera; });
}

/// The table as it is once the camera has photographed it and found its own place: made once, by the window.
const TableChoice& calibrated_table() {
  static const TableChoice table = [] {
    Stand stand;
    choose_simulated_camera(stand.document);
    TablePlace place(stand.document, stand.settings, stand.garment);
    place.show_project();
    place.photograph_with_camera(true);
    QStringList said;
    QObject::connect(&place.camera(), &CameraWork::seen,
                     [&](const CameraSight& sight) { said << sight.say; });
    place.camera_panel().begin();
    EXPECT_TRUE(until([&] { return !said.isEmpty(); })) << place.notice().words().toStdString();
    // The cable is pulled out, amid the work.
    place.camera().simulated()->plug(false);
    EXPECT_TRUE(until([&] { return place.notice().words().contains(QStringLiteral("Plug it in")); }));
    EXPECT_NE(place.notice().button()->text(), QString()) << "there is a way on without it";
    place.camera().simulated()->plug(true);
    EXPECT_TRUE(until([&] { return place.notice().words().isEmpty() || !place.notice().isVisible(); }));
    EXPECT_TRUE(until([&] { return !place.camera().running() && !place.busy(); }))
        << place.notice().words().toStdString();
    EXPECT_EQ(place.step(), TableStep::calibrate);
    EXPECT_TRUE(stand.document.project().table.map.has_value()) << place.notice().words().toStdString();
    EXPECT_TRUE(stand.document.project().table.simulated);

    place.go_to_step(TableStep::stay);
    place.stay().begin();
    EXPECT_TRUE(until([&] { return stand.document.project().table.fixed_camera.has_value(); }))
        << place.notice().words().toStdString();
    EXPECT_TRUE(until([&] { return !place.camera().running(); }));
    return stand.document.project().table;
  }();
  return table;
}

void take(Document& document) {
  document.change("all", [](Project& project) {
    project.table = calibrated_table();
    project.pattern.source = PatternSource::size;
    project.pattern.size = std::string("8");
  });
}

TEST(LiveTable, IsCalibratedByACameraThatIsPulledOutAndPutBack) {
  const calibration::TableMap& map = *calibrated_table().map;
  const calibration::CheckFigure figure = check_light_figure(map, CheckGrid::none);
  for (const auto& [from, to] : distances_to_measure(false)) {
    const auto judged = calibration::judged(
        map, figure, {{from, to, tape_on_simulated_table(map, figure.at(from), figure.at(to)), 0.05}});
    EXPECT_TRUE(judged.front().agrees()) << from << to << judged.front().drawn;
  }
  EXPECT_GE(calibrated_table().fixed_camera->tags.size(), 6u);
}

TEST(LiveTable, ACameraThatIsNotThereIsSaidWithAWayOn) {
  Stand stand;
  TablePlace place(stand.document, stand.settings, stand.garment);
  place.show_project();
  place.photograph_with_camera(true);
  place.camera_panel().begin();
  EXPECT_NE(place.notice().words().indexOf(QStringLiteral("which camera")), -1);
  EXPECT_FALSE(place.camera().running());
  stand.document.change("camera", [](Project& project) { project.table.camera = "/nowhere/film.avi"; });
  place.camera_panel().begin();
  EXPECT_NE(place.notice().words().indexOf(QStringLiteral("which screen")), -1)
      << "a real camera needs a real projector";
  place.photograph_with_camera(false);
  EXPECT_EQ(place.step(), TableStep::photograph);
}

TEST(LiveTable, ATapeThatAgreesIsKeptAndOneThatDoesNotIsSaid) {
  Stand stand;
  take(stand.document);
  TablePlace place(stand.document, stand.settings, stand.garment);
  place.show_project();
  place.go_to_step(TableStep::check);
  const calibration::TableMap map = *stand.document.project().table.map;
  const calibration::CheckFigure figure = check_light_figure(map, CheckGrid::none);
  const double tape = tape_on_simulated_table(map, figure.at('A'), figure.at('C'));
  place.check().judge(0.0);
  EXPECT_FALSE(place.notice().words().isEmpty()) << "nothing is typed in";
  place.check().judge(std::round(tape));
  EXPECT_TRUE(place.notice().words().isEmpty() || !place.notice().isVisible());
  ASSERT_EQ(stand.document.project().table.checks.size(), 1u);
  EXPECT_TRUE(stand.document.project().table.checks.front().checked.agrees());
  EXPECT_NE(place.check().words().indexOf(QStringLiteral("A to C")), -1);

  place.check().judge(tape + 6.0);
  ASSERT_EQ(stand.document.project().table.checks.size(), 2u);
  EXPECT_FALSE(stand.document.project().table.checks.back().checked.agrees());
  EXPECT_NE(place.notice().words().indexOf(QStringLiteral("otherwise")), -1);
  EXPECT_TRUE(calibration::failed_check(readings_of(stand.document.project().table)));
  place.check().refine_scale();
  EXPECT_NE(place.notice().words().indexOf(QStringLiteral("does not go with")), -1)
      << "two tapes that contradict each other mend nothing: " << place.notice().words().toStdString();
  stand.document.undo();
  place.show_project();
  ASSERT_EQ(stand.document.project().table.checks.size(), 1u);

  place.check().refine_scale();
  const calibration::TableMap& mended = *stand.document.project().table.map;
  EXPECT_LT(mended.scale.relative_sigma, map.scale.relative_sigma);
  EXPECT_NE(mended.scale.source.find("tape"), std::string::npos);
  EXPECT_FALSE(stand.document.project().table.fixed_camera) << "its millimetres were others";
  EXPECT_NE(place.check().words().indexOf(QStringLiteral("The scale was mended by")), -1);
  EXPECT_NE(place.check().words().indexOf(QStringLiteral("measure A2 to C2")), -1);
  EXPECT_NE(place.check().words().indexOf(QStringLiteral("Before the table was mended: A to C")), -1);
  const std::string once = mended.to_json();
  place.check().refine_scale();
  EXPECT_EQ(stand.document.project().table.map->to_json(), once) << "one reading mends once";
  stand.document.undo();
  EXPECT_EQ(stand.document.project().table.map->scale.source, map.scale.source);
  EXPECT_TRUE(stand.document.project().table.fixed_camera);
}

TEST(LiveTable, TapesAreSaidInTheUnitsTheyAreReadIn) {
  EXPECT_EQ(tape_words(1203.5, Units::centimetres), QStringLiteral("120.35 cm"));
  EXPECT_EQ(tape_words(25.4 * (47.0 + 13.0 / 32.0), Units::inches), QStringLiteral("47 13/32 in"));
  EXPECT_EQ(tape_words(25.4 * 12.25, Units::inches), QStringLiteral("12 1/4 in"));
  EXPECT_EQ(tape_words(25.4 * 12.0, Units::inches), QStringLiteral("12 in"));
}

TEST(LiveTable, TheCameraWatchesWhileSheCutsAndTellsOfABumpedProjector) {
  if (testing::kSanitized)
    GTEST_SKIP() << "frames come too slowly; watching_test watches frames without a clock";
  using Kind = WatchStanding::Kind;
  Stand stand;
  take(stand.document);
  CuttingPlace place(stand.document, stand.settings, stand.garment);
  place.show_project();
  ASSERT_TRUE(place.view());
  for (int i = 0; i < 20 && place.view()->phase == Phase::cautions; ++i) place.act(Act::next);
  EXPECT_FALSE(place.watch().watching()) << "nobody asked for it";
  place.watch().want(true);
  ASSERT_TRUE(place.watch().watching());
  place.act(Act::next);  // begin to cut
  ASSERT_TRUE(until([&] { return place.view()->camera == CameraAsk::by_next; }));
  place.act(Act::next);  // the camera learns
  ASSERT_TRUE(until([&] { return place.watch().standing().kind == Kind::learning; }));
  ASSERT_TRUE(until([&] { return place.watch().standing().kind == Kind::watching; }))
      << place.watch().words().toStdString();
  EXPECT_TRUE(place.view()->block.empty());
  const int cut = place.view()->cut;
  // Put away and taken up again, it is not learnt anew.
  place.watch().want(false);
  EXPECT_FALSE(place.view()->border_marks);
  place.watch().want(true);
  ASSERT_TRUE(until([&] { return place.watch().standing().kind == Kind::watching; }));

  place.watch().simulated()->knock_projector(7.0);
  ASSERT_TRUE(until([&] { return place.watch().standing().kind == Kind::moved; }));
  EXPECT_NE(place.watch().standing().words.find("projector moved"), std::string::npos)
      << place.watch().standing().words;
  EXPECT_TRUE(until([&] { return !place.view()->block.empty(); }));
  place.act(Act::next);
  EXPECT_EQ(place.view()->cut, cut) << "nothing is cut by lines that are not there";
  place.watch().want(false);
  EXPECT_FALSE(place.view()->block.empty()) << "what was moved stays said when nobody watches any more";
  place.watch().want(true);

  place.watch().simulated()->plug(false);
  ASSERT_TRUE(until([&] { return place.watch().standing().kind == Kind::gone; }));
  place.watch().simulated()->plug(true);
  ASSERT_TRUE(until([&] { return place.watch().standing().kind == Kind::moved; }));
}

}  // namespace
}  // namespace cowlcast::projector
