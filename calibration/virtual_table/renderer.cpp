#include "calibration/virtual_table/renderer.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <memory>
#include <numbers>
#include <vector>

#include "calibration/virtual_table/sampling.h"
#include "calibration/virtual_table/surfaces.h"
#include "calibration/virtual_table/textures.h"

namespace cowlcast::calibration::virtual_table {

namespace {

constexpr int tile = 8;                 // pixels between nodes
constexpr int sub = run_length / tile;  // samples a pixel, along each axis
static_assert(sub == 2, "the blur below sorts samples into even and odd");

// What is known exactly at a corner of a tile and interpolated inside.
struct Node {
  float a = 0, b = 0;                    // on the surface, mm
  float u = 0, v = 0;                    // on the beam's texture, texels of its level
  float ambient = 0, beam = 0;           // lux
  float lamp_shine = 0, beam_shine = 0;  // lux mirrored towards the eye
  bool seen = false;
};

Node mix(const Node& p, const Node& q, float t) {
  const auto blend = [t](float x, float y) { return x + t * (y - x); };
  return {blend(p.a, q.a),
          blend(p.b, q.b),
          blend(p.u, q.u),
          blend(p.v, q.v),
          blend(p.ambient, q.ambient),
          blend(p.beam, q.beam),
          blend(p.lamp_shine, q.lamp_shine),
          blend(p.beam_shine, q.beam_shine),
          true};
}

// The light that falls on a point, from room and projector.
class Lighting {
 public:
  Lighting(const Room& room, const cv::Mat& picture) : room_(room) {
    const RoomProjector& p = room.projector;
    if (!picture.empty()) beam_ = beam_texture(p, picture);
    room_from_projector_ = p.projector_from_room.inverse();
    const Eigen::Vector2d middle(0.5 * (p.width - 1), 0.5 * (p.height - 1));
    middle_ = middle;
    corner2_ = middle.squaredNorm();
  }

  bool on() const { return !beam_.light.levels.empty(); }
  const Pyramid& beam() const { return beam_.light; }
  double texels() const { return static_cast<double>(beam_.texels); }
  // Light scattered evenly over the table.
  float bounce() const {
    return static_cast<float>(room_.projector.bounce * room_.projector.white_lux) * beam_.mean;
  }

  void light(const Meeting& meeting, const Eigen::Vector3d& eye, const Surface& surface, float scale,
             Node& node) const {
    const Eigen::Vector3d& point = meeting.room;
    float ambient_left = 1.0f, beam_left = 1.0f;
    for (const Shadow& shadow : room_.light.shadows) {
      const float dark = shadow_at(shadow, point.head<2>());
      ambient_left *= 1.0f - dark * (1.0f - shadow.ambient_left);
      beam_left *= 1.0f - dark * (1.0f - shadow.projector_left);
    }
    const double slope = 1.0 + 1e-3 * room_.light.gradient.dot(point.head<2>());
    node.ambient = ambient_left * static_cast<float>(room_.light.lux * std::max(slope, 0.0));
    const Eigen::Vector3d to_eye = (eye - point).normalized();
    if (room_.light.lamp && surface.gloss > 0.0f)
      node.lamp_shine = node.ambient * shine(surface, (*room_.light.lamp - point).normalized(), to_eye);
    if (!on()) return;
    const RoomProjector& p = room_.projector;
    const Eigen::Vector3d local = p.projector_from_room * point;
    node.u = node.v = -1e6f;
    if (local.z() <= 1.0) return;
    const Eigen::Vector2d ray(local.x() / local.z(), local.y() / local.z());
    if (!p.optic.covers(ray)) return;
    const Eigen::Vector2d pixel = p.optic.pixel_from_ray(ray);
    const double texel = texels() * static_cast<double>(scale);
    node.u = static_cast<float>((pixel.x() + 0.5 + static_cast<double>(beam_.margin)) * texel - 0.5);
    node.v = static_cast<float>((pixel.y() + 0.5 + static_cast<double>(beam_.margin)) * texel - 0.5);
    // A pixel's light spreads over (z / f)^2 square to the axis, and over cos(axis) / cos(fall) times that
    // here.
    const Eigen::Vector3d to_lens = (room_from_projector_.translation() - point).normalized();
    const double along_axis = 1.0 / std::sqrt(1.0 + ray.squaredNorm());
    const double nearness = p.reference / local.z();
    const double edge = 1.0 - p.vignetting * std::min((pixel - middle_).squaredNorm() / corner2_, 1.5);
    const double lux = p.white_lux * nearness * nearness * std::max(to_lens.z(), 0.0) / along_axis * edge;
    node.beam = beam_left * static_cast<float>(lux);
    if (surface.gloss > 0.0f) node.beam_shine = node.beam * shine(surface, to_lens, to_eye);
  }

