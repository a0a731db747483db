#include "projector/workbench/canvas/canvas.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QNativeGestureEvent>
#include <QPainter>
#include <QShortcut>
#include <algorithm>
#include <cmath>

#include "projector/workbench/canvas/canvas_paint.h"

namespace cowlcast::projector {
namespace {

constexpr double handle_reach = 24.0, line_reach = 10.0;  // pixels

Point point(const QPointF& at) {
  return {at.x(), at.y()};
}

std::vector<Point> places_of(const Scene& scene) {
  std::vector<Point> places;
  for (const SceneHandle& handle : scene.handles) places.push_back(handle.at);
  return places;
}

std::optional<size_t> number_of(const Scene& scene, const std::optional<std::string>& id) {
  for (size_t i = 0; id && i < scene.handles.size(); ++i)
    if (scene.handles[i].id == *id) return i;
  return std::nullopt;
}

bool inside(const PlaneView& view, const drafting::Box& box) {
  const Point low = pixel_from_plane(view, box.low), high = pixel_from_plane(view, box.high);
  return low.x() >= ruler_width() && high.y() >= ruler_width() && high.x() <= view.width &&
         low.y() <= view.height;
}

}  // namespace

drafting::Box box_of(const Scene& scene) {
  Polyline all;
  for (const SceneLine& line : scene.lines) all.insert(all.end(), line.points.begin(), line.points.end());
  for (const SceneHandle& handle : scene.handles) all.push_back(handle.at);
  if (all.empty()) return {{-50.0, -50.0}, {50.0, 50.0}};
  return drafting::box_of(all);
}

Canvas::Canvas(Settings& settings, QWidget* parent) : QWidget(parent), settings_(settings) {
  setFocusPolicy(Qt::StrongFocus);
  setMouseTracking(true);
  setMinimumSize(320, 280);
  setAttribute(Qt::WA_OpaquePaintEvent);
  setAccessibleName(tr("Drawing"));
  auto* to_here = new QShortcut(QKeySequence(Qt::Key_F6), this);
  connect(to_here, &QShortcut::activated, this, [this] {
    chosen_.reset();
    setFocus(Qt::ShortcutFocusReason);
  });
  connect(&settings_, &Settings::changed, this, qOverload<>(&QWidget::update));
}

void Canvas::show_scene(Scene scene) {
  const bool first = scene_.lines.empty();
  scene_ = std::move(scene);
  if (!held_ && all_shown_) {
    const drafting::Box box = box_of(scene_);
    const PlaneView whole = view_of_all();
    const bool small = whole.scale > 1.2 * view_.scale ||
                       view_.scale * (whole.middle - view_.middle).norm() > 0.15 * view_.width;
    if (first || small || !inside(view_, box)) show_all();
  }
  update();
}

PlaneView Canvas::view_of_all() const {
  // Words keep their size, so the room they need beside the figures is found at the scale without it, and
  // once more.
  const double rulers = ruler_width(), least = grown(18);
  const drafting::Box box = box_of(scene_);
  PlaneView whole{Point::Zero(), 1.0, 1.0 * width(), 1.0 * height()};
  QRectF room = QRectF(rect()).adjusted(rulers + grown(40), rulers + grown(40), -grown(40), -grown(40));
  for (int i = 0; i < 3; ++i) {
    const PlaneView inner = fitted(box, room.width(), room.height(), 0.0);
    whole.middle = inner.middle;
    whole.scale = inner.scale;
    whole = panned(whole, point(room.center() - QRectF(rect()).center()));
    const Point low = pixel_from_plane(whole, box.low), high = pixel_from_plane(whole, box.high);
    const QRectF figures(QPointF(low.x(), high.y()), QPointF(high.x(), low.y()));
    QRectF all = figures;
    for (const SceneWords& words : scene_.words) all = all.united(words_rect(words, whole));
    room = QRectF(rect()).adjusted(rulers + std::max(least + figures.left() - all.left(), 1.0 * grown(40)),
                                   rulers + std::max(least + figures.top() - all.top(), 1.0 * grown(40)),
                                   -std::max(least + all.right() - figures.right(), 1.0 * grown(40)),
                                   -std::max(least + all.bottom() - figures.bottom(), 1.0 * grown(40)));
  }
  return whole;
}

void Canvas::show_all() {
  view_ = view_of_all();
  all_shown_ = true;
  update();
}

void Canvas::set_view(const PlaneView& view) {
  view_ = kept_in_sight(view, box_of(scene_));
  all_shown_ = false;
  update();
}

void Canvas::zoom(double factor) {
  set_view(zoomed(view_, {width() / 2.0, height() / 2.0}, factor));
}

std::optional<Point> Canvas::handle_pixel(const std::string& id) const {
  const auto number = number_of(scene_, id);
  if (!number) return std::nullopt;
  return pixel_from_plane(view_, scene_.handles[*number].at);
}

std::optional<size_t> Canvas::handle_under(const QPointF& at) const {
  return handle_at(view_, places_of(scene_), point(at), handle_reach);
}

std::optional<size_t> Canvas::line_under(const QPointF& at) const {
  std::vector<Polyline> lines;
  for (const SceneLine& line : scene_.lines) lines.push_back(line.id.empty() ? Polyline{} : line.points);
  return line_at(view_, lines, point(at), line_reach);
}

void Canvas::hover(const QPointF& at) {
  const auto handle = handle_under(at);
  const auto line = handle ? std::nullopt : line_under(at);
  hovered_ = handle ? std::optional(scene_.handles[*handle].id) : std::nullopt;
  hovered_line_ = line ? std::optional(scene_.lines[*line].id) : std::nullopt;
  setCursor(handle ? Qt::OpenHandCursor : line ? Qt::PointingHandCursor : Qt::ArrowCursor);
  update();
}

void Canvas::mousePressEvent(QMouseEvent* event) {
  if (event->button() != Qt::LeftButton && event->button() != Qt::MiddleButton) return;
  moved_ = false;
  const auto handle = event->button() == Qt::LeftButton ? handle_under(event->position()) : std::nullopt;
  if (handle) {
    held_ = chosen_ = scene_.handles[*handle].id;
    grip_ = scene_.handles[*handle].at - plane_from_pixel(view_, point(event->position()));
    setCursor(Qt::ClosedHandCursor);
    emit taken(*held_);
  } else {
    pan_from_ = event->position();
  }
  update();
}

void Canvas::mouseMoveEvent(QMouseEvent* event) {
  if (held_) {
    moved_ = true;
    emit dragged(*held_, plane_from_pixel(view_, point(event->position())) + grip_);
    update();
  } else if (pan_from_) {
    const QPointF way = event->position() - *pan_from_;
    if (!moved_ && way.manhattanLength() < 5) return;
    moved_ = true;
    setCursor(Qt::ClosedHandCursor);
    set_view(panned(view_, point(way)));
    pan_from_ = event->position();
  } else {
    hover(event->position());
  }
}

void Canvas::mouseReleaseEvent(QMouseEvent* event) {
  if (held_) {
    const std::string id = *held_;
    held_.reset();
    emit let_go(id);
    if (all_shown_ && !inside(view_, box_of(scene_))) show_all();
  } else if (pan_from_) {
    pan_from_.reset();
    const auto line = moved_ ? std::nullopt : line_under(event->position());
    if (line) emit line_clicked(scene_.lines[*line].id);
    if (!moved_) chosen_.reset();
  }
  hover(event->position());
}

void Canvas::mouseDoubleClickEvent(QMouseEvent* event) {
  if (!handle_under(event->position()) && !line_under(event->position())) show_all();
}

void Canvas::wheelEvent(QWheelEvent* event) {
  const double turns = event->angleDelta().y() / 120.0;
  if (event->modifiers() & Qt::ShiftModifier) {
    set_view(panned(view_, {event->angleDelta().y() * 0.5, 0.0}));
  } else if (turns != 0.0) {
    set_view(zoomed(view_, point(event->position()), std::pow(1.2, turns)));
  }
  event->accept();
}

bool Canvas::event(QEvent* event) {
  if (event->type() == QEvent::NativeGesture) {
    const auto* gesture = static_cast<QNativeGestureEvent*>(event);
    if (gesture->gestureType() == Qt::ZoomNativeGesture) {
      set_view(zoomed(view_, point(gesture->position()), 1.0 + gesture->value()));
      return true;
    }
  }
  return QWidget::event(event);
}

void Canvas::keyPressEvent(QKeyEvent* event) {
  const int key = event->key();
  const int across = key == Qt::Key_Right ? 1 : key == Qt::Key_Left ? -1 : 0;
  const int up = key == Qt::Key_Up ? 1 : key == Qt::Key_Down ? -1 : 0;
  if (across != 0 || up != 0) {
    const int steps = event->modifiers() & Qt::ShiftModifier ? 5 : 1;
    if (chosen_ && number_of(scene_, chosen_)) {
      emit stepped(*chosen_, steps * across, steps * up);
    } else {
      set_view(panned(view_, Point(-40.0 * steps * across, 40.0 * steps * up)));
    }
  } else if (key == Qt::Key_Plus || key == Qt::Key_Equal) {
    zoom(1.2);
  } else if (key == Qt::Key_Minus) {
    zoom(1.0 / 1.2);
  } else if (key == Qt::Key_0) {
    show_all();
  } else if (key == Qt::Key_Escape && chosen_) {
    chosen_.reset();
    update();
  } else {
    QWidget::keyPressEvent(event);
  }
}

bool Canvas::focusNextPrevChild(bool next) {
  const auto now = number_of(scene_, chosen_);
  const size_t count = scene_.handles.size();
  const bool more = count > 0 && (next ? !now || *now + 1 < count : now && *now > 0);
  if (!hasFocus() || !more) {
    chosen_.reset();
    update();
    return QWidget::focusNextPrevChild(next);
  }
  chosen_ = scene_.handles[now ? *now + (next ? 1 : -1) : 0].id;
  update();
  return true;
}

void Canvas::focusInEvent(QFocusEvent* event) {
  if (event->reason() != Qt::MouseFocusReason) chosen_.reset();
  QWidget::focusInEvent(event);
}

void Canvas::leaveEvent(QEvent*) {
  hovered_.reset();
  hovered_line_.reset();
  update();
}

void Canvas::resizeEvent(QResizeEvent*) {
  if (all_shown_) {
    show_all();
  } else {
    view_.width = width();
    view_.height = height();
  }
}

void Canvas::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.fillRect(rect(), theme().paper);
  const std::optional<std::string> emphasised = held_        ? held_
                                                : hovered_   ? hovered_
                                                : hasFocus() ? chosen_
                                                             : std::nullopt;
  paint_scene(painter, scene_, view_, {emphasised, hovered_line_});
  std::optional<Point> pointer;
  if (const auto number = number_of(scene_, emphasised))
    pointer = pixel_from_plane(view_, scene_.handles[*number].at);
  paint_rulers(painter, view_, settings_.preferences().units, pointer);
  if (hasFocus()) {
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(theme().accent, 3.0));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(QRectF(rect()).adjusted(1.5, 1.5, -1.5, -1.5));
  }
}

}  // namespace cowlcast::projector
