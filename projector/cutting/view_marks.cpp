#include "projector/cutting/view_marks.h"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <cstdio>
#include <numbers>
#include <utility>

#include "calibration/watch/border_marks.h"
#include "drafting/geometry/polyline.h"
#include "projector/cutting/cross_marks.h"
#include "projector/cutting/parts.h"
#include "projector/language/said.h"

namespace cowlcast::projector {
namespace {

constexpr double kLegend = 0.85;  // height of its capitals, of those of other words

std::string in_capitals(std::string text) {
  std::transform(text.begin(), text.end(), text.begin(),
                 [](unsigned char c) { return static_cast<char>(std::toupper(c)); });
  return text;
}

std::string joined(const std::vector<std::string>& lines) {
  std::string text;
  for (const std::string& line : lines) text += (text.empty() ? "" : "\n") + line;
  return text;
}

// What must be read where it stands, so its numbers find their places first.
void add_crosses(Drawing& drawing, std::vector<Polyline>& clear_of, const CuttingView& view) {
  Drawing crosses = cross_drawing(view);
  for (Mark& mark : crosses.marks) {
    clear_of.insert(clear_of.end(), mark.lines.begin(), mark.lines.end());
    drawing.marks.push_back(std::move(mark));
  }
  drawing.words.insert(drawing.words.begin(), crosses.words.begin(), crosses.words.end());
}

void add_grain_line(std::vector<Mark>& marks, const CuttingView& view) {
  if (!view.piece.grain) return;
  const Point from = mat_from_piece(view.laying, view.piece.grain->from),
              to = mat_from_piece(view.laying, view.piece.grain->to);
  const Point way = (to - from).normalized(), middle = 0.5 * (from + to);
  marks.push_back({.lines = dashes({middle - 2000.0 * way, middle + 2000.0 * way}, false, 60.0, 12.0),
                   .width = view.style.mark_width,
                   .colour = view.style.guide});
}

// The mat's corners, so that she sees whether it lies where it was said to.
void add_mat_corners(std::vector<Mark>& marks, const CuttingView& view) {
  const size_t count = view.mat.size();
  Mark corners{.lines = {}, .width = view.style.mark_width, .colour = view.style.guide};
  for (size_t i = 0; i < count; ++i) {
    const Point &at = view.mat[i], &before = view.mat[(i + count - 1) % count],
                &next = view.mat[(i + 1) % count];
    corners.lines.push_back(
        {at + 25.0 * (before - at).normalized(), at, at + 25.0 * (next - at).normalized()});
  }
  if (count > 0) marks.push_back(std::move(corners));
}

// Places for a block of writing all over the light: clear of the piece first, then by how near to `wanted`.
std::vector<Point> places_in_light(const CuttingView& view, const Polyline& lit, const Point& size,
                                   const Point& wanted) {
  constexpr double kEdge = 20.0;  // mm kept free along the light's edge
  const drafting::Box box = drafting::box_of(lit);
  const Point half = 0.5 * size + Point(kEdge, kEdge);
  const Point low = box.low + half, high = (box.high - half).cwiseMax(low);
  std::vector<Point> places;
  const int across = 8, up = 6;
  for (int i = 0; i <= across; ++i)
    for (int j = 0; j <= up; ++j)
      places.emplace_back(low.x() + (high.x() - low.x()) * i / across,
                          low.y() + (high.y() - low.y()) * j / up);
  const Polyline outline = laid(view.laying, view.piece.cut_line);
  std::stable_sort(places.begin(), places.end(),
                   [&](const Point& a, const Point& b) { return (a - wanted).norm() < (b - wanted).norm(); });
  std::stable_partition(places.begin(), places.end(),
                        [&](const Point& at) { return !drafting::contains(outline, at); });
  return places;
}

std::vector<Mark> reading(const std::string& text, const CuttingView& view, const Polyline& lit) {
  const drafting::Box box = drafting::box_of(lit);
  return {writing(said(text), 0.5 * (box.low + box.high), view.style.word_height, view.style.cut,
                  Lines::from_left)};
}

std::vector<Mark> cautions_marks(const CuttingView& view, const Polyline& lit) {
  const auto count = static_cast<int>(cautions().size());
  std::string text = "BEFORE YOU CUT\n";
  for (int i = 0; i < std::min(view.cautions_shown, count); ++i)
    text += "\n" + cautions()[static_cast<size_t>(i)];
  text += view.cautions_shown < count ? "\n\nspace: read on" : "\n\nspace: I have read this";
  return reading(text, view, lit);
}

// The key that asks the camera.
std::string key_of(const CuttingView& view) {
  return view.camera == CameraAsk::by_next   ? "space: the camera learns the table\n"
         : view.camera == CameraAsk::by_look ? "R: the camera looks for tags and marks\n"
                                             : "";
}

// The grounds of the border marks, which words would be lost in.
void keep_clear_of_border(std::vector<Polyline>& clear_of, const CuttingView& view,
                          const calibration::TableMap& map) {
  if (!view.border_marks) return;
  for (const cv::Rect& ground : calibration::border_marks(map.width, map.height).grounds) {
    Polyline outline;
    for (const auto& [x, y] : {std::pair{0, 0}, {1, 0}, {1, 1}, {0, 1}, {0, 0}})
      outline.push_back(map.mat_from_projector({ground.x + x * ground.width, ground.y + y * ground.height},
                                               view.laying.height));
    clear_of.push_back(std::move(outline));
  }
}

// With the marks of whoever blocks, where they are not under the words.
std::vector<Mark> block_marks(const CuttingView& view, const Polyline& lit) {
  const std::string text =
      "DO NOT CUT NOW\n\n" + in_lines(said(view.block), 40) + "\n\n" +
      (view.way_out.empty() ? "" : in_lines(said(view.way_out), 40) + "\n\n") +
      (view.asked ? "O once more: cut all the same; it is written down\nany other key: no"
                  : key_of(view) + "O: cut all the same\nEsc ends; what is cut is kept");
  std::vector<Mark> marks = reading(text, view, lit);
  Polyline letters;
  for (const Polyline& line : marks.front().lines) letters.insert(letters.end(), line.begin(), line.end());
  const drafting::Box words = drafting::box_of(letters);
  const auto under_words = [&](const Point& at) {
    return (at - words.low).minCoeff() > -view.style.word_height &&
           (words.high - at).minCoeff() > -view.style.word_height;
  };
  for (const Mark& mark : view.notice.marks) {
    const auto hidden = [&](const Polyline& line) {
      return std::any_of(line.begin(), line.end(), under_words);
    };
    if (std::none_of(mark.lines.begin(), mark.lines.end(), hidden)) marks.push_back(mark);
  }
  return marks;
}

QRgb dimmed(QRgb colour) {
  return qRgb(qRed(colour) / 3, qGreen(colour) / 3, qBlue(colour) / 3);
}

void add_strokes(Drawing& drawing, std::vector<Polyline>& clear_of, const CuttingView& view) {
  // Cut already: nothing. To come: fine. Now: bold, with the blade's path.
  for (size_t i = static_cast<size_t>(view.cut); i < view.plan.size(); ++i) {
    const Cut& cut = view.plan[i];
    const bool now = i == static_cast<size_t>(view.cut);
    if (now) {
      Drawing blade = blade_drawing(cut, view.laying, view.style, view.overlay);
      for (Mark& mark : blade.marks) {
        clear_of.insert(clear_of.end(), mark.lines.begin(), mark.lines.end());
        drawing.marks.push_back(std::move(mark));
      }
      // What tells about the blade finds its place first.
      drawing.words.insert(drawing.words.begin(), blade.words.begin(), blade.words.end());
    }
    drawing.marks.push_back({.lines = {laid(view.laying, cut.path)},
                             .width = (now ? 1.5 : 0.7) * view.style.cut_width,
                             .colour = view.style.cut});
  }
}

// Which part it is, what it needs, and how right it lies.
void add_part(std::vector<std::string>& state, const CuttingView& view) {
  if (view.parts.empty()) return;
  const std::string name =
      "part " + std::to_string(view.part + 1) + " of " + std::to_string(view.parts.size());
  if (view.to_find)
    state.push_back(name + ": find it again by your " + std::to_string(view.crosses.size()) + " marks");
  else if (view.part + 1 < view.parts.size() && !(is_laying(view) && view.part > 0))
    state.push_back(name + ": chalk the crosses and their numbers, then N");
  else
    state.push_back(name);
  if (const std::optional<double> error = part_error(view); error && view.message.empty())
    state.push_back("found again, its cut lines within " + in_mm(*error));
  else if (!error && view.part > 0 && !view.to_find)
    state.emplace_back("moved by hand, not where its marks say");
}

std::vector<std::string> keys_to_find(const CuttingView& view) {
  std::vector<std::string> keys{"click on the marks by number, two at least",
                                "or move the cloth until they meet the crosses"};
  keys.emplace_back(view.pointed.empty() ? "space: all marks meet their crosses" : "space: these are all");
  keys.emplace_back(view.pointed.empty() ? "page up: back to the part before" : "page up: that mark again");
  keys.emplace_back("L hides this, Esc ends");
  return keys;
}

}  // namespace

Legend legend_of(const CuttingView& view) {
  Legend legend;
  if (view.phase == Phase::cautions || !view.block.empty()) return legend;
  if (!view.message.empty()) legend.state.push_back(view.message);
  char text[120];
  if (is_laying(view)) {
    constexpr double kInch = 25.4;  // mm, exactly
    const double unit = view.inches ? kInch : 1.0;
    const int digits = view.inches ? 2 : 1;
    std::snprintf(text, sizeof text, "x %.*f  y %.*f %s  turn %.2f°%s", digits, view.laying.x / unit, digits,
                  view.laying.y / unit, view.inches ? "in" : "mm",
                  view.laying.angle * 180.0 / std::numbers::pi, view.laying.mirrored ? "  face down" : "");
    legend.state.emplace_back(view.to_find ? "FIND THE PIECE AGAIN" : "LAY THE PIECE");
    if (!view.to_find) legend.state.emplace_back(text);
    if (view.piece.fold) legend.state.emplace_back("the cloth's fold lies on the two fine lines");
    add_part(legend.state, view);
    if (view.to_find) {
      legend.keys = keys_to_find(view);
      return legend;
    }
    const bool first = view.before.empty();
    legend.keys = {first ? "arrows or mouse move it, Q E turn, F flips"
                         : "arrows or mouse move it, Q E turn"};
    if (first)
      legend.keys.emplace_back(view.inches ? "shift: 0.4 in and 5°, ctrl: 0.004 in and 0.02°"
                                           : "shift: 10 mm and 5°, ctrl: 0.1 mm and 0.02°");
    legend.keys.insert(legend.keys.end(),
                       {"H: laid-out place, G: line along the grain", "space or page down: cut"});
    if (can_go_back_in_parts(view)) legend.keys.emplace_back("page up: find it anew");
    legend.keys.emplace_back("L hides this, Esc ends");
    return legend;
  }
  if (all_cut(view)) {
    legend.state.emplace_back("ALL CUT");
  } else {
    const Cut& cut = view.plan[static_cast<size_t>(view.cut)];
    legend.state.push_back("STROKE " + std::to_string(view.cut + 1) + " OF " +
                           std::to_string(view.plan.size()) + ": " +
                           in_capitals(stroke_name(view.piece, cut)));
    if (cut.stop_at > cut.start_at && cut.end == CutEnd::inner)
      legend.state.emplace_back("stop at the bar, finish with shears");
    if (static_cast<size_t>(view.cut) + 1 < view.plan.size())
      legend.state.push_back("then: " +
                             stroke_name(view.piece, view.plan[static_cast<size_t>(view.cut) + 1]));
  }
  add_part(legend.state, view);
  if (view.seconds >= 60.0) {
    std::snprintf(text, sizeof text, "%.0f min at the table", std::floor(view.seconds / 60.0));
    legend.state.emplace_back(text);
  }
  if (!all_cut(view)) legend.keys.emplace_back("space or page down: it is cut");
  legend.keys.insert(legend.keys.end(),
                     {"page up: back, U: lay it anew", "K: band, G: line along the grain"});
  if (view.part + 1 < view.parts.size()) legend.keys.emplace_back("N: next part of the piece");
  if (view.camera != CameraAsk::none) legend.keys.emplace_back("R: the camera looks anew");
  legend.keys.emplace_back("L hides this, Esc ends");
  return legend;
}

std::vector<std::string> warnings_of(const CuttingView& view, const Polyline& lit) {
  std::vector<std::string> warnings;
  if (!view.notice.words.empty()) warnings.push_back(view.notice.words);
  if (view.phase != Phase::cutting || all_cut(view)) return warnings;
  Surroundings surroundings{.lit = lit, .mat = view.mat, .before = {}, .fold = whole_fold(view.piece)};
  surroundings.before.assign(view.plan.begin(), view.plan.begin() + view.cut);
  for (std::string& caution :
       stroke_cautions(view.plan[static_cast<size_t>(view.cut)], view.laying, surroundings))
    warnings.push_back(std::move(caution));
  return warnings;
}

std::vector<Mark> view_marks(const CuttingView& view, const calibration::TableMap& map) {
  const Polyline lit = lit_outline(map, view.laying.height);
  if (!view.block.empty()) return block_marks(view, lit);
  if (view.phase == Phase::cautions) return cautions_marks(view, lit);
  const bool cutting = view.phase == Phase::cutting;
  Shown shown = view.shown;
  if (cutting) shown.cut_line = false;
  Drawing drawing = piece_drawing(view.piece, view.laying, view.style, shown);
  std::vector<Polyline> clear_of = lines_to_keep_clear(view.piece, view.laying);
  keep_clear_of_border(clear_of, view, map);
  add_mat_corners(drawing.marks, view);
  if (view.grain_line) add_grain_line(drawing.marks, view);
  add_crosses(drawing, clear_of, view);
  if (cutting) add_strokes(drawing, clear_of, view);

  const drafting::Box box = drafting::box_of(lit);
  std::vector<std::string> warnings;
  for (const std::string& warning : warnings_of(view, lit)) warnings.push_back(in_lines(said(warning), 30));
  if (!warnings.empty()) {
    const std::string text = joined(warnings);
    const Point wanted =
        cutting && !all_cut(view)
            ? mat_from_piece(view.laying, view.plan[static_cast<size_t>(view.cut)].path.front())
            : Point(0.5 * (box.low + box.high));
    Words words{
        .text = text, .height = view.style.word_height, .colour = view.style.warn, .lines = Lines::from_left};
    words.places = places_in_light(view, lit, writing_size(text, view.style.word_height), wanted);
    drawing.words.insert(drawing.words.begin(), std::move(words));
  }
  if (view.legend) {
    const Legend legend = legend_of(view);
    const double height = kLegend * view.style.word_height;
    std::vector<std::string> lines = legend.state;
    lines.insert(lines.end(), legend.keys.begin(), legend.keys.end());
    for (std::string& line : lines) line = in_lines(said(line), 48);
    Words words{
        .text = joined(lines), .height = height, .colour = view.style.words, .lines = Lines::from_left};
    words.places = places_in_light(view, lit, writing_size(words.text, height), box.high);
    drawing.words.push_back(std::move(words));
  }
  for (Mark& mark : settled(drawing.words, clear_of, lit)) drawing.marks.push_back(std::move(mark));
  if (view.notice.dim)
    for (Mark& mark : drawing.marks) mark.colour = dimmed(mark.colour);
  drawing.marks.insert(drawing.marks.end(), view.notice.marks.begin(), view.notice.marks.end());
  return std::move(drawing.marks);
}

const QImage& ViewPainter::draw(const calibration::TableMap& map, const CuttingView& view) {
  const bool was_plain = !plain_.isNull(), is_plain = view.light == Light::plain || view.light == Light::grey;
  whole_.clear();
  if (was_plain || is_plain) whole_ = {QRect(0, 0, map.width, map.height)};
  plain_ = QImage();
  if (is_plain) {
    plain_ = QImage(map.width, map.height, QImage::Format_RGB32);
    plain_.fill(view.light == Light::plain ? qRgb(255, 255, 255) : qRgb(kGreyLevel, kGreyLevel, kGreyLevel));
  } else if (view.light == Light::lines) {
    lines_.draw(map, view_marks(view, map), view.laying.height, view.border_marks);
  } else {
    lines_.draw(map, {}, 0.0, view.light == Light::marked);
  }
  return picture();
}

}  // namespace cowlcast::projector
