#include "projector/teaching/lesson.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

#include "calibration/refusal.h"
#include "drafting/geometry/polyline.h"
#include "projector/frame/writing.h"
#include "projector/language/said.h"

namespace cowlcast::projector {
namespace {

using Kind = drafting::StepLine::Kind;

constexpr double kStep = 0.05;                 // of the opening, a key press
constexpr double kTitle = 15.0, kText = 12.0;  // heights of capitals on a table, mm
constexpr QRgb kEarlier = 0xffa8a8a8;

QRgb colour_of(const drafting::StepLine& line, const FrameStyle& style) {
  if (line.earlier) return kEarlier;
  switch (line.kind) {
    case Kind::cut_line:
      return style.cut;
    case Kind::slash_line:
    case Kind::centre:
    case Kind::cowl_edge:
      return style.guide;
    default:
      return style.seam;
  }
}

/// The line in the form of its kind, mat mm.
std::vector<Polyline> formed(const drafting::StepLine& line, const Polyline& laid_line, double unit) {
  switch (line.kind) {
    case Kind::slash_line:
      return dashes(laid_line, false, 16.0 * unit, 6.0 * unit);
    case Kind::facing:
      return dashes(laid_line, false, 6.0 * unit, 4.0 * unit);
    case Kind::centre: {
      std::vector<Polyline> chain = dashes(laid_line, false, 24.0 * unit, 12.0 * unit);
      const size_t count = chain.size();
      for (size_t i = 1; i < count; ++i) {
        const Point middle = 0.5 * (chain[i - 1].back() + chain[i].front());
        const Point way = (chain[i].front() - chain[i - 1].back()).normalized();
        chain.push_back({middle - 2.0 * unit * way, middle + 2.0 * unit * way});
      }
      return chain;
    }
    case Kind::cowl_edge: {
      const Point way = (laid_line.back() - laid_line.front()).normalized();
      const Point beside = 3.0 * unit * Point(-way.y(), way.x());
      return {laid_line, {laid_line.front() - beside, laid_line.back() - beside}};
    }
    default:
      return {laid_line};
  }
}

Mark diamond(const Point& at, double reach, double width, QRgb colour) {
  return {.lines = {{at + Point(reach, 0), at + Point(0, reach), at - Point(reach, 0), at - Point(0, reach)}},
          .closed = true,
          .width = width,
          .colour = colour};
}

/// "closed |=====>-----| open, 50 %"
std::string slider(double share) {
  constexpr int places = 10;
  const int at = static_cast<int>(std::lround(share * places));
  std::string bar;
  for (int i = 0; i <= places; ++i) bar += i == at ? "●" : "─";
  char text[40];
  std::snprintf(text, sizeof text, "  open, %.0f %%", 100.0 * share);
  return "closed  " + bar + text;
}

std::string heading(const LessonView& view, const drafting::Step& step, size_t longest) {
  return std::to_string(view.step + 1) + " of " + std::to_string(drafting::step_count) + "  " + step.title +
         "\n\n" + in_lines(said(step.rule), longest) +
         (view.step == drafting::opening_step_number ? "\n\n" + slider(view.share) : "");
}

/// Places for a block of words: over all the light, from the operator's left far corner on.
std::vector<Point> places_in(const Polyline& lit, const Point& size) {
  const drafting::Box box = drafting::box_of(lit);
  const Point half = 0.5 * size + Point(25.0, 25.0);
  const Point low = box.low + half, high = (box.high - half).cwiseMax(low);
  std::vector<Point> places;
  for (int j = 6; j >= 0; --j)
    for (int i = 0; i <= 8; ++i)
      places.emplace_back(low.x() + (high.x() - low.x()) * i / 8.0, low.y() + (high.y() - low.y()) * j / 6.0);
  return places;
}

std::vector<Words> words_of(const LessonView& view, const drafting::Step& step, const LessonStage& stage,
                            const FrameStyle& style) {
  std::vector<Words> words;
  if (stage.column.empty()) {
    Words head{
        .text = heading(view, step, 44), .height = kText, .colour = style.cut, .lines = Lines::from_left};
    head.places = places_in(stage.lit, writing_size(head.text, head.height));
    words.push_back(head);
    if (!view.legend) return words;
    Words keys{
        .text = lesson_keys(), .height = 0.8 * kText, .colour = style.guide, .lines = Lines::from_left};
    keys.places = places_in(stage.lit, writing_size(keys.text, keys.height));
    std::reverse(keys.places.begin(), keys.places.end());
    words.push_back(keys);
    return words;
  }
  // On a screen: the column's head and foot, letters made to fit it.
  const Point low = stage.column[0], high = stage.column[1];
  const auto fitted = [&](std::string text, double wished, bool at_head, QRgb colour) {
    Words block{
        .text = std::move(text), .height = wished * stage.unit, .colour = colour, .lines = Lines::from_left};
    const double room = high.x() - low.x();
    const Point size = writing_size(block.text, block.height);
    if (size.x() > room) block.height *= room / size.x();
    const Point now = writing_size(block.text, block.height);
    block.places = {{low.x() + 0.5 * now.x(), at_head ? high.y() - 0.5 * now.y() : low.y() + 0.5 * now.y()}};
    words.push_back(std::move(block));
  };
  fitted(heading(view, step, 34), kTitle, true, style.cut);
  char scale[80];
  std::snprintf(scale, sizeof scale, "not at true size: a pixel is %.2f mm", stage.scale);
  fitted((view.legend ? lesson_keys() + "\n\n" : "") + scale, 0.8 * kTitle, false, style.guide);
  return words;
}

drafting::Piece as_piece(const drafting::CowlDraft& draft) {
  drafting::Piece piece;
  piece.cut_line = drafting::reach_of_steps(draft);
  return piece;
}

}  // namespace

LessonView after(LessonView view, LessonAct act) {
  const bool opening = view.step == drafting::opening_step_number;
  switch (act) {
    case LessonAct::next:
      if (view.step + 1 < drafting::step_count) ++view.step;
      view.playing = false;
      if (!opening && view.step == drafting::opening_step_number) view.share = 0.0;
      break;
    case LessonAct::back:
      if (view.step > 0) --view.step;
      view.playing = false;
      if (!opening && view.step == drafting::opening_step_number) view.share = 1.0;
      break;
    case LessonAct::open:
    case LessonAct::close:
      if (!opening) break;
      view.playing = false;
      view.share = std::clamp(view.share + (act == LessonAct::open ? kStep : -kStep), 0.0, 1.0);
      break;
    case LessonAct::play:
      if (!opening) break;
      view.playing = !view.playing;
      if (view.playing && view.share >= 1.0) view.share = 0.0;
      break;
    case LessonAct::legend:
      view.legend = !view.legend;
      break;
  }
  return view;
}

LessonView later(LessonView view, double seconds) {
  if (!view.playing) return view;
  view.share = std::min(1.0, view.share + seconds / seconds_to_open);
  view.playing = view.share < 1.0;
  return view;
}

LessonStage stage_on_table(const calibration::TableMap& map, const drafting::CowlDraft& draft, double cloth) {
  LessonStage stage;
  stage.map = map;
  stage.lit = lit_outline(map, cloth);
  stage.laying = in_the_middle(stage.lit, as_piece(draft), cloth);
  return stage;
}

LessonStage stage_on_screen(int width, int height, const drafting::CowlDraft& draft) {
  if (width < 320 || height < 240)
    throw calibration::Refusal("A picture of the lesson needs 320 x 240 pixels at least. Make it larger.");
  const drafting::Box box = drafting::box_of(drafting::reach_of_steps(draft));
  // The draft keeps to the right three fifths, words to the left; a pixel is `scale` mm of the draft.
  LessonStage stage;
  stage.scale = std::max(box.width() / (0.56 * width), box.height() / (0.9 * height));
  stage.unit = std::max(1.0, 1.4 * stage.scale) * std::max(1.0, 0.001 * height);
  calibration::TableMap& map = stage.map;
  map.width = width;
  map.height = height;
  map.lens.focal = 1000.0;  // a plain view from straight above
  map.lens.centre = {0.5 * (width - 1), 0.5 * (height - 1)};
  map.projector_from_mat_frame.linear() << 1, 0, 0, 0, -1, 0, 0, 0, -1;
  map.projector_from_mat_frame.translation() = Eigen::Vector3d(0, 0, 1000.0 * stage.scale);
  stage.lit = lit_outline(map, 0.0);
  const Point middle = 0.5 * (box.low + box.high);
  const Point wanted(0.2 * width * stage.scale, 0.0);
  stage.laying.x = wanted.x() - middle.x();
  stage.laying.y = wanted.y() - middle.y();
  const Point reach = stage.scale * Point(width, height);
  stage.column = {{-0.48 * reach.x(), -0.45 * reach.y()}, {-0.11 * reach.x(), 0.45 * reach.y()}};
  return stage;
}

double outside_of_light(const LessonStage& stage, const drafting::CowlDraft& draft) {
  Polyline outline = laid(stage.laying, drafting::reach_of_steps(draft));
  outline.push_back(outline.front());
  return reach_of(stage.map, {outline}, stage.laying.height).outside;
}

std::vector<Mark> lesson_marks(const LessonView& view, const LessonStage& stage, const FrameStyle& style) {
  const drafting::Step step = drafting::teaching_step(view.draft, view.step, view.share);
  std::vector<Mark> marks;
  std::vector<Polyline> clear_of;
  Mark ground{.lines = {}, .closed = true, .width = 0.0, .colour = style.ground};
  for (const drafting::StepLine& line : step.lines)
    if (line.closed && line.kind == Kind::part) ground.lines.push_back(laid(stage.laying, line.points));
  if (!ground.lines.empty()) marks.push_back(std::move(ground));
  for (const drafting::StepLine& line : step.lines) {
    const Polyline on_table = laid(stage.laying, line.points);
    clear_of.push_back(on_table);
    const double width = line.earlier ? 0.7 : line.kind == Kind::cut_line ? 1.4 : 1.1;
    marks.push_back({.lines = formed(line, on_table, stage.unit),
                     .closed = line.closed,
                     .width = width * stage.unit,
                     .colour = colour_of(line, style)});
  }
  std::vector<Words> words = words_of(view, step, stage, style);
  for (const drafting::StepPoint& point : step.points) {
    const Point at = mat_from_piece(stage.laying, point.at);
    const bool hinge = point.name == "hinge";
    marks.push_back(
        diamond(at, (hinge ? 3.0 : 4.5) * stage.unit, stage.unit, hinge ? style.seam : style.cut));
    if (hinge) continue;
    const double height = 0.8 * kText * stage.unit;
    Words name{.text = point.name, .height = height, .colour = style.cut};
    const Point size = writing_size(name.text, height);
    for (const Point& way : {Point(0, 1), Point(1, 0), Point(-1, 0), Point(0, -1), Point(1, 1), Point(1, -1)})
      name.places.push_back(at + way.cwiseProduct(0.5 * size + Point(9.0, 9.0) * stage.unit));
    words.push_back(std::move(name));
  }
  for (Mark& mark : settled(words, clear_of, stage.lit)) marks.push_back(std::move(mark));
  return marks;
}

std::string lesson_keys() {
  return "Page Down or N: next step\nPage Up: back\nright, left: open and close the parts\n"
         "space: play the opening\nL: these words\nEsc: end";
}

}  // namespace cowlcast::projector
