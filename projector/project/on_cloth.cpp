#include "projector/project/on_cloth.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <optional>

#include "drafting/geometry/motion.h"
#include "drafting/geometry/polyline.h"
#include "drafting/refusal.h"
#include "projector/language/said.h"

namespace cowlcast::projector {
namespace {

using drafting::Box;
using drafting::Motion;
using drafting::Piece;

constexpr double between = 20.0;       // mm, from piece to piece
constexpr double widest_cloth = 5000;  // mm, that drafting takes

QString tr(const char* text) {
  return QCoreApplication::translate("on_cloth", text);
}

/// Unfolded, its grain upwards, its middle on x = 0 and its foot on y = 0.
LaidOut whole(const Piece& half) {
  const Piece piece = drafting::unfolded(half);
  Motion motion = Motion::Identity();
  if (piece.grain) {
    const Point way = piece.grain->to - piece.grain->from;
    motion = drafting::turn_about({0, 0}, std::numbers::pi / 2.0 - std::atan2(way.y(), way.x()));
  }
  const Box box = drafting::box_of(drafting::moved(motion, piece.cut_line));
  motion = Eigen::Translation2d(Point(-0.5 * (box.low.x() + box.high.x()), -box.low.y())) * motion;
  LaidOut out;
  out.name = piece.name;
  out.cut_line = drafting::moved(motion, piece.cut_line);
  out.seam_line = drafting::moved(motion, piece.seam_line);
  if (piece.grain) out.grain = drafting::moved(motion, {piece.grain->from, piece.grain->to});
  out.width = box.width();
  out.length = box.height();
  return out;
}

void shift(LaidOut& one, const Point& by) {
  for (Polyline* line : {&one.cut_line, &one.seam_line, &one.grain})
    for (Point& p : *line) p += by;
}

/// Across the cloth, without unfolding it: asked at every change.
double width_across(const Piece& half) {
  const Point along = half.grain ? Point((half.grain->to - half.grain->from).normalized()) : Point(0.0, 1.0);
  const Point across(along.y(), -along.x());
  const std::optional<drafting::Segment>& fold = half.fold ? half.fold : half.mirror;
  double least = std::numeric_limits<double>::infinity(), most = -least;
  const auto take = [&](const Point& p) {
    least = std::min(least, across.dot(p));
    most = std::max(most, across.dot(p));
  };
  for (const Point& p : half.cut_line) {
    take(p);
    if (!fold) continue;
    const Point way = (fold->to - fold->from).normalized(), from = p - fold->from;
    take(fold->from + 2.0 * way.dot(from) * way - from);
  }
  return most - least;
}

/// Words for the piece that is wider than the cloth; empty for others.
std::string wider(const Piece& piece, double cloth_width) {
  const double width = width_across(piece);
  if (width <= cloth_width) return {};
  const auto mm = [](double length) { return QString::number(length, 'f', 1) + QStringLiteral(" mm"); };
  return tr("The %1 is %2 across, the cloth only %3. Take wider cloth, or make the piece narrower.")
      .arg(said(QString::fromStdString(piece.name)), mm(width), mm(cloth_width))
      .toStdString();
}

/// The front as it would be on cloth of any width; none when it is refused for something else.
std::optional<Piece> front_on_wide_cloth(const Project& project, const Garment& garment) {
  if (garment.cowl || !garment.bases.front || garment.refusal.empty()) return std::nullopt;
  drafting::CowlWishes wishes = cowl_wishes_of(project);
  wishes.cloth_width = widest_cloth;
  try {
    return drafting::draft_cowl_front(*garment.bases.front, wishes).front;
  } catch (const drafting::Refusal&) {
    return std::nullopt;
  }
}

}  // namespace

ClothUse on_cloth(const std::vector<Piece>& pieces, double cloth_width) {
  ClothUse use;
  std::vector<LaidOut> row;
  double across = 0.0;  // of the row
  const auto end_row = [&] {
    double x = -0.5 * across, tallest = 0.0;
    for (LaidOut& one : row) {
      shift(one, {x + 0.5 * one.width, use.length + between});
      x += one.width + between;
      tallest = std::max(tallest, one.length);
      use.pieces.push_back(std::move(one));
    }
    if (!row.empty()) use.length += tallest + between;
    row.clear();
    across = 0.0;
  };
  for (const Piece& piece : pieces) {
    LaidOut one = whole(piece);
    one.fits = one.width <= cloth_width;
    if (!row.empty() && across + between + one.width > cloth_width) end_row();
    across += (row.empty() ? 0.0 : between) + one.width;
    row.push_back(std::move(one));
  }
  end_row();
  if (!use.pieces.empty()) use.length += between;
  return use;
}

std::string too_wide_for_cloth(const Project& project, const Garment& garment) {
  for (const Piece& piece : garment.pieces)
    if (const std::string words = wider(piece, project.cloth.width); !words.empty()) return words;
  const auto front = front_on_wide_cloth(project, garment);
  return front ? wider(*front, project.cloth.width) : std::string();
}

}  // namespace cowlcast::projector
