#include "calibration/virtual_table/top_view.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "calibration/virtual_table/photograph.h"
#include "calibration/virtual_table/renderer.h"
#include "calibration/virtual_table/tone.h"

namespace cowlcast::calibration::virtual_table {

cv::Mat top_view(const Room& room, const TopView& top, const cv::Mat& picture) {
  View view;
  view.width = static_cast<int>(std::lround(top.width * top.pixels_per_mm));
  view.height = static_cast<int>(std::lround(top.height * top.pixels_per_mm));
  if (view.width < 1 || view.height < 1) throw std::invalid_argument("the view from above has no pixels");
  view.sight = [top](const Eigen::Vector2d& pixel) -> std::optional<Sight> {
    const double x = top.left + (pixel.x() + 0.5) / top.pixels_per_mm;
    const double y = top.bottom + top.height - (pixel.y() + 0.5) / top.pixels_per_mm;
    return Sight{{x, y, 1e5}, {0.0, 0.0, -1.0}};
  };
  const cv::Mat light = render(room, view, picture);
  const double white = white_level(light);
  cv::Mat seen(light.size(), CV_8UC3);
  for (int y = 0; y < seen.rows; ++y)
    for (int k = 0; k < 3 * seen.cols; ++k)
      seen.ptr<std::uint8_t>(y)[k] = toned(light.ptr<float>(y)[k] / static_cast<float>(white));
  return seen;
}

}  // namespace cowlcast::calibration::virtual_table
