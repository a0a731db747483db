// WorkbenchWindow: the one window for the whole job.
//
//   Settings settings;
//   Document document;
//   WorkbenchWindow window(document, settings);
//   window.open();
//
// A rail of places on the left, the place one is at beside it. It keeps no state of
// the garment: closing it and making another on the same document shows the same.
#pragma once

#include <QActionGroup>
#include <QMainWindow>
#include <QPointer>
#include <QStackedWidget>
#include <optional>
#include <vector>

#include "projector/project/work_copy.h"
#include "projector/workbench/controls.h"
#include "projector/workbench/guide.h"
#include "projector/workbench/rail.h"
#include "projector/workbench/tour.h"

namespace cowlcast::projector {

class WorkbenchWindow : public QMainWindow {
  Q_OBJECT

 public:
  WorkbenchWindow(Document& document, Settings& settings);

  /// Shows it where and as large as it was last.
  void open();
  /// Offers the first of what was left behind by a program that ended without saving.
  void offer(const std::vector<FoundWork>& found);
  /// Offers the tour to whoever opens the window for the first time.
  void offer_tour();
  /// On a new project; what is not saved is asked about first.
  void take_tour();
  const TourBar& tour() const { return *tour_; }
  void go_to(Place place);
  Place current() const;
  Workplace& workplace(Place place) const;
  Rail& rail() const { return *rail_; }

  /// Without asking anything; what is amiss is said in the window. True when it worked.
  bool open_file(const QString& file);
  bool save_file(const QString& file);
  const NoteBox& notice() const { return *notice_; }

 protected:
  void closeEvent(QCloseEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;

 private:
  void build();
  void build_places();
  void build_menus();
  void build_file_menu(QMenu& menu);
  void build_edit_menu(QMenu& menu);
  void build_view_menu(QMenu& menu);
  void build_table_menu(QMenu& menu);
  void build_help_menu(QMenu& menu);
  QAction* add_action(QMenu& menu, const QString& text, const QString& tip, const QKeySequence& key,
                      const std::function<void()>& act);
  void add_choice(QMenu& menu, QActionGroup& group, const QString& text, bool chosen,
                  const std::function<void(Preferences&)>& edit);
  void show_recent();
  void show_document();
  void build_tour();
  void show_tour();
  void go_on_with_tour(TourTask task);
  std::vector<Missing> gaps();
  void tell_changed_cut();
  void show_title();
  void begin_anew();
  void settings_changed();
  bool may_leave();
  bool save_somewhere();
  void ask_and_open();
  void duplicate_as_variant();
  void open_guide();
  void say_keys();
  void say_about();

  Document& document_;
  Settings& settings_;
  CurrentGarment garment_;
  std::vector<Workplace*> places_;
  Rail* rail_ = nullptr;
  QStackedWidget* stack_ = nullptr;
  NoteBox* notice_ = nullptr;
  QPointer<GuideWindow> guide_;
  TourBar* tour_ = nullptr;
  bool on_tour_ = false;
  QAction *undo_ = nullptr, *redo_ = nullptr;
  QMenu* recent_ = nullptr;
  Place current_ = Place::pattern;
  bool larger_type_ = false;
  QString language_;
  /// Pieces cut in another shape than they have now, as last looked; none: not looked since another project.
  std::optional<std::vector<std::string>> changed_cut_;
  QString changed_cut_words_;
};

/// Settings taken to the whole program: theme, letters, language.
void apply_preferences(const Preferences& preferences);

}  // namespace cowlcast::projector
