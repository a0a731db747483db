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

// Share of a sample of width `footprint` that lies inside the rectangle.
float cover_of(float a, float b, const Eigen::Vector2f& size, float footprint) {
  const float inside = std::min(std::min(a, size.x() - a), std::min(b, size.y() - b));
  return std::clamp(0.5f + inside / footprint, 0.0f, 1.0f);
}

// Deviations of a repeating pattern at a point of one of its levels.
inline float tone_at(const Level<std::uint8_t>& level, float x, float y) {
  const auto spot = level.spot(repeated(x, level.last_x), repeated(y, level.last_y));
  return (Level<std::uint8_t>::value(spot) - 128.0f) / 40.0f;
}

// Position on a level of what is at `texel` of the first.
float on_level(float texel, float scale) {
  return (texel + 0.5f) * scale - 0.5f;
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
    const Sampler print(print_.print, print_level_), grain(*grain_, grain_level_),
        table(*table_, table_level_);
    const Level<std::uint8_t> print_image(*print.image), grain_image(*grain.image), table_image(*table.image);
    const Eigen::Vector2f span = size.cast<float>();
    const float print_scale = print.scale / static_cast<float>(print_.step);
    const float grain_scale = grain.scale / grain_step, table_scale = table.scale / table_step;
    const auto tone = [&run](const Level<std::uint8_t>& level, float scale, float rough, std::size_t k) {
      return 1.0f + rough * tone_at(level, run.a[k] * scale - 0.5f, run.b[k] * scale - 0.5f);
    };
    run.cover.fill(1.0f);
    float mat_tone = 1.0f, table_tone = 1.0f;
    for (std::size_t k = 0; k < run_length; ++k) {
      const float a = run.a[k], b = run.b[k];
      const float on_mat = cover_of(a, b, span, run.footprint);
      const bool fresh = k % 2 == 0;  // grain is too fine and faint to be looked at twice a pixel
      if (fresh && on_mat > 0.0f) mat_tone = tone(grain_image, grain_scale, mat_.grain, k);
      if (fresh && on_mat < 1.0f) table_tone = tone(table_image, table_scale, 0.18f, k);
      Colour colour = Colour::Zero();
      if (on_mat > 0.0f) {
        const auto spot = print_image.spot(a * print_scale - 0.5f, b * print_scale - 0.5f);
        const float ink = Level<std::uint8_t>::value(spot) / 255.0f;
        colour = on_mat * (mat_.albedo * mat_tone + ink * (mat_.print_albedo - mat_.albedo));
      }
      if (on_mat < 1.0f) colour += (1.0f - on_mat) * table_tone * mat_.table_albedo;
      run.red[k] = colour.x();
      run.green[k] = colour.y();
      run.blue[k] = colour.z();
    }
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
    const Eigen::Vector2f span = size.cast<float>();
    // page = middle + (paper - middle - shift) / scale, then to texels of the level
    const double texels = static_cast<double>(sampler.scale) / sheet_.pixel_mm;
    const double mx = 0.5 * size.x(), my = 0.5 * size.y();
    const auto sx = static_cast<float>(texels / sheet_.across), sy = static_cast<float>(texels / sheet_.down);
    const auto ox = static_cast<float>(texels * (mx - (mx + sheet_.shift.x()) / sheet_.across) - 0.5);
    const auto oy = static_cast<float>(texels * (my - (my + sheet_.shift.y()) / sheet_.down) - 0.5);
    const Colour rise = (sheet_.paper_albedo - sheet_.ink_albedo) / 255.0f;
    const bool grey = image.channels == 1;
    for (std::size_t k = 0; k < run_length; ++k) {
      run.cover[k] = cover_of(run.a[k], run.b[k], span, run.footprint);
      if (run.cover[k] <= 0.0f) continue;
      const auto spot = image.spot(run.a[k] * sx + ox, run.b[k] * sy + oy);
      const float blue = Level<std::uint8_t>::value(spot);
      const float green = grey ? blue : Level<std::uint8_t>::value(spot, 1);
      const float red = grey ? blue : Level<std::uint8_t>::value(spot, 2);
      run.red[k] = sheet_.ink_albedo.x() + rise.x() * red;
      run.green[k] = sheet_.ink_albedo.y() + rise.y() * green;
      run.blue[k] = sheet_.ink_albedo.z() + rise.z() * blue;
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
    const Sampler sampler(*knit_, level_);
    const Level<std::uint8_t> image(*sampler.image);
    const Eigen::Vector2f span = size.cast<float>();
    const auto step = static_cast<float>(texels());
    for (std::size_t k = 0; k < run_length; ++k) {
      run.cover[k] = cover_of(run.a[k], run.b[k], span, run.footprint);
      const float tone =
          tone_at(image, on_level(run.a[k] * step, sampler.scale), on_level(run.b[k] * step, sampler.scale));
      const float shade = std::max(0.1f, 1.0f + cloth_.relief * tone);
      run.red[k] = shade * cloth_.albedo.x();
      run.green[k] = shade * cloth_.albedo.y();
      run.blue[k] = shade * cloth_.albedo.z();
    }
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
