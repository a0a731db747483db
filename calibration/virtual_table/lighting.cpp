#include "calibration/virtual_table/lighting.h"

#include <algorithm>
#include <cmath>

namespace cowlcast::calibration::virtual_table {

namespace {

// Share of a shadow's full darkness at a point.
float shadow_at(const Shadow& shadow, const Eigen::Vector2d& point) {
  const Eigen::Vector2d d =
      Eigen::Rotation2Dd(-shadow.place.turn) * (point - Eigen::Vector2d(shadow.place.x, shadow.place.y));
  const double radius = d.cwiseQuotient(shadow.radii).norm();  // 1 on the edge
  const double softness = std::max(shadow.softness, 1e-3) / shadow.radii.minCoeff();
  const double t = std::clamp(0.5 + (1.0 - radius) / softness, 0.0, 1.0);
  return static_cast<float>(t * t * (3.0 - 2.0 * t));
}

// A bell-shaped highlight about the mirror direction.
float shine(const Surface& surface, const Eigen::Vector3d& to_light, const Eigen::Vector3d& to_eye) {
  const double off = std::acos(std::clamp((to_light + to_eye).normalized().z(), -1.0, 1.0)) /
                     static_cast<double>(surface.gloss_width);
  const double height = 0.25 / static_cast<double>(surface.gloss_width * surface.gloss_width);
  return surface.gloss * static_cast<float>(height * std::exp(-off * off));
}

}  // namespace

Lighting::Lighting(const Room& room, const cv::Mat& picture)
    : room_(room),
      lens_(room.projector.projector_from_room.inverse().translation()),
      middle_(0.5 * (room.projector.width - 1), 0.5 * (room.projector.height - 1)),
      corner2_(middle_.squaredNorm()) {
  if (!picture.empty()) beam_ = beam_texture(room.projector, picture);
}

void Lighting::prepare(double footprint) {
  if (!on()) return;
  const double texel =
      std::max(lens_.z(), 1.0) / room_.projector.optic.focal.x() / static_cast<double>(beam_.texels);
  const int wanted = level_for(footprint / texel);
  beam_.light = pyramid_of(beam_.light.levels.front(), wanted + 1);
  level_ = static_cast<int>(beam_.light.levels.size()) - 1;
}

float Lighting::bounce() const {
  return static_cast<float>(room_.projector.bounce * room_.projector.white_lux) * beam_.mean;
}

void Lighting::light(const Meeting& meeting, const Eigen::Vector3d& eye, const Surface& surface,
                     Node& node) const {
  const Eigen::Vector3d& point = meeting.room;
  float ambient_left = 1.0f, beam_left = 1.0f;
  for (const Shadow& shadow : room_.light.shadows) {
    const float dark = shadow_at(shadow, point.head<2>());
    ambient_left *= 1.0f - dark * (1.0f - shadow.ambient_left);
    beam_left *= 1.0f - dark * (1.0f - shadow.projector_left);
  }
  const double here = room_.light.lux * std::exp(1e-3 * room_.light.gradient.dot(point.head<2>()));
  node.ambient = ambient_left * static_cast<float>(here);
  const Eigen::Vector3d to_eye = (eye - point).normalized();
  if (room_.light.lamp && surface.gloss > 0.0f)
    node.lamp_shine = node.ambient * shine(surface, (*room_.light.lamp - point).normalized(), to_eye);
  if (!on()) return;
  const RoomProjector& p = room_.projector;
  const Eigen::Vector3d local = p.projector_from_room * point;
  if (local.z() <= 1.0) return;
  const Eigen::Vector2d ray(local.x() / local.z(), local.y() / local.z());
  if (!p.optic.covers(ray)) return;
  const Eigen::Vector2d pixel = p.optic.pixel_from_ray(ray);
  const double texel = static_cast<double>(beam_.texels) / (1 << level_);
  const double edge_texels = 0.5 + static_cast<double>(beam_.margin);
  node.u = static_cast<float>((pixel.x() + edge_texels) * texel - 0.5);
  node.v = static_cast<float>((pixel.y() + edge_texels) * texel - 0.5);
  node.lit = true;
  // A pixel's light spreads over (z / f)^2 square to the axis, and over cos(axis) / cos(fall) times that
  // here.
  const Eigen::Vector3d to_lens = (lens_ - point).normalized();
  const double along_axis = 1.0 / std::sqrt(1.0 + ray.squaredNorm());
  const double nearness = p.reference / local.z();
  const double edge = 1.0 - p.vignetting * std::min((pixel - middle_).squaredNorm() / corner2_, 1.5);
  node.beam = beam_left * static_cast<float>(p.white_lux * nearness * nearness * std::max(to_lens.z(), 0.0) /
                                             along_axis * edge);
  if (surface.gloss > 0.0f) node.beam_shine = node.beam * shine(surface, to_lens, to_eye);
}

}  // namespace cowlcast::calibration::virtual_table
