#include "projector/workbench/places/camera_choice.h"

#include <QVBoxLayout>

#include "projector/table/simulated_camera.h"

namespace cowlcast::projector {
namespace {

constexpr int kNumbered = 4;  // as many cameras as most machines ever have
const QString kOther = QStringLiteral("other");

}  // namespace

CameraChoice::CameraChoice(Document& document, const QString& label, const QString& address_label)
    : document_(document), list_(new QComboBox), address_words_(new QLabel), address_(new QLineEdit) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  list_->addItem(tr("none yet"), QString());
  for (int i = 0; i < kNumbered; ++i)
    list_->addItem(tr("camera %1 of this machine").arg(i), QString::number(i));
  list_->addItem(tr("a device, film or address"), kOther);
  list_->addItem(tr("the simulated table's own"), QString::fromLatin1(kSimulatedCamera));
  const auto add = [&](QLabel* words, const QString& text, const QString& tip, QWidget* widget) {
    words->setText(text);
    words->setBuddy(widget);
    words->setToolTip(tip);
    describe(*widget, text, tip);
    column->addWidget(words);
    column->addWidget(widget);
  };
  add(new QLabel, label,
      tr("The camera on a cable that looks at the table. They are counted by the system, from 0 on"), list_);
  add(address_words_, address_label,
      tr("A device such as /dev/video2, a film's file, or an address with ://"), address_);
  connect(list_, &QComboBox::activated, this, [this](int which) {
    const QString chosen = list_->itemData(which).toString();
    if (chosen != kOther) {
      choose(chosen.toStdString());
      return;
    }
    address_words_->show();
    address_->show();
    address_->setFocus();
  });
  connect(address_, &QLineEdit::editingFinished, this,
          [this] { choose(address_->text().trimmed().toStdString()); });
  show_project();
}

void CameraChoice::choose(const std::string& camera) {
  if (camera == document_.project().table.camera) return;
  document_.change(tr("Choose a camera").toStdString(), [&](Project& project) {
    project.table.camera = camera;
    project.table.fixed_camera.reset();  // that was another one
  });
}

void CameraChoice::show_project() {
  const QString camera = QString::fromStdString(document_.project().table.camera);
  const int known = list_->findData(camera);
  const bool other = known < 0 || camera == kOther;
  const QSignalBlocker quiet(list_), quiet_too(address_);
  list_->setCurrentIndex(other ? list_->findData(kOther) : known);
  address_->setText(other ? camera : QString());
  address_words_->setVisible(other);
  address_->setVisible(other);
}

}  // namespace cowlcast::projector
