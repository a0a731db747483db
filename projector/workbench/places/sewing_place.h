// The place where the sewing is prepared: which seams meet, what else to cut, and how the draft was made.
#pragma once

#include <QLabel>
#include <QSlider>
#include <QStackedWidget>
#include <QTimer>

#include "projector/workbench/canvas/canvas.h"
#include "projector/workbench/controls.h"
#include "projector/workbench/workplace.h"

namespace cowlcast::projector {

class SewingPlace : public Workplace {
  Q_OBJECT

 public:
  SewingPlace(Document& document, Settings& settings, CurrentGarment& garment);
  void show_project() override;

 protected:
  void hideEvent(QHideEvent* event) override;

 private:
  QWidget* make_panel();
  void add_lesson(Panel& panel);
  void go_to_step(int step);
  void play(bool on);
  void show_step();
  void show_order();
  void show_seams();
  void show_extras();
  void save_pdf(const QString& title, const QString& name, const std::function<std::string()>& make);

  Canvas* canvas_ = nullptr;
  QStackedWidget* middle_ = nullptr;
  NoteBox* refusal_ = nullptr;
  QLabel *step_title_ = nullptr, *rule_ = nullptr, *order_ = nullptr, *seams_ = nullptr, *extras_ = nullptr;
  QPushButton *back_ = nullptr, *next_ = nullptr, *play_ = nullptr, *handout_ = nullptr, *record_ = nullptr;
  QSlider* opening_ = nullptr;
  QTimer timer_;
  int step_ = 0;
};

}  // namespace cowlcast::projector
