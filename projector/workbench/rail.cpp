#include "projector/workbench/rail.h"

#include <QKeyEvent>
#include <QPainter>
#include <QVBoxLayout>

#include "projector/workbench/controls.h"

namespace cowlcast::projector {
namespace {

constexpr int rail_width = 196;

/// What is done at a place, for its tool tip.
QString tip_of(Place place) {
  switch (place) {
    case Place::table:
      return Rail::tr(
          "Where the projector's light falls on the cutting table, measured with sheets and photographs");
    case Place::pattern:
      return Rail::tr("The plain front and back that the cowl is drafted from");
    case Place::cowl:
      return Rail::tr("How long the cowl is, how deep it hangs and where it is slashed");
    case Place::cloth:
      return Rail::tr("How wide and thick the cloth is, and its colours");
    case Place::cutting:
      return Rail::tr("The lines in light on the cloth, piece by piece");
    case Place::sewing:
      return Rail::tr("Which seams meet, what elastic and bands to cut, and how the draft was made");
  }
  return {};
}

}  // namespace

RailButton::RailButton(Place place, const QKeySequence& key)
    : icon_(icon_of(place)),
      tip_(tip_of(place) + QStringLiteral(" (") + key.toString(QKeySequence::NativeText) + QLatin1Char(')')) {
  setText(title_of(place));
  setCheckable(true);
  setAutoExclusive(true);
  setShortcut(key);
  setFocusPolicy(Qt::StrongFocus);
  describe(*this, title_of(place), tip_);
}

void RailButton::show_missing(const std::optional<Missing>& missing) {
  missing_ = missing ? QString::fromStdString(missing->brief) : QString();
  const QString words =
      missing ? tr("Missing: %1").arg(QString::fromStdString(missing->sentence)) : tr("Nothing is missing");
  if (accessibleDescription() == words) return;
  setAccessibleDescription(words);
  setToolTip(tip_ + QStringLiteral("\n") + words);
  update();
}

QSize RailButton::sizeHint() const {
  return {grown(rail_width), grown(110)};
}

void RailButton::paintEvent(QPaintEvent*) {
  const Theme& t = theme();
  QPainter painter(this);
  painter.setRenderHint(QPainter::Antialiasing);
  const QRectF body = QRectF(rect()).adjusted(8, 4, -8, -4);
  if (isChecked() || underMouse()) {
    painter.setPen(Qt::NoPen);
    painter.setBrush(isChecked() ? t.accent : t.tint);
    painter.drawRoundedRect(body, 10, 10);
  }
  const QColor ink = isChecked() ? t.on_accent : t.ink;
  paint_icon(painter, QRectF(body.left() + grown(10), body.top() + grown(10), grown(34), grown(34)), icon_,
             ink);
  const double left = body.left() + grown(54);
  painter.setPen(ink);
  painter.setFont(letters(TextSize::large, isChecked()));
  if (painter.fontMetrics().horizontalAdvance(text()) > body.right() - left - grown(4))
    painter.setFont(letters(TextSize::plain, isChecked()));
  painter.drawText(QRectF(left, body.top() + grown(9), body.right() - left, grown(28)),
                   Qt::AlignLeft | Qt::AlignVCenter, text());
  const QRectF below(left, body.top() + grown(39), body.right() - left - grown(6), body.height() - grown(41));
  const QColor lesser = isChecked() ? t.on_accent : t.quiet;
  const double sign = grown(15);
  paint_icon(painter, QRectF(left, below.top() + grown(2), sign, sign),
             missing_.isEmpty() ? Icon::done : Icon::missing,
             isChecked()          ? t.on_accent
             : missing_.isEmpty() ? t.good
                                  : t.quiet);
  painter.setPen(lesser);
  painter.setFont(letters(TextSize::small));
  const QRectF words = below.adjusted(sign + grown(5), 0, 0, 0);
  const QString said = missing_.isEmpty() ? tr("ready") : missing_;
  painter.drawText(words, Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap, said);
  if (hasFocus()) {
    painter.setPen(QPen(isChecked() ? t.on_accent : t.accent, 2.0));
    painter.setBrush(Qt::NoBrush);
    painter.drawRoundedRect(body.adjusted(3, 3, -3, -3), 8, 8);
  }
}

void RailButton::enterEvent(QEnterEvent*) {
  update();
}

void RailButton::leaveEvent(QEvent*) {
  update();
}

Rail::Rail(const std::vector<Workplace*>& places) : places_(places) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, grown(8), 0, grown(8));
  column->setSpacing(0);
  setFixedWidth(grown(rail_width));
  for (size_t i = 0; i < places.size(); ++i) {
    const int number = static_cast<int>(places[i]->place()) + 1;
    auto* button = new RailButton(places[i]->place(), QKeySequence(QStringLiteral("Ctrl+%1").arg(number)));
    connect(button, &QAbstractButton::clicked, this, [this, i] { emit chosen(i); });
    column->addWidget(button);
    buttons_.push_back(button);
  }
  column->addStretch(1);
}

void Rail::show_current(size_t place) {
  buttons_.at(place)->setChecked(true);
  for (RailButton* button : buttons_) button->update();
}

void Rail::show_missing(const std::vector<Missing>& missing) {
  for (size_t i = 0; i < places_.size(); ++i) {
    std::optional<Missing> here;
    for (const Missing& gap : missing)
      if (gap.place == places_[i]->place()) here = gap;
    buttons_[i]->show_missing(here);
  }
}

void Rail::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.fillRect(rect(), theme().panel);
  painter.setPen(theme().line);
  painter.drawLine(width() - 1, 0, width() - 1, height());
}

void Rail::keyPressEvent(QKeyEvent* event) {
  const int way = event->key() == Qt::Key_Down ? 1 : event->key() == Qt::Key_Up ? -1 : 0;
  for (size_t i = 0; way != 0 && i < buttons_.size(); ++i) {
    const size_t next = i + static_cast<size_t>(way);
    if (buttons_[i]->hasFocus() && next < buttons_.size()) {
      buttons_[next]->setFocus();
      return;
    }
  }
  QWidget::keyPressEvent(event);
}

}  // namespace cowlcast::projector
