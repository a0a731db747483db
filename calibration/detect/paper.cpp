#include "calibration/detect/paper.h"

#include <Eigen/Geometry>
#include <Eigen/LU>
#include <algorithm>
#include <array>
#include <map>
#include <opencv2/calib3d.hpp>
#include <opencv2/imgproc.hpp>
#include <optional>
#include <utility>

#include "calibration/detect/markers.h"
#include "calibration/detect/patch.h"
#include "calibration/detect/saddle.h"

namespace cowlcast::calibration {
namespace {

constexpr double kWindow = 3.4;         // half a corner's window, mm on paper: inside the markers' quiet zone
constexpr double kLongSide = 2400;      // pixels of the picture that markers are looked for in
constexpr double kShortestMarker = 14;  // pixels, in that picture

using Homography = Eigen::Matrix3d;  // photograph from sheet

Eigen::Vector2d through(const Homography& h, const Eigen::Vector2d& p) {
  return (h * p.homogeneous()).hnormalized();
}

std::optional<Homography> fit_homography(const std::vector<cv::Point2d>& sheet,
                                         const std::vector<cv::Point2d>& photo, double tolerance) {
  if (sheet.size() < 4) return std::nullopt;
  const cv::Mat h = cv::findHomography(sheet, photo, tolerance > 0 ? cv::RANSAC : 0, tolerance);
  if (h.empty()) return std::nullopt;
  Homography out;
  for (int i = 0; i < 3; ++i)
    for (int j = 0; j < 3; ++j) out(i, j) = h.at<double>(i, j);
  return out;
}

// Corner `index` looked for where `h` says it is.
std::optional<SeenCorner> refine(const cv::Mat& grey, const SheetLayout& layout, const Homography& h,
                                 int index) {
  const Eigen::Vector2d corner = layout.corner(index);
  const Eigen::Vector2d at = through(h, corner);
  const double across = (through(h, corner + Eigen::Vector2d(1, 0)) - at).norm();
  const double up = (through(h, corner + Eigen::Vector2d(0, 1)) - at).norm();
  const double pixels_per_mm = std::sqrt(across * up);
  // About a sample a pixel: fewer would miss what lies between them.
  const int half = std::clamp(static_cast<int>(kWindow * pixels_per_mm), 4, 10);
  const double pitch = std::min(kWindow / half, 1.0 / pixels_per_mm);
  const Eigen::MatrixXd patch = sample_patch(half, pitch, [&](double x, double y) {
    return sample(grey, through(h, corner + Eigen::Vector2d(x, -y)));
  });
  // Light where the square to the upper left is: an even one.
  const int column = index % (layout.columns - 1), row = index / (layout.columns - 1);
  const auto saddle = fit_saddle(patch, (column + row) % 2 == 0 ? 1 : -1);
  if (!saddle) return std::nullopt;
  const Eigen::Vector2d moved(pitch * saddle->offset.x(), -pitch * saddle->offset.y());
  return SeenCorner{index, through(h, corner + moved), std::max(0.01, pitch * saddle->sigma * pixels_per_mm)};
}

using Quad = std::array<Eigen::Vector2d, 4>;                         // pixels of the photograph
using Markers = std::map<std::pair<int, int>, std::map<int, Quad>>;  // by paper and sheet, then by slot

// Markers of the sheets in a photograph. A webcam's frame is looked at enlarged as well: a cell of a marker
// is hardly two of its pixels, and which markers are read is then chance.
Markers sheet_markers(const cv::Mat& grey) {
  const double longest = std::max(grey.cols, grey.rows), whole = std::min(1.0, kLongSide / longest);
  std::vector<double> scales{whole};
  for (const double closer : {1.5, 2.0})
    if (closer * longest <= kLongSide) scales.push_back(closer);
  Markers out;
  for (const double scale : scales) {
    cv::Mat sized = grey;
    if (scale != 1.0)
      cv::resize(grey, sized, {}, scale, scale, scale < 1.0 ? cv::INTER_AREA : cv::INTER_CUBIC);
    const Eigen::Vector2d back(static_cast<double>(grey.cols) / sized.cols,
                               static_cast<double>(grey.rows) / sized.rows);
    for (const FoundMarker& marker : find_markers(sized, MarkerFamily::paper, kShortestMarker)) {
      const auto which = sheet_marker(marker.code);
      if (!which) continue;
      Quad quad;
      for (size_t c = 0; c < 4; ++c) quad[c] = (marker.corners[c].array() + 0.5) * back.array() - 0.5;
      out[{static_cast<int>(which->paper), which->sheet}].emplace(which->slot, quad);
    }
  }
  return out;
}

std::vector<SeenCorner> refine_all(const cv::Mat& grey, const SheetLayout& layout, Homography h) {
  std::vector<SeenCorner> seen;
  for (int pass = 0; pass < 2; ++pass) {
    seen.clear();
    for (int index = 0; index < layout.corner_count(); ++index)
      if (const auto corner = refine(grey, layout, h, index)) seen.push_back(*corner);
    if (static_cast<int>(seen.size()) < kFewestCorners) return {};
    std::vector<cv::Point2d> sheet, photo;
    for (const SeenCorner& corner : seen) {
      const Eigen::Vector2d p = layout.corner(corner.index);
      sheet.emplace_back(p.x(), p.y());
      photo.emplace_back(corner.pixel.x(), corner.pixel.y());
    }
    if (const auto better = fit_homography(sheet, photo, 3.0)) h = *better;
  }
  return seen;
}

}  // namespace

std::vector<SheetView> find_sheets(const cv::Mat& grey) {
  const Markers by_sheet = sheet_markers(grey);
  std::vector<SheetView> views;
  for (const auto& [key, markers] : by_sheet) {
    const Paper paper = static_cast<Paper>(key.first);
    const SheetLayout layout = sheet_layout(paper);
    std::vector<cv::Point2d> sheet, photo;
    for (const auto& [slot, marker] : markers) {
      const auto printed = layout.marker_corners(slot);
      for (size_t c = 0; c < 4; ++c) {
        sheet.emplace_back(printed[c].x(), printed[c].y());
        photo.emplace_back(marker[c].x(), marker[c].y());
      }
    }
    const auto h = fit_homography(sheet, photo, 4.0);
    if (!h) continue;
    SheetView view{paper, key.second, refine_all(grey, layout, *h)};
    if (!view.corners.empty()) views.push_back(std::move(view));
  }
  return views;
}

}  // namespace cowlcast::calibration
