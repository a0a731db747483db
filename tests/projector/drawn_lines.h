// How true the drawn lines, stop marks and bands are: rendered by the true map, thrown by the simulated
// projector, and read back from the cloth with a ruler's eye.
#pragma once

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include "calibration/virtual_table/read_back.h"
#include "drafting/geometry/polyline.h"
#include "projector/blade/blade_marks.h"
#include "projector/frame/piece_marks.h"
#include "tests/projector/true_table.h"

namespace cowlcast::projector::testing {

/// Distances from true, mm.
struct Strays {
  std::vector<double> mm;
  int missing = 0;

  void add(const room_model::ReadBack& back) {
    for (const room_model::LineSample& sample : back.samples)
      if (sample.state == room_model::LineSample::State::measured) mm.push_back(std::abs(sample.offset));
    missing += back.missing;
  }
  double share(double of) {
    if (mm.empty()) return 1e9;
    std::sort(mm.begin(), mm.end());
    return mm[static_cast<size_t>(std::ceil(of * static_cast<double>(mm.size()))) - 1];
  }
  double worst() { return share(1.0); }
};

struct Drawn {
  Strays lines, stops, bands;
};

/// Draws and reads back on one table.
class DrawnLines {
 public:
  DrawnLines(const TrueTable& table, double cloth, double spacing)
      : table_(table), cloth_(cloth), spacing_(spacing) {}

  /// The lines of a piece in the middle of the light, turned by `angle`.
  void lines_of(const drafting::Piece& piece, double angle, Drawn& drawn) const {
    const Laying laying = lain(piece, angle);
    const Shown nothing{false, false, false, false, false, false, false, false};
    const auto frame_of = [&](bool Shown::*part) {
      Shown one = nothing;
      one.*part = true;
      return rendered(table_.map, piece_drawing(piece, laying, FrameStyle{}, one).marks, cloth_);
    };
    const auto read = [&](const QImage& frame, const Polyline& line, double clearance,
                          const std::vector<Polyline>& others = {}) {
      room_model::ReadBackOptions options{.height = cloth_, .spacing = spacing_};
      options.clearance = clearance;
      for (const Polyline& other : others) options.others.push_back(laid(laying, other));
      return room_model::read_back(table_.room.projector, grey(frame), laid(laying, line), options);
    };
    const QImage cut = frame_of(&Shown::cut_line);
    for (const Polyline& run : cut_runs(piece)) drawn.lines.add(read(cut, run, 4.0));
    // Dashed: what lies between the dashes is no missing line, and another line there is not this one.
    const int missing = drawn.lines.missing;
    const QImage seams = frame_of(&Shown::seam_line), grain = frame_of(&Shown::grain),
                 folds = frame_of(&Shown::fold), notches = frame_of(&Shown::notches);
    for (const drafting::Edge& edge : piece.edges) {
      std::vector<Polyline> others;
      for (const drafting::Edge& other : piece.edges)
        if (other.role != "cowl-edge" && other.points != edge.points) others.push_back(other.points);
      if (edge.role == "cowl-edge") {
        others.clear();
        for (const Point& tick : ticks_of(edge)) others.push_back({tick, tick + Point(1e-3, 0)});
        if (piece.fold) others.push_back({piece.fold->from, piece.fold->to});
        drawn.lines.add(read(folds, edge.points, 6.0, others));
      } else {
        drawn.lines.add(read(seams, edge.points, 6.0, others));
      }
    }
    if (piece.grain) drawn.lines.add(read(grain, {piece.grain->from, piece.grain->to}, 12.0));
    for (const drafting::Notch& notch : piece.notches) {
      if ((notch.seam - notch.cut).norm() < 0.1 || notch.ticks != 1) continue;
      const Point way = (notch.seam - notch.cut).normalized();
      drawn.lines.add(read(notches, {notch.cut, notch.cut + 8.0 * way}, 2.5));
    }
    drawn.lines.missing = missing;
  }

  /// Stop marks and bands of a piece's strokes: a bar stands half the blade's chord before its corner, a
  /// band's outer edge stands its whole distance off the path.
  void marks_of(const drafting::Piece& piece, double angle, const Blade& blade, Drawn& drawn) const {
    const Laying laying = lain(piece, angle);
    const double depth = blade.cloth + blade.into_mat;
    const double ahead = std::sqrt(blade.diameter * depth - depth * depth);
    for (const Cut& cut : ordered_cuts(cuts_of(cut_runs(piece), blade, {}), laying, {})) {
      const Polyline path = laid(laying, cut.path);
      const double whole = drafting::length(path);
      if (cut.end == CutEnd::inner && whole > 2.0 * ahead) stop(cut, laying, path, whole - ahead, drawn);
      if (cut.start == CutEnd::inner && whole > 2.0 * ahead) stop(cut, laying, path, ahead, drawn);
      if (whole > 60.0) band(cut, laying, path, drawn);
    }
  }

