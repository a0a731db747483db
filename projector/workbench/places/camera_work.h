// CameraWork: a camera on a cable at work for the table, beside the window.
//
//   work.take_photographs(table, {.width = 1920, .height = 1080, .fixed = true}, folder);
//   connect(&work, &CameraWork::seen, picture, &LivePicture::show_sight);
//   connect(&work, &CameraWork::taken, this, [](const QStringList& files) { ... });
//
// It shows the pictures on the projector in turn, looks through the camera, and tells. A camera that is not
// there, or is pulled out, is told and waited for; `stop` ends the waiting. What it looks at is never looked
// at in the window's own thread.
#pragma once

#include <QObject>
#include <QStringList>
#include <memory>

#include "projector/showing/live_camera.h"
#include "projector/table/live_capture.h"
#include "projector/workbench/places/beam.h"

namespace cowlcast::projector {

/// What the camera sees now, for the person.
struct CameraSight {
  QImage picture;                                   ///< made small
  QString say;                                      ///< what to do now
  QStringList hints;                                ///< what would be better, what is waited for first
  std::optional<calibration::FrameAppraisal> seen;  ///< while photographs are taken
};

class CameraWork : public QObject {
  Q_OBJECT

 public:
  explicit CameraWork(QObject* parent = nullptr) : QObject(parent) {}

  /// `table.camera` says which; the simulated table's own when it is `kSimulatedCamera`. What cannot be is
  /// told by `failed`.
  void take_photographs(const TableChoice& table, const calibration::CaptureSettings& settings,
                        const QString& folder);
  void locate(const TableChoice& table);
  void stop();
  bool running() const { return camera_ != nullptr; }
  /// The simulated table's own camera, while it is the one that is looked through.
  SimulatedCamera* simulated() const { return simulated_.get(); }

  struct Task;

 signals:
  void seen(const CameraSight& sight);
  void trouble(const QString& words);  ///< no pictures come, and why; empty: they come again
  void taken(const QStringList& files);
  void found(const calibration::LocateRequest& frames);  ///< frames to locate the camera by
  void failed(const QString& words);                     ///< it has ended without
  void running_changed(bool running);

 private:
  void start(const TableChoice& table, std::shared_ptr<Task> task);
  void glance_over();

  Beam beam_;
  std::unique_ptr<SimulatedCamera> simulated_;
  TableChoice table_;
  std::shared_ptr<Task> task_;
  QString told_;
  std::unique_ptr<LiveCamera> camera_, last_;  // the one before may be in its last look
};

}  // namespace cowlcast::projector
