// CuttingPlace: a piece chosen, laid and cut by light, stroke by stroke.
//
// What is seen in the middle is the very frame that the projector shows, and it takes the same keys. With the
// simulated table it can also be seen on the cloth, photographed from above. What is cut is noted in the
// project at every stroke.
#pragma once

#include <QComboBox>
#include <QStackedWidget>
#include <QTimer>
#include <memory>
#include <optional>

#include "projector/cutting/view_marks.h"
#include "projector/cutting/window.h"
#include "projector/workbench/background.h"
#include "projector/workbench/controls.h"
#include "projector/workbench/places/check_work.h"
#include "projector/workbench/places/light_view.h"
#include "projector/workbench/places/watch_work.h"
#include "projector/workbench/workplace.h"

namespace cowlcast::projector {

class CuttingPlace : public Workplace {
  Q_OBJECT

 public:
  CuttingPlace(Document& document, Settings& settings, CurrentGarment& garment);

  void show_project() override;
  void begin_anew() override;

  void choose_piece(const std::string& name);
  void act(Act act, Pace pace = Pace::normal);
  /// None while there is nothing to cut by.
  const std::optional<CuttingView>& view() const { return view_; }
  LightView& light() const { return *light_; }
  /// Opens the window on the projector's screen; what is amiss is said in the place.
  void show_on_projector();
  const NoteBox& notice() const { return *notice_; }
  WatchWork& watch() const { return *watch_; }
  /// While the simulated table is being photographed.
  bool busy() const { return looking_.busy() || soon_.isActive(); }

 private:
  /// All that the view was begun from; another one begins it anew.
  struct Basis {
    std::string piece, shape, made_at;
    double blade = 0.0, height = 0.0;
    Hand hand = Hand::right;
    std::vector<unsigned> colours;
    bool operator==(const Basis&) const = default;
  };

  QWidget* make_middle();
  Panel* make_panel();
  QPushButton* add_act(Panel& panel, const QString& text, const QString& tip, Act act);

  const drafting::Piece* piece() const;
  AtTheTable person() const;
  void show_pieces();
  void show_screens();
  void begin(const drafting::Piece& piece, const calibration::TableMap& map);
  void follow_calibration(const Record& record);
  void follow_undone_move(const drafting::Piece& chosen);
  void become(CuttingView next);
  QWidget* make_watch();
  void follow_watch();
  void take_from_watch(CuttingView next, const calibration::TableMap& map);
  void keep_found_table(const calibration::TableMap& map, const calibration::FixedCamera& camera);
  void watch_ended();
  void note_record();
  void keep_laying();
  void close_window();
  QString why_not_shown() const;
  void show_view();
  void show_words();
  void look_at_table();
  void drag(const QPointF& from, const QPointF& to);
  void say_empty(const QString& words, const QString& action, Place where);

  QStackedWidget* middle_ = nullptr;
  QLabel* empty_words_ = nullptr;
  QPushButton* empty_way_ = nullptr;
  Place empty_place_ = Place::table;
  LightView* light_ = nullptr;
  OneOf* seen_as_ = nullptr;
  QLabel* looking_words_ = nullptr;
  NoteBox* notice_ = nullptr;
  Panel* panel_ = nullptr;
  QComboBox *pieces_ = nullptr, *screens_ = nullptr;
  OneOf *blades_ = nullptr, *hands_ = nullptr;
  QLabel *cloth_ = nullptr, *state_ = nullptr, *why_not_shown_ = nullptr;
  QPushButton *next_ = nullptr, *back_ = nullptr, *waive_ = nullptr, *show_ = nullptr, *flip_ = nullptr,
              *left_ = nullptr, *right_ = nullptr, *home_ = nullptr, *unlock_ = nullptr;

  std::string chosen_;  // the piece's name; empty: the first that is not cut yet
  std::optional<Basis> basis_;
  std::optional<CuttingView> view_;
  std::string block_;  // what the calibration itself is blocked by; empty: nothing
  ViewPainter painter_;
  std::unique_ptr<CuttingWindow> window_;
  WatchWork* watch_ = nullptr;
  CheckWork* check_ = nullptr;
  bool shown_ = false;    // the view as it is now
  bool on_cloth_ = true;  // the simulated table is seen, not the frame
  QTimer soon_;
  Background looking_;
};

}  // namespace cowlcast::projector
