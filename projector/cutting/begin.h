// How cutting begins: from what was wished and what the record says to the first view.
//
//   CuttingView view = begun(map, front, {.height = 1.2, .hand = Hand::left}, record, now);
//
// Nothing is read or written here; `now` is the time as records have it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "calibration/table_map/table_map.h"
#include "projector/cutting/view.h"

namespace cowlcast::projector {

struct CuttingWishes {
  std::optional<Laying> at = {};        ///< where the piece lies; none: in the middle of the light
  bool mirrored = false;                ///< face down, when `at` is left out
  double height = 0.0;                  ///< of the cloth's upper face above the mat, mm
  std::vector<QRgb> cloth{0xff808080};  ///< its colours
  Blade blade = {};
  double band = BladeOverlay{}.band_width;  ///< width of the keep-out band, mm
  Hand hand = Hand::right;
  bool inches = false;            ///< lengths in the legend; else mm
  std::optional<Point> mat = {};  ///< width and depth of the cutting mat, its middle under the light's, mm
};

/// The view that cutting begins or goes on with: cautions first when they have not been read that day, a
/// piece larger than the light in parts. Throws calibration::Refusal when no part of the piece lies in the
/// light, drafting::Refusal for a blade that does not reach through the cloth, for another place than the
/// record's amid a piece, and as `resumed` does. The cloth's height is always the wished one.
CuttingView begun(const calibration::TableMap& map, drafting::Piece piece, const CuttingWishes& wishes,
                  const Record& record, const std::string& now);

}  // namespace cowlcast::projector
