#include "projector/workbench/window.h"

#include <QApplication>
#include <QCloseEvent>
#include <QFileDialog>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QMenuBar>
#include <QMessageBox>
#include <QScreen>
#include <QShortcut>
#include <QTimer>
#include <algorithm>
#include <utility>

#include "drafting/refusal.h"
#include "projector/language/language.h"
#include "projector/language/said.h"
#include "projector/project/project_file.h"
#include "projector/workbench/places/workplaces.h"
#include "projector/workbench/quiet_wheel.h"

namespace cowlcast::projector {
namespace {

QString projects_filter() {
  return WorkbenchWindow::tr("Cowlcast projects (*%1)").arg(kProjectEnding);
}

}  // namespace

void apply_preferences(const Preferences& preferences) {
  apply_theme(*qApp, theme_named(preferences.theme, preferences.larger_type ? 1.22 : 1.0));
  use_language(preferences.language);
}

WorkbenchWindow::WorkbenchWindow(Document& document, Settings& settings)
    : document_(document), settings_(settings), garment_(document) {
  setMinimumSize(1000, 640);
  resize(1280, 800);
  apply_preferences(settings_.preferences());
  qApp->installEventFilter(new QuietWheel(this));
  build();
  connect(&document_, &Document::begun, this, &WorkbenchWindow::begin_anew);
  connect(&document_, &Document::changed, this, &WorkbenchWindow::show_document);
  connect(&document_, &Document::state_changed, this, &WorkbenchWindow::show_title);
  connect(&document_, &Document::trouble, this, [this](const QString& sentence) { notice_->say(sentence); });
  connect(&settings_, &Settings::changed, this, &WorkbenchWindow::settings_changed);
}

void WorkbenchWindow::open() {
  restoreGeometry(settings_.window_place());
  show();
}

void WorkbenchWindow::build() {
  larger_type_ = settings_.preferences().larger_type;
  language_ = settings_.preferences().language;
  build_menus();
  build_places();
  show_title();
  show_document();
}

void WorkbenchWindow::build_places() {
  places_ = make_workplaces(document_, settings_, garment_);
  rail_ = new Rail(places_);
  stack_ = new QStackedWidget;
  // A place's own note may stand below it, and the tour above.
  notice_ = new NoteBox(
      {QKeySequence(QStringLiteral("Alt+Return")), QKeySequence(QStringLiteral("Ctrl+Shift+Backspace"))});
  build_tour();
  for (Workplace* place : places_) {
    stack_->addWidget(place);
    connect(place, &Workplace::wanted, this, &WorkbenchWindow::go_to);
  }
  connect(rail_, &Rail::chosen, this, [this](size_t i) { go_to(places_[i]->place()); });
  auto* middle = new QWidget;
  auto* column = new QVBoxLayout(middle);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(0);
  column->addWidget(tour_);
  column->addWidget(notice_);
  column->addWidget(stack_, 1);
  auto* whole = new QWidget;
  auto* row = new QHBoxLayout(whole);
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(0);
  row->addWidget(rail_);
  row->addWidget(middle, 1);
  setCentralWidget(whole);  // the one before goes
  const Place wanted = current_;
  current_ = places_.front()->place();
  go_to(wanted);
}

void WorkbenchWindow::go_to(Place place) {
  for (size_t i = 0; i < places_.size(); ++i) {
    if (places_[i]->place() != place) continue;
    current_ = place;
    if (place == Place::cutting && notice_->words() == changed_cut_words_)
      notice_->clear();  // it says so itself
    stack_->setCurrentIndex(static_cast<int>(i));
    rail_->show_current(i);
    places_[i]->show_project();
  }
  show_tour();
}

Place WorkbenchWindow::current() const {
  return current_;
}

Workplace& WorkbenchWindow::workplace(Place place) const {
  for (Workplace* one : places_)
    if (one->place() == place) return *one;
  throw std::logic_error("this place is not built");
}

void WorkbenchWindow::show_document() {
  for (Workplace* place : places_)
    if (place->place() == current_) place->show_project();
  rail_->show_missing(gaps());
  tell_changed_cut();
  show_tour();
  const auto say = [](QAction* action, bool can, const QString& what, const QString& sentence) {
    action->setEnabled(can);
    action->setText(sentence.isEmpty() ? what : what + QStringLiteral(": ") + sentence);
  };
  say(undo_, document_.can_undo(), tr("&Undo"), document_.undo_sentence());
  say(redo_, document_.can_redo(), tr("&Redo"), document_.redo_sentence());
}

/// What is missing, in the person's units; what rests on the pattern waits for it.
std::vector<Missing> WorkbenchWindow::gaps() {
  std::vector<Missing> all = garment_.missing();
  for (Missing& gap : all)
    gap.sentence = lengths_in_own_units(said(gap.sentence), settings_.preferences().units);
  const bool pattern = garment_.now().bases.front.has_value(), cowl = garment_.now().cowl.has_value();
  for (const Place place : {Place::cowl, Place::cutting, Place::sewing}) {
    if (pattern && (cowl || place == Place::cowl)) continue;
    std::erase_if(all, [place](const Missing& gap) { return gap.place == place; });
    const std::string words = (pattern ? tr("after the cowl") : tr("after the pattern")).toStdString();
    all.push_back({place, words, words});
  }
  return all;
}

void WorkbenchWindow::show_title() {
  setWindowTitle(document_.title() + QStringLiteral("[*] – Cowlcast"));
  setWindowModified(!document_.saved());
}

void WorkbenchWindow::begin_anew() {
  notice_->clear();
  changed_cut_.reset();
  for (Workplace* place : places_) place->begin_anew();
}

/// A change of what is cut already is said at once, with the way back.
void WorkbenchWindow::tell_changed_cut() {
  const auto changed = changed_after_cutting(document_.project(), garment_.now());
  const auto before = std::exchange(changed_cut_, changed);
  if (changed.empty() && notice_->words() == changed_cut_words_) notice_->clear();
  if (!before || std::includes(before->begin(), before->end(), changed.begin(), changed.end())) return;
  changed_cut_words_ =
      tr("The %1 is cut already, in part or whole, and this change gives it another shape: what is cut would "
         "no longer match. Go back, or go on and cut it anew from fresh cloth.")
          .arg(said(QString::fromStdString(changed.front())));
  notice_->say(changed_cut_words_, tr("Back to what is cut"), [this] {
    while (document_.can_undo() && !changed_cut_.value_or(std::vector<std::string>()).empty())
      document_.undo();
  });
}

void WorkbenchWindow::settings_changed() {
  const Preferences& p = settings_.preferences();
  apply_preferences(p);
  show_recent();
  if (p.larger_type != larger_type_ || p.language != language_) {
    QTimer::singleShot(0, this, &WorkbenchWindow::build);  // not under the menu that asked for it
    return;
  }
  show_document();
  update();
}

bool WorkbenchWindow::open_file(const QString& file) {
  try {
    document_.open(file);
  } catch (const drafting::Refusal& reason) {
    notice_->say(QString::fromUtf8(reason.what()), tr("Open another file …"), [this] { ask_and_open(); });
    return false;
  }
  notice_->clear();
  settings_.add_recent(file);
  return true;
}

bool WorkbenchWindow::save_file(const QString& file) {
  QString name = file;
  if (!name.endsWith(kProjectEnding)) name += kProjectEnding;
  try {
    document_.save_as(name);
  } catch (const drafting::Refusal& reason) {
    notice_->say(QString::fromUtf8(reason.what()), tr("Save somewhere else …"), [this] { save_somewhere(); });
    return false;
  }
  notice_->clear();
  settings_.add_recent(name);
  return true;
}

bool WorkbenchWindow::save_somewhere() {
  QString start = document_.path();
  if (start.isEmpty()) start = document_.title() + kProjectEnding;
  const QString file = QFileDialog::getSaveFileName(this, tr("Save the project"), start, projects_filter());
  return !file.isEmpty() && save_file(file);
}

void WorkbenchWindow::ask_and_open() {
  if (!may_leave()) return;
  const QString file = QFileDialog::getOpenFileName(this, tr("Open a project"), {}, projects_filter());
  if (!file.isEmpty()) open_file(file);
}

bool WorkbenchWindow::may_leave() {
  if (document_.saved()) return true;
  QMessageBox question(this);
  question.setIcon(QMessageBox::NoIcon);
  question.setWindowTitle(tr("Not saved yet"));
  question.setText(tr("“%1” has changes that are not saved.").arg(document_.title()));
  // Neither Return nor a letter may save or throw away: in such a question a letter alone presses the button
  // that it is underlined on.
  QPushButton* save = question.addButton(tr("Save"), QMessageBox::AcceptRole);
  QPushButton* leave = question.addButton(tr("Throw the changes away"), QMessageBox::DestructiveRole);
  QPushButton* stay = question.addButton(tr("&Go on working"), QMessageBox::RejectRole);
  describe(*save, save->text(), tr("Saves the project, then goes on (Ctrl+S)"));
  describe(*leave, leave->text(), tr("The changes since the last saving are lost for good"));
  describe(*stay, stay->text(), tr("Nothing happens"));
  stay->setProperty("primary", true);
  question.setDefaultButton(stay);
  connect(new QShortcut(QKeySequence::Save, &question), &QShortcut::activated, save, &QPushButton::click);
  question.setEscapeButton(stay);
  question.exec();
  if (question.clickedButton() == leave) {
    document_.give_up();
    return true;
  }
  if (question.clickedButton() != save) return false;
  return document_.path().isEmpty() ? save_somewhere() : save_file(document_.path());
}

void WorkbenchWindow::duplicate_as_variant() {
  if (may_leave()) document_.begin_variant();
}

void WorkbenchWindow::offer(const std::vector<FoundWork>& found) {
  for (const FoundWork& work : found) {
    if (!work.project) continue;
    const QString name = !work.path.isEmpty()         ? QFileInfo(work.path).completeBaseName()
                         : work.project->name.empty() ? tr("New project")
                                                      : QString::fromStdString(work.project->name);
    notice_->offer(tr("“%1” was not saved when the program ended. It was kept.").arg(name),
                   tr("Go on with it"), [this, work] {
                     try {
                       document_.recover(work);
                     } catch (const drafting::Refusal& reason) {
                       notice_->say(QString::fromUtf8(reason.what()));
                     }
                   });
    return;  // the others are offered next time
  }
}

/// Escape, where nothing else takes it, puts a note away: the place's first, then the window's.
void WorkbenchWindow::keyPressEvent(QKeyEvent* event) {
  NoteBox* last = nullptr;
  for (NoteBox* note : findChildren<NoteBox*>())
    if (note->isVisible() && (last == nullptr || last == notice_)) last = note;
  if (event->key() != Qt::Key_Escape || last == nullptr) return QMainWindow::keyPressEvent(event);
  last->clear();
}

void WorkbenchWindow::closeEvent(QCloseEvent* event) {
  if (!may_leave()) {
    event->ignore();
    return;
  }
  settings_.set_window_place(saveGeometry());
  event->accept();
}

}  // namespace cowlcast::projector
