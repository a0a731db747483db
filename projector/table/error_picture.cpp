#include "projector/table/error_picture.h"

#include <QCoreApplication>
#include <QPainter>
#include <QPainterPath>
#include <algorithm>
#include <array>
#include <cmath>

#include "calibration/words.h"

namespace cowlcast::projector {
namespace {

constexpr int kWidth = 1400, kMargin = 70, kHead = 110, kFoot = 110;  // pixels
constexpr double kCell = 100.0;                                       // mm

struct Band {
  double below;  // mm
  QRgb colour;
  QRgb ink;
};

// From light to dark, so that they tell apart without colour too.
constexpr std::array<Band, 6> kBands = {{{0.15, 0xfff2f6e8, 0xff20302c},
                                         {0.25, 0xffcfe5cf, 0xff20302c},
                                         {0.35, 0xff98c9bd, 0xff20302c},
                                         {0.5, 0xff4f9fa6, 0xff08201f},
                                         {1.0, 0xff2b5f86, 0xfff4f4ee},
                                         {1e300, 0xff4a1f3d, 0xfff4f4ee}}};

const Band& band_of(double mm) {
  for (const Band& band : kBands)
    if (mm < band.below) return band;
  return kBands.back();
}

QString tr(const char* text) {
  return QCoreApplication::translate("error picture", text);
}

QString number(double value, int digits) {
  return QString::fromStdString(calibration::fixed(value, digits));
}

}  // namespace

QImage error_picture(const calibration::TableMap& map, double cloth) {
  Eigen::AlignedBox2d box;
  for (const Eigen::Vector2d& p : map.lit_area) box.extend(p);
  const double scale = (kWidth - 2 * kMargin) / box.sizes().x();  // pixels to a mm
  const int height = kHead + kFoot + static_cast<int>(std::ceil(box.sizes().y() * scale));
  const auto at = [&](const Eigen::Vector2d& mat) {
    return QPointF(kMargin + (mat.x() - box.min().x()) * scale, kHead + (box.max().y() - mat.y()) * scale);
  };

  QImage picture(kWidth, height, QImage::Format_RGB32);
  picture.fill(0xfffbfaf5);
  QPainter painter(&picture);
  painter.setRenderHint(QPainter::Antialiasing);
  QPainterPath lit;
  QPolygonF outline;
  for (const Eigen::Vector2d& p : map.lit_area) outline << at(p);
  lit.addPolygon(outline);
  lit.closeSubpath();

  QFont font;
  font.setPixelSize(std::max(13, static_cast<int>(0.3 * kCell * scale)));
  painter.setFont(font);
  painter.setClipPath(lit);
  // Cells of about 10 cm that divide the light evenly, so that its rim has numbers too.
  const int columns = std::max(1, static_cast<int>(std::lround(box.sizes().x() / kCell))),
            rows = std::max(1, static_cast<int>(std::lround(box.sizes().y() / kCell)));
  const Eigen::Vector2d size = box.sizes().cwiseQuotient(Eigen::Vector2d(columns, rows));
  for (int row = 0; row < rows; ++row)
    for (int column = 0; column < columns; ++column) {
      const Eigen::Vector2d low = box.min() + size.cwiseProduct(Eigen::Vector2d(column, row));
      const double mm = map.error_at(low + 0.5 * size, cloth);
      const QRectF cell(at({low.x(), low.y() + size.y()}), at({low.x() + size.x(), low.y()}));
      painter.setClipping(true);
      painter.fillRect(cell.adjusted(0.5, 0.5, -0.5, -0.5), QColor(band_of(mm).colour));
      if (!lit.contains(cell.center())) continue;
      painter.setClipping(false);  // a number by the slanting rim stays whole
      painter.setPen(QColor(band_of(mm).ink));
      painter.drawText(cell, Qt::AlignCenter, number(mm, 2));
    }
  painter.setClipping(false);
  painter.setPen(QPen(QColor(0xff20302c), 2.0));
  painter.drawPath(lit);

  font.setPixelSize(30);
  font.setBold(true);
  painter.setFont(font);
  painter.drawText(QRectF(kMargin, 18, kWidth - 2 * kMargin, 40), Qt::AlignLeft | Qt::AlignVCenter,
                   tr("How far a line may lie from true, mm"));
  font.setPixelSize(20);
  font.setBold(false);
  painter.setFont(font);
  QString below = tr("95 times in 100 it is nearer than this. A cell is about 10 cm; you stand at the foot.");
  if (cloth > 0.0) below += tr(" On cloth %1 mm thick.").arg(number(cloth, 1));
  painter.drawText(QRectF(kMargin, 60, kWidth - 2 * kMargin, 30), Qt::AlignLeft | Qt::AlignVCenter, below);

  const double step = (kWidth - 2.0 * kMargin) / static_cast<double>(kBands.size());
  for (size_t i = 0; i < kBands.size(); ++i) {
    const QRectF key(kMargin + static_cast<double>(i) * step, height - kFoot + 40, step, 36);
    painter.fillRect(key, QColor(kBands[i].colour));
    painter.setPen(QColor(kBands[i].ink));
    painter.drawText(key, Qt::AlignCenter,
                     i + 1 < kBands.size() ? tr("under %1").arg(number(kBands[i].below, 2))
                                           : tr("%1 and more").arg(number(kBands[i - 1].below, 2)));
  }
  return picture;
}

}  // namespace cowlcast::projector
