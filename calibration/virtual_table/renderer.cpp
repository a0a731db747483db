#include "calibration/virtual_table/renderer.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <memory>
#include <numbers>
#include <vector>

#include "calibration/virtual_table/lighting.h"
#include "calibration/virtual_table/sampling.h"
#include "calibration/virtual_table/surfaces.h"
#include "calibration/virtual_table/textures.h"

namespace cowlcast::calibration::virtual_table {

namespace {

constexpr int tile = 8;  // pixels between nodes
constexpr int samples_a_tile = static_cast<int>(run_length);
constexpr int sub = samples_a_tile / tile;  // samples a pixel, along each axis
static_assert(sub == 2, "the blur below sorts samples into even and odd");

Node mix(const Node& p, const Node& q, float t) {
  const auto blend = [t](float x, float y) { return x + t * (y - x); };
  Node m;
  m.a = blend(p.a, q.a);
  m.b = blend(p.b, q.b);
  m.u = blend(p.u, q.u);
  m.v = blend(p.v, q.v);
  m.ambient = blend(p.ambient, q.ambient);
  m.beam = blend(p.beam, q.beam);
  m.lamp_shine = blend(p.lamp_shine, q.lamp_shine);
  m.beam_shine = blend(p.beam_shine, q.beam_shine);
  m.lit = p.lit && q.lit;
  return m;
}

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
    if (layers_.empty()) lighting_.prepare(footprint);
    layer.surface = std::move(surface);
    light_layer(layer);
    straighten(layer);
    layers_.push_back(std::move(layer));
  }

  // Lights all nodes of the tiles in use and the next ones around them.
  void light_layer(Layer& layer) const {
    cv::parallel_for_(cv::Range(0, rows_ + 1), [&](const cv::Range& range) {
      for (int row = range.start; row < range.end; ++row)
        for (int column = 0; column <= columns_; ++column) {
          Node& node = layer.nodes[node_index(column, row)];
          bool needed = false;
          for (int r = std::max(row - 2, 0); r <= std::min(row + 1, rows_ - 1); ++r)
            for (int c = std::max(column - 2, 0); c <= std::min(column + 1, columns_ - 1); ++c)
              needed = needed || layer.tiles[tile_index(c, r)] != 0;
          if (!needed || !node.seen) continue;
          const Sight& sight = *sights_[node_index(column, row)];
          if (const auto meeting = layer.surface->meet(sight))
            lighting_.light(*meeting, sight.from, *layer.surface, node);
        }
    });
  }

  // Straight lines between nodes on a curve lie to one side of it. Moving each node by a twelfth of
  // its second differences makes their error average to nothing over every tile.
  void straighten(Layer& layer) {
    scratch_ = layer.nodes;
    const std::vector<Node>& exact = scratch_;
    const auto stride = static_cast<std::size_t>(columns_ + 1);
    cv::parallel_for_(cv::Range(1, rows_), [&](const cv::Range& range) {
      for (int row = range.start; row < range.end; ++row)
        for (int column = 1; column < columns_; ++column) {
          const std::size_t index = node_index(column, row);
          const Node* n[4] = {&exact[index - 1], &exact[index + 1], &exact[index - stride],
                              &exact[index + stride]};
          const auto all = [&](bool Node::*flag) {
            return exact[index].*flag && n[0]->*flag && n[1]->*flag && n[2]->*flag && n[3]->*flag;
          };
          const auto move = [&](float Node::*field) {
            layer.nodes[index].*field -=
                (n[0]->*field + n[1]->*field + n[2]->*field + n[3]->*field - 4.0f * exact[index].*field) /
                12.0f;
          };
          if (all(&Node::seen)) {
            move(&Node::a);
            move(&Node::b);
          }
          if (all(&Node::lit)) {
            move(&Node::u);
            move(&Node::v);
          }
        }
    });
  }

  // Samples of one row of one tile, blue green red.
  void shade_tile(int column, int row, float down, float flicker, std::array<RunValues, 3>& samples) const {
    samples = {};
    std::size_t first = 0;
    for (std::size_t l = 0; l < layers_.size(); ++l)
      if (layers_[l].tiles[tile_index(column, row)] == 2) first = l;
    for (std::size_t l = first; l < layers_.size(); ++l) {
      const Layer& layer = layers_[l];
      if (layer.tiles[tile_index(column, row)] == 0) continue;
      const Node left =
          mix(layer.nodes[node_index(column, row)], layer.nodes[node_index(column, row + 1)], down);
      const Node right =
          mix(layer.nodes[node_index(column + 1, row)], layer.nodes[node_index(column + 1, row + 1)], down);
      Run run;
      run.a = between(left.a, right.a);
      run.b = between(left.b, right.b);
      run.footprint =
          std::max(std::hypot(right.a - left.a, right.b - left.b) / static_cast<float>(run_length), 1e-4f);
      layer.surface->shade(run);
      const RunValues ambient = between(left.ambient, right.ambient);
      const RunValues beam = between(flicker * left.beam, flicker * right.beam);
      std::array<RunValues, 3> light{};
      if (lighting_.on() && reaches(left, right, lighting_.beam())) {
        const Level<float> level(lighting_.beam());
        level.sample(between(left.u, right.u), between(left.v, right.v), light.data(), level.channels());
        if (level.channels() == 1) light[1] = light[2] = light[0];
      }
      for (std::size_t c = 0; c < 3; ++c) {
        const auto colour = static_cast<int>(2 - c);
        const float tint = room_.projector.tint[colour], room_tint = room_.light.tint[colour];
        const float bounce = tint * lighting_.bounce();
        RunValues leaving;
        for (std::size_t k = 0; k < run_length; ++k)
          leaving[k] = run.albedo[c][k] * (room_tint * ambient[k] + tint * beam[k] * light[c][k] + bounce);
        if (layer.surface->gloss > 0.0f) {
          const RunValues lamp_shine = between(left.lamp_shine, right.lamp_shine);
          const RunValues beam_shine = between(flicker * left.beam_shine, flicker * right.beam_shine);
          for (std::size_t k = 0; k < run_length; ++k)
            leaving[k] += room_tint * lamp_shine[k] + tint * beam_shine[k] * light[c][k];
        }
        for (std::size_t k = 0; k < run_length; ++k)
          samples[c][k] += run.cover[k] * (leaving[k] - samples[c][k]);
      }
    }
  }

