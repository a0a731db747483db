// Rendering: marks in millimetres of the table to a picture for the projector.
//
//   std::vector<Mark> marks = {{.lines = {laid(laying, front.cut_line)}, .closed = true}};
//   QImage frame = rendered(map, marks, laying.height);
//
// Every mark is outlined in millimetres, carried point by point through the
// TableMap, and filled with antialiasing. Guarantees, for points within the
// picture: the edges of a drawn line lie within 0.02 mm of the map's own answer,
// taken by the coverage of pixels. Light itself comes in whole squares: of a
// line one or two pixels wide the middle, as seen, strays by up to 0.08 pixel
// more, and by as much again where the projector darkens half covered pixels.
// What lies outside of the picture, or where the lens cannot reach, is left out.
#pragma once

#include <QImage>
#include <QRect>
#include <QRgb>
#include <optional>
#include <vector>

#include "calibration/table_map/table_map.h"
#include "projector/frame/coverage.h"
#include "projector/frame/stroke.h"

namespace cowlcast::projector {

/// Something to draw in one colour. Lines of one mark never shade each other.
struct Mark {
  std::vector<Polyline> lines = {};  ///< mat mm
  bool closed = false;               ///< each line's last point joins its first
  double width = 1.0;                ///< mm on the cloth; 0: fill the outlines instead
  QRgb colour = 0xffffffff;
};

/// The picture of the map's size on black, marks drawn in order, for the surface
/// `cloth` mm above the mat.
QImage rendered(const calibration::TableMap& map, const std::vector<Mark>& marks, double cloth);

/// Draws frame after frame into one picture: the same picture as `rendered` gives, sooner, since only
/// what the frame before has drawn is cleared.
class FramePainter {
 public:
  /// `border`: with the marks of light at the picture's border that a fixed camera watches, over all else.
  const QImage& draw(const calibration::TableMap& map, const std::vector<Mark>& marks, double cloth,
                     bool border = false);
  const QImage& picture() const { return picture_; }

  /// The rectangles outside of which the last `draw` left every pixel as it was.
  const std::vector<QRect>& changed() const { return changed_; }

 private:
  void note_changed(const std::vector<Coverage::Span>& before);

  QImage picture_;
  std::vector<QRect> changed_;
  bool border_ = false;
  std::optional<Coverage> coverage_;
  std::vector<Coverage::Span> painted_;  // a row each
};

/// How much of a line the picture can show.
struct Reach {
  bool any_inside = false;  ///< some of it is lit
  double outside = 0.0;     ///< how far the farthest point lies outside the lit area, mm; 0: all is inside
};
Reach reach_of(const calibration::TableMap& map, const std::vector<Polyline>& lines, double cloth);

/// The outline of what the picture lights on the surface `cloth` mm above the mat,
/// mat mm, counter-clockwise as the map is; `per_side` points a side.
Polyline lit_outline(const calibration::TableMap& map, double cloth, int per_side = 16);

}  // namespace cowlcast::projector
