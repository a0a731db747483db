// Canvas: the drawing in the middle of a place, with rulers, zoom and handles.
//
//   Canvas canvas(settings);
//   canvas.show_scene(scene);
//   connect(&canvas, &Canvas::dragged, this, [](const std::string& id, Point place) { ... });
//
// Wheel and pinch zoom about the pointer, dragging the ground pans, double click
// shows all. Keys: Tab goes from handle to handle, arrows move it or, with none
// chosen, the view; + and - zoom, 0 shows all, Escape lets go of the handle.
// It holds no garment mathematics: it says where a handle was dragged to.
#pragma once

#include <QWidget>
#include <optional>

#include "projector/workbench/canvas/scene.h"
#include "projector/workbench/settings.h"

namespace cowlcast::projector {

class Canvas : public QWidget {
  Q_OBJECT

 public:
  explicit Canvas(Settings& settings, QWidget* parent = nullptr);

  /// The view stays as it is unless nothing was shown before, or all is being shown and it no longer fits,
  /// or has become small in it.
  void show_scene(Scene scene);
  const Scene& scene() const { return scene_; }
  const PlaneView& view() const { return view_; }
  void show_all();
  void zoom(double factor);

  /// Pixels of a handle, for tests and for words beside it; none when there is no such handle.
  std::optional<Point> handle_pixel(const std::string& id) const;
  bool dragging() const { return held_.has_value(); }

 signals:
  void taken(const std::string& id);                 ///< a handle: a drag begins
  void dragged(const std::string& id, Point place);  ///< where the pointer wants the handle, mm
  void let_go(const std::string& id);
  void stepped(const std::string& id, int across, int up);  ///< arrow keys: steps
  void line_clicked(const std::string& id);

 protected:
  void paintEvent(QPaintEvent* event) override;
  void resizeEvent(QResizeEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void mouseDoubleClickEvent(QMouseEvent* event) override;
  void wheelEvent(QWheelEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;
  void focusInEvent(QFocusEvent* event) override;
  void leaveEvent(QEvent* event) override;
  bool event(QEvent* event) override;
  bool focusNextPrevChild(bool next) override;

 private:
  std::optional<size_t> handle_under(const QPointF& pixel) const;
  std::optional<size_t> line_under(const QPointF& pixel) const;
  PlaneView view_of_all() const;
  void set_view(const PlaneView& view);
  void hover(const QPointF& pixel);

  Settings& settings_;
  Scene scene_;
  PlaneView view_;
  bool all_shown_ = true;
  std::optional<std::string> held_;    // the handle that is dragged
  std::optional<std::string> chosen_;  // by the keys
  std::optional<std::string> hovered_;
  std::optional<std::string> hovered_line_;
  Point grip_ = Point::Zero();  // pointer to handle, mm
  std::optional<QPointF> pan_from_;
  bool moved_ = false;
};

}  // namespace cowlcast::projector
