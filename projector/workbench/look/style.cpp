#include "projector/workbench/look/style.h"

#include <QAbstractButton>
#include <QPainter>
#include <QPainterPath>
#include <QStyleOption>
#include <QWidget>
#include <algorithm>

#include "projector/workbench/look/theme.h"

namespace cowlcast::projector {
namespace {

constexpr double corner = 8.0;

struct Box {
  QColor fill, frame;
  double width = 1.0;
};

void draw_box(QPainter& painter, const QRectF& rect, const Box& box, bool focused) {
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  const double width = focused ? 3.0 : box.width;
  const QRectF inner = rect.adjusted(width / 2, width / 2, -width / 2, -width / 2);
  painter.setBrush(box.fill);
  painter.setPen(QPen(focused ? theme().accent : box.frame, width));
  painter.drawRoundedRect(inner, corner, corner);
  painter.restore();
}

bool is_primary(const QWidget* widget) {
  return widget != nullptr && widget->property("primary").toBool();
}

bool has(const QStyleOption* option, QStyle::StateFlag flag) {
  return (option->state & flag) != 0;
}

bool filled(const QStyleOption* option, const QWidget* widget) {
  return has(option, QStyle::State_Enabled) && (is_primary(widget) || has(option, QStyle::State_On));
}

void draw_button(const QStyleOption* option, QPainter& painter, const QWidget* widget) {
  const Theme& t = theme();
  Box box{t.field, t.quiet};
  if (!has(option, QStyle::State_Enabled)) box = {t.panel, t.line};
  if (filled(option, widget)) box = {t.accent, t.accent};
  if (has(option, QStyle::State_MouseOver) && has(option, QStyle::State_Enabled))
    box.fill = filled(option, widget) ? t.accent : t.tint;
  if (has(option, QStyle::State_Sunken) && !filled(option, widget)) box.fill = t.tint;
  draw_box(painter, option->rect, box, false);
  if (has(option, QStyle::State_HasFocus)) {
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    const QColor ring = filled(option, widget) ? t.on_accent : t.accent;
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(ring, 2.0));
    painter.drawRoundedRect(QRectF(option->rect).adjusted(3, 3, -3, -3), corner - 3, corner - 3);
    painter.restore();
  }
}

void draw_field(const QStyleOption* option, QPainter& painter) {
  const Theme& t = theme();
  draw_box(painter, option->rect, {has(option, QStyle::State_Enabled) ? t.field : t.panel, t.quiet},
           has(option, QStyle::State_HasFocus));
}

void draw_indicator(const QStyleOption* option, QPainter& painter, bool round) {
  const Theme& t = theme();
  const bool on = has(option, QStyle::State_On);
  const QRectF rect = QRectF(option->rect).adjusted(1, 1, -1, -1);
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(QPen(on ? t.accent : t.quiet, 2.0));
  painter.setBrush(on ? t.accent : t.field);
  const double radius = round ? rect.height() / 2 : 5.0;
  painter.drawRoundedRect(rect, radius, radius);
  if (on && round) {
    painter.setPen(Qt::NoPen);
    painter.setBrush(t.on_accent);
    painter.drawEllipse(rect.center(), rect.width() * 0.22, rect.height() * 0.22);
  } else if (on) {
    painter.setPen(QPen(t.on_accent, 2.6, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    const auto at = [&rect](double x, double y) {
      return QPointF(rect.left() + x * rect.width(), rect.top() + y * rect.height());
    };
    painter.drawPolyline(QPolygonF{at(0.22, 0.53), at(0.42, 0.73), at(0.79, 0.29)});
  }
  painter.restore();
}

/// A minus, a plus or a downward hook in the middle of a rectangle.
void draw_sign(QPainter& painter, const QRectF& rect, char sign, const QColor& colour) {
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(QPen(colour, 2.2, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
  const QPointF c = rect.center();
  const double r = 6.0;
  if (sign == 'v') {
    painter.drawPolyline(QPolygonF{c + QPointF(-r, -r / 2), c + QPointF(0, r / 2), c + QPointF(r, -r / 2)});
  } else {
    painter.drawLine(c + QPointF(-r, 0), c + QPointF(r, 0));
    if (sign == '+') painter.drawLine(c + QPointF(0, -r), c + QPointF(0, r));
  }
  painter.restore();
}

void draw_slider(const QStyleOptionSlider* option, QPainter& painter, const QRect& handle) {
  const Theme& t = theme();
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  const double y = QRectF(option->rect).center().y();
  const double x = QRectF(handle).center().x();
  painter.setPen(QPen(t.quiet, 4.0, Qt::SolidLine, Qt::RoundCap));
  painter.drawLine(QPointF(option->rect.left() + 6, y), QPointF(option->rect.right() - 6, y));
  painter.setPen(QPen(t.accent, 6.0, Qt::SolidLine, Qt::RoundCap));
  painter.drawLine(QPointF(option->rect.left() + 6, y), QPointF(x, y));
  painter.setPen(QPen(t.field, 2.0));
  painter.setBrush(t.accent);
  painter.drawEllipse(QPointF(x, y), 11.0, 11.0);
  if (has(option, QStyle::State_HasFocus)) {
    painter.setPen(QPen(t.on_accent, 2.0));
    painter.setBrush(Qt::NoBrush);
    painter.drawEllipse(QPointF(x, y), 6.0, 6.0);
  }
  painter.restore();
}

void draw_scroll_bar(const QStyleOptionSlider* option, QPainter& painter, const QRect& handle) {
  painter.fillRect(option->rect, theme().panel);
  if (option->minimum >= option->maximum) return;
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(Qt::NoPen);
  painter.setBrush(has(option, QStyle::State_MouseOver) ? theme().quiet : theme().ghost);
  painter.drawRoundedRect(QRectF(handle).adjusted(3, 3, -3, -3), 4, 4);
  painter.restore();
}

}  // namespace

WorkbenchStyle::WorkbenchStyle() : QProxyStyle(QStringLiteral("Fusion")) {}

int WorkbenchStyle::pixelMetric(PixelMetric metric, const QStyleOption* option, const QWidget* widget) const {
  switch (metric) {
    case PM_IndicatorWidth:
    case PM_IndicatorHeight:
    case PM_ExclusiveIndicatorWidth:
    case PM_ExclusiveIndicatorHeight:
      return grown(24);
    case PM_CheckBoxLabelSpacing:
    case PM_RadioButtonLabelSpacing:
      return grown(10);
    case PM_ScrollBarExtent:
      return 14;
    case PM_SliderThickness:
    case PM_SliderControlThickness:
      return 30;
    case PM_SliderLength:
      return 24;
    case PM_ButtonShiftHorizontal:
    case PM_ButtonShiftVertical:
      return 0;
    case PM_SmallIconSize:
    case PM_ButtonIconSize:
      return grown(22);
    default:
      return QProxyStyle::pixelMetric(metric, option, widget);
  }
}

int WorkbenchStyle::styleHint(StyleHint hint, const QStyleOption* option, const QWidget* widget,
                              QStyleHintReturn* data) const {
  if (hint == SH_ComboBox_Popup) return 0;
  if (hint == SH_UnderlineShortcut || hint == SH_Slider_AbsoluteSetButtons)
    return hint == SH_UnderlineShortcut ? 1 : int(Qt::LeftButton);
  if (hint == SH_ToolTip_WakeUpDelay) return 450;
  return QProxyStyle::styleHint(hint, option, widget, data);
}

QSize WorkbenchStyle::sizeFromContents(ContentsType type, const QStyleOption* option, const QSize& size,
                                       const QWidget* widget) const {
  QSize result = QProxyStyle::sizeFromContents(type, option, size, widget);
  const int tall = grown(42);
  switch (type) {
    case CT_PushButton:
      return {result.width() + grown(16), std::max(result.height(), tall)};
    case CT_LineEdit:
    case CT_ComboBox:
      return {result.width(), std::max(result.height(), tall)};
    case CT_SpinBox:
      return {size.width() + 2 * grown(40) + 12, std::max(result.height(), tall)};
    case CT_CheckBox:
    case CT_RadioButton:
      return {result.width(), std::max(result.height(), grown(34))};
    case CT_MenuItem:
      return {result.width() + 12, std::max(result.height(), grown(32))};
    case CT_MenuBarItem:
      return {result.width() + 4, std::max(result.height(), grown(34))};
    default:
      return result;
  }
}

QRect WorkbenchStyle::subControlRect(ComplexControl control, const QStyleOptionComplex* option,
                                     SubControl part, const QWidget* widget) const {
  const QRect all = option->rect;
  const int button = grown(40);
  if (control == CC_SpinBox) {
    if (part == SC_SpinBoxUp) return {all.right() - button + 1, all.top(), button, all.height()};
    if (part == SC_SpinBoxDown) return {all.right() - 2 * button + 1, all.top(), button, all.height()};
    if (part == SC_SpinBoxEditField) return all.adjusted(10, 3, -2 * button - 2, -3);
    return all;
  }
  if (control == CC_ComboBox) {
    if (part == SC_ComboBoxArrow) return {all.right() - button + 1, all.top(), button, all.height()};
    if (part == SC_ComboBoxEditField) return all.adjusted(12, 3, -button, -3);
  }
  if (control == CC_ScrollBar) {  // no arrows at its ends
    if (part == SC_ScrollBarAddLine || part == SC_ScrollBarSubLine) return {};
    const auto* bar = qstyleoption_cast<const QStyleOptionSlider*>(option);
    if (part == SC_ScrollBarGroove) return all;
    if (bar != nullptr && part == SC_ScrollBarSlider) {
      const bool across = bar->orientation == Qt::Horizontal;
      const int room = across ? all.width() : all.height();
      const int range = bar->maximum - bar->minimum;
      const int size = range <= 0 ? room : std::max(32, room * bar->pageStep / (range + bar->pageStep));
      const int at = sliderPositionFromValue(bar->minimum, bar->maximum, bar->sliderPosition, room - size,
                                             bar->upsideDown);
      return across ? QRect(all.left() + at, all.top(), size, all.height())
                    : QRect(all.left(), all.top() + at, all.width(), size);
    }
  }
  return QProxyStyle::subControlRect(control, option, part, widget);
}

void WorkbenchStyle::drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                                   const QWidget* widget) const {
  switch (element) {
    case PE_PanelButtonCommand:
    case PE_PanelButtonTool:
      draw_button(option, *painter, widget);
      return;
    case PE_PanelLineEdit:
    case PE_FrameLineEdit: {
      const auto* frame = qstyleoption_cast<const QStyleOptionFrame*>(option);
      if (frame == nullptr || frame->lineWidth > 0) draw_field(option, *painter);  // none within a spin box
      return;
    }
    case PE_IndicatorCheckBox:
      draw_indicator(option, *painter, false);
      return;
    case PE_IndicatorRadioButton:
      draw_indicator(option, *painter, true);
      return;
    case PE_FrameFocusRect: {
      painter->save();
      painter->setRenderHint(QPainter::Antialiasing);
      painter->setPen(QPen(theme().accent, 2.0));
      painter->setBrush(Qt::NoBrush);
      painter->drawRoundedRect(QRectF(option->rect).adjusted(1, 1, -1, -1), 5, 5);
      painter->restore();
      return;
    }
    case PE_FrameDefaultButton:
      return;
    default:
      QProxyStyle::drawPrimitive(element, option, painter, widget);
  }
}

void WorkbenchStyle::drawControl(ControlElement element, const QStyleOption* option, QPainter* painter,
                                 const QWidget* widget) const {
  if (element == CE_PushButtonLabel) {
    if (const auto* button = qstyleoption_cast<const QStyleOptionButton*>(option)) {
      QStyleOptionButton copy = *button;
      if (filled(option, widget)) copy.palette.setColor(QPalette::ButtonText, theme().on_accent);
      copy.state &= ~QStyle::State_HasFocus;
      QProxyStyle::drawControl(element, &copy, painter, widget);
      return;
    }
  }
  if (element == CE_PushButton) {
    if (const auto* button = qstyleoption_cast<const QStyleOptionButton*>(option)) {
      drawPrimitive(PE_PanelButtonCommand, button, painter, widget);
      drawControl(CE_PushButtonLabel, button, painter, widget);
      return;
    }
  }
  QProxyStyle::drawControl(element, option, painter, widget);
}

void WorkbenchStyle::drawComplexControl(ComplexControl control, const QStyleOptionComplex* option,
                                        QPainter* painter, const QWidget* widget) const {
  const Theme& t = theme();
  if (control == CC_SpinBox) {
    draw_field(option, *painter);
    const auto* spin = qstyleoption_cast<const QStyleOptionSpinBox*>(option);
    for (const SubControl part : {SC_SpinBoxUp, SC_SpinBoxDown}) {
      const QRect rect = subControlRect(control, option, part, widget);
      const bool works =
          spin != nullptr &&
          (spin->stepEnabled &
           (part == SC_SpinBoxUp ? QAbstractSpinBox::StepUpEnabled : QAbstractSpinBox::StepDownEnabled)) != 0;
      if (option->activeSubControls == part && works) painter->fillRect(rect.adjusted(4, 4, -4, -4), t.tint);
      draw_sign(*painter, rect, part == SC_SpinBoxUp ? '+' : '-', works ? t.ink : t.line);
    }
    return;
  }
  if (control == CC_ComboBox) {
    draw_field(option, *painter);
    draw_sign(*painter, subControlRect(control, option, SC_ComboBoxArrow, widget), 'v', t.ink);
    return;
  }
  if (const auto* slider = qstyleoption_cast<const QStyleOptionSlider*>(option)) {
    if (control == CC_Slider && slider->orientation == Qt::Horizontal) {
      draw_slider(slider, *painter, subControlRect(control, option, SC_SliderHandle, widget));
      return;
    }
    if (control == CC_ScrollBar) {
      draw_scroll_bar(slider, *painter, subControlRect(control, option, SC_ScrollBarSlider, widget));
      return;
    }
  }
  QProxyStyle::drawComplexControl(control, option, painter, widget);
}

}  // namespace cowlcast::projector
