#include "projector/workbench/places/beam.h"

#include <QGuiApplication>

#include "calibration/refusal.h"
#include "projector/cutting/remembered.h"
#include "projector/cutting/window.h"
#include "projector/workbench/workplace.h"

namespace cowlcast::projector {
namespace {

QScreen& screen_of(const TableChoice& table) {
  if (table.width == 0)
    throw calibration::Refusal(
        Workplace::tr("It is not said which screen the projector is. Choose it where the sheets are laid.")
            .toStdString());
  const int index = likely_index(screens_seen(), Remembered().screen(), table.width, table.height);
  if (index < 0)
    throw calibration::Refusal(
        Workplace::tr("No screen here has the projector's %1 × %2 pixels. Plug the projector in and "
                      "switch it on, then choose it in the list.")
            .arg(table.width)
            .arg(table.height)
            .toStdString());
  return *QGuiApplication::screens().at(index);
}

}  // namespace

void Beam::show(const QImage& picture, const TableChoice& table) {
  if (simulated_ != nullptr) {
    simulated_->project(picture);
    return;
  }
  if (window_ && window_->isVisible() && window_->picture().size() == picture.size()) {
    window_->show_picture(picture);
    return;
  }
  window_ = std::make_unique<PictureWindow>(screen_of(table), picture);
  window_->key = [this](int pressed) {
    if (key) key(pressed);
  };
  window_->open();
}

void Beam::off() {
  window_.reset();
  key = {};
}

}  // namespace cowlcast::projector