 private:
  // Share of a shadow's full darkness at a point.
  static float shadow_at(const Shadow& shadow, const Eigen::Vector2d& point) {
    const Eigen::Vector2d d =
        Eigen::Rotation2Dd(-shadow.place.turn) * (point - Eigen::Vector2d(shadow.place.x, shadow.place.y));
    const double radius = d.cwiseQuotient(shadow.radii).norm();  // 1 on the edge
    const double softness = std::max(shadow.softness, 1e-3) / shadow.radii.minCoeff();
    const double t = std::clamp(0.5 + (1.0 - radius) / softness, 0.0, 1.0);
    return static_cast<float>(t * t * (3.0 - 2.0 * t));
  }
  // A bell-shaped highlight about the mirror direction.
  static float shine(const Surface& surface, const Eigen::Vector3d& to_light, const Eigen::Vector3d& to_eye) {
    const double off = std::acos(std::clamp((to_light + to_eye).normalized().z(), -1.0, 1.0)) /
                       static_cast<double>(surface.gloss_width);
    const double height = 0.25 / static_cast<double>(surface.gloss_width * surface.gloss_width);
    return surface.gloss * static_cast<float>(height * std::exp(-off * off));
  }

  const Room& room_;
  BeamTexture beam_;
  Eigen::Isometry3d room_from_projector_;
  Eigen::Vector2d middle_;
  double corner2_ = 1.0;
};

// One surface with its nodes where the view meets it.
struct Layer {
  std::unique_ptr<Surface> surface;
  std::vector<Node> nodes;          // all of the grid; left unseen where not needed
  std::vector<std::uint8_t> tiles;  // 0: not here; 1: in part; 2: covers the whole tile
};

class Engine {
 public:
  Engine(const Room& room, const View& view, const cv::Mat& picture)
      : room_(room), view_(view), lighting_(room, picture) {
    reach_ = static_cast<int>(std::ceil(3.0 * view.blur + 0.5));
    margin_ = (reach_ + tile - 1) / tile * tile;
    columns_ = (view.width + 2 * margin_ + tile - 1) / tile;
    rows_ = (view.height + 2 * margin_ + tile - 1) / tile;
    make_weights();
    look();
    for (auto& surface : surfaces_of(room)) add_layer(std::move(surface));
    for (int c = 0; c < 3; ++c) {
      ambient_tint_[c] = room.light.tint[c];
      beam_tint_[c] = room.projector.tint[c];
    }
  }

  cv::Mat run() {
    cv::Mat out(view_.height, view_.width, CV_32FC3);
    const int stripes = std::clamp(view_.height / 128, 1, 16);
    cv::parallel_for_(cv::Range(0, stripes), [&](const cv::Range& range) {
      for (int stripe = range.start; stripe < range.end; ++stripe)
        render_rows(out, view_.height * stripe / stripes, view_.height * (stripe + 1) / stripes);
    });
    return out;
  }

 private:
  std::size_t node_index(int column, int row) const {
    return static_cast<std::size_t>(row) * static_cast<std::size_t>(columns_ + 1) +
           static_cast<std::size_t>(column);
  }
  std::size_t tile_index(int column, int row) const {
    return static_cast<std::size_t>(row) * static_cast<std::size_t>(columns_) +
           static_cast<std::size_t>(column);
  }
  // Nodes stand on the pixels' edges, so that samples lie evenly in a tile.
  Eigen::Vector2d pixel_of_node(int column, int row) const {
    return {column * tile - margin_ - 0.5, row * tile - margin_ - 0.5};
  }

  // Weight of a sample `offset` pixels from a pixel's centre: the pixel's square blurred.
  void make_weights() {
    const double blur = std::max(view_.blur, 1e-3);
    const auto below = [&](double x) { return 0.5 * std::erfc(-x / blur / std::numbers::sqrt2); };
    double sum = 0.0;
    std::vector<double> exact;
    for (int k = -2 * reach_; k < 2 * reach_ + sub; ++k) {
      const double offset = (k + 0.5) / sub - 0.5;
      exact.push_back(below(offset + 0.5) - below(offset - 0.5));
      sum += exact.back();
    }
    for (double value : exact) weights_.push_back(static_cast<float>(value / sum));
  }

