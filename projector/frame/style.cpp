#include "projector/frame/style.h"

#include <QColor>
#include <algorithm>
#include <array>
#include <cmath>
#include <initializer_list>

namespace cowlcast::projector {
namespace {

std::array<double, 3> linear(QRgb colour) {
  const auto channel = [](int value) {
    const double share = value / 255.0;
    return share <= 0.04045 ? share / 12.92 : std::pow((share + 0.055) / 1.055, 2.4);
  };
  return {channel(qRed(colour)), channel(qGreen(colour)), channel(qBlue(colour))};
}

double luminance(const std::array<double, 3>& rgb) {
  return 0.2126 * rgb[0] + 0.7152 * rgb[1] + 0.0722 * rgb[2];
}

// The eye adapts to the cloth: what the cloth sends back of white light counts as 1.
double seen(QRgb light, QRgb cloth, double room) {
  const std::array<double, 3> beam = linear(light), surface = linear(cloth);
  std::array<double, 3> back{};
  for (size_t i = 0; i < 3; ++i) back[i] = (beam[i] + room) * (surface[i] + 0.01);
  std::array<double, 3> white{};
  for (size_t i = 0; i < 3; ++i) white[i] = surface[i] + 0.01;
  return luminance(back) / luminance(white);
}

// The light that the cloth sends back, white paper in the projector's light being 1.
double sent_back(QRgb light, QRgb cloth, double room) {
  const std::array<double, 3> beam = linear(light), surface = linear(cloth);
  std::array<double, 3> back{};
  for (size_t i = 0; i < 3; ++i) back[i] = (beam[i] + room) * (surface[i] + 0.01);
  return luminance(back);
}

// Tells itself from the ground, and every colour of the cloth sends back most of it.
QRgb first_that_stands_out(std::initializer_list<QRgb> colours, QRgb ground, const std::vector<QRgb>& cloth) {
  for (const QRgb colour : colours)
    if (std::all_of(cloth.begin(), cloth.end(), [&](QRgb patch) {
          return contrast_on_cloth(colour, ground, patch) >= 3.0 && seen(colour, patch, 0.0) >= 0.6;
        }))
      return colour;
  return 0xffe0e0e0;
}

constexpr double kDarkCloth = 0.12;  // relative luminance: black, navy and strong reds are below

}  // namespace

double relative_luminance(QRgb colour) {
  return luminance(linear(colour));
}

double contrast_on_cloth(QRgb light, QRgb other, QRgb cloth, double room) {
  const double a = seen(light, cloth, room) + 0.05, b = seen(other, cloth, room) + 0.05;
  return a > b ? a / b : b / a;
}

double contrast_in_room(QRgb light, QRgb other, QRgb cloth, double room) {
  const double a = sent_back(light, cloth, room), b = sent_back(other, cloth, room);
  const double glare = 0.05 * std::max({0.9 * room, a, b});
  return (std::max(a, b) + glare) / (std::min(a, b) + glare);
}

FrameStyle style_for_cloth(QRgb cloth) {
  return style_for_cloth(std::vector<QRgb>{cloth});
}

FrameStyle style_for_cloth(const std::vector<QRgb>& cloth) {
  FrameStyle style;
  if (cloth.size() > 1) {
    style.ground = 0xff000000;
    style.label_height *= 1.3;
    style.word_height *= 1.3;
  }
  const bool dark = std::any_of(cloth.begin(), cloth.end(),
                                [](QRgb patch) { return relative_luminance(patch) < kDarkCloth; });
  if (dark || cloth.size() > 1)
    for (double* width : {&style.cut_width, &style.seam_width, &style.mark_width}) *width *= 1.5;
  style.seam = first_that_stands_out({0xffffd24a, 0xffa8f0ff, 0xffd8ffb8}, style.ground, cloth);
  style.guide = first_that_stands_out({0xff7fdcff, 0xffffb8dc, 0xffffe6a0}, style.ground, cloth);
  style.words = cloth.size() > 1 ? style.cut : style.guide;
  style.warn = first_that_stands_out({0xffffa040, 0xffffc860, 0xffc8dcff}, style.ground, cloth);
  return style;
}

bool wants_dim_room(const FrameStyle& style, const std::vector<QRgb>& cloth, double room) {
  for (const QRgb patch : cloth)
    for (const QRgb light : {style.cut, style.seam, style.guide, style.warn})
      if (contrast_in_room(light, style.ground, patch, room) < 3.0) return true;
  return false;
}

}  // namespace cowlcast::projector
