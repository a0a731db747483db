// The window's menus: every action has its key and says in a sentence what it does.
#include <QFileInfo>
#include <QMenuBar>
#include <QMessageBox>

#include "projector/blade/blade.h"
#include "projector/workbench/window.h"

namespace cowlcast::projector {

QAction* WorkbenchWindow::add_action(QMenu& menu, const QString& text, const QString& tip,
                                     const QKeySequence& key, const std::function<void()>& act) {
  QAction* action = menu.addAction(text);
  action->setToolTip(tip);
  action->setStatusTip(tip);
  action->setShortcut(key);
  connect(action, &QAction::triggered, this, act);
  return action;
}

void WorkbenchWindow::add_choice(QMenu& menu, QActionGroup& group, const QString& text, bool chosen,
                                 const std::function<void(Preferences&)>& edit) {
  QAction* action = add_action(menu, text, menu.toolTip(), {}, [this, edit] { settings_.set(edit); });
  action->setCheckable(true);
  action->setChecked(chosen);
  group.addAction(action);
}

void WorkbenchWindow::build_menus() {
  menuBar()->clear();
  build_file_menu(*menuBar()->addMenu(tr("&File")));
  build_edit_menu(*menuBar()->addMenu(tr("&Edit")));
  build_view_menu(*menuBar()->addMenu(tr("&View")));
  build_table_menu(*menuBar()->addMenu(tr("&At the table")));
  build_help_menu(*menuBar()->addMenu(tr("&Help")));
}

void WorkbenchWindow::build_file_menu(QMenu& menu) {
  menu.setToolTipsVisible(true);
  add_action(menu, tr("&New project"), tr("Begins an empty project"), QKeySequence::New, [this] {
    if (may_leave()) document_.start_new();
  });
  add_action(menu, tr("&Open …"), tr("Opens a project that was saved"), QKeySequence::Open,
             [this] { ask_and_open(); });
  recent_ = menu.addMenu(tr("Open &recent"));
  show_recent();
  menu.addSeparator();
  add_action(menu, tr("&Save"), tr("Saves the project in its file"), QKeySequence::Save,
             [this] { document_.path().isEmpty() ? save_somewhere() : save_file(document_.path()); });
  add_action(menu, tr("Save &as …"), tr("Saves the project under another name"),
             QKeySequence(QStringLiteral("Ctrl+Shift+S")), [this] { save_somewhere(); });
  add_action(menu, tr("&Duplicate as variant"),
             tr("Goes on with a copy under another name, to try another cowl; nothing of it is cut"),
             QKeySequence(QStringLiteral("Ctrl+D")), [this] { duplicate_as_variant(); });
  menu.addSeparator();
  add_action(menu, tr("&Quit"), tr("Closes the window"), QKeySequence(QStringLiteral("Ctrl+Q")),
             [this] { close(); });
}

void WorkbenchWindow::show_recent() {
  recent_->clear();
  for (const QString& file : settings_.recent())
    add_action(*recent_, QFileInfo(file).completeBaseName(), file, {}, [this, file] {
      if (may_leave()) open_file(file);
    });
  recent_->setEnabled(!recent_->isEmpty());
}

void WorkbenchWindow::build_edit_menu(QMenu& menu) {
  menu.setToolTipsVisible(true);
  undo_ = add_action(menu, tr("&Undo"), tr("Takes the last change back"), QKeySequence::Undo,
                     [this] { document_.undo(); });
  redo_ = add_action(menu, tr("&Redo"), tr("Makes the change again that was taken back"),
                     QKeySequence(QStringLiteral("Ctrl+Shift+Z")), [this] { document_.redo(); });
  undo_->setIcon(icon(Icon::undo));
  redo_->setIcon(icon(Icon::redo));
}

void WorkbenchWindow::build_view_menu(QMenu& menu) {
  const Preferences& p = settings_.preferences();
  menu.setToolTipsVisible(true);
  add_action(menu, tr("&Dark or light"), tr("Changes between the dark and the light look"),
             QKeySequence(QStringLiteral("Ctrl+L")), [this] {
               settings_.set([](Preferences& one) {
                 one.theme = one.theme == ThemeName::dark ? ThemeName::light : ThemeName::dark;
               });
             });
  QAction* larger =
      add_action(menu, tr("&Larger type"), tr("Larger letters and controls, for reading from afar"),
                 QKeySequence(QStringLiteral("Ctrl+T")),
                 [this] { settings_.set([](Preferences& one) { one.larger_type = !one.larger_type; }); });
  larger->setCheckable(true);
  larger->setChecked(p.larger_type);
  QAction* still = add_action(
      menu, tr("Less &motion"), tr("Nothing moves by itself"), QKeySequence(QStringLiteral("Ctrl+M")),
      [this] { settings_.set([](Preferences& one) { one.less_motion = !one.less_motion; }); });
  still->setCheckable(true);
  still->setChecked(p.less_motion);
  menu.addSeparator();
  QMenu* units = menu.addMenu(tr("&Units"));
  auto* of_units = new QActionGroup(units);
  add_choice(*units, *of_units, tr("&Inches"), p.units == Units::inches,
             [](Preferences& one) { one.units = Units::inches; });
  add_choice(*units, *of_units, tr("&Centimetres"), p.units == Units::centimetres,
             [](Preferences& one) { one.units = Units::centimetres; });
  QMenu* language = menu.addMenu(tr("Lan&guage"));
  auto* of_language = new QActionGroup(language);
  for (const auto& [code, name] : {std::pair<const char*, const char*>{"en", "&English"}, {"de", "&Deutsch"}})
    add_choice(*language, *of_language, QString::fromUtf8(name), p.language == QLatin1String(code),
               [code = code](Preferences& one) { one.language = QLatin1String(code); });
}

void WorkbenchWindow::build_table_menu(QMenu& menu) {
  const Preferences& p = settings_.preferences();
  menu.setToolTipsVisible(true);
  QMenu* blade = menu.addMenu(tr("&Blade"));
  auto* of_blade = new QActionGroup(blade);
  for (const double size : kBladeSizes)
    add_choice(*blade, *of_blade, tr("&%1 mm").arg(size), p.blade == size,
               [size](Preferences& one) { one.blade = size; });
  QMenu* hand = menu.addMenu(tr("Blade &hand"));
  auto* of_hand = new QActionGroup(hand);
  add_choice(*hand, *of_hand, tr("&Right"), !p.left_handed,
             [](Preferences& one) { one.left_handed = false; });
  add_choice(*hand, *of_hand, tr("&Left"), p.left_handed, [](Preferences& one) { one.left_handed = true; });
  QMenu* paper = menu.addMenu(tr("&Paper"));
  auto* of_paper = new QActionGroup(paper);
  add_choice(*paper, *of_paper, tr("&A4"), !p.letter_paper,
             [](Preferences& one) { one.letter_paper = false; });
  add_choice(*paper, *of_paper, tr("&Letter"), p.letter_paper,
             [](Preferences& one) { one.letter_paper = true; });
}

void WorkbenchWindow::build_help_menu(QMenu& menu) {
  add_action(menu, tr("Take the &tour"),
             tr("To the first stroke cut by light in two minutes, on a simulated table"), {},
             [this] { take_tour(); });
  menu.setToolTipsVisible(true);
  add_action(menu, tr("&Guide"), tr("The user's guide, at the place one is at"),
             QKeySequence(QStringLiteral("F1")), [this] { open_guide(); });
  add_action(menu, tr("&Keys"), tr("The keys of this window"), QKeySequence(QStringLiteral("Ctrl+F1")),
             [this] { say_keys(); });
  add_action(menu, tr("&About Cowlcast"), tr("Version and licence"), {}, [this] { say_about(); });
}

void WorkbenchWindow::open_guide() {
  delete guide_;  // the language, the theme or the size of letters may have changed since
  guide_ = new GuideWindow(settings_.preferences().language, this);
  guide_->open_at(current_);
}

void WorkbenchWindow::say_keys() {
  QMessageBox box(this);
  box.setWindowTitle(tr("Keys"));
  box.setTextFormat(Qt::RichText);
  box.setText(
      tr("<p><b>Ctrl+1</b> to <b>Ctrl+6</b> go to a place; <b>Alt</b> and the underlined letter go to a "
         "control, "
         "<b>Tab</b> to the next.</p>"
         "<p><b>Ctrl+Return</b> takes the way out that a message offers, <b>Escape</b> puts it away; the "
         "window's own messages say their keys. <b>Ctrl+Z</b> takes back, "
         "<b>Ctrl+Shift+Z</b> makes again.</p>"
         "<p><b>In a drawing</b> (<b>F6</b> goes there): <b>Tab</b> goes from handle to handle, the arrows "
         "move it, with "
         "<b>Shift</b> five "
         "steps at once. Without a handle the arrows move the view. <b>+</b> and <b>-</b> zoom, <b>0</b> "
         "shows all, "
         "<b>Escape</b> lets go.</p>"
         "<p><b>Mouse:</b> the wheel zooms, dragging the ground moves it, a double click shows all.</p>"));
  box.exec();
}

void WorkbenchWindow::say_about() {
  QMessageBox box(this);
  box.setWindowTitle(tr("About Cowlcast"));
  box.setText(tr("Cowlcast drafts a cowl front from a plain knit-top pattern and projects its cutting lines, "
                 "in true size, "
                 "onto the cloth.\n\nVersion %1. Free software under the GPL, version 3 or later; without "
                 "any warranty.")
                  .arg(QStringLiteral(COWLCAST_VERSION)));
  box.exec();
}

}  // namespace cowlcast::projector
