// The place where the cloth is told: its width, kind, thickness and colours; and whether the pieces fit on
// it.
#pragma once

#include <QComboBox>
#include <QLabel>
#include <QStackedWidget>
#include <array>

#include "projector/project/on_cloth.h"
#include "projector/workbench/canvas/canvas.h"
#include "projector/workbench/controls.h"
#include "projector/workbench/workplace.h"

namespace cowlcast::projector {

/// A patch of the cloth with the lines as they will be seen on it.
class ClothPatch : public QWidget {
  Q_OBJECT

 public:
  ClothPatch();
  void show_cloth(const std::vector<unsigned>& colours);

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  std::vector<unsigned> colours_;
};

class ClothPlace : public Workplace {
  Q_OBJECT

 public:
  ClothPlace(Document& document, Settings& settings, CurrentGarment& garment);
  void show_project() override;

 private:
  QWidget* make_panel();
  void add_colours(Panel& panel);
  void set_colour(size_t which, unsigned colour);
  void show_colours(const std::vector<unsigned>& colours);
  ClothUse use() const;
  void show_fit(const ClothUse& use);

  Canvas* canvas_ = nullptr;
  QStackedWidget* middle_ = nullptr;
  LengthBox* width_ = nullptr;
  OneOf* kind_ = nullptr;
  QDoubleSpinBox* thickness_ = nullptr;
  std::array<QComboBox*, 3> colours_{};
  ClothPatch* patch_ = nullptr;
  QLabel *advice_ = nullptr, *fit_ = nullptr;
  NoteBox* refusal_ = nullptr;
};

}  // namespace cowlcast::projector
