#include "projector/project/thumbnail.h"

#include <QBuffer>
#include <QPainter>
#include <QPainterPath>
#include <algorithm>

#include "drafting/geometry/polyline.h"

namespace cowlcast::projector {
namespace {

constexpr QRgb kFill = 0xff9fb7c9, kLine = 0xff25384a;

QPainterPath path_of(const Polyline& line, const QTransform& picture_from_piece, bool closed) {
  QPolygonF polygon;
  for (const Point& point : line) polygon << picture_from_piece.map(QPointF(point.x(), point.y()));
  QPainterPath path;
  path.addPolygon(polygon);
  if (closed) path.closeSubpath();
  return path;
}

}  // namespace

QImage thumbnail(const Garment& garment, int size) {
  QImage picture(size, size, QImage::Format_ARGB32_Premultiplied);
  picture.fill(Qt::transparent);
  const drafting::Piece* half = garment.cowl          ? &garment.cowl->front
                                : garment.bases.front ? &*garment.bases.front
                                                      : nullptr;
  if (half == nullptr) return picture;
  const drafting::Piece whole = drafting::unfolded(*half);
  const drafting::Box box = drafting::box_of(whole.seam_line);
  const double scale = 0.9 * size / std::max(box.width(), box.height());
  const Point middle = 0.5 * (box.low + box.high);
  QTransform picture_from_piece;
  picture_from_piece.translate(0.5 * size, 0.5 * size);
  picture_from_piece.scale(scale, -scale);
  picture_from_piece.translate(-middle.x(), -middle.y());

  QPainter painter(&picture);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(QPen(QColor(kLine), std::max(1.0, size / 80.0), Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
  painter.setBrush(QColor(kFill));
  painter.drawPath(path_of(whole.seam_line, picture_from_piece, true));
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(QColor(kLine), std::max(1.0, size / 160.0), Qt::DashLine));
  for (const drafting::Edge& edge : whole.edges)
    if (edge.role == "cowl-edge") painter.drawPath(path_of(edge.points, picture_from_piece, false));
  return picture;
}

QByteArray thumbnail_png(const Garment& garment, int size) {
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  thumbnail(garment, size).save(&buffer, "PNG");
  return bytes;
}

}  // namespace cowlcast::projector
