#include "projector/workbench/places/table_picture.h"

#include <QPainter>
#include <algorithm>
#include <cmath>
#include <utility>

#include "projector/workbench/look/theme.h"

namespace cowlcast::projector {
namespace {

constexpr double kWide = 1000.0, kHigh = 640.0;  // the drawings' own paper

struct SheetAt {
  double x, y, turn;  // middle and degrees
};
constexpr SheetAt kSheets[] = {{320, 190, -8}, {690, 175, 12}, {300, 390, 6}, {700, 400, -14}};

const QColor kLight(0xff, 0xf4, 0xd0), kMat(0x2e, 0x5a, 0x4a), kPaper(0xff, 0xff, 0xff),
    kInk(0x20, 0x20, 0x20);

/// A sheet about its middle: checks with a cross, a ruler below and one at its side.
void paint_sheet(QPainter& painter, double width, bool rulers) {
  const double height = width / 1.414, square = 0.12 * width;
  painter.setPen(QPen(kInk, 0.006 * width));
  painter.setBrush(kPaper);
  painter.drawRect(QRectF(-0.5 * width, -0.5 * height, width, height));
  painter.setPen(Qt::NoPen);
  painter.setBrush(kInk);
  for (int column = 0; column < 7; ++column)
    for (int row = 0; row < 4; ++row)
      if ((column + row) % 2 == 0)
        painter.drawRect(QRectF((column - 3.5) * square, (row - 2.15) * square, square, square));
  if (!rulers) return;
  const double foot = 2.25 * square, side = 3.75 * square;
  painter.setPen(QPen(theme().handle, 0.012 * width));
  painter.drawLine(QPointF(-3.5 * square, foot), QPointF(3.5 * square, foot));
  painter.drawLine(QPointF(side, -2.0 * square), QPointF(side, 2.0 * square));
  for (int tick = 0; tick <= 24; ++tick) {
    const double share = tick / 24.0, length = tick % 6 == 0 ? 0.25 * square : 0.12 * square;
    const double x = (7.0 * share - 3.5) * square, y = (4.0 * share - 2.0) * square;
    painter.drawLine(QPointF(x, foot), QPointF(x, foot - length));
    painter.drawLine(QPointF(side, y), QPointF(side - length, y));
  }
}

void paint_words(QPainter& painter, const QRectF& where, const QString& words) {
  QFont font = letters(TextSize::large);
  font.setPixelSize(30);
  painter.setFont(font);
  painter.setPen(theme().ink);
  painter.drawText(where, Qt::AlignCenter | Qt::TextWordWrap, words);
}

void paint_table(QPainter& painter, bool target) {
  painter.setPen(QPen(theme().line, 3));
  painter.setBrush(kMat);
  painter.drawRoundedRect(QRectF(90, 50, 820, 480), 14, 14);
  const QPolygonF lit({{170, 95}, {835, 85}, {850, 490}, {155, 482}});
  painter.setPen(QPen(kLight, 4));
  painter.setBrush(QColor(0xff, 0xf4, 0xd0, target ? 60 : 120));
  painter.drawPolygon(lit);
  if (target) {  // the target's squares of light
    painter.setPen(Qt::NoPen);
    painter.setBrush(QColor(0xff, 0xf4, 0xd0, 130));
    for (int column = 0; column < 16; ++column)
      for (int row = 0; row < 9; ++row)
        if ((column + row) % 2 == 0) painter.drawRect(QRectF(185 + 40.0 * column, 108 + 40.0 * row, 40, 40));
  }
  for (const SheetAt& sheet : kSheets) {
    painter.save();
    painter.translate(sheet.x, sheet.y);
    painter.rotate(sheet.turn);
    paint_sheet(painter, 170, false);
    painter.restore();
  }
}

void paint_phone(QPainter& painter, const QPointF& at, double turn) {
  painter.save();
  painter.translate(at);
  painter.rotate(turn);
  painter.setPen(QPen(theme().ink, 4));
  painter.setBrush(theme().panel);
  painter.drawRoundedRect(QRectF(-28, -52, 56, 104), 10, 10);
  painter.setBrush(theme().ink);
  painter.drawEllipse(QPointF(0, -30), 8, 8);
  painter.setPen(QPen(theme().accent, 3, Qt::DashLine));
  painter.drawLine(QPointF(-20, -60), QPointF(-120, -190));
  painter.drawLine(QPointF(20, -60), QPointF(120, -190));
  painter.restore();
}

void paint_step(QPainter& painter, TableStep step) {
  switch (step) {
    case TableStep::print:
      painter.translate(500, 285);
      painter.rotate(-2);
      paint_sheet(painter, 620, true);
      painter.resetTransform();
      return;
    case TableStep::lay:
      paint_table(painter, false);
      return;
    case TableStep::photograph:
      paint_table(painter, true);
      paint_phone(painter, {250, 560}, 24);
      paint_phone(painter, {760, 560}, -24);
      return;
    case TableStep::calibrate:
    case TableStep::check:
    case TableStep::stay:
      paint_table(painter, false);
      return;
  }
}

QString words_of(TableStep step) {
  switch (step) {
    case TableStep::print:
      return TablePicture::tr("Measure both rulers of one sheet, from end tick to end tick.");
    case TableStep::lay:
      return TablePicture::tr(
          "Loose on the mat, flat, towards the corners of the light. You stand at the foot.");
    case TableStep::photograph:
      return TablePicture::tr("From two sides, all sheets in the picture. Nothing may move in between.");
    case TableStep::calibrate:
      return TablePicture::tr("The map of the light will be drawn here, with its error at every place.");
    case TableStep::check:
      return TablePicture::tr("Crosses of light at known distances, for a tape.");
    case TableStep::stay:
      return TablePicture::tr(
          "The camera stands still, and sees the whole light and the tags at the mat's edge.");
  }
  return {};
}

}  // namespace

TablePicture::TablePicture(QWidget* parent) : QWidget(parent) {
  setMinimumSize(420, 300);
}

void TablePicture::show_step(TableStep step) {
  step_ = step;
  setAccessibleName(words_of(step));
  update();
}

void TablePicture::show_photographs(std::vector<PhotographSeen> photographs) {
  photographs_ = std::move(photographs);
  update();
}

void TablePicture::show_result(const QImage& result) {
  result_ = result;
  update();
}

void TablePicture::show_figure(const QImage& figure) {
  figure_ = figure;
  update();
}

void TablePicture::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.setRenderHints(QPainter::Antialiasing | QPainter::SmoothPixmapTransform);
  painter.fillRect(rect(), theme().paper);
  if (step_ == TableStep::photograph && !photographs_.empty()) {
    paint_photographs(painter);
    return;
  }
  const QImage none;
  const QImage& whole = step_ == TableStep::calibrate ? result_ : step_ == TableStep::check ? figure_ : none;
  if (!whole.isNull()) {
    const QSizeF room = QSizeF(width() - grown(40), height() - grown(40));
    const QSizeF size = QSizeF(whole.size()).scaled(room, Qt::KeepAspectRatio);
    painter.drawImage(QRectF(QPointF(0.5 * (width() - size.width()), 0.5 * (height() - size.height())), size),
                      whole);
    return;
  }
  const double scale = std::min(width() / kWide, height() / kHigh);
  QTransform to_widget;
  to_widget.translate(0.5 * (width() - scale * kWide), 0.5 * (height() - scale * kHigh));
  to_widget.scale(scale, scale);
  painter.setTransform(to_widget);
  painter.save();
  paint_step(painter, step_);
  painter.restore();
  painter.setTransform(to_widget);
  if (step_ != TableStep::photograph) paint_words(painter, {60, 555, 880, 80}, words_of(step_));
}

