#include "projector/workbench/controls.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLineEdit>
#include <QPainter>
#include <QStyle>
#include <QWheelEvent>
#include <algorithm>
#include <utility>

#include "projector/language/said.h"

namespace cowlcast::projector {

void describe(QWidget& widget, QString name, const QString& tip) {
  widget.setAccessibleName(name.remove(QLatin1Char('&')));
  widget.setAccessibleDescription(tip);
  widget.setToolTip(tip);
}

QPushButton* make_button(const QString& text, const QString& tip, const QKeySequence& shortcut) {
  auto* button = new QPushButton(text);
  if (!shortcut.isEmpty()) button->setShortcut(shortcut);
  describe(*button, text, tip);
  return button;
}

LengthBox::LengthBox(Settings& settings, double least, double most) : settings_(settings) {
  setDecimals(4);
  setRange(least, most);
  setKeyboardTracking(false);
  setCorrectionMode(QAbstractSpinBox::CorrectToNearestValue);
  setAlignment(Qt::AlignLeft | Qt::AlignVCenter);
  setFont(letters(TextSize::large));
  connect(this, &QDoubleSpinBox::valueChanged, this, &LengthBox::edited);
  connect(&settings_, &Settings::changed, this, [this] { show_mm(value()); });
  connect(lineEdit(), &QLineEdit::textEdited, this, [this](const QString& text) { typed_ = text; });
  connect(this, &QDoubleSpinBox::editingFinished, this, [this] {
    if (!typed_.isEmpty()) emit held_back(limit_of(typed_));
    typed_.clear();
  });
}

QString LengthBox::limit_of(const QString& typed) const {
  const auto mm = typed_length(typed.toStdString(), settings_.preferences().units);
  if (!mm || (*mm >= minimum() && *mm <= maximum())) return {};
  return (*mm > maximum() ? tr("%1 is too much: the most here is %2.")
                          : tr("%1 is too little: the least here is %2."))
      .arg(textFromValue(*mm), textFromValue(*mm > maximum() ? maximum() : minimum()));
}

QLabel* make_limit_words(const LengthBox& box) {
  auto* words = new QLabel;
  words->setWordWrap(true);
  words->hide();
  QObject::connect(&box, &LengthBox::held_back, words, [words](const QString& said) {
    words->setText(QStringLiteral("⚠ ") + said);
    words->setVisible(!said.isEmpty());
  });
  QObject::connect(&box, &QDoubleSpinBox::valueChanged, words, [words] { words->hide(); });
  return words;
}

void LengthBox::show_mm(double mm) {
  const QSignalBlocker quiet(this);
  setValue(mm);
  if (!hasFocus() || !lineEdit()->isModified()) lineEdit()->setText(textFromValue(value()));
}

bool LengthBox::event(QEvent* event) {
  // Undo is the project's own, but for what is being typed.
  if (event->type() == QEvent::ShortcutOverride && !lineEdit()->isModified()) {
    const auto* key = static_cast<QKeyEvent*>(event);
    if (key->matches(QKeySequence::Undo) || key->matches(QKeySequence::Redo)) {
      event->ignore();
      return false;
    }
  }
  return QDoubleSpinBox::event(event);
}

void LengthBox::stepBy(int steps) {
  const double step = length_step(settings_.preferences().units);
  setValue(on_step(value() + steps * step, step));
  selectAll();
}

QString LengthBox::textFromValue(double mm) const {
  return QString::fromStdString(length_in_words(mm, settings_.preferences().units));
}

double LengthBox::valueFromText(const QString& text) const {
  return typed_length(text.toStdString(), settings_.preferences().units).value_or(value());
}

QValidator::State LengthBox::validate(QString& text, int&) const {
  // What is out of range is brought into it, and said; only what is no length is not taken.
  return typed_length(text.toStdString(), settings_.preferences().units) ? QValidator::Acceptable
                                                                         : QValidator::Intermediate;
}

void LengthBox::fixup(QString& text) const {
  text = textFromValue(value());
}

void LengthBox::wheelEvent(QWheelEvent* event) {
  hasFocus() ? QDoubleSpinBox::wheelEvent(event) : event->ignore();
}

namespace {

QString with_key(const QString& tip, const QKeySequence& key) {
  return QStringLiteral("%1 (%2)").arg(tip, key.toString(QKeySequence::NativeText));
}

}  // namespace

NoteBox::NoteBox(NoteKeys keys, QWidget* parent)
    : QFrame(parent),
      keys_(std::move(keys)),
      words_(new QLabel),
      button_(new QPushButton),
      put_away_(new QPushButton) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(grown(46), grown(14), grown(16), grown(14));
  column->setSpacing(grown(12));
  words_->setWordWrap(true);
  words_->setTextInteractionFlags(Qt::TextSelectableByMouse);
  put_away_->setIcon(icon(Icon::put_away));
  put_away_->setFixedSize(grown(34), grown(34));
  auto* top = new QHBoxLayout;
  top->addWidget(words_, 1);
  top->addWidget(put_away_, 0, Qt::AlignTop);
  column->addLayout(top);
  auto* row = new QHBoxLayout;
  row->addWidget(button_);
  row->addStretch(1);
  column->addLayout(row);
  connect(put_away_, &QPushButton::clicked, this, &NoteBox::clear);
  connect(button_, &QPushButton::clicked, this, [this] {
    const std::function<void()> act = way_out_;  // it may take this box away
    if (act) act();
  });
  hide();
}

