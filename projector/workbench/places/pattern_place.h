// The place where the base is chosen: a standard size, body measures, or the maker's own drawing.
#pragma once

#include <QComboBox>
#include <QLabel>
#include <QStackedWidget>
#include <utility>
#include <vector>

#include "projector/workbench/canvas/canvas.h"
#include "projector/workbench/controls.h"
#include "projector/workbench/places/edge_names.h"
#include "projector/workbench/workplace.h"

namespace cowlcast::projector {

class PatternPlace : public Workplace {
  Q_OBJECT

 public:
  PatternPlace(Document& document, Settings& settings, CurrentGarment& garment);
  void show_project() override;
  void begin_anew() override;

  /// Takes an SVG file as the base front, or back.
  void open_drawing(const QString& file, bool front);

 protected:
  void dragEnterEvent(QDragEnterEvent* event) override;
  void dropEvent(QDropEvent* event) override;

 private:
  QWidget* make_welcome();
  QWidget* make_panel();
  QWidget* make_size_page();
  QWidget* make_measures_page();
  QWidget* make_drawing_page();
  void choose(PatternSource source);
  void ask_for_drawing(bool front);
  void name_by_hand(bool on);
  void name_line(const std::string& key);
  void show_pages(const PatternChoice& pattern);
  void show_canvas();
  void show_notice();
  void show_sample();
  bool naming() const;
  const PatternDrawing& drawing() const;

  Canvas* canvas_ = nullptr;
  QStackedWidget* middle_ = nullptr;  // the welcome, or canvas and panel
  QStackedWidget* pages_ = nullptr;   // of the panel, by PatternSource
  OneOf* source_ = nullptr;
  QComboBox* size_ = nullptr;
  std::vector<std::pair<double drafting::BodyMeasures::*, LengthBox*>> measures_;
  QLabel *front_name_ = nullptr, *back_name_ = nullptr, *size_words_ = nullptr, *cautions_ = nullptr,
         *sample_words_ = nullptr;
  QPushButton* body_is_own_ = nullptr;
  QPushButton* by_hand_button_ = nullptr;
  EdgeNames* names_ = nullptr;
  NoteBox* notice_ = nullptr;
  QString file_refusal_;
  bool by_hand_ = false;
};

}  // namespace cowlcast::projector