void TablePicture::paint_photographs(QPainter& painter) const {
  const int count = static_cast<int>(photographs_.size());
  const int columns = std::max(1, static_cast<int>(std::ceil(std::sqrt(count * 0.9))));
  const int rows = (count + columns - 1) / columns;
  const double gap = grown(18), label = grown(30);
  const double wide = (width() - gap) / columns - gap, high = (height() - gap) / rows - gap - label;
  painter.setFont(letters(TextSize::plain));
  for (int i = 0; i < count; ++i) {
    const PhotographSeen& one = photographs_[static_cast<size_t>(i)];
    const QRectF place(gap + (i % columns) * (wide + gap), gap + (i / columns) * (high + label + gap), wide,
                       high);
    QRectF shown = place;
    if (!one.picture.isNull()) {
      const QSizeF size = QSizeF(one.picture.size()).scaled(place.size(), Qt::KeepAspectRatio);
      shown = QRectF(place.center() - QPointF(0.5 * size.width(), 0.5 * size.height()), size);
      painter.drawImage(shown, one.picture);
    } else {
      painter.fillRect(place, theme().panel);
    }
    painter.setPen(theme().ink);
    const QRectF below(place.left(), shown.bottom() + 2, place.width(), label);
    painter.drawText(below, Qt::AlignHCenter | Qt::AlignVCenter,
                     painter.fontMetrics().elidedText(one.name, Qt::ElideMiddle, static_cast<int>(wide)));
  }
}

}  // namespace cowlcast::projector