  static RunValues between(float left, float right) {
    RunValues out;
    const float step = (right - left) / static_cast<float>(run_length);
    for (std::size_t k = 0; k < run_length; ++k) out[k] = left + step * (static_cast<float>(k) + 0.5f);
    return out;
  }
  // Whether any of the picture's light can fall between two nodes.
  static bool reaches(const Node& left, const Node& right, const cv::Mat& texture) {
    return left.lit && right.lit && std::max(left.u, right.u) > -1.0f && std::max(left.v, right.v) > -1.0f &&
           std::min(left.u, right.u) < static_cast<float>(texture.cols) &&
           std::min(left.v, right.v) < static_cast<float>(texture.rows);
  }

  // Renders output rows [from, to): samples a row at a time, blurred along it at once
  // and kept just long enough to be blurred down the column.
  void render_rows(cv::Mat& out, int from, int to) const {
    const int taps = static_cast<int>(weights_.size()), width = view_.width;
    const auto length = static_cast<std::size_t>(columns_ * tile);
    std::vector<float> even[3], odd[3];
    std::array<RunValues, 3> samples;
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
    std::vector<const float*> inputs(static_cast<std::size_t>(taps));
    const int first = sub * (from + margin_ - reach_), last = sub * (to + margin_ + reach_);
    for (int sample_row = first; sample_row < last; ++sample_row) {
      const int tile_row = sample_row / samples_a_tile;
      const float down =
          (static_cast<float>(sample_row % samples_a_tile) + 0.5f) / static_cast<float>(run_length);
      const double pixel_row = (sample_row + 0.5) / sub - 0.5 - margin_;
      const auto flicker =
          static_cast<float>(1.0 + room_.projector.flicker * std::sin(2.0 * std::numbers::pi * pixel_row /
                                                                          room_.projector.flicker_rows +
                                                                      view_.flicker_phase));
      for (int tile_column = 0; tile_column < columns_; ++tile_column) {
        shade_tile(tile_column, tile_row, down, flicker, samples);
        for (int c = 0; c < 3; ++c)
          for (int k = 0; k < tile; ++k) {
            even[c][static_cast<std::size_t>(tile_column * tile + k)] =
                samples[static_cast<std::size_t>(c)][static_cast<std::size_t>(2 * k)];
            odd[c][static_cast<std::size_t>(tile_column * tile + k)] =
                samples[static_cast<std::size_t>(c)][static_cast<std::size_t>(2 * k + 1)];
          }
      }
      for (int c = 0; c < 3; ++c) {
        for (int k = 0; k < taps; ++k)
          inputs[static_cast<std::size_t>(k)] =
              (k % 2 == 0 ? even[c] : odd[c]).data() + margin_ - reach_ + k / 2;
        weighted_sum(inputs.data(), weights_.data(), taps, kept(sample_row, c), width);
      }
      const int done =
          sample_row - (taps - 1);  // first row of samples of the output row that is now complete
      if (done < first || (done - first) % sub != 0) continue;
      const int out_row = from + (done - first) / sub;
      if (out_row >= to) continue;
      auto* pixels = out.ptr<float>(out_row);
      for (int c = 0; c < 3; ++c) {
        for (int k = 0; k < taps; ++k) inputs[static_cast<std::size_t>(k)] = kept(done + k, c);
        weighted_sum(inputs.data(), weights_.data(), taps, column.data(), width);
        for (int i = 0; i < width; ++i) pixels[3 * i + c] = column[static_cast<std::size_t>(i)];
      }
    }
  }

  const Room& room_;
  const View& view_;
  Lighting lighting_;
  int reach_ = 1, margin_ = tile, columns_ = 0, rows_ = 0;
  std::vector<float> weights_;  // of samples, along one axis
  std::vector<std::optional<Sight>> sights_;
  std::vector<Layer> layers_;
  std::vector<Node> scratch_;
};

}  // namespace

cv::Mat render(const Room& room, const View& view, const cv::Mat& picture) {
  return Engine(room, view, picture).run();
}

}  // namespace cowlcast::calibration::virtual_table