 private:
  // The middles of the gaps in a turned edge, where its ticks stand.
  static Polyline ticks_of(const drafting::Edge& edge) {
    Polyline ticks;
    const std::vector<Polyline> parts = dashes({edge.points.front(), edge.points.back()}, false, 22.0, 6.0);
    for (size_t i = 1; i < parts.size(); ++i) ticks.push_back(0.5 * (parts[i - 1].back() + parts[i].front()));
    return ticks;
  }

  Laying lain(const drafting::Piece& piece, double angle) const {
    const Polyline lit = lit_outline(table_.map, cloth_);
    const drafting::Box box = drafting::box_of(lit);
    return turned_about(in_the_middle(lit, piece, cloth_), 0.5 * (box.low + box.high), angle);
  }

  static cv::Mat grey(const QImage& frame) {
    const QImage bytes = frame.convertToFormat(QImage::Format_Grayscale8);
    return cv::Mat(bytes.height(), bytes.width(), CV_8U, const_cast<uchar*>(bytes.constBits()),
                   static_cast<size_t>(bytes.bytesPerLine()))
        .clone();
  }

  void stop(const Cut& cut, const Laying& laying, const Polyline& path, double along, Drawn& drawn) const {
    BladeOverlay overlay;
    overlay.band = overlay.arrows = false;
    const QImage frame =
        rendered(table_.map, blade_drawing(cut, laying, FrameStyle{}, overlay).marks, cloth_);
    const Point at = drafting::point_at(path, along);
    const Point way =
        (drafting::point_at(path, along + 0.5) - drafting::point_at(path, along - 0.5)).normalized();
    const Point off(-way.y(), way.x());
    room_model::ReadBackOptions options{.height = cloth_, .spacing = 1.0};
    drawn.stops.add(room_model::read_back(table_.room.projector, grey(frame),
                                          {at - 10.0 * off, at + 10.0 * off}, options));
  }

  void band(const Cut& cut, const Laying& laying, const Polyline& path, Drawn& drawn) const {
    BladeOverlay overlay;
    overlay.arrows = overlay.stops = false;
    const Drawing drawing = blade_drawing(cut, laying, FrameStyle{}, overlay);
    const QImage frame = rendered(table_.map, {drawing.marks.back()}, cloth_);  // without the hatching
    const double whole = drafting::length(path), far = overlay.band_from + overlay.band_width;
    Polyline edge;
    for (double along = 2.0; along < whole - 2.0; along += 0.5) {
      const Point way =
          (drafting::point_at(path, along + 1.5) - drafting::point_at(path, along - 1.5)).normalized();
      edge.push_back(drafting::point_at(path, along) + far * Point(-way.y(), way.x()));
    }
    room_model::ReadBackOptions options{.height = cloth_, .spacing = 2.0};
    options.corner_angle = 3.0;
    const room_model::ReadBack back =
        room_model::read_back(table_.room.projector, grey(frame), edge, options);
    for (size_t i = 0; i < back.samples.size(); ++i) {
      const room_model::LineSample& sample = back.samples[i];
      if (sample.state != room_model::LineSample::State::measured) continue;
      const Point& before = back.samples[i > 0 ? i - 1 : i].place;
      const Point& after = back.samples[std::min(i + 1, back.samples.size() - 1)].place;
      const Point way = (after - before).normalized();
      const Point seen = sample.place + sample.offset * Point(-way.y(), way.x());
      drawn.bands.mm.push_back(std::abs(drafting::nearest(path, seen).distance - far));
    }
  }

  const TrueTable& table_;
  double cloth_, spacing_;
};

/// A piece with inner corners of several angles, as a stepped facing or a slit has them; a small one.
inline drafting::Piece cornered_piece() {
  drafting::Piece piece;
  piece.name = "corners";
  piece.cut_line = {{0, 0},     {400, 0},   {400, 260}, {330, 260}, {300, 120}, {250, 250},
                    {170, 250}, {170, 140}, {90, 140},  {60, 260},  {0, 260}};
  piece.seam_line = piece.cut_line;
  return piece;
}

}  // namespace cowlcast::projector::testing
