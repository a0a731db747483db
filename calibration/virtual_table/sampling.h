// Bilinear sampling of one texture level, sixteen places at a time. Internal.
//
// Written as short loops over fixed arrays so that compilers make vector code of
// all but the fetching itself: this is where a photograph's time goes.
#pragma once

#include <algorithm>
#include <array>
#include <cstddef>
#include <opencv2/core.hpp>

namespace cowlcast::calibration::virtual_table {

constexpr std::size_t run_length = 16;  ///< samples shaded together
using RunValues = std::array<float, run_length>;

/// A level's data; places are texels of its own, held at the borders.
template <typename Value>
class Level {
 public:
  explicit Level(const cv::Mat& image)
      : data_(image.ptr<Value>()),
        stride_(static_cast<int>(image.step1())),
        channels_(image.channels()),
        right_(image.cols > 1 ? image.channels() : 0),
        below_(image.rows > 1 ? stride_ : 0),
        last_x_(std::max(static_cast<float>(image.cols) - 1.001f, 0.0f)),
        last_y_(std::max(static_cast<float>(image.rows) - 1.001f, 0.0f)) {}

  int channels() const { return channels_; }

  /// Looks up one channel, or as many as `out` has places for.
  void sample(const RunValues& x, const RunValues& y, RunValues* out, int wanted = 1) const {
    std::array<int, run_length> at;
    RunValues fx, fy;
    for (std::size_t k = 0; k < run_length; ++k) {
      const float cx = std::min(std::max(x[k], 0.0f), last_x_), cy = std::min(std::max(y[k], 0.0f), last_y_);
      const int ix = static_cast<int>(cx), iy = static_cast<int>(cy);
      fx[k] = cx - static_cast<float>(ix);
      fy[k] = cy - static_cast<float>(iy);
      at[k] = iy * stride_ + ix * channels_;
    }
    for (int c = 0; c < wanted; ++c) {
      RunValues p, q, r, s;
      for (std::size_t k = 0; k < run_length; ++k) {
        const Value* texel = data_ + at[k] + c;
        p[k] = static_cast<float>(texel[0]);
        q[k] = static_cast<float>(texel[right_]);
        r[k] = static_cast<float>(texel[below_]);
        s[k] = static_cast<float>(texel[below_ + right_]);
      }
      for (std::size_t k = 0; k < run_length; ++k) {
        const float above = p[k] + fx[k] * (q[k] - p[k]), beneath = r[k] + fx[k] * (s[k] - r[k]);
        out[c][k] = above + fy[k] * (beneath - above);
      }
    }
  }

 private:
  const Value* data_;
  int stride_, channels_, right_, below_;
  float last_x_, last_y_;
};

/// out[i] = sum over k of weights[k] * in[k][i], for i below `count`: a blur along whatever the rows stand
/// for.
inline void weighted_sum(const float* const* in, const float* weights, int taps, float* out, int count) {
  constexpr int block = 512;  // stays in the nearest cache while all rows are added
  for (int from = 0; from < count; from += block) {
    const int length = std::min(block, count - from);
    float* sum = out + from;
    std::fill(sum, sum + length, 0.0f);
    int k = 0;
    for (; k + 1 < taps; k += 2) {
      const float *first = in[k] + from, *second = in[k + 1] + from;
      const float a = weights[k], b = weights[k + 1];
      for (int i = 0; i < length; ++i) sum[i] += a * first[i] + b * second[i];
    }
    if (k < taps)
      for (int i = 0; i < length; ++i) sum[i] += weights[k] * in[k][from + i];
  }
}

/// Brings a coordinate of a pattern that repeats every `side` into 0 .. side.
inline float repeated(float x, float side) {
  x -= side * static_cast<float>(static_cast<int>(x / side));
  return x < 0.0f ? x + side : x;
}

/// Where place `a` mm along a surface is on a level with `texels` to a millimetre.
inline RunValues on_level(const RunValues& a, float texels) {
  RunValues out;
  for (std::size_t k = 0; k < run_length; ++k) out[k] = a[k] * texels - 0.5f;
  return out;
}

}  // namespace cowlcast::calibration::virtual_table