  // Lines of sight of all nodes, and how far apart samples are on the mat.
  void look() {
    sights_.resize(node_index(0, rows_ + 1));
    cv::parallel_for_(cv::Range(0, rows_ + 1), [&](const cv::Range& range) {
      for (int row = range.start; row < range.end; ++row)
        for (int column = 0; column <= columns_; ++column)
          sights_[node_index(column, row)] = view_.sight(pixel_of_node(column, row));
    });
  }

  void add_layer(std::unique_ptr<Surface> surface) {
    Layer layer;
    layer.nodes.resize(sights_.size());
    layer.tiles.assign(static_cast<std::size_t>(columns_) * static_cast<std::size_t>(rows_), 0);
    cv::parallel_for_(cv::Range(0, rows_ + 1), [&](const cv::Range& range) {
      for (int row = range.start; row < range.end; ++row)
        for (int column = 0; column <= columns_; ++column) {
          const auto& sight = sights_[node_index(column, row)];
          const auto meeting = sight ? surface->meet(*sight) : std::nullopt;
          if (!meeting) continue;
          Node& node = layer.nodes[node_index(column, row)];
          node.a = static_cast<float>(meeting->own.x());
          node.b = static_cast<float>(meeting->own.y());
          node.seen = true;
        }
    });
    const Eigen::Vector2f size = surface->size.cast<float>();
    std::vector<float> apart;
    for (int row = 0; row < rows_; ++row)
      for (int column = 0; column < columns_; ++column) {
        const Node* n[4] = {&layer.nodes[node_index(column, row)], &layer.nodes[node_index(column + 1, row)],
                            &layer.nodes[node_index(column, row + 1)],
                            &layer.nodes[node_index(column + 1, row + 1)]};
        if (!(n[0]->seen && n[1]->seen && n[2]->seen && n[3]->seen)) continue;
        float low_a = n[0]->a, high_a = low_a, low_b = n[0]->b, high_b = low_b;
        for (const Node* node : n) {
          low_a = std::min(low_a, node->a);
          high_a = std::max(high_a, node->a);
          low_b = std::min(low_b, node->b);
          high_b = std::max(high_b, node->b);
        }
        const float soft = 0.1f * std::max(high_a - low_a, high_b - low_b);
        const bool outside =
            high_a < -soft || low_a > size.x() + soft || high_b < -soft || low_b > size.y() + soft;
        const bool inside =
            low_a > soft && high_a < size.x() - soft && low_b > soft && high_b < size.y() - soft;
        if (outside && !surface->endless) continue;
        layer.tiles[tile_index(column, row)] = inside || surface->endless ? 2 : 1;
        if (!outside && ((row + column) % 7) == 0)
          apart.push_back(std::hypot(n[1]->a - n[0]->a, n[1]->b - n[0]->b) / static_cast<float>(run_length));
      }
    double footprint = 0.1;
    if (!apart.empty()) {
      std::nth_element(apart.begin(), apart.begin() + static_cast<std::ptrdiff_t>(apart.size() / 2),
                       apart.end());
      footprint = static_cast<double>(apart[apart.size() / 2]);
    }
    surface->prepare(footprint);
    if (layers_.empty()) choose_beam_level(footprint);
    layer.surface = std::move(surface);
    light_layer(layer);
    layers_.push_back(std::move(layer));
  }

  // The level of the beam's texture whose texels, on the mat, are no wider than the samples.
  void choose_beam_level(double footprint) {
    if (!lighting_.on()) return;
    const RoomProjector& p = room_.projector;
    const double distance = std::abs(p.projector_from_room.translation().z());
    const double texel = std::max(distance, 1.0) / p.optic.focal.x() / lighting_.texels();
    beam_level_ = lighting_.beam().level_for(footprint / texel);
  }

