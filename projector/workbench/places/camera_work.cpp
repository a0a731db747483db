#include "projector/workbench/places/camera_work.h"

#include <utility>

#include "calibration/target/target.h"
#include "projector/frame/png.h"
#include "projector/language/said.h"

namespace cowlcast::projector {
namespace {

constexpr int kShownWide = 1100;  // pixels of what the window shows
constexpr int kAsked[] = {1920, 1080};

QImage small_picture(const cv::Mat& frame) {
  const QImage whole = image_from(frame);
  return whole.width() > kShownWide ? whole.scaledToWidth(kShownWide, Qt::SmoothTransformation)
                                    : whole.copy();
}

}  // namespace

/// What is wanted of the camera. All but `glance` belongs to the look while there is one.
struct CameraWork::Task {
  virtual ~Task() = default;
  virtual CameraSight look(const calibration::CameraFrame& frame) = 0;
  virtual QImage picture() const = 0;  ///< to be shown now
  virtual bool done() const = 0;
  virtual void tell(CameraWork& work) const = 0;  ///< once done

  LiveCamera::Glance glance;
  std::optional<CameraSight> sight;
};

namespace {

calibration::CameraRequest request_for(const TableChoice& table) {
  const auto& fixed = table.fixed_camera;
  return {.spec = table.camera,
          .width = fixed ? fixed->width : kAsked[0],
          .height = fixed ? fixed->height : kAsked[1]};
}

class CapturingTask : public CameraWork::Task {
 public:
  CapturingTask(const calibration::CaptureSettings& settings, const QString& folder)
      : capture_(settings, folder.toStdString()),
        target_(image_from(calibration::target_picture(settings.width, settings.height))),
        plain_(image_from(calibration::plain_picture(settings.width, settings.height))) {}

  CameraSight look(const calibration::CameraFrame& frame) override {
    const LiveCapture::Seen seen = capture_.look(frame);
    show_ = seen.step.show;
    CameraSight out{
        small_picture(frame.picture), said(QString::fromStdString(seen.step.say)), {}, seen.step.seen};
    for (const std::string& hint : seen.step.hints) out.hints << said(QString::fromStdString(hint));
    return out;
  }
  QImage picture() const override { return show_ == calibration::ShownPicture::target ? target_ : plain_; }
  bool done() const override { return capture_.done(); }
  void tell(CameraWork& work) const override {
    QStringList files;
    for (const std::string& file : capture_.files()) files << QString::fromStdString(file);
    emit work.taken(files);
  }

 private:
  LiveCapture capture_;
  QImage target_, plain_;
  calibration::ShownPicture show_ = calibration::ShownPicture::target;
};

class LocatingTask : public CameraWork::Task {
 public:
  explicit LocatingTask(const calibration::TableMap& map) : locating_(map) {}
  CameraSight look(const calibration::CameraFrame& frame) override {
    locating_.look(frame);
    const QString say = locating_.disturbed() ? CameraWork::tr("Something moves. Stand clear of the light.")
                                              : CameraWork::tr("Stand clear of the light for some seconds.");
    return {small_picture(frame.picture), say, {}, {}};
  }
  QImage picture() const override { return locating_.picture(); }
  bool done() const override { return locating_.done(); }
  void tell(CameraWork& work) const override { emit work.found(locating_.request()); }

 private:
  LiveLocating locating_;
};

}  // namespace

void CameraWork::take_photographs(const TableChoice& table, const calibration::CaptureSettings& settings,
                                  const QString& folder) {
  try {
    start(table, std::make_shared<CapturingTask>(settings, folder));
  } catch (const std::exception& reason) {
    emit failed(QString::fromUtf8(reason.what()));
  }
}

void CameraWork::locate(const TableChoice& table) {
  try {
    start(table, std::make_shared<LocatingTask>(*table.map));
  } catch (const std::exception& reason) {
    emit failed(QString::fromUtf8(reason.what()));
  }
}

void CameraWork::start(const TableChoice& table, std::shared_ptr<Task> task) {
  stop();
  table_ = table;
  simulated_ = table.camera == kSimulatedCamera ? std::make_unique<SimulatedCamera>() : nullptr;
  beam_.onto(simulated_.get());
  beam_.show(task->picture(), table_);
  task_ = std::move(task);
  told_.clear();
  last_.reset();
  camera_ = std::make_unique<LiveCamera>(
      simulated_ ? simulated_->request() : request_for(table_),
      simulated_ ? simulated_->opener() : calibration::open_camera,
      [work = task_] {
        return [work](const LiveCamera::Glance& glance) {
          work->glance = glance;
          work->sight.reset();
          if (glance.frame && !work->done()) work->sight = work->look(*glance.frame);
        };
      },
      [this](const std::exception_ptr& reason) {
        try {
          if (reason) std::rethrow_exception(reason);
          glance_over();
        } catch (const std::exception& refused) {
          stop();
          emit failed(QString::fromUtf8(refused.what()));
        }
      });
  emit running_changed(true);
}

void CameraWork::glance_over() {
  const std::shared_ptr<Task> task = task_;
  const LiveCamera::Glance& glance = task->glance;
  if (beam_.put_out()) {
    stop();
    return;
  }
  if (glance.ended && !task->done()) {
    stop();
    emit failed(QString::fromStdString(glance.complaint));
    return;
  }
  if (!task->sight) {
    const QString words = said(QString::fromStdString(glance.complaint));
    if (words != told_ && !words.isEmpty()) emit trouble(told_ = words);
    return;
  }
  if (!told_.isEmpty()) emit trouble(told_ = QString());
  emit seen(*task->sight);
  if (!task->done()) {
    beam_.show(task->picture(), table_);
    return;
  }
  stop();
  task->tell(*this);
}

void CameraWork::stop() {
  if (!camera_) return;
  camera_->stop();
  last_ = std::move(camera_);
  beam_.off();
  emit running_changed(false);
}

}  // namespace cowlcast::projector
