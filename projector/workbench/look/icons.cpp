#include "projector/workbench/look/icons.h"

#include <QIconEngine>
#include <QPainterPath>
#include <array>

#include "drafting/intake/svg_path.h"
#include "projector/workbench/look/theme.h"

namespace cowlcast::projector {
namespace {

/// On a square of 24 by 24: what is drawn as a line, and what is filled.
struct Outline {
  const char* line;
  const char* fill = "";
};

const std::array<Outline, static_cast<size_t>(Icon::count)>& outlines() {
  static const std::array<Outline, static_cast<size_t>(Icon::count)> all{{
      // a lamp above a mat, its light spreading
      {"M9 3 h6 v3.4 h-6 z M10 6.6 L5.2 16 M14 6.6 L18.8 16 M3.5 16 h17 l1.4 4.6 h-19.8 z M9.2 16 l-1 4.6 "
       "M14.8 16 "
       "l1 4.6"},
      // a half front
      {"M5.5 6 V21 H18 C18 18.5 16.8 17 16.8 14.6 C16.8 13 17.4 12 17.6 10.6 C15.4 10.4 15 8.4 15.6 5 L10.4 "
       "2.8 "
       "C9.6 5 8 6 5.5 6 Z M9.6 17.6 v-6.4 M8.2 12.6 l1.4 -1.6 l1.4 1.6"},
      // three folds hanging between two shoulders
      {"M3 4.6 L8.2 2.8 C9.4 10 14.6 10 15.8 2.8 L21 4.6 M5.6 6.4 C7.6 15.4 16.4 15.4 18.4 6.4 M4 8.6 C6.4 "
       "20.6 "
       "17.6 20.6 20 8.6"},
      // a roll of cloth, its end laid out
      {"M3 7.4 a3.4 3.4 0 1 1 6.8 0 a3.4 3.4 0 1 1 -6.8 0 M6.4 10.8 H20.6 V20.4 H9.8 V7.4 M6.4 4 H17.2 a3.4 "
       "3.4 0 "
       "0 1 3.4 3.4 V10.8 M6.4 7.4 h0.02"},
      // a round blade and its handle
      {"M2.8 15.4 a5.6 5.6 0 1 1 11.2 0 a5.6 5.6 0 1 1 -11.2 0 M12.6 11.6 L18.6 3.6 a1.7 1.7 0 0 1 2.6 2 L14 "
       "15 "
       "M3 21.4 H21",
       "M7.1 15.4 a1.3 1.3 0 1 1 2.6 0 a1.3 1.3 0 1 1 -2.6 0 z"},
      // a needle and its thread
      {"M3.4 20.6 L17 7 M17 7 C16 5 17.6 2.6 19.6 2.6 C21.4 2.6 21.6 4.6 20.4 5.6 C19.4 6.6 18 7 17 7 M19.4 "
       "4.6 "
       "C14 3 8 3.6 7.4 7 C6.8 10.6 12 11 15 12 C18.4 13.2 18.6 16.6 15.4 17.6 C13.4 18.2 11.6 18.4 10.4 "
       "20.6"},
      {"M9 5 L4.4 9.4 L9 13.8 M4.8 9.4 H14 a5.2 5.2 0 0 1 0 10.4 H9.6"},
      {"M15 5 L19.6 9.4 L15 13.8 M19.2 9.4 H10 a5.2 5.2 0 0 0 0 10.4 H14.4"},
      {"M3.4 19.4 V5.4 H9.4 L11.4 8 H19 V11 M3.4 19.4 L6.4 11 H21.4 L18.4 19.4 Z"},
      {"M4.4 4.4 H16.4 L19.6 7.6 V19.6 H4.4 Z M8 4.8 V9.4 H15 V4.8 M7.4 19.4 V13.6 H16.6 V19.4"},
      {"M12 5 V19 M5 12 H19"},
      {"M5 12 H19"},
      {"M4 9 V4 H9 M15 4 H20 V9 M20 15 V20 H15 M9 20 H4 V15"},
      {"M4.6 12.8 L9.8 18 L19.6 6.6"},
      {"M4 12 a8 8 0 1 1 16 0 a8 8 0 1 1 -16 0"},
      {"M12 3.6 L21.6 20 H2.4 Z M12 9.4 V14.6", "M10.8 17 a1.2 1.2 0 1 1 2.4 0 a1.2 1.2 0 1 1 -2.4 0 z"},
      {"", "M7 4.4 L19.4 12 L7 19.6 Z"},
      {"M8.4 5.4 V18.6 M15.6 5.4 V18.6"},
      {"M6 6 L18 18 M18 6 L6 18"},
  }};
  return all;
}

QPainterPath path_of(const char* data) {
  constexpr double fine = 10.0;  // flattened finer than a pixel shows
  QPainterPath path;
  if (*data == '\0') return path;
  for (const drafting::Polyline& line :
       drafting::polylines_from_path(data, Eigen::Affine2d(Eigen::Scaling(fine)))) {
    for (size_t i = 0; i < line.size(); ++i) {
      const QPointF at(line[i].x() / fine, line[i].y() / fine);
      i == 0 ? path.moveTo(at) : path.lineTo(at);
    }
  }
  return path;
}

struct Drawn {
  QPainterPath line, fill;
};

const Drawn& drawn(Icon which) {
  static std::array<Drawn, static_cast<size_t>(Icon::count)> all;
  static std::array<bool, static_cast<size_t>(Icon::count)> known{};
  const size_t i = static_cast<size_t>(which);
  if (!known[i]) {
    all[i] = {path_of(outlines()[i].line), path_of(outlines()[i].fill)};
    known[i] = true;
  }
  return all[i];
}

class Engine : public QIconEngine {
 public:
  explicit Engine(Icon which) : which_(which) {}
  void paint(QPainter* painter, const QRect& rect, QIcon::Mode mode, QIcon::State state) override {
    const QColor ink = state == QIcon::On ? theme().on_accent : theme().ink;
    paint_icon(*painter, rect, which_, mode == QIcon::Disabled ? theme().ghost : ink);
  }
  QPixmap pixmap(const QSize& size, QIcon::Mode mode, QIcon::State state) override {
    QPixmap result(size);
    result.fill(Qt::transparent);
    QPainter painter(&result);
    paint(&painter, QRect(QPoint(0, 0), size), mode, state);
    return result;
  }
  QIconEngine* clone() const override { return new Engine(which_); }

 private:
  Icon which_;
};

}  // namespace

void paint_icon(QPainter& painter, const QRectF& rect, Icon which, const QColor& colour) {
  const double side = std::min(rect.width(), rect.height());
  painter.save();
  painter.setRenderHint(QPainter::Antialiasing);
  painter.translate(rect.center() - QPointF(side / 2, side / 2));
  painter.scale(side / 24.0, side / 24.0);
  painter.setPen(QPen(colour, 1.7, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
  painter.setBrush(Qt::NoBrush);
  painter.drawPath(drawn(which).line);
  painter.setPen(Qt::NoPen);
  painter.setBrush(colour);
  painter.drawPath(drawn(which).fill);
  painter.restore();
}

QIcon icon(Icon which) {
  return QIcon(new Engine(which));  // the icon takes it
}

}  // namespace cowlcast::projector
