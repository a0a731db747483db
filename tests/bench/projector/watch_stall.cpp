// A sitting at the simulated table under its own camera, from the first look to a bumped projector and back:
// how long the cutting window was deaf.
//
//   QT_QPA_PLATFORM=offscreen watch_stall            // looked at by a thread of its own
//   QT_QPA_PLATFORM=offscreen watch_stall window     // by the window's own, to compare
#include <QApplication>
#include <cstdio>

#include "calibration/camera/locate_camera.h"
#include "calibration/camera/still_frames.h"
#include "calibration/solve/calibrate.h"
#include "calibration/target/target.h"
#include "projector/cutting/begin.h"
#include "projector/cutting/live_watch.h"
#include "projector/cutting/view_marks.h"
#include "projector/frame/png.h"
#include "projector/guard/cut_watch.h"
#include "projector/table/simulated_camera.h"
#include "tests/bench/projector/heart.h"
#include "tests/projector/test_piece.h"

using namespace cowlcast;
using namespace cowlcast::projector;

namespace {

QImage picture_of(const cv::Mat& grey) {
  return image_from(grey);
}

// Frames of each picture, in turn, as a table at rest gives them.
calibration::StillFrames frames_of(SimulatedCamera& camera, const std::vector<QImage>& pictures) {
  calibration::CameraFeed feed(camera.request(), camera.opener());
  calibration::StillFrames still({.pictures = static_cast<int>(pictures.size()), .settle_seconds = 1.5});
  int shown = -1;
  while (!still.done()) {
    if (still.wanted() != shown) camera.project(pictures[static_cast<size_t>(shown = still.wanted())]);
    if (const auto frame = feed.newest()) still.look(calibration::grey_of(frame->picture), frame->seconds);
  }
  return still;
}

}  // namespace

int main(int argc, char** argv) {
  const QApplication application(argc, argv);
  SimulatedCamera camera;
  const SimulatedTable table = simulated_table();
  calibration::CalibrationRequest wanted = request_for(table);
  const QImage dark = picture_of(cv::Mat::zeros(wanted.height, wanted.width, CV_8UC1)),
               target = picture_of(calibration::target_picture(wanted.width, wanted.height)),
               plain = picture_of(calibration::plain_picture(wanted.width, wanted.height));
  const auto still = frames_of(camera, {target, plain, dark});
  std::vector<calibration::Photograph> photographs;
  for (int k = 0; k < 2; ++k) {
    calibration::Photograph one;
    one.name = k == 0 ? "target" : "plain";
    one.grey = still.frames(k).front();
    photographs.push_back(one);
  }
  const auto report = calibration::calibrate(photographs, wanted);
  std::printf("%s", report.summary.c_str());
  const auto located =
      calibration::locate_camera(report.map, {still.frames(0), still.frames(1), still.frames(2), {}});
  std::printf("%s", located.summary.c_str());

  const CuttingWishes wishes{.height = 1.0};
  Record record;
  record.cautions_read_at = report.map.made_at;
  CuttingView view = begun(report.map, projector::testing::small_front(), wishes, record, report.map.made_at);
  camera.lay(cloth_for(view.piece, view.laying, 80.0), report.map);
  ViewPainter painter;
  calibration::TableMap map = report.map;
  const auto show = [&](CuttingView next, const calibration::TableMap& by) {
    view = std::move(next);
    map = by;
    camera.project(painter.draw(map, view).copy());
  };
  show(view, map);
  Watching watching = watching_by(report.map, located.camera, {});
  Heart heart;
  const auto run_until = [&](const char* what, const std::function<bool()>& so) {
    heart.restart();
    heart.forget();
    const double end = calibration::steady_seconds() + 90.0;
    while (!so() && calibration::steady_seconds() < end)
      QApplication::processEvents(QEventLoop::AllEvents, 10);
    for (int i = 0; i < 10; ++i) QApplication::processEvents(QEventLoop::AllEvents, 10);
    heart.say(so() ? what : "NOT REACHED:");
    if (!so()) std::printf("    %s; %s; %s\n", what, view.block.c_str(), view.notice.words.c_str());
  };
  const auto press = [&](Act act) { show(after(view, act, Pace::normal), map); };
  using Kind = WatchStanding::Kind;
  if (argc > 1) {  // all in the window's own thread
    calibration::CameraFeed feed(camera.request(), camera.opener());
    QTimer timer;
    QObject::connect(&timer, &QTimer::timeout, [&] {
      watching.look(view, painter.picture(), feed.newest(), feed.complaint(), calibration::steady_seconds());
      CuttingView now = view;
      if (watching.said(now)) show(now, watching.map());
    });
    timer.start(15);
    press(Act::next);
    run_until("asks to learn", [&] { return view.camera == CameraAsk::by_next; });
    press(Act::next);
    run_until("learns", [&] { return watching.table().steady(); });
    const double from = calibration::steady_seconds();
    run_until("watches for 10 s", [&] { return calibration::steady_seconds() > from + 10.0; });
    camera.knock_projector(6.0);
    run_until("tells of a bumped projector", [&] { return !view.block.empty(); });
    press(Act::look);
    run_until("finds the table again", [&] { return watching.table().steady(); });
    return 0;
  }
  LiveWatch live({[&] { return view; }, [&] { return painter.picture(); }, show}, camera.request(), watching,
                 camera.opener());
  const auto steady = [&] { return live.standing().kind == Kind::watching; };
  press(Act::next);
  run_until("asks to learn", [&] { return view.camera == CameraAsk::by_next; });
  press(Act::next);
  run_until("learns", steady);
  const double from = calibration::steady_seconds();
  run_until("watches for 10 s", [&] { return calibration::steady_seconds() > from + 10.0; });
  camera.knock_projector(6.0);
  run_until("tells of a bumped projector", [&] { return !view.block.empty(); });
  press(Act::look);
  run_until("finds the table again", steady);
  return 0;
}
