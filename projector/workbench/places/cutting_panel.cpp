// What stands beside and around the light in the cutting place.
#include <QGuiApplication>
#include <QHBoxLayout>
#include <QLocale>
#include <algorithm>

#include "projector/cutting/parts.h"
#include "projector/cutting/remembered.h"
#include "projector/cutting/view_marks.h"
#include "projector/language/said.h"
#include "projector/workbench/look/theme.h"
#include "projector/workbench/places/cutting_place.h"

namespace cowlcast::projector {

CuttingPlace::CuttingPlace(Document& document, Settings& settings, CurrentGarment& garment)
    : Workplace(Place::cutting, document, settings, garment) {
  panel_ = make_panel();
  body()->addWidget(make_middle(), 1);
  body()->addWidget(panel_);
  set_lead(tr("The lines as they fall on the cloth. Lay the piece, then cut stroke by stroke."));
  for (const auto came_or_went : {&QGuiApplication::screenAdded, &QGuiApplication::screenRemoved})
    connect(qGuiApp, came_or_went, this, [this] {
      if (isVisible()) show_project();
    });
  soon_.setSingleShot(true);
  soon_.setInterval(150);
  connect(&soon_, &QTimer::timeout, this, &CuttingPlace::look_at_table);
}

QWidget* CuttingPlace::make_middle() {
  middle_ = new QStackedWidget;
  auto* empty = new QWidget;
  empty->setFixedWidth(grown(560));
  auto* column = new QVBoxLayout(empty);
  column->setSpacing(grown(20));
  empty_words_ = new QLabel;
  empty_words_->setFont(letters(TextSize::large));
  empty_words_->setWordWrap(true);
  empty_way_ = make_button(tr("To the &table"), tr("Goes there"));
  empty_way_->setProperty("primary", true);
  empty_way_->setFont(letters(TextSize::large, true));
  empty_way_->setFixedHeight(grown(60));
  connect(empty_way_, &QPushButton::clicked, this, [this] { emit wanted(empty_place_); });
  column->addWidget(empty_words_);
  column->addWidget(empty_way_);
  middle_->addWidget(centred(empty));

  auto* work = new QWidget;
  auto* lines = new QVBoxLayout(work);
  lines->setContentsMargins(grown(24), 0, grown(24), grown(20));
  lines->setSpacing(grown(10));
  seen_as_ = new OneOf(
      tr("What is seen"),
      {{tr("&On the cloth"), tr("The simulated table, photographed from above")},
       {tr("The pro&jector's picture"), tr("The frame itself, a pixel of it for each of the projector's")}});
  seen_as_->show_chosen(0);
  connect(seen_as_, &OneOf::chosen, this, [this](int which) {
    on_cloth_ = which == 0;
    show_view();
  });
  notice_ = new NoteBox;
  light_ = new LightView;
  describe(*light_, tr("The light on the table"),
           tr("Arrow keys move the piece, Q and E turn it, F flips it; the mouse drags it. Space goes on, "
              "Page Up goes "
              "back"));
  connect(light_, &LightView::acted, this, &CuttingPlace::act);
  connect(light_, &LightView::dragged, this, &CuttingPlace::drag);
  connect(light_, &LightView::let_go, this, [this] { document().settle(); });
  looking_words_ = new QLabel;
  looking_words_->setWordWrap(true);
  looking_words_->setMinimumHeight(2 * looking_words_->fontMetrics().lineSpacing());
  lines->addWidget(seen_as_);
  lines->addWidget(notice_);
  lines->addWidget(light_, 1);
  lines->addWidget(looking_words_);
  middle_->addWidget(work);
  return middle_;
}

QPushButton* CuttingPlace::add_act(Panel& panel, const QString& text, const QString& tip, Act act_it) {
  auto* button = make_button(text, tip);
  connect(button, &QPushButton::clicked, this, [this, act_it] {
    act(act_it);
    document().settle();
  });
  panel.add(button);
  return button;
}

Panel* CuttingPlace::make_panel() {
  auto* panel = new Panel;
  pieces_ = new QComboBox;
  panel->add_labelled(tr("&Piece"), tr("Which piece is cut now, and how far the others are"), pieces_);
  connect(pieces_, &QComboBox::activated, this,
          [this](int which) { choose_piece(pieces_->itemData(which).toString().toStdString()); });
  state_ = panel->add_words({});
  next_ = add_act(*panel, tr("&Go on"), tr("What comes next; the space bar or Page Down does the same"),
                  Act::next);
  next_->setProperty("primary", true);
  back_ =
      add_act(*panel, tr("Take it &back"), tr("Takes the last one back; Page Up does the same"), Act::back);
  waive_ = add_act(*panel, tr("Cut all the sa&me"),
                   tr("In spite of what is said. Pressed twice; it is written in the record"), Act::waive);
  panel->add_gap();
  panel->add_heading(tr("On the projector"));
  screens_ = new QComboBox;
  panel->add_labelled(tr("S&creen"), tr("The screen that the projector is, by name and pixels"), screens_);
  show_ = make_button(
      tr("&Show on the projector"),
      tr("Full screen there, with the same keys. A presenter's remote or a pedal goes on and back"));
  connect(show_, &QPushButton::clicked, this, &CuttingPlace::show_on_projector);
  panel->add(show_);
  why_not_shown_ = panel->add_words({});
  panel->add_gap();
  panel->add_heading(tr("A camera that watches"));
  panel->add(make_watch());
  panel->add_gap();
  panel->add_heading(tr("A look before cutting"));
  check_ = new CheckWork(document(), settings(), true);
  connect(check_, &CheckWork::refused, this, [this](const QString& words) { notice_->say(words); });
  connect(check_, &CheckWork::agreed, this, [this] { notice_->clear(); });
  connect(check_, &CheckWork::disagrees, this, [this](const QString& words) {
    notice_->say(words, tr("To the table"), [this] { emit wanted(Place::table); });
  });
  panel->add(check_);
  panel->add_gap();
  panel->add_heading(tr("Laying"));
  left_ = add_act(*panel, tr("Turn &left"), tr("A fifth of a degree anticlockwise; Q, with shift 5 degrees"),
                  Act::turn_left);
  right_ = add_act(*panel, tr("Turn &right"), tr("A fifth of a degree clockwise; E, with shift 5 degrees"),
                   Act::turn_right);
  flip_ = add_act(*panel, tr("Fl&ip"), tr("Face down instead of face up; F"), Act::flip);
  home_ = add_act(*panel, tr("To its laid-o&ut place"), tr("Where it lay when laying began; H"), Act::home);
  unlock_ = add_act(*panel, tr("Lay it a&new"),
                    tr("Moves the lines to where the cloth has gone; what is cut stays cut; U"), Act::unlock);
  panel->add_gap();
  panel->add_heading(tr("Blade and hand"));
  std::vector<OneOf::Choice> sizes;
  for (const double size : kBladeSizes)
    sizes.push_back(
        {tr("&%1").arg(static_cast<int>(size)), tr("A rotary cutter with a blade of %1 mm").arg(size)});
  blades_ = new OneOf(tr("Diameter of the blade, mm"), sizes);
  connect(blades_, &OneOf::chosen, this, [this](int which) {
    settings().set([which](Preferences& preferences) {
      preferences.blade = kBladeSizes.at(static_cast<size_t>(which));
    });
    show_project();
  });
  hands_ =
      new OneOf(tr("The hand that holds the blade"),
                {{tr("Left han&d"), tr("Strokes and the hatched band are made for a left-handed cutter")},
                 {tr("Righ&t hand"), tr("Strokes and the hatched band are made for a right-handed cutter")}});
  connect(hands_, &OneOf::chosen, this, [this](int which) {
    settings().set([which](Preferences& preferences) { preferences.left_handed = which == 0; });
    show_project();
  });
  panel->add(blades_);
  panel->add(hands_);
  panel->add_words(
      tr("The hatched band on the table reminds the other hand to stay away from the blade. It is an "
         "aid to the eye: it sees no hand and stops no blade."));
  panel->add_gap();
  panel->add_heading(tr("Cloth"));
  cloth_ = panel->add_words({});
  auto* change = make_button(tr("Another &kind of cloth …"), tr("To the place where the cloth is said"));
  connect(change, &QPushButton::clicked, this, [this] { emit wanted(Place::cloth); });
  panel->add(change);
  panel->end();
  return panel;
}

void CuttingPlace::show_pieces() {
  const QSignalBlocker quiet(pieces_);
  pieces_->clear();
  for (const drafting::Piece& one : garment().now().pieces) {
    const Record record = record_of(document().project(), one);
    QString words = said(QString::fromStdString(one.name));
    if (record.strokes > 0 && record.cut >= record.strokes)
      words = tr("%1: cut").arg(words);
    else if (record.cut > 0)
      words = tr("%1: %2 of %3 strokes cut").arg(words).arg(record.cut).arg(record.strokes);
    pieces_->addItem(words, QString::fromStdString(one.name));
    if (one.name == chosen_) pieces_->setCurrentIndex(pieces_->count() - 1);
  }
}

void CuttingPlace::show_screens() {
  const calibration::TableMap& map = *document().project().table.map;
  const std::vector<ScreenSeen> screens = screens_seen();
  const QSignalBlocker quiet(screens_);
  const QString wanted = screens_->currentData().toString();
  screens_->clear();
  for (const ScreenSeen& screen : screens)
    screens_->addItem(QString::fromStdString(in_words(screen)), QString::fromStdString(screen.name));
  int chosen = screens_->findData(wanted);
  if (chosen < 0) chosen = std::max(0, likely_index(screens, Remembered().screen(), map.width, map.height));
  screens_->setCurrentIndex(chosen);
}

/// Empty when it can be shown on the projector.
QString CuttingPlace::why_not_shown() const {
  const TableChoice& table = document().project().table;
  if (!view_) return tr("There is nothing to show: see the message beside it.");
  if (table.simulated)
    return tr("No light on a real table goes by a simulated one. Calibrate your own to show this there.");
  const auto screens = screens_seen();
  const bool any = std::any_of(screens.begin(), screens.end(), [&](const ScreenSeen& screen) {
    return screen.width == table.map->width && screen.height == table.map->height;
  });
  return any ? QString()
             : tr("No screen here has the %1 pixels that the table was calibrated with. Plug the projector "
                  "in "
                  "and switch it on; it is noticed by itself.")
                   .arg(QString::fromStdString(pixels_in_words(table.map->width, table.map->height)));
}

void CuttingPlace::show_words() {
  const AtTheTable who = person();
  hands_->show_chosen(who.hand == Hand::left ? 0 : 1);
  for (size_t i = 0; i < kBladeSizes.size(); ++i)
    if (kBladeSizes[i] == who.blade) blades_->show_chosen(static_cast<int>(i));
  const QString why_not = why_not_shown();
  show_->setEnabled(why_not.isEmpty());
  why_not_shown_->setText(why_not);
  why_not_shown_->setVisible(!why_not.isEmpty());
  for (QPushButton* button : {next_, back_, left_, right_, flip_, home_, unlock_})
    button->setEnabled(view_.has_value());
  waive_->setVisible(view_ && !view_->block.empty());
  if (!view_) {
    state_->clear();
    return;
  }
  const CuttingView& view = *view_;
  const QString height = QLocale().toString(view.laying.height, 'f', 1);
  cloth_->setText(view.piece.fold ? tr("Fold the cloth, right sides together, and lay its fold exactly on "
                                       "the two fine lines that say so. Do "
                                       "not cut along the fold. In two layers it is %1 mm high.")
                                        .arg(height)
                                  : tr("One layer, %1 mm high.").arg(height));
  const bool laying = is_laying(view), cutting = view.phase == Phase::cutting;
  for (QPushButton* button : {left_, right_, flip_, home_}) button->setEnabled(laying);
  unlock_->setEnabled(cutting);
  back_->setEnabled(cutting || can_go_back_in_parts(view));
  next_->setEnabled(view.block.empty() && !all_cut(view));
  next_->setText(view.phase == Phase::cautions ? tr("Read: &go on")
                 : laying                      ? tr("It lies right: be&gin to cut")
                                               : tr("This stroke is cut: &go on"));
  next_->setAccessibleName(next_->text().remove(QLatin1Char('&')));
  QStringList lines;
  if (!view.block.empty()) {
    lines << in_own_words(view.block);
  } else if (view.phase == Phase::cautions) {
    lines << tr("Before the first stroke of a day:");
    for (int i = 0; i < view.cautions_shown && i < static_cast<int>(cautions().size()); ++i)
      lines << said(QString::fromStdString(cautions()[static_cast<size_t>(i)]));
  } else if (laying) {
    lines << tr("Move the lines to where the cloth lies, or the cloth to the lines.");
  } else if (all_cut(view)) {
    lines << tr("All strokes of this piece are cut.");
  } else {
    lines << tr("Stroke %1 of %2: %3.")
                 .arg(view.cut + 1)
                 .arg(view.plan.size())
                 .arg(QString::fromStdString(
                     said(stroke_name(view.piece, view.plan[static_cast<size_t>(view.cut)]))));
  }
  if (!view.message.empty()) lines << in_own_words(view.message);
  state_->setText(lines.join(QLatin1Char('\n')));
}

}  // namespace cowlcast::projector
