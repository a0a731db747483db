// CameraPanel: photographs of the table taken by themselves, with a camera on a cable.
#pragma once

#include "projector/workbench/places/camera_choice.h"
#include "projector/workbench/places/camera_work.h"

namespace cowlcast::projector {

class CameraPanel : public Panel {
  Q_OBJECT

 public:
  /// `work` takes the photographs; they are given to it where they are to be kept.
  CameraPanel(Document& document, CameraWork& work);
  void show_project();
  /// Begins, or ends what runs.
  void begin();

 signals:
  void wants_files();                   ///< rather photographs from files
  void refused(const QString& reason);  ///< it cannot begin

 private:
  Document& document_;
  CameraWork& work_;
  CameraChoice* camera_;
  OneOf* sides_;
  QPushButton* begin_;
  bool stays_ = true;
};

/// Camera, and for the simulated one also projector and rulers, as they must be known before it looks. Throws
/// calibration::Refusal when something is not said yet.
void prepare_table_for_camera(Document& document);

}  // namespace cowlcast::projector