  void light_layer(Layer& layer) const {
    const float scale = 1.0f / static_cast<float>(1 << beam_level_);
    cv::parallel_for_(cv::Range(0, rows_ + 1), [&](const cv::Range& range) {
      for (int row = range.start; row < range.end; ++row)
        for (int column = 0; column <= columns_; ++column) {
          bool needed = false;
          for (int k = 0; k < 4 && !needed; ++k) {
            const int c = column - (k & 1), r = row - (k >> 1);
            needed = c >= 0 && r >= 0 && c < columns_ && r < rows_ && layer.tiles[tile_index(c, r)] != 0;
          }
          if (!needed) continue;
          const Sight& sight = *sights_[node_index(column, row)];
          const auto meeting = layer.surface->meet(sight);
          if (meeting)
            lighting_.light(*meeting, sight.from, *layer.surface, scale,
                            layer.nodes[node_index(column, row)]);
        }
    });
  }

  // Samples of one row of one tile, blue green red.
  void shade_tile(int column, int row, float down, float flicker, float* const samples[3]) const {
    for (int c = 0; c < 3; ++c) std::fill(samples[c], samples[c] + run_length, 0.0f);
    std::size_t first = 0;
    for (std::size_t l = 0; l < layers_.size(); ++l)
      if (layers_[l].tiles[tile_index(column, row)] == 2) first = l;
    const float bounce = lighting_.bounce();
    for (std::size_t l = first; l < layers_.size(); ++l) {
      const Layer& layer = layers_[l];
      if (layer.tiles[tile_index(column, row)] == 0) continue;
      const Node left =
          mix(layer.nodes[node_index(column, row)], layer.nodes[node_index(column, row + 1)], down);
      const Node right =
          mix(layer.nodes[node_index(column + 1, row)], layer.nodes[node_index(column + 1, row + 1)], down);
      Run run;
      std::array<float, run_length> u, v, ambient, beam;
      for (std::size_t k = 0; k < run_length; ++k) {
        const float t = (static_cast<float>(k) + 0.5f) / static_cast<float>(run_length);
        run.a[k] = left.a + t * (right.a - left.a);
        run.b[k] = left.b + t * (right.b - left.b);
        u[k] = left.u + t * (right.u - left.u);
        v[k] = left.v + t * (right.v - left.v);
        ambient[k] = left.ambient + t * (right.ambient - left.ambient);
        beam[k] = flicker * (left.beam + t * (right.beam - left.beam));
      }
      run.footprint =
          std::max(std::hypot(right.a - left.a, right.b - left.b) / static_cast<float>(run_length), 1e-4f);
      layer.surface->shade(run);
      const std::array<float, run_length>* albedo[3] = {&run.blue, &run.green, &run.red};
      const bool glossy = layer.surface->gloss > 0.0f;
      const cv::Mat* texture =
          lighting_.on() ? &lighting_.beam().levels[static_cast<std::size_t>(beam_level_)] : nullptr;
      const bool lit = texture && reaches(left, right, *texture);
      for (std::size_t k = 0; k < run_length; ++k) {
        if (run.cover[k] <= 0.0f) continue;
        float light[3] = {0.0f, 0.0f, 0.0f};
        if (lit && inside(u[k], v[k], *texture)) {
          const Level<float> level(*texture);
          const auto spot = level.spot(u[k], v[k]);
          for (int c = 0; c < 3; ++c)
            light[c] = c > 0 && level.channels == 1 ? light[0] : Level<float>::value(spot, c);
        }
        const float t = (static_cast<float>(k) + 0.5f) / static_cast<float>(run_length);
        const float lamp_shine = glossy ? left.lamp_shine + t * (right.lamp_shine - left.lamp_shine) : 0.0f;
        const float beam_shine =
            glossy ? flicker * (left.beam_shine + t * (right.beam_shine - left.beam_shine)) : 0.0f;
        for (int c = 0; c < 3; ++c) {
          const float tint = beam_tint_[2 - c], room_tint = ambient_tint_[2 - c];
          const float fall = room_tint * ambient[k] + tint * (beam[k] * light[c] + bounce);
          const float leaving =
              (*albedo[c])[k] * fall + room_tint * lamp_shine + tint * beam_shine * light[c];
          samples[c][k] += run.cover[k] * (leaving - samples[c][k]);
        }
      }
    }
  }

