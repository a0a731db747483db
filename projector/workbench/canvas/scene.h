// Scene: what a canvas shows, as plain values in the plane's millimetres.
//
//   Scene scene;
//   scene.lines.push_back({.points = front.cut_line, .closed = true, .colour = theme().cut});
//   scene.handles.push_back({.id = "drape", .at = neck_point, .name = tr("Drape"), .value = "48.0 cm"});
//   canvas->show_scene(scene);
#pragma once

#include <QColor>
#include <QString>
#include <Qt>
#include <string>
#include <vector>

#include "projector/workbench/canvas/plane_view.h"
#include "projector/workbench/look/theme.h"

namespace cowlcast::projector {

struct SceneLine {
  Polyline points = {};
  bool closed = false;
  QColor colour = {};  ///< none: no line, its fill alone
  double width = 2.0;  ///< pixels
  Qt::PenStyle style = Qt::SolidLine;
  QColor fill = {};     ///< none: not filled
  std::string id = {};  ///< when set, it can be clicked
};

struct SceneWords {
  Point at = Point::Zero();
  QString text = {};
  QColor colour = {};
  TextSize size = TextSize::plain;
  Qt::Alignment anchor = Qt::AlignCenter;  ///< which side of the words lies at the place
};

/// A place that can be taken hold of. It may move freely; what a move means is the place's business.
struct SceneHandle {
  std::string id = {};
  Point at = Point::Zero();
  QString name = {};     ///< what it measures
  QString value = {};    ///< the live number
  bool main = false;     ///< large, its number always shown
  bool upright = false;  ///< moves up and down; else across
};

struct Scene {
  std::vector<SceneLine> lines;
  std::vector<SceneWords> words;
  std::vector<SceneHandle> handles;
};

/// What the whole scene stays within; a box of 100 mm about the origin for an empty one.
drafting::Box box_of(const Scene& scene);

}  // namespace cowlcast::projector
