#include "projector/workbench/places/stay_panel.h"

#include <QFile>
#include <QFileDialog>
#include <QLocale>

#include "calibration/refusal.h"
#include "calibration/watch/edge_tags.h"
#include "projector/language/said.h"
#include "projector/project/project_file.h"
#include "projector/workbench/places/camera_panel.h"

namespace cowlcast::projector {

StayPanel::StayPanel(Document& document, CameraWork& work) : document_(document), work_(work) {
  add_heading(tr("A camera that stays"));
  add_words(
      tr("It can notice that mat, projector or camera were moved while you cut, and look ahead of the blade. "
         "Glue "
         "eight or more tags around the mat's edge, where no blade goes, and fix the camera so that it sees "
         "them "
         "and the whole light."));
  auto* tags =
      make_button(tr("Save the edge &tags as PDF …"), tr("A page to print and to cut out, at 100 %"));
  connect(tags, &QPushButton::clicked, this, [this] {
    const QString file =
        QFileDialog::getSaveFileName(this, tr("Save the edge tags"), tr("tags.pdf"), tr("PDF (*.pdf)"));
    if (!file.isEmpty()) save_tags(file);
  });
  add(tags);
  add_gap();
  camera_ = new CameraChoice(document, tr("Ca&mera"), tr("Dev&ice, film or address"));
  add(camera_);
  begin_ = make_button(
      tr("&Look where it stands"),
      tr("Right after calibrating, the sheets still lying there. Target, plain light and darkness "
         "are shown in turn; stand clear for some seconds"));
  begin_->setProperty("primary", true);
  connect(begin_, &QPushButton::clicked, this, &StayPanel::begin);
  add(begin_);
  words_ = add_words({});
  add_gap();
  add_words(
      tr("It is kept in the project. To use it with the command line, or with another project of the same "
         "calibration, keep it as a file."));
  save_ = make_button(tr("&Keep as a file …"), tr("A camera file, as the command line reads it"));
  auto* open_it = make_button(tr("Take fr&om a file …"), tr("A camera file that goes with this calibration"));
  connect(save_, &QPushButton::clicked, this, [this] {
    const QString file = QFileDialog::getSaveFileName(this, tr("Keep the camera's place"), tr("camera.json"),
                                                      tr("Camera files (*.json)"));
    if (!file.isEmpty()) save(file);
  });
  connect(open_it, &QPushButton::clicked, this, [this] {
    const QString file = QFileDialog::getOpenFileName(this, tr("Take a camera's place from a file"), {},
                                                      tr("Camera files (*.json)"));
    if (!file.isEmpty()) open(file);
  });
  add(save_);
  add(open_it);
  end();
  connect(&work_, &CameraWork::running_changed, this, [this](bool running) {
    begin_->setText(running ? tr("Sto&p the camera") : tr("&Look where it stands"));
    begin_->setAccessibleName(begin_->text().remove(QLatin1Char('&')));
  });
  connect(&work_, &CameraWork::found, this, &StayPanel::locate);
}

void StayPanel::show_project() {
  camera_->show_project();
  const TableChoice& table = document_.project().table;
  save_->setEnabled(table.fixed_camera.has_value());
  if (!table.map)
    words_->setText(tr("Calibrate first: a camera's place is told in millimetres of the calibrated mat."));
  else if (!table.fixed_camera)
    words_->setText(tr("It is not known yet where it stands, so it cannot watch."));
  else if (!said_of_ || *said_of_ != table.fixed_camera->to_json())
    words_->setText(
        tr("It is known where it stands: %1 cm above the mat. %2 tags were seen. It can be asked to watch "
           "where you cut.")
            .arg(QLocale().toString(0.1 * table.fixed_camera->eye().z(), 'f', 0))
            .arg(table.fixed_camera->tags.size()));
}

void StayPanel::begin() {
  if (work_.running()) {
    work_.stop();
    return;
  }
  try {
    const TableChoice& table = document_.project().table;
    if (!table.map)
      throw calibration::Refusal(
          tr("Calibrate first: a camera's place is told in millimetres of the calibrated mat.")
              .toStdString());
    if ((table.camera == kSimulatedCamera) != table.simulated && !table.camera.empty())
      throw calibration::Refusal(
          (table.simulated ? tr("This calibration is of the simulated table, which only its own camera sees. "
                                "Choose that one, or calibrate your own table.")
                           : tr("The simulated table's camera does not see your table. Choose another one."))
              .toStdString());
    if (table.camera.empty())
      throw calibration::Refusal(
          tr("It is not said which camera looks at the table. Choose it in the list.").toStdString());
    work_.locate(table);
  } catch (const std::exception& reason) {
    emit refused(QString::fromUtf8(reason.what()));
  }
}

void StayPanel::locate(const calibration::LocateRequest& frames) {
  words_->setText(tr("Working out where it stands …"));
  locating_.start<calibration::LocatedCamera>(
      [map = *document_.project().table.map, frames](const std::stop_token&) {
        return calibration::locate_camera(map, frames);
      },
      [this](const calibration::LocatedCamera& found) {
        QString words = said(QString::fromStdString(found.summary).trimmed());
        for (const std::string& warning : found.warnings)
          words += QLatin1Char('\n') + tr("Caution: %1").arg(said(QString::fromStdString(warning)));
        keep(found.camera, words);
      },
      [this](const QString& reason) {
        show_project();
        emit refused(reason);
      });
}

void StayPanel::keep(const calibration::FixedCamera& camera, const QString& words) {
  said_of_ = camera.to_json();
  document_.change(tr("Where the camera stands").toStdString(),
                   [&](Project& project) { project.table.fixed_camera = camera; });
  show_project();
  words_->setText(words);
  emit located();
}

void StayPanel::save_tags(const QString& file) {
  try {
    write_whole(file, calibration::edge_tags_pdf(calibration::Paper::a4));
  } catch (const std::exception& reason) {
    emit refused(QString::fromUtf8(reason.what()));
  }
}

void StayPanel::save(const QString& file) {
  try {
    write_whole(file, document_.project().table.fixed_camera->to_json());
  } catch (const std::exception& reason) {
    emit refused(QString::fromUtf8(reason.what()));
  }
}

void StayPanel::open(const QString& name) {
  try {
    QFile file(name);
    if (!file.open(QIODevice::ReadOnly))
      throw calibration::Refusal(
          tr("%1 cannot be read. Check that it is still there.").arg(name).toStdString());
    keep(calibration::FixedCamera::from_json(file.readAll().toStdString()), {});
    said_of_.reset();
    show_project();
  } catch (const std::exception& reason) {
    emit refused(QString::fromUtf8(reason.what()));
  }
}

}  // namespace cowlcast::projector