void NoteBox::say(const QString& words) {
  say(words, {}, {});
}

void NoteBox::say(const QString& words, const QString& action, std::function<void()> way_out) {
  show_words(words, action, std::move(way_out), false);
}

void NoteBox::offer(const QString& words, const QString& action, std::function<void()> taken_up) {
  show_words(words, action, std::move(taken_up), true);
}

void NoteBox::show_words(const QString& english, const QString& action, std::function<void()> way_out,
                         bool calm) {
  const QString words = said(english);  // of another room, most often; what is said already stays
  words_->setText(words);
  words_->setAccessibleName(words);
  button_->setText(action);
  button_->setShortcut(keys_.way_out);  // a new text takes it away
  describe(*button_, action, with_key(tr("The way out of what is said above"), keys_.way_out));
  button_->setVisible(!action.isEmpty());
  put_away_->setShortcut(keys_.put_away);
  describe(*put_away_, tr("Put away"), with_key(tr("Puts this away, as does Escape"), keys_.put_away));
  way_out_ = std::move(way_out);
  calm_ = calm;
  update();
  show();
}

void NoteBox::clear() {
  hide();
  words_->clear();
  way_out_ = {};
}

void NoteBox::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(QPen(calm_ ? theme().accent : theme().warn, 1.5));
  painter.setBrush(calm_ ? theme().tint : theme().warn_ground);
  painter.drawRoundedRect(QRectF(rect()).adjusted(1, 1, -1, -1), 8, 8);
  if (!calm_)
    paint_icon(painter, QRectF(grown(12), grown(13), grown(24), grown(24)), Icon::caution, theme().warn);
}

QWidget* side_by_side(QWidget* drawing, QWidget* panel) {
  auto* page = new QWidget;
  auto* row = new QHBoxLayout(page);
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(0);
  row->addWidget(drawing, 1);
  row->addWidget(panel);
  return page;
}

QWidget* centred(QWidget* inside) {
  auto* page = new QWidget;
  auto* grid = new QGridLayout(page);
  grid->setColumnStretch(0, 1);
  grid->setColumnStretch(2, 1);
  grid->setRowStretch(0, 2);
  grid->setRowStretch(2, 3);
  grid->addWidget(inside, 1, 1);
  return page;
}

OneOf::OneOf(const QString& name, const std::vector<Choice>& choices, bool in_column) {
  QBoxLayout* row = in_column ? static_cast<QBoxLayout*>(new QVBoxLayout(this)) : new QHBoxLayout(this);
  row->setContentsMargins(0, 0, 0, 0);
  row->setSpacing(6);
  setAccessibleName(name);
  for (const Choice& choice : choices) {
    QPushButton* button = make_button(choice.text, choice.tip);
    button->setCheckable(true);
    const int which = static_cast<int>(buttons_.size());
    connect(button, &QPushButton::clicked, this, [this, which] {
      show_chosen(which);
      emit chosen(which);
    });
    if (!in_column) button->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed);
    row->addWidget(button, 1);
    buttons_.push_back(button);
  }
}

void OneOf::show_chosen(int which) {
  for (size_t i = 0; i < buttons_.size(); ++i) buttons_[i]->setChecked(static_cast<int>(i) == which);
}

QPushButton* OneOf::button(int which) const {
  return buttons_.at(static_cast<size_t>(which));
}

Panel::Panel(QWidget* parent) : QScrollArea(parent) {
  auto* inside = new QWidget;
  column_ = new QVBoxLayout(inside);
  column_->setContentsMargins(grown(20), grown(16), grown(20), grown(16));
  column_->setSpacing(grown(7));
  setWidget(inside);
  setWidgetResizable(true);
  setFrameShape(QFrame::NoFrame);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setFocusPolicy(Qt::NoFocus);
  setFixedWidth(grown(372));
  inside->setMaximumWidth(grown(372) - style()->pixelMetric(QStyle::PM_ScrollBarExtent));
  viewport()->setAutoFillBackground(true);
  viewport()->setBackgroundRole(QPalette::Button);
  inside->setAutoFillBackground(true);
  inside->setBackgroundRole(QPalette::Button);
}

QLabel* Panel::add_heading(const QString& words) {
  auto* label = new QLabel(words);
  label->setFont(letters(TextSize::large, true));
  label->setWordWrap(true);
  column_->addWidget(label);
  return label;
}

QLabel* Panel::add_words(const QString& words) {
  auto* label = new QLabel(words);
  label->setWordWrap(true);
  label->setForegroundRole(QPalette::ButtonText);
  column_->addWidget(label);
  return label;
}

void Panel::add(QWidget* widget) {
  column_->addWidget(widget);
}

QLabel* Panel::add_labelled(const QString& label, const QString& tip, QWidget* widget) {
  auto* words = new QLabel(label);
  words->setWordWrap(true);
  words->setBuddy(widget);
  words->setToolTip(tip);
  describe(*widget, label, tip);
  column_->addWidget(words);
  column_->addWidget(widget);
  return words;
}

LengthBox* Panel::add_length(Settings& settings, const QString& label, const QString& tip, double least,
                             double most) {
  auto* box = new LengthBox(settings, least, most);
  add_labelled(label, tip, box);
  add(make_limit_words(*box));
  return box;
}

void Panel::add_gap() {
  column_->addSpacing(grown(12));
}

}  // namespace cowlcast::projector
