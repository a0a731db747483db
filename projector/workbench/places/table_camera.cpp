// The table's place with a camera on a cable: photographs by themselves, the check by hand, a camera that
// stays.
#include "projector/workbench/places/simulation.h"
#include "projector/workbench/places/table_place.h"

namespace cowlcast::projector {

void TablePlace::make_camera_panel() {
  camera_panel_ = new CameraPanel(document(), camera_);
  connect(camera_panel_, &CameraPanel::wants_files, this, [this] { photograph_with_camera(false); });
  connect(camera_panel_, &CameraPanel::refused, this, &TablePlace::refuse);
  connect(&camera_, &CameraWork::seen, live_, &LivePicture::show_sight);
  connect(&camera_, &CameraWork::taken, this, &TablePlace::calibrate_from);
  connect(&camera_, &CameraWork::failed, this, &TablePlace::refuse);
  connect(&camera_, &CameraWork::running_changed, this, [this] { show_picture(); });
  connect(&camera_, &CameraWork::trouble, this, [this](const QString& words) {
    live_->show_trouble(words);
    if (words.isEmpty())
      notice_->clear();
    else if (step_ == TableStep::photograph)
      notice_->say(words, tr("Photographs from files instead"), [this] {
        camera_.stop();
        photograph_with_camera(false);
      });
    else
      notice_->say(words, tr("Stop the camera"), [this] { camera_.stop(); });
  });
}

void TablePlace::photograph_with_camera(bool camera) {
  if (!camera) camera_.stop();
  by_camera_ = camera;
  go_to_step(TableStep::photograph);
  if (camera) camera_panel_->show_project();
}

void TablePlace::calibrate_from(const QStringList& files) {
  document().change(tr("Photograph the table").toStdString(), [&](Project& project) {
    project.table.photographs.clear();
    for (const QString& file : files) project.table.photographs.push_back(file.toStdString());
  });
  show_project();
  calibrate();
}

Panel* TablePlace::make_check_panel() {
  auto* panel = new Panel;
  panel->add_heading(tr("Check by hand"));
  panel->add_words(tr(
      "Lines of light are easily believed. Lay a steel tape on the bare mat, straight from the middle of one "
      "cross to the middle of another, and type in what it reads. A tape sees a changed size or shape; that "
      "all "
      "lines slid or turned together it does not see."));
  check_ = new CheckWork(document(), settings(), false);
  connect(check_, &CheckWork::refused, this, &TablePlace::refuse);
  connect(check_, &CheckWork::agreed, this, [this] {
    notice_->clear();
    show_figure();
  });
  connect(check_, &CheckWork::disagrees, this, [this](const QString& words) {
    notice_->say(words, tr("Photograph and calibrate again"), [this] { go_to_step(TableStep::photograph); });
  });
  panel->add(check_);
  panel->end();
  return panel;
}

void TablePlace::make_stay_panel() {
  stay_ = new StayPanel(document(), camera_);
  connect(stay_, &StayPanel::refused, this, &TablePlace::refuse);
  connect(stay_, &StayPanel::located, this, [this] { notice_->clear(); });
}

void TablePlace::show_picture() {
  const bool live = camera_.running() || (step_ == TableStep::photograph && by_camera_);
  if (live && !camera_.running()) live_->show_sight({});
  pictures_->setCurrentIndex(live ? 1 : 0);
}

void TablePlace::show_figure() {
  check_->show_project();
  try {
    picture_->show_figure(document().project().table.map ? check_->picture() : QImage());
  } catch (const std::exception& reason) {  // the light is too small for a figure
    picture_->show_figure({});
    if (step_ == TableStep::check) refuse(QString::fromUtf8(reason.what()));
  }
}

}  // namespace cowlcast::projector
