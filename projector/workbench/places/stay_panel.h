// StayPanel: a camera that stays over the table: where it stands, so that it can watch.
#pragma once

#include "projector/workbench/background.h"
#include "projector/workbench/places/camera_choice.h"
#include "projector/workbench/places/camera_work.h"

namespace cowlcast::projector {

class StayPanel : public Panel {
  Q_OBJECT

 public:
  StayPanel(Document& document, CameraWork& work);
  void show_project();
  /// Looks where the camera stands, or ends what runs.
  void begin();
  /// From frames of the three pictures, beside the window.
  void locate(const calibration::LocateRequest& frames);
  bool busy() const { return locating_.busy(); }
  QString words() const { return words_->text(); }
  void save_tags(const QString& file);
  void save(const QString& file);
  void open(const QString& file);

 signals:
  void refused(const QString& reason);
  void located();

 private:
  void keep(const calibration::FixedCamera& camera, const QString& words);

  Document& document_;
  CameraWork& work_;
  CameraChoice* camera_;
  QPushButton *begin_, *save_;
  QLabel* words_;
  std::optional<std::string> said_of_;  // the camera that the words tell of, as it was found
  Background locating_;
};

}  // namespace cowlcast::projector
