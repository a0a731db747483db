// How a canvas draws what it shows.
#pragma once

#include <QPainter>
#include <optional>

#include "projector/workbench/canvas/scene.h"
#include "projector/workbench/lengths.h"

namespace cowlcast::projector {

/// What is under the pointer or chosen, drawn larger.
struct Emphasis {
  std::optional<std::string> handle, line;
};

/// Where words are drawn, in pixels; they do not grow with the view.
QRectF words_rect(const SceneWords& words, const PlaneView& view);

void paint_scene(QPainter& painter, const Scene& scene, const PlaneView& view, const Emphasis& emphasis);

/// Rulers along the top and the left; `pointer` in pixels is marked on both.
void paint_rulers(QPainter& painter, const PlaneView& view, Units units, const std::optional<Point>& pointer);

/// How wide a ruler is, pixels.
int ruler_width();

}  // namespace cowlcast::projector
