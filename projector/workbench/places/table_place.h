// TablePlace: the table calibrated, step by step, with nothing to type that a picture can say.
//
// Print sheets, lay them, photograph them, calibrate; then check by hand, and let a camera that stays find
// its place. Photographs are dropped, picked, arrive in a watched folder, or are taken by a camera on a
// cable. Calibrating runs beside the window and can be stopped. A simulated table goes the same way, so that
// everything can be tried without a projector.
#pragma once

#include <QCheckBox>
#include <QComboBox>
#include <QDoubleSpinBox>
#include <QListWidget>
#include <QProgressBar>
#include <QSpinBox>
#include <QStackedWidget>
#include <memory>

#include "projector/table/calibration_job.h"
#include "projector/workbench/background.h"
#include "projector/workbench/controls.h"
#include "projector/workbench/places/beam.h"
#include "projector/workbench/places/camera_panel.h"
#include "projector/workbench/places/camera_work.h"
#include "projector/workbench/places/check_work.h"
#include "projector/workbench/places/folder_watch.h"
#include "projector/workbench/places/live_picture.h"
#include "projector/workbench/places/stay_panel.h"
#include "projector/workbench/places/table_picture.h"
#include "projector/workbench/workplace.h"

namespace cowlcast::projector {

class TablePlace : public Workplace {
  Q_OBJECT

 public:
  TablePlace(Document& document, Settings& settings, CurrentGarment& garment);

  void show_project() override;
  void begin_anew() override;

  void go_to_step(TableStep step);
  TableStep step() const { return step_; }

  /// Files that are no photographs are told and left out.
  void add_photographs(const QStringList& files);
  /// What is amiss is said in the place.
  void save_sheets(const QString& file);
  /// Makes the simulated table's photographs and takes them in; then all goes on as with real ones.
  void lay_out_simulated_table();
  void calibrate();
  bool busy() const { return work_.busy(); }
  /// How far off a line may lie on this project's cloth; empty while it is not calibrated.
  QString result_in_words() const;
  /// The camera on a cable in place of files, or files again.
  void photograph_with_camera(bool camera);
  CameraWork& camera() { return camera_; }
  CameraPanel& camera_panel() const { return *camera_panel_; }
  CheckWork& check() const { return *check_; }
  StayPanel& stay() const { return *stay_; }
  const NoteBox& notice() const { return *notice_; }

 signals:
  void busy_changed();

 protected:
  void dragEnterEvent(QDragEnterEvent* event) override;
  void dropEvent(QDropEvent* event) override;

 private:
  QWidget* make_middle();
  Panel* make_print_panel();
  Panel* make_lay_panel();
  Panel* make_photograph_panel();
  Panel* make_calibrate_panel();
  void make_camera_panel();
  Panel* make_check_panel();
  void make_stay_panel();
  void calibrate_from(const QStringList& files);
  void show_picture();
  void show_figure();
  void add_light_buttons(Panel& panel);
  void add_next_button(Panel& panel, TableStep next, const QString& text);
  QDoubleSpinBox* add_ruler(Panel& panel, const QString& label, double nominal, double TableChoice::*member);

  void show_screens();
  void choose_screen(int which);
  void show_light(bool target);
  void save_light(const QString& folder);
  void pick_photographs();
  void pick_folder();
  void remove_photographs();
  void show_photographs();
  void show_map();
  static QString when_words(const std::string& made_at);  ///< "today at 18:42", or with the day
  void say_progress(const QString& words, int done, int all);
  void take_in(const CalibrationOutcome& outcome, bool simulated);
  void refuse(const QString& reason);

  TableStep step_ = TableStep::print;
  OneOf* steps_ = nullptr;
  TablePicture* picture_ = nullptr;
  LivePicture* live_ = nullptr;
  QStackedWidget* pictures_ = nullptr;
  CameraPanel* camera_panel_ = nullptr;
  CheckWork* check_ = nullptr;
  StayPanel* stay_ = nullptr;
  bool by_camera_ = false;
  QStackedWidget* panels_ = nullptr;
  NoteBox* notice_ = nullptr;
  QWidget* working_ = nullptr;
  QLabel* working_words_ = nullptr;
  QProgressBar* progress_ = nullptr;
  QSpinBox* sheet_count_ = nullptr;
  QDoubleSpinBox *across_ = nullptr, *down_ = nullptr;
  QLabel* saved_sheets_ = nullptr;
  QComboBox* screens_ = nullptr;
  QListWidget* list_ = nullptr;
  QLabel* watched_ = nullptr;
  LengthBox* lamp_ = nullptr;
  QPushButton* calibrate_ = nullptr;
  QPushButton* numbers_ = nullptr;
  QLabel *result_ = nullptr, *cautions_ = nullptr, *summary_words_ = nullptr;

  FolderWatch watch_;
  Background work_, looking_;
  Beam light_;
  CameraWork camera_;
  std::vector<std::string> seen_;  // the photographs that are in the picture
  std::string shown_map_;          // of which the error map is in the picture, by when it was made
  std::string summary_of_;         // the map that the two below belong to
  QString summary_, caution_words_;
};

}  // namespace cowlcast::projector
