// Icons, drawn from this program's own outlines in the colour that is asked for.
//
//   paint_icon(painter, rect, Icon::cowl, theme().ink);
//   button->setIcon(icon(Icon::undo));
#pragma once

#include <QIcon>
#include <QPainter>

namespace cowlcast::projector {

enum class Icon {
  table,
  pattern,
  cowl,
  cloth,
  cutting,
  sewing,
  undo,
  redo,
  open,
  save,
  plus,
  minus,
  fit,
  done,
  missing,
  caution,
  play,
  pause,
  put_away,
  count  ///< how many there are
};

void paint_icon(QPainter& painter, const QRectF& rect, Icon which, const QColor& colour);

/// In the ink of the theme in use, sharp at any density.
QIcon icon(Icon which);

}  // namespace cowlcast::projector
