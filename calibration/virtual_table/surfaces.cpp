#include "calibration/virtual_table/surfaces.h"

#include <algorithm>
#include <cmath>
#include <opencv2/imgproc.hpp>
#include <stdexcept>

#include "calibration/virtual_table/sampling.h"

namespace cowlcast::calibration::virtual_table {

namespace {

// The point of `sight` at height z; nothing where it looks level, upwards or from below.
std::optional<Eigen::Vector3d> at_height(const Sight& sight, double z) {
  const double steps = (z - sight.from.z()) / sight.way.z();
  if (!(steps > 0.0) || !(sight.way.z() < 0.0)) return std::nullopt;
  return sight.from + steps * sight.way;
}

// Room point to millimetres right and down from the top left corner of a thing at `place`.
Eigen::Vector2d own_from_room(const Place& place, const Eigen::Vector2d& size, const Eigen::Vector2d& room) {
  const double c = std::cos(place.turn), s = std::sin(place.turn);
  const double dx = room.x() - place.x, dy = room.y() - place.y;
  return {c * dx + s * dy + 0.5 * size.x(), 0.5 * size.y() - (c * dy - s * dx)};
}

// Share of each sample that lies inside the rectangle.
void find_cover(Run& run, const Eigen::Vector2d& size) {
  const auto width = static_cast<float>(size.x()), height = static_cast<float>(size.y());
  const float sharp = 1.0f / run.footprint;
  for (std::size_t k = 0; k < run_length; ++k) {
    const float inside =
        std::min(std::min(run.a[k], width - run.a[k]), std::min(run.b[k], height - run.b[k]));
    run.cover[k] = std::min(std::max(0.5f + inside * sharp, 0.0f), 1.0f);
  }
}

// 1 + `rough` deviations of a repeating pattern of `texels` to a millimetre.
RunValues tone(const Run& run, const Sampler& pattern, float texels, float rough) {
  const Level<std::uint8_t> level(*pattern.image);
  const auto side = static_cast<float>(pattern.image->cols - 1);
  RunValues x = on_level(run.a, texels * pattern.scale), y = on_level(run.b, texels * pattern.scale), out;
  for (std::size_t k = 0; k < run_length; ++k) {
    x[k] = repeated(x[k], side);
    y[k] = repeated(y[k], side);
  }
  level.sample(x, y, &out);
  for (float& value : out) value = 1.0f + rough * (value - 128.0f) / 40.0f;
  return out;
}

// Paints all samples: between two colours by share, the first of them times a tone.
void paint(Run& run, const Colour& none, const Colour& full, const RunValues& share, const RunValues& tones) {
  for (int c = 0; c < 3; ++c) {
    const float from = none[2 - c], rise = full[2 - c] - none[2 - c];
    RunValues& out = run.albedo[static_cast<std::size_t>(c)];
    for (std::size_t k = 0; k < run_length; ++k) out[k] = from * tones[k] + rise * share[k];
  }
}

class MatSurface : public Surface {
 public:
  explicit MatSurface(const CuttingMat& mat) : mat_(mat), print_(mat_texture(mat)) {
    static const Pyramid grain = grain_texture();
    static const Pyramid wood = table_texture(true), weave = table_texture(false);
    grain_ = &grain;
    table_ = mat.wooden_table ? &wood : &weave;
    size = mat.size;
    endless = true;
  }

  std::optional<Meeting> meet(const Sight& sight) const override {
    const auto point = at_height(sight, 0.0);
    if (!point) return std::nullopt;
    return Meeting{own_from_room(mat_.place, mat_.size, point->head<2>()), *point};
  }

  void prepare(double footprint) override {
    print_level_ = print_.print.level_for(footprint / print_.step);
    grain_level_ = grain_->level_for(footprint / grain_step);
    table_level_ = table_->level_for(footprint / table_step);
  }

  void shade(Run& run) const override {
    find_cover(run, size);
    const auto [least, most] = std::minmax_element(run.cover.begin(), run.cover.end());
    if (*most > 0.0f) {
      const Sampler print(print_.print, print_level_);
      const float texels = print.scale / static_cast<float>(print_.step);
      RunValues ink;
      Level<std::uint8_t>(*print.image).sample(on_level(run.a, texels), on_level(run.b, texels), &ink);
      for (float& value : ink) value /= 255.0f;
      paint(run, mat_.albedo, mat_.print_albedo, ink,
            tone(run, {*grain_, grain_level_}, 1.0f / grain_step, mat_.grain));
    }
    if (*least < 1.0f) {
      Run table = run;
      paint(table, mat_.table_albedo, mat_.table_albedo, RunValues{},
            tone(run, {*table_, table_level_}, 1.0f / table_step, 0.18f));
      for (std::size_t c = 0; c < 3; ++c)
        for (std::size_t k = 0; k < run_length; ++k) {
          const float on_mat =
              run.cover[k] > 0.0f ? run.cover[k] * (run.albedo[c][k] - table.albedo[c][k]) : 0.0f;
          run.albedo[c][k] = table.albedo[c][k] + on_mat;
        }
    }
    run.cover.fill(1.0f);
  }