  static bool inside(float u, float v, const cv::Mat& texture) {
    return u > -1.0f && v > -1.0f && u < static_cast<float>(texture.cols) &&
           v < static_cast<float>(texture.rows);
  }
  // Whether any of the picture's light can fall between two nodes; not where the lens answers for one alone.
  static bool reaches(const Node& left, const Node& right, const cv::Mat& texture) {
    if (left.u < -1e5f || right.u < -1e5f) return false;
    return std::max(left.u, right.u) > -1.0f && std::max(left.v, right.v) > -1.0f &&
           std::min(left.u, right.u) < static_cast<float>(texture.cols) &&
           std::min(left.v, right.v) < static_cast<float>(texture.rows);
  }

  // Renders output rows [from, to): samples a row at a time, blurred along it at once
  // and kept just long enough to be blurred down the column.
  void render_rows(cv::Mat& out, int from, int to) const {
    const int taps = static_cast<int>(weights_.size()), width = view_.width;
    const auto length = static_cast<std::size_t>(columns_ * tile);
    std::vector<float> even[3], odd[3];
    for (int c = 0; c < 3; ++c) {
      even[c].resize(length);
      odd[c].resize(length);
    }
    std::vector<float> ring(static_cast<std::size_t>(taps) * 3 * static_cast<std::size_t>(width));
    const auto kept = [&](int sample_row, int c) {
      return ring.data() + (static_cast<std::size_t>(sample_row % taps) * 3 + static_cast<std::size_t>(c)) *
                               static_cast<std::size_t>(width);
    };
    std::vector<float> column(static_cast<std::size_t>(width));
    const int first = sub * (from + margin_ - reach_), last = sub * (to + margin_ + reach_);
    for (int sample_row = first; sample_row < last; ++sample_row) {
      const int tile_row = sample_row / run_length;
      const float down =
          (static_cast<float>(sample_row % run_length) + 0.5f) / static_cast<float>(run_length);
      const double pixel_row = (sample_row + 0.5) / sub - 0.5 - margin_;
      const auto flicker =
          static_cast<float>(1.0 + room_.projector.flicker * std::sin(2.0 * std::numbers::pi * pixel_row /
                                                                          room_.projector.flicker_rows +
                                                                      view_.flicker_phase));
      for (int tile_column = 0; tile_column < columns_; ++tile_column) {
        float buffer[3][run_length];
        float* const samples[3] = {buffer[0], buffer[1], buffer[2]};
        shade_tile(tile_column, tile_row, down, flicker, samples);
        for (int c = 0; c < 3; ++c)
          for (int k = 0; k < tile; ++k) {
            even[c][static_cast<std::size_t>(tile_column * tile + k)] = buffer[c][2 * k];
            odd[c][static_cast<std::size_t>(tile_column * tile + k)] = buffer[c][2 * k + 1];
          }
      }
      for (int c = 0; c < 3; ++c) {
        float* row = kept(sample_row, c);
        std::fill(row, row + width, 0.0f);
        for (int k = 0; k < taps; ++k) {
          const float w = weights_[static_cast<std::size_t>(k)];
          const float* in = (k % 2 == 0 ? even[c] : odd[c]).data() + margin_ - reach_ + k / 2;
          for (int i = 0; i < width; ++i) row[i] += w * in[i];
        }
      }
      const int done =
          sample_row - (taps - 1);  // first row of samples of the output row that is now complete
      if (done < first || (done - first) % sub != 0) continue;
      const int out_row = from + (done - first) / sub;
      if (out_row >= to) continue;
      auto* pixels = out.ptr<float>(out_row);
      for (int c = 0; c < 3; ++c) {
        std::fill(column.begin(), column.end(), 0.0f);
        for (int k = 0; k < taps; ++k) {
          const float w = weights_[static_cast<std::size_t>(k)];
          const float* in = kept(done + k, c);
          for (int i = 0; i < width; ++i) column[static_cast<std::size_t>(i)] += w * in[i];
        }
        for (int i = 0; i < width; ++i) pixels[3 * i + c] = column[static_cast<std::size_t>(i)];
      }
    }
  }

  const Room& room_;
  const View& view_;
  Lighting lighting_;
  int reach_ = 1, margin_ = tile, columns_ = 0, rows_ = 0, beam_level_ = 0;
  std::vector<float> weights_;  // of samples, along one axis
  std::vector<std::optional<Sight>> sights_;
  std::vector<Layer> layers_;
  float ambient_tint_[3], beam_tint_[3];
};

}  // namespace

cv::Mat render(const Room& room, const View& view, const cv::Mat& picture) {
  return Engine(room, view, picture).run();
}

}  // namespace cowlcast::calibration::virtual_table
