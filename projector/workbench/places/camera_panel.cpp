#include "projector/workbench/places/camera_panel.h"

#include <QDateTime>
#include <QDir>
#include <QStandardPaths>

#include "calibration/refusal.h"
#include "projector/workbench/places/simulation.h"

namespace cowlcast::projector {
namespace {

/// A new one for every calibration, so that photographs of two are never used together.
QString photograph_folder(bool simulated) {
  const QString folder =
      simulated ? simulation_folder()
                : QDir(QStandardPaths::writableLocation(QStandardPaths::GenericDataLocation))
                      .filePath(QStringLiteral("cowlcast/photographs/") +
                                QDateTime::currentDateTimeUtc().toString(QStringLiteral("yyyyMMdd-HHmmss")));
  if (!QDir().mkpath(folder))
    throw calibration::Refusal(
        CameraPanel::tr("The folder %1 for the photographs cannot be made. Make room on the disk.")
            .arg(QDir::toNativeSeparators(folder))
            .toStdString());
  return folder;
}

}  // namespace

void prepare_table_for_camera(Document& document) {
  const TableChoice& table = document.project().table;
  if (table.camera.empty())
    throw calibration::Refusal(
        CameraPanel::tr("It is not said which camera looks at the table. Choose it in the list.")
            .toStdString());
  if (table.camera != kSimulatedCamera) {
    if (table.width == 0)
      throw calibration::Refusal(
          CameraPanel::tr(
              "It is not said which screen the projector is. Choose it where the sheets are laid.")
              .toStdString());
    return;
  }
  const calibration::CalibrationRequest known = request_for(bare_simulated_table());
  if (table.width == known.width && table.height == known.height && table.ruler_across > 0.0) return;
  document.change(CameraPanel::tr("Take the simulated table").toStdString(), [&](Project& project) {
    project.table.width = known.width;
    project.table.height = known.height;
    project.table.ruler_across = known.rulers->across;
    project.table.ruler_down = known.rulers->down;
    project.table.lamp_height = 0.0;
  });
}

CameraPanel::CameraPanel(Document& document, CameraWork& work) : document_(document), work_(work) {
  add_heading(tr("A camera on a cable"));
  add_words(tr(
      "Target and plain light are shown in turn, and each photograph is taken by itself when nothing moves. "
      "What is amiss is said under the picture."));
  camera_ = new CameraChoice(document, tr("Ca&mera"), tr("Dev&ice, film or address"));
  add(camera_);
  sides_ = new OneOf(tr("How the camera is held"),
                     {{tr("It sta&ys"), tr("It stands on something and sees all from one side")},
                      {tr("I ca&rry it"), tr("Photographs from two sides; you are told when to go on")}});
  sides_->show_chosen(0);
  connect(sides_, &OneOf::chosen, this, [this](int which) { stays_ = which == 0; });
  add(sides_);
  begin_ = make_button(tr("Take the &photographs"),
                       tr("Opens the camera and shows the target on the projector. Escape there ends it"));
  begin_->setProperty("primary", true);
  connect(begin_, &QPushButton::clicked, this, &CameraPanel::begin);
  add(begin_);
  add_gap();
  auto* files = make_button(tr("&Use photographs from files"), tr("From a phone, or another camera"));
  connect(files, &QPushButton::clicked, this, &CameraPanel::wants_files);
  add(files);
  end();
  connect(&work_, &CameraWork::running_changed, this, [this](bool running) {
    begin_->setText(running ? tr("Sto&p the camera") : tr("Take the &photographs"));
    begin_->setAccessibleName(begin_->text().remove(QLatin1Char('&')));
  });
}

void CameraPanel::show_project() {
  camera_->show_project();
}

void CameraPanel::begin() {
  if (work_.running()) {
    work_.stop();
    return;
  }
  try {
    prepare_table_for_camera(document_);
    const TableChoice& table = document_.project().table;
    const bool simulated = table.camera == kSimulatedCamera;
    work_.take_photographs(
        table,
        {.width = table.width, .height = table.height, .sides = stays_ ? 1 : 2, .fixed = stays_ || simulated},
        photograph_folder(simulated));
  } catch (const std::exception& reason) {
    emit refused(QString::fromUtf8(reason.what()));
  }
}

}  // namespace cowlcast::projector