 private:
  static constexpr float grain_step = 0.3f, table_step = 0.5f;
  const CuttingMat& mat_;
  MatTexture print_;
  const Pyramid* grain_ = nullptr;
  const Pyramid* table_ = nullptr;
  int print_level_ = 0, grain_level_ = 0, table_level_ = 0;
};

class SheetSurface : public Surface {
 public:
  explicit SheetSurface(const PaperSheet& sheet) : sheet_(sheet) {
    if (sheet.page.empty() || sheet.page.depth() != CV_8U ||
        (sheet.page.channels() != 1 && sheet.page.channels() != 3))
      throw std::invalid_argument("a sheet's page must be an 8 bit image, grey or BGR");
    page_ = pyramid_of(sheet.page);
    size = sheet.paper;
    gloss = sheet.gloss;
    gloss_width = sheet.gloss_width;
  }

  std::optional<Meeting> meet(const Sight& sight) const override {
    Meeting meeting;
    double rise = 0.0;
    const Eigen::Vector2d span = sheet_.curl.towards - sheet_.curl.from;
    const bool curled = sheet_.curl.height > 0.0 && span.norm() > 0.0;
    for (int round = 0; round < (curled ? 40 : 1); ++round) {
      const auto point = at_height(sight, sheet_.thickness + rise);
      if (!point) return std::nullopt;
      meeting = {own_from_room(sheet_.place, size, point->head<2>()), *point};
      if (!curled) break;
      const double before = rise;
      rise = unrolled(meeting.own, span);
      if (std::abs(rise - before) < 1e-9) break;
    }
    return meeting;
  }

  void prepare(double footprint) override { level_ = page_.level_for(footprint / sheet_.pixel_mm); }

  void shade(Run& run) const override {
    const Sampler sampler(page_, level_);
    const Level<std::uint8_t> image(*sampler.image);
    // page = middle + (paper - middle - shift) / scale, then to texels of the level
    const double texels = static_cast<double>(sampler.scale) / sheet_.pixel_mm;
    const double mx = 0.5 * size.x(), my = 0.5 * size.y();
    const auto sx = static_cast<float>(texels / sheet_.across), sy = static_cast<float>(texels / sheet_.down);
    const auto ox = static_cast<float>(texels * (mx - (mx + sheet_.shift.x()) / sheet_.across) - 0.5);
    const auto oy = static_cast<float>(texels * (my - (my + sheet_.shift.y()) / sheet_.down) - 0.5);
    find_cover(run, size);
    RunValues x, y;
    for (std::size_t k = 0; k < run_length; ++k) {
      x[k] = run.a[k] * sx + ox;
      y[k] = run.b[k] * sy + oy;
    }
    image.sample(x, y, run.albedo.data(), image.channels());
    if (image.channels() == 1) run.albedo[1] = run.albedo[2] = run.albedo[0];
    for (int c = 0; c < 3; ++c) {
      const float ink = sheet_.ink_albedo[2 - c], rise = (sheet_.paper_albedo[2 - c] - ink) / 255.0f;
      for (float& value : run.albedo[static_cast<std::size_t>(c)]) value = ink + rise * value;
    }
  }

 private:
  // Takes a point's shadow on the flat sheet to the point of the curled paper above it; returns its rise.
  double unrolled(Eigen::Vector2d& own, const Eigen::Vector2d& span) const {
    const Eigen::Vector2d way = span.normalized();
    const double flat = (own - sheet_.curl.from).dot(way);
    if (flat <= 0.0) return 0.0;
    const double a = 2.0 * sheet_.curl.height / span.squaredNorm();
    double s = flat;
    for (int round = 0; round < 20; ++round) {
      const double steep = std::min(a * s, 0.995);
      const double root = std::sqrt(1.0 - steep * steep);
      const double move = (0.5 * (s * root + std::asin(steep) / a) - flat) / root;
      s = std::max(s - move, 0.0);
      if (std::abs(move) < 1e-9) break;
    }
    own += way * (s - flat);
    return 0.5 * a * s * s;
  }

  const PaperSheet& sheet_;
  Pyramid page_;
  int level_ = 0;
};

class ClothSurface : public Surface {
 public:
  explicit ClothSurface(const Cloth& cloth) : cloth_(cloth) {
    static const Pyramid knit = knit_texture();
    knit_ = &knit;
    size = cloth.size;
  }

  std::optional<Meeting> meet(const Sight& sight) const override {
    const auto point = at_height(sight, cloth_.height);
    if (!point) return std::nullopt;
    return Meeting{own_from_room(cloth_.place, size, point->head<2>()), *point};
  }

  void prepare(double footprint) override { level_ = knit_->level_for(footprint * texels()); }

  void shade(Run& run) const override {
    find_cover(run, size);
    RunValues tones = tone(run, {*knit_, level_}, static_cast<float>(texels()), cloth_.relief);
    for (float& value : tones) value = std::max(value, 0.1f);
    paint(run, cloth_.albedo, cloth_.albedo, RunValues{}, tones);
  }

 private:
  double texels() const { return 64.0 / cloth_.wale; }  // of the knit to a millimetre
  const Cloth& cloth_;
  const Pyramid* knit_ = nullptr;
  int level_ = 0;
};

}  // namespace

std::vector<std::unique_ptr<Surface>> surfaces_of(const Room& room) {
  std::vector<std::unique_ptr<Surface>> surfaces;
  surfaces.push_back(std::make_unique<MatSurface>(room.mat));
  for (const PaperSheet& sheet : room.sheets) surfaces.push_back(std::make_unique<SheetSurface>(sheet));
  if (room.cloth) surfaces.push_back(std::make_unique<ClothSurface>(*room.cloth));
  return surfaces;
}

}  // namespace cowlcast::calibration::virtual_table
