// CameraChoice: which camera looks at the table, kept in the project.
#pragma once

#include <QComboBox>
#include <QLabel>
#include <QLineEdit>

#include "projector/workbench/controls.h"
#include "projector/workbench/document.h"

namespace cowlcast::projector {

class CameraChoice : public QWidget {
  Q_OBJECT

 public:
  /// `label` with its key; so `address_label`, of the line for a device, a film or an address.
  CameraChoice(Document& document, const QString& label, const QString& address_label);
  void show_project();

 private:
  void choose(const std::string& camera);

  Document& document_;
  QComboBox* list_;
  QLabel* address_words_;
  QLineEdit* address_;
};

}  // namespace cowlcast::projector
