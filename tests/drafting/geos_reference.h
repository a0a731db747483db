// Areas, lengths and simplicity by GEOS (libgeos, its C interface), the outside
// reference of the drafting tests.
#pragma once

#include <geos_c.h>

#include "drafting/piece/piece.h"

namespace cowlcast::drafting::test {

class GeosOutline {
 public:
  explicit GeosOutline(const Polyline& outline) : context_(GEOS_init_r()) {
    GEOSCoordSequence* points = GEOSCoordSeq_create_r(context_, static_cast<unsigned>(outline.size()) + 1, 2);
    for (unsigned i = 0; i <= outline.size(); ++i) {
      const Point& p = outline[i % outline.size()];
      GEOSCoordSeq_setXY_r(context_, points, i, p.x(), p.y());
    }
    ring_ = GEOSGeom_createLinearRing_r(context_, points);
    polygon_ = GEOSGeom_createPolygon_r(context_, GEOSGeom_clone_r(context_, ring_), nullptr, 0);
  }
  ~GeosOutline() {
    GEOSGeom_destroy_r(context_, polygon_);
    GEOSGeom_destroy_r(context_, ring_);
    GEOS_finish_r(context_);
  }
  GeosOutline(const GeosOutline&) = delete;
  GeosOutline& operator=(const GeosOutline&) = delete;

  bool simple() const { return GEOSisSimple_r(context_, ring_) == 1; }
  double area() const {
    double value = 0.0;
    GEOSArea_r(context_, polygon_, &value);
    return value;
  }
  double perimeter() const {
    double value = 0.0;
    GEOSLength_r(context_, ring_, &value);
    return value;
  }
  /// Area of this outline that lies outside the other, mm².
  double area_outside(const GeosOutline& other) const {
    GEOSGeometry* rest = GEOSDifference_r(context_, polygon_, other.polygon_);
    double value = 0.0;
    GEOSArea_r(context_, rest, &value);
    GEOSGeom_destroy_r(context_, rest);
    return value;
  }

 private:
  GEOSContextHandle_t context_;
  GEOSGeometry* ring_ = nullptr;
  GEOSGeometry* polygon_ = nullptr;
};

}  // namespace cowlcast::drafting::test
