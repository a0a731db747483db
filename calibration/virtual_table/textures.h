// Textures of the simulated room: images with their averages, made to be sampled
// at any scale without aliasing and without moving anything by part of a texel.
#pragma once

#include <cstdint>
#include <opencv2/core.hpp>
#include <vector>

#include "calibration/virtual_table/room.h"

namespace cowlcast::calibration::virtual_table {

/// Small generator with its own state (SplitMix64: Steele, Lea and Flood, "Fast splittable
/// pseudorandom number generators", OOPSLA 2014), so that the same seed gives the same room everywhere.
class Dice {
 public:
  explicit Dice(std::uint64_t seed) : state_(seed) {}
  std::uint64_t bits();
  double uniform(double low, double high);
  double normal(double sigma);  ///< Box and Muller
  int below(int n);             ///< 0 .. n - 1
  bool chance(double share) { return uniform(0.0, 1.0) < share; }

 private:
  std::uint64_t state_;
};

/// An image and its halved, quartered, ... averages. Coordinates of `sample` are
/// texels of the first level: the centre of the first texel is (0, 0).
struct Pyramid {
  std::vector<cv::Mat> levels;  ///< all of one type: 8 bit or float, 1 or 3 channels

  /// The level for samples `footprint` texels of the first apart, of those there are.
  int level_for(double footprint) const;
};

/// The level, counted from 0, whose texels are about as wide as `footprint` texels of the first.
int level_for(double footprint);

/// Halves `image` until it is small or `most` levels are made; borders are repeated.
Pyramid pyramid_of(const cv::Mat& image, int most = 6);

/// One level of a pyramid, ready for many samples.
struct Sampler {
  const cv::Mat* image = nullptr;
  float scale = 1.0f;  ///< level texels to a first-level texel

  Sampler(const Pyramid& pyramid, int level)
      : image(&pyramid.levels[static_cast<std::size_t>(level)]),
        scale(1.0f / static_cast<float>(1 << level)) {}
};

/// The linear light of a projected picture: every pixel spread as its square and
/// blur spread it. Texels are `texels` to a panel pixel and start `margin` panel pixels outside.
struct BeamTexture {
  Pyramid light;  ///< float, 1 or 3 channels; white is 1, nothing is 0
  float texels = 2.0f;
  float margin = 4.0f;
  float mean = 0.0f;  ///< mean light of the panel
};
BeamTexture beam_texture(const RoomProjector& projector, const cv::Mat& picture);

/// Linear light of the panel's pixels, black level included: float, one channel where the picture is grey;
/// electronic keystone done. Throws std::invalid_argument where the picture does not fit the projector.
cv::Mat panel_light(const RoomProjector& projector, const cv::Mat& picture);

/// Share of one pixel's light, along one axis, that falls `offset` pixels from its
/// centre: its lit width blurred; the integral over all offsets is 1.
double pixel_spread(const RoomProjector& projector, double offset);

/// Share of print at each point of the mat, 8 bit, `step` mm to a texel, first row at the far edge.
struct MatTexture {
  Pyramid print;
  double step = 0.25;
};
MatTexture mat_texture(const CuttingMat& mat);

/// Patterns of tone, 128 + 40 deviations, 8 bit, that repeat every 1024 texels; each level holds one more
/// row and column, the same as its first.
Pyramid grain_texture();             ///< fine leather-like grain, 0.3 mm to a texel
Pyramid table_texture(bool wooden);  ///< planks or weave, 0.5 mm to a texel
Pyramid knit_texture();              ///< 16 wales across: 64 texels to a wale

}  // namespace cowlcast::calibration::virtual_table
