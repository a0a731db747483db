// WorkbenchStyle: how buttons, fields and sliders are drawn.
//
// Large enough for a finger or a tired hand, with a ring around what has the
// keyboard. A button with the property `primary` set is the one to press next.
#pragma once

#include <QProxyStyle>

namespace cowlcast::projector {

class WorkbenchStyle : public QProxyStyle {
  Q_OBJECT

 public:
  WorkbenchStyle();
  int pixelMetric(PixelMetric metric, const QStyleOption* option, const QWidget* widget) const override;
  int styleHint(StyleHint hint, const QStyleOption* option, const QWidget* widget,
                QStyleHintReturn* data) const override;
  QSize sizeFromContents(ContentsType type, const QStyleOption* option, const QSize& size,
                         const QWidget* widget) const override;
  QRect subControlRect(ComplexControl control, const QStyleOptionComplex* option, SubControl part,
                       const QWidget* widget) const override;
  void drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                     const QWidget* widget) const override;
  void drawControl(ControlElement element, const QStyleOption* option, QPainter* painter,
                   const QWidget* widget) const override;
  void drawComplexControl(ComplexControl control, const QStyleOptionComplex* option, QPainter* painter,
                          const QWidget* widget) const override;
};

}  // namespace cowlcast::projector
