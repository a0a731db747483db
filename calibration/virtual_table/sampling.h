// Bilinear sampling of one texture level, written to be inlined. Internal.
#pragma once

#include <algorithm>
#include <cmath>
#include <opencv2/core.hpp>

namespace cowlcast::calibration::virtual_table {

/// A level's data with the bounds checked once: coordinates of its own texels, held at the borders.
template <typename Value>
struct Level {
  const Value* data = nullptr;
  int stride = 0, channels = 1;
  float last_x = 0.0f, last_y = 0.0f;

  explicit Level(const cv::Mat& image)
      : data(image.ptr<Value>()),
        stride(static_cast<int>(image.step1())),
        channels(image.channels()),
        last_x(static_cast<float>(image.cols) - 1.0f),
        last_y(static_cast<float>(image.rows) - 1.0f) {}

  /// Index of the texel up and left, and the weights of its three neighbours.
  struct Spot {
    const Value* at;
    int right, below;
    float fx, fy;
  };
  Spot spot(float x, float y) const {
    x = std::clamp(x, 0.0f, last_x);
    y = std::clamp(y, 0.0f, last_y);
    const int ix = static_cast<int>(x), iy = static_cast<int>(y);
    return {data + iy * stride + ix * channels, static_cast<float>(ix) < last_x ? channels : 0,
            static_cast<float>(iy) < last_y ? stride : 0, x - static_cast<float>(ix),
            y - static_cast<float>(iy)};
  }
  static float value(const Spot& s, int channel = 0) {
    const Value* p = s.at + channel;
    const float above =
        static_cast<float>(p[0]) + s.fx * (static_cast<float>(p[s.right]) - static_cast<float>(p[0]));
    const Value* q = p + s.below;
    const float beneath =
        static_cast<float>(q[0]) + s.fx * (static_cast<float>(q[s.right]) - static_cast<float>(q[0]));
    return above + s.fy * (beneath - above);
  }
};

/// Brings a coordinate of a pattern that repeats every `side` into 0 .. side.
inline float repeated(float x, float side) {
  x -= side * static_cast<float>(static_cast<int>(x / side));
  return x < 0.0f ? x + side : x;
}

}  // namespace cowlcast::calibration::virtual_table
