// A small picture of how low the cowl hangs, seen from the front.
#pragma once

#include <QWidget>
#include <optional>

#include "drafting/hang/hang.h"
#include "drafting/piece/piece.h"

namespace cowlcast::projector {

class HangPicture : public QWidget {
  Q_OBJECT

 public:
  HangPicture();
  /// `line` as `hang_line` gives it; the levels of the wearer, when they are known.
  void show_hang(drafting::Polyline line, const std::optional<drafting::HangLevels>& levels);

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  drafting::Polyline line_;
  std::optional<drafting::HangLevels> levels_;
};

}  // namespace cowlcast::projector
