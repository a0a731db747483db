#include "projector/frame/style.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <vector>

namespace cowlcast::projector {
namespace {

TEST(Style, RelativeLuminanceIsThatOfWcag) {
  // WCAG 2.2, relative luminance: 0 for black, 1 for white; the weights are those of the primaries.
  EXPECT_DOUBLE_EQ(relative_luminance(0xff000000), 0.0);
  EXPECT_NEAR(relative_luminance(0xffffffff), 1.0, 1e-12);
  EXPECT_NEAR(relative_luminance(0xffff0000), 0.2126, 1e-12);
  EXPECT_NEAR(relative_luminance(0xff00ff00), 0.7152, 1e-12);
  // #767676 is the darkest grey that keeps 4.5:1 on white: widely quoted, value from memory.
  EXPECT_NEAR(1.05 / (relative_luminance(0xff767676) + 0.05), 4.54, 0.01);
}

TEST(Style, EveryLineStandsOutOnEveryClothAtLeastThreeToOne) {
  // WCAG 2.2, 1.4.11: graphics 3:1.
  for (const QRgb cloth : {0xff101010u, 0xfff4f4f0u, 0xff808080u, 0xffb01828u, 0xff18244cu, 0xff2c6b3cu,
                           0xffe8c83cu, 0xff8a3a4cu, 0xff0000ffu, 0xff00ff00u, 0xffff0000u}) {
    const FrameStyle style = style_for_cloth(cloth);
    for (const QRgb light : {style.cut, style.seam, style.guide, style.warn})
      EXPECT_GE(contrast_on_cloth(light, style.ground, cloth), 3.0) << std::hex << cloth << ' ' << light;
  }
}

TEST(Style, EveryLineStandsOutOnEachColourOfAPattern) {
  const std::vector<std::vector<QRgb>> patterns{{0xff18244cu, 0xfff4f4f0u},
                                                {0xffb01828u, 0xfff4f4f0u, 0xff101010u},
                                                {0xff2c6b3cu, 0xffe8c83cu},
                                                {0xff0000ffu, 0xffe8c83cu}};
  for (const std::vector<QRgb>& pattern : patterns) {
    const FrameStyle style = style_for_cloth(pattern);
    for (const QRgb patch : pattern)
      for (const QRgb light : {style.cut, style.seam, style.guide, style.words, style.warn})
        EXPECT_GE(contrast_on_cloth(light, style.ground, patch), 3.0) << std::hex << patch << ' ' << light;
    EXPECT_EQ(style.words, 0xffffffffu)
        << "letters are cut up by the print: nothing but white is strong enough";
    EXPECT_GT(style.cut_width, style_for_cloth(0xff808080u).cut_width);
  }
}

// A light on a cloth as it is seen by an eye that lacks one kind of cone. Machado, Oliveira and Fernandes, "A
// physiologically-based model for simulation of color vision deficiency" (2009), severity 1, matrices from
// memory.
struct Eye {
  const char* name;
  double row[3][3];
};
constexpr Eye kEyes[] = {
    {"protanope",
     {{0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}}},
    {"deuteranope",
     {{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}}},
    {"tritanope",
     {{1.255528, -0.076749, -0.178779}, {-0.078411, 0.930809, 0.147602}, {0.004733, 0.691367, 0.303900}}}};

double luminance_to(const Eye& eye, QRgb light, QRgb cloth) {
  const auto linear = [](int value) {
    const double share = value / 255.0;
    return share <= 0.04045 ? share / 12.92 : std::pow((share + 0.055) / 1.055, 2.4);
  };
  const double room = 0.15;
  const double back[3] = {(linear(qRed(light)) + room) * (linear(qRed(cloth)) + 0.01),
                          (linear(qGreen(light)) + room) * (linear(qGreen(cloth)) + 0.01),
                          (linear(qBlue(light)) + room) * (linear(qBlue(cloth)) + 0.01)};
  const double weight[3] = {0.2126, 0.7152, 0.0722};
  double sum = 0.0;
  for (int i = 0; i < 3; ++i)
    for (int j = 0; j < 3; ++j) sum += weight[i] * eye.row[i][j] * back[j];
  return std::max(0.0, sum);
}

TEST(Style, LinesStandOutToColourBlindEyes) {
  for (const QRgb cloth : {0xff101010u, 0xfff4f4f0u, 0xff808080u, 0xffb01828u, 0xff18244cu, 0xff2c6b3cu,
                           0xffe8c83cu, 0xff8a3a4cu}) {
    const FrameStyle style = style_for_cloth(cloth);
    for (const Eye& eye : kEyes) {
      const double white = luminance_to(eye, 0xffffffffu, cloth) / 1.15;  // the eye is set to the cloth
      for (const QRgb light : {style.cut, style.seam, style.guide, style.warn}) {
        const double line = luminance_to(eye, light, cloth) / white,
                     ground = luminance_to(eye, style.ground, cloth) / white;
        EXPECT_GE((line + 0.05) / (ground + 0.05), 3.0)
            << eye.name << ' ' << std::hex << cloth << ' ' << light;
      }
    }
  }
}

TEST(Style, ADimRoomIsAskedForOnDarkClothAlone) {
  for (const QRgb dark : {0xff101010u, 0xff181818u, 0xff18244cu}) {
    const FrameStyle style = style_for_cloth(dark);
    EXPECT_TRUE(wants_dim_room(style, {dark})) << std::hex << dark;
    EXPECT_FALSE(wants_dim_room(style, {dark}, 0.03)) << "and a dim room mends it";
  }
  for (const QRgb light : {0xfff4f4f0u, 0xff808080u, 0xffe8c83cu})
    EXPECT_FALSE(wants_dim_room(style_for_cloth(light), {light})) << std::hex << light;
}

TEST(Style, BlueLightIsLostOnYellowCloth) {
  EXPECT_LT(contrast_on_cloth(0xff0000ff, 0xff000000, 0xffe8c83c),
            0.5 * contrast_on_cloth(0xffffff00, 0xff000000, 0xffe8c83c));
}

}  // namespace
}  // namespace cowlcast::projector
