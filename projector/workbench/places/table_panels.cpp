// The panels beside the picture, one a step.
#include <QFileDialog>

#include "calibration/sheet/sheet.h"
#include "projector/cutting/remembered.h"
#include "projector/cutting/window.h"
#include "projector/workbench/look/theme.h"
#include "projector/workbench/places/table_place.h"

namespace cowlcast::projector {

void TablePlace::add_next_button(Panel& panel, TableStep next, const QString& text) {
  auto* button = make_button(text, tr("To the next step"));
  button->setProperty("primary", true);
  connect(button, &QPushButton::clicked, this, [this, next] { go_to_step(next); });
  panel.add_gap();
  panel.add(button);
}

QDoubleSpinBox* TablePlace::add_ruler(Panel& panel, const QString& label, double nominal,
                                      double TableChoice::*member) {
  auto* box = new QDoubleSpinBox;
  box->setRange(0.0, 1.1 * nominal);
  box->setDecimals(1);
  box->setSingleStep(0.1);
  box->setSpecialValueText(tr("not measured"));
  box->setSuffix(tr(" mm"));
  box->setKeyboardTracking(false);
  panel.add_labelled(
      label,
      tr("From end tick to end tick with a steel rule, to a tenth of a millimetre. It fixes the "
         "size of everything that is projected."),
      box);
  connect(box, &QDoubleSpinBox::valueChanged, this, [this, box, nominal, member](double mm) {
    if (mm > 0.0 && mm < 0.9 * nominal) {
      const bool stepped = mm <= box->singleStep();  // a first step up from "not measured"
      box->setValue(stepped ? nominal : 0.0);
      if (!stepped)
        notice_->say(
            tr("%1 mm is no reading of a ruler that is %2 mm as designed. Measure it again, from end "
               "tick to end tick.")
                .arg(mm)
                .arg(nominal));
      return;
    }
    document().change(
        tr("What a ruler measures").toStdString(), [&](Project& project) { project.table.*member = mm; },
        box->accessibleName().toStdString());
  });
  connect(box, &QDoubleSpinBox::editingFinished, this, [this] { document().settle(); });
  return box;
}

Panel* TablePlace::make_print_panel() {
  auto* panel = new Panel;
  panel->add_heading(tr("Print the sheets"));
  panel->add_words(tr("At 100 %, without fitting to the page, on plain paper, all in one go."));
  sheet_count_ = new QSpinBox;
  sheet_count_->setRange(1, calibration::kMostSheets);
  sheet_count_->setValue(4);
  panel->add_labelled(tr("Num&ber of sheets"), tr("Four serve most tables; a very long light takes six"),
                      sheet_count_);
  auto* save = make_button(tr("&Save the sheets as PDF …"),
                           tr("A file to print, of the paper chosen in the Table menu"));
  connect(save, &QPushButton::clicked, this, [this] {
    const QString file =
        QFileDialog::getSaveFileName(this, tr("Save the sheets"), tr("sheets.pdf"), tr("PDF (*.pdf)"));
    if (!file.isEmpty()) save_sheets(file);
  });
  panel->add(save);
  saved_sheets_ = panel->add_words({});
  panel->add_gap();
  panel->add_heading(tr("Measure the rulers"));
  across_ = add_ruler(*panel, tr("&Long ruler, 240 mm as designed"), calibration::kRulerAcross,
                      &TableChoice::ruler_across);
  down_ = add_ruler(*panel, tr("Sho&rt ruler, 180 mm as designed"), calibration::kRulerDown,
                    &TableChoice::ruler_down);
  add_next_button(*panel, TableStep::lay, tr("&Next: lay them"));
  panel->add_gap();
  panel->add_heading(tr("No projector here?"));
  panel->add_words(
      tr("Everything can be tried on a simulated table first. It is photographed and calibrated just as "
         "a real one."));
  auto* simulated = make_button(tr("&Try it on a simulated table"),
                                tr("Takes three photographs of an invented table; it needs some seconds"));
  connect(simulated, &QPushButton::clicked, this, &TablePlace::lay_out_simulated_table);
  panel->add(simulated);
  panel->end();
  return panel;
}

Panel* TablePlace::make_lay_panel() {
  auto* panel = new Panel;
  panel->add_heading(tr("Lay the sheets"));
  panel->add_words(
      tr("Say which screen the projector is. Then lay the sheets in its light: flat, loose, towards "
         "the corners, inside the light and on the mat."));
  screens_ = new QComboBox;
  panel->add_labelled(tr("Pro&jector"),
                      tr("The screen that the projector is, by name and pixels. Set it to show its "
                         "own pixels, without any scaling"),
                      screens_);
  connect(screens_, &QComboBox::activated, this, &TablePlace::choose_screen);
  add_light_buttons(*panel);
  panel->add_gap();
  panel->add_words(
      tr("Shown from another machine? Save both pictures and show them full screen there, one pixel to "
         "a pixel."));
  auto* save =
      make_button(tr("Save &both pictures …"), tr("target.png and plain.png, in a folder of your choice"));
  connect(save, &QPushButton::clicked, this, [this] {
    const QString folder = QFileDialog::getExistingDirectory(this, tr("Folder for the two pictures"));
    if (!folder.isEmpty()) save_light(folder);
  });
  panel->add(save);
  add_next_button(*panel, TableStep::photograph, tr("&Next: photograph them"));
  panel->end();
  return panel;
}

void TablePlace::add_light_buttons(Panel& panel) {
  auto* target =
      make_button(tr("Show the tar&get"),
                  tr("The chequered picture, full screen on the projector. Space changes to plain light and "
                     "back, Escape ends"));
  auto* plain = make_button(tr("Show pla&in light"), tr("Plain light, full screen on the projector"));
  connect(target, &QPushButton::clicked, this, [this] { show_light(true); });
  connect(plain, &QPushButton::clicked, this, [this] { show_light(false); });
  panel.add(target);
  panel.add(plain);
}

Panel* TablePlace::make_photograph_panel() {
  auto* panel = new Panel;
  panel->add_heading(tr("Photograph the table"));
  panel->add_words(
      tr("Two photographs under the target, from two sides, and one under plain light; more are "
         "better. A phone in the hand will do. Nothing may move in between."));
  add_light_buttons(*panel);
  panel->add_gap();
  auto* cable =
      make_button(tr("A camera on a ca&ble …"), tr("It takes the photographs by itself, with hints"));
  connect(cable, &QPushButton::clicked, this, [this] { photograph_with_camera(true); });
  panel->add(cable);
  panel->add_gap();
  panel->add_words(tr("Drop the photographs anywhere in this window, or:"));
  auto* pick = make_button(tr("Choose &photographs …"), tr("JPEG or PNG files, as the camera saved them"));
  auto* folder =
      make_button(tr("&Watch a folder …"),
                  tr("Photographs that arrive there from now on come in by themselves, from a phone that "
                     "sends them to this machine, for example"));
  connect(pick, &QPushButton::clicked, this, &TablePlace::pick_photographs);
  connect(folder, &QPushButton::clicked, this, &TablePlace::pick_folder);
  panel->add(pick);
  panel->add(folder);
  watched_ = panel->add_words({});
  list_ = new QListWidget;
  list_->setSelectionMode(QAbstractItemView::ExtendedSelection);
  list_->setFixedHeight(grown(130));
  panel->add_labelled(tr("Photographs ta&ken"), tr("All of these are used"), list_);
  auto* remove =
      make_button(tr("&Leave these out"), tr("Takes the marked photographs from the list; the files stay"));
  connect(remove, &QPushButton::clicked, this, &TablePlace::remove_photographs);
  panel->add(remove);
  add_next_button(*panel, TableStep::calibrate, tr("&Next: calibrate"));
  panel->end();
  return panel;
}

Panel* TablePlace::make_calibrate_panel() {
  auto* panel = new Panel;
  panel->add_heading(tr("Calibrate"));
  calibrate_ = make_button(tr("&Calibrate"), tr("Takes a few seconds; you can go on elsewhere meanwhile"));
  calibrate_->setProperty("primary", true);
  connect(calibrate_, &QPushButton::clicked, this, &TablePlace::calibrate);
  panel->add(calibrate_);
  result_ = panel->add_words({});
  cautions_ = panel->add_words({});
  numbers_ = make_button(tr("All n&umbers"), tr("What the calibration says of itself, to read or to keep"));
  numbers_->setCheckable(true);
  panel->add(numbers_);
  summary_words_ = panel->add_words({});
  summary_words_->hide();
  connect(numbers_, &QPushButton::toggled, summary_words_, &QLabel::setVisible);
  add_next_button(*panel, TableStep::check, tr("&Next: check it by hand"));
  panel->add_gap();
  panel->add_heading(tr("For thick cloth"));
  lamp_ =
      panel->add_length(settings(), tr("Hei&ght of the projector's lens"),
                        tr("From the mat straight up to the middle of the lens, by tape. It helps with cloth "
                           "thicker than 2 mm; 0: not measured"),
                        0.0, 6000.0);
  connect(lamp_, &LengthBox::edited, this, [this](double mm) {
    document().change(
        tr("Height of the projector's lens").toStdString(),
        [mm](Project& project) { project.table.lamp_height = mm; }, "lamp height");
  });
  connect(lamp_, &LengthBox::editingFinished, this, [this] { document().settle(); });
  panel->end();
  return panel;
}

void TablePlace::show_screens() {
  const TableChoice& table = document().project().table;
  const std::vector<ScreenSeen> screens = screens_seen();
  const QSignalBlocker quiet(screens_);
  screens_->clear();
  screens_->addItem(tr("not chosen yet"));
  for (const ScreenSeen& screen : screens) screens_->addItem(QString::fromStdString(in_words(screen)));
  int chosen =
      table.width > 0 ? likely_index(screens, Remembered().screen(), table.width, table.height) + 1 : 0;
  if (table.width > 0 && chosen == 0) {
    screens_->addItem(tr("another one, %1 × %2").arg(table.width).arg(table.height));
    chosen = screens_->count() - 1;
  }
  screens_->setCurrentIndex(chosen);
}

void TablePlace::choose_screen(int which) {
  const std::vector<ScreenSeen> screens = screens_seen();
  if (which < 1 || which > static_cast<int>(screens.size())) return;
  const ScreenSeen& screen = screens[static_cast<size_t>(which - 1)];
  Remembered().keep_screen(screen.name);
  document().change(tr("The projector is %1").arg(QString::fromStdString(in_words(screen))).toStdString(),
                    [&](Project& project) {
                      project.table.width = screen.width;
                      project.table.height = screen.height;
                    });
}

}  // namespace cowlcast::projector
