// Small printed tags for the mat's edge, by which a fixed camera notices that the mat moved.
//
//   std::string pdf = edge_tags_pdf(Paper::a4);      // twelve tags, to print and cut out
//   if (auto tag = edge_tag(found.code)) use(*tag);  // 1 to kEdgeTags
//
// Their codes are of the sheets' family but none is on a sheet, so tags may stay
// where they are while the table is calibrated.
#pragma once

#include <opencv2/core.hpp>
#include <optional>
#include <string>

#include "calibration/sheet/sheet.h"

namespace cowlcast::calibration {

constexpr int kEdgeTags = 12;          ///< tags that there are
constexpr double kEdgeTagSide = 44.0;  ///< side of a tag's dark square, mm as designed
constexpr double kEdgeTagRim = 7.0;    ///< white paper around it, mm: belongs to the tag

/// The code printed on tag 1 to kEdgeTags, and back. Other codes give nothing.
int edge_tag_code(int tag);
std::optional<int> edge_tag(int code);

/// All tags on one page, with lines to cut along, as a vector PDF at exact scale: the file's bytes.
std::string edge_tags_pdf(Paper paper);

/// One tag with its rim, 8-bit grey; the paper's upper left corner is that of the first pixel.
/// Throws Refusal for a number outside 1..kEdgeTags.
cv::Mat edge_tag_picture(int tag, double pixels_per_mm);

}  // namespace cowlcast::calibration
