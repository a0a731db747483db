// A small picture of a project, for choosing among files.
//
//   write_project(path, project, thumbnail_png(garment_of(project), 160));
#pragma once

#include <QByteArray>
#include <QImage>

#include "projector/project/derive.h"

namespace cowlcast::projector {

/// The whole cowl front, both halves, on a clear ground; the base where there is no cowl; clear where there
/// is neither. `size` pixels either way.
QImage thumbnail(const Garment& garment, int size);

/// The same as the bytes of a PNG.
QByteArray thumbnail_png(const Garment& garment, int size);

}  // namespace cowlcast::projector
