#include "calibration/virtual_table/video.h"

#include <algorithm>
#include <cmath>
#include <opencv2/imgcodecs.hpp>
#include <opencv2/imgproc.hpp>
#include <stdexcept>

#include "calibration/virtual_table/photograph.h"
#include "calibration/virtual_table/tone.h"
#include "calibration/virtual_table/truth.h"

namespace cowlcast::calibration::virtual_table {

namespace {

constexpr int kGrid = 8;       // pixels between exact nodes of a map
constexpr int kSparse = 2;     // pixels between those for which dragged cloth is reckoned
constexpr int kFraction = 4;   // bits of a pixel's fraction in outlines
constexpr int kCoarse = 4;     // soft shadows are drawn at a quarter of the size
constexpr double kLow = 30.0;  // mm: parts lower than this touch the cloth with their shadow

// A map from pixels to pairs, exact at nodes and straight between.
template <typename F>
cv::Mat gridded(const cv::Size& size, const F& exact) {
  cv::Mat nodes(size.height / kGrid + 2, size.width / kGrid + 2, CV_32FC2);
  for (int y = 0; y < nodes.rows; ++y)
    for (int x = 0; x < nodes.cols; ++x) {
      const Eigen::Vector2d value = exact(Eigen::Vector2d(x * kGrid, y * kGrid));
      nodes.at<cv::Vec2f>(y, x) = {static_cast<float>(value.x()), static_cast<float>(value.y())};
    }
  cv::Mat full(size, CV_32FC2);
  for (int y = 0; y < size.height; ++y)
    for (int x = 0; x < size.width; ++x) {
      const int i = x / kGrid, j = y / kGrid;
      const float fx = static_cast<float>(x % kGrid) / kGrid, fy = static_cast<float>(y % kGrid) / kGrid;
      const cv::Vec2f above = nodes.at<cv::Vec2f>(j, i) * (1 - fx) + nodes.at<cv::Vec2f>(j, i + 1) * fx;
      const cv::Vec2f below =
          nodes.at<cv::Vec2f>(j + 1, i) * (1 - fx) + nodes.at<cv::Vec2f>(j + 1, i + 1) * fx;
      full.at<cv::Vec2f>(y, x) = above * (1 - fy) + below * fy;
    }
  return full;
}

// How much of the print is at a point of the cloth, 0 to 1, its edges a millimetre soft.
float print_at(const ClothPrint& print, double x, double y) {
  const auto soft = [](double inside) { return std::clamp(inside + 0.5, 0.0, 1.0); };
  const auto off = [&](double v) { return std::abs(v - print.step * std::round(v / print.step)); };
  const double quarter = 0.25 * print.step;
  double share = 0.0;
  if (print.kind == ClothPrint::Kind::stripes) share = soft(quarter - off(x));
  if (print.kind == ClothPrint::Kind::checks) share = 0.5 * (soft(quarter - off(x)) + soft(quarter - off(y)));
  if (print.kind == ClothPrint::Kind::dots) share = soft(quarter - std::hypot(off(x), off(y)));
  return static_cast<float>(share);
}

const std::vector<float>& deviates() {
  static const std::vector<float> table = [] {
    std::vector<float> made(1 << 17);
    Dice dice(0xf11a);
    for (float& value : made) value = static_cast<float>(dice.normal(1.0));
    return made;
  }();
  return table;
}

Eigen::Vector2d placed(const Eigen::Vector2d& own, const Place& place) {
  const double c = std::cos(place.turn), s = std::sin(place.turn);
  return {place.x + c * own.x() - s * own.y(), place.y + s * own.x() + c * own.y()};
}

void fill(cv::Mat& mask, std::vector<cv::Point> outline, const cv::Point& corner, int shrink, int value) {
  for (cv::Point& p : outline) {
    p.x = (p.x - (corner.x << kFraction)) / shrink;
    p.y = (p.y - (corner.y << kFraction)) / shrink;
  }
  cv::fillPoly(mask, std::vector<std::vector<cv::Point>>{outline}, cv::Scalar::all(value), cv::LINE_AA,
               kFraction);
}

}  // namespace

TableVideo::TableVideo(const Room& room, const RoomCamera& camera, const ClothPrint& print)
    : room_(room), camera_(camera) {
  if (!room.cloth) throw std::invalid_argument("a video needs a cloth on the table");
  room_.sheets.clear();
  room_.light.shadows.clear();
  room_.projector.panel_from_picture.reset();
  room_.projector.bounce = 0.0;
  cloth_ = room_.cloth->height;
  lamp_ = room_.projector.projector_from_room.inverse().translation();

  // The same view of a white endless cloth tells the light itself.
  Room pale = room_;
  pale.cloth->albedo = Colour(1.0f, 1.0f, 1.0f);
  pale.cloth->relief = 0.0f;
  pale.cloth->size = {20000.0, 20000.0};
  ambient_ = linear_photograph(pale, camera_, {});
  pale.light.lux = 0.0;
  white_ = linear_photograph(pale, camera_,
                             cv::Mat(room.projector.height, room.projector.width, CV_8U, cv::Scalar(255)));
  cv::divide(linear_photograph(room_, camera_, {}), cv::max(ambient_, 1e-6), albedo_);

  const cv::Size size(camera.width, camera.height);
  const Eigen::Vector2d nowhere(-1e4, -1e4);
  picture_from_pixel_ = gridded(size, [&](const Eigen::Vector2d& pixel) {
    const auto mat = mat_from_camera(camera_, pixel, cloth_);
    return mat ? projector_from_mat(room_.projector, *mat, cloth_).value_or(nowhere) : nowhere;
  });
  mat_from_pixel_ = gridded(size, [&](const Eigen::Vector2d& pixel) {
    return mat_from_camera(camera_, pixel, cloth_).value_or(nowhere);
  });
  if (print.kind != ClothPrint::Kind::none) {
    const Place& place = room_.cloth->place;
    const double c = std::cos(place.turn), s = std::sin(place.turn);
    for (int y = 0; y < size.height; ++y)
      for (int x = 0; x < size.width; ++x) {
        const cv::Vec2f at = mat_from_pixel_.at<cv::Vec2f>(y, x);
        const double dx = static_cast<double>(at[0]) - place.x, dy = static_cast<double>(at[1]) - place.y;
        const double own_x = c * dx + s * dy, own_y = c * dy - s * dx;
        if (std::abs(own_x) > 0.5 * room_.cloth->size.x() || std::abs(own_y) > 0.5 * room_.cloth->size.y())
          continue;
        const float share = print_at(print, own_x, own_y);
        auto& rho = albedo_.at<cv::Vec3f>(y, x);
        for (int k = 0; k < 3; ++k) {  // the knit's relief goes on through the print
          const float tone = rho[k] / std::max(room_.cloth->albedo[2 - k], 1e-4f);
          rho[k] += share * tone * (print.colour[2 - k] - room_.cloth->albedo[2 - k]);
        }
      }
  }
  vignette_.create(size, CV_32F);
  const double mx = 0.5 * (size.width - 1), my = 0.5 * (size.height - 1);
  for (int y = 0; y < size.height; ++y)
    for (int x = 0; x < size.width; ++x)
      vignette_.at<float>(y, x) = static_cast<float>(
          1.0 - camera.vignetting * ((x - mx) * (x - mx) + (y - my) * (y - my)) / (mx * mx + my * my + 1.0));
  frame_ = cv::Mat::zeros(size, CV_8UC3);
  fresh_ = cv::Rect({0, 0}, size);
}

void TableVideo::show(int number, const cv::Mat& picture) {
  cv::Mat light = panel_light(room_.projector, picture);
  cv::GaussianBlur(light, light, cv::Size(5, 5), std::hypot(room_.projector.blur, 0.45));
  cv::Mat seen;
  cv::remap(light, seen, picture_from_pixel_, cv::noArray(), cv::INTER_LINEAR, cv::BORDER_CONSTANT,
            cv::Scalar::all(0));
  if (seen.channels() == 1) cv::merge(std::vector<cv::Mat>(3, seen), seen);
  beams_[number] = seen.mul(white_);
  if (white_level_ > 0.0) return;
  const cv::Mat empty = albedo_.mul(ambient_ + beams_[number]);
  white_level_ = white_level(empty, [&](int x, int y) { return vignette_.at<float>(y, x); }) /
                 std::exp2(camera_.exposure_stops);
}

void TableVideo::look_only_at(const std::vector<Eigen::Vector2d>& area) {
  const cv::Rect whole({0, 0}, frame_.size());
  std::vector<cv::Point2f> pixels;
  for (const Eigen::Vector2d& point : area)
    if (const auto p = camera_from_room(camera_, {point.x(), point.y(), cloth_}))
      pixels.emplace_back(static_cast<float>(p->x()), static_cast<float>(p->y()));
  fresh_ = whole;
  if (pixels.empty()) return;
  cv::Rect box = cv::boundingRect(pixels);
  constexpr int block = 16;  // JPEG's own, so that borders stay where they are
  box.width += box.x % block;
  box.x -= box.x % block;
  box.height += box.y % block;
  box.y -= box.y % block;
  box.width = (box.width + block - 1) / block * block;
  box.height = (box.height + block - 1) / block * block;
  fresh_ = box & whole;
}

// A part's outline in the frame, with fractions; of its shadow in the projector's light when `beam`,
// else of the part raised to `height` over the cloth.
std::vector<cv::Point> TableVideo::outline_at(const Part& part, const Place& place, double height,
                                              bool beam) const {
  std::vector<cv::Point> out;
  for (const Eigen::Vector2d& own : part.outline) {
    const Eigen::Vector2d at = placed(own, place);
    Eigen::Vector3d point(at.x(), at.y(), cloth_ + height);
    if (beam) point = lamp_ + (point - lamp_) * ((lamp_.z() - cloth_) / (lamp_.z() - point.z()));
    const auto pixel = camera_from_room(camera_, point);
    if (!pixel) return {};
    const Eigen::Vector2d held = pixel->cwiseMax(-4000.0).cwiseMin(6000.0) * (1 << kFraction);
    out.emplace_back(cvRound(held.x()), cvRound(held.y()));
  }
  return out;
}

// What things and people leave of room light and beam, over the fresh part of the frame.
void TableVideo::darken(const Moment& moment, cv::Mat& room_left, cv::Mat& beam_left) const {
  const cv::Size coarse((fresh_.width + kCoarse - 1) / kCoarse, (fresh_.height + kCoarse - 1) / kCoarse);
  cv::Mat low = cv::Mat::zeros(coarse, CV_8U), high = cv::Mat::zeros(coarse, CV_8U);
  cv::Mat beam = cv::Mat::zeros(fresh_.size(), CV_8U);
  for (const PosedThing& posed : moment.things)
    for (const Part& part : posed.thing.parts) {
      const Place& place = posed.places[posed.places.size() / 2];
      const auto foot = outline_at(part, place, 0.0, false),
                 cast = outline_at(part, place, part.height, true);
      if (!foot.empty()) fill(part.height < kLow ? low : high, foot, fresh_.tl(), kCoarse, 255);
      if (!cast.empty()) fill(beam, cast, fresh_.tl(), 1, 255);
    }
  cv::Mat wide = cv::max(low, high);
  cv::GaussianBlur(low, low, {}, 1.7);
  cv::GaussianBlur(wide, wide, {}, 8.0);
  cv::GaussianBlur(beam, beam, cv::Size(5, 5), 1.0);
  cv::Mat left(coarse, CV_32F);
  for (int y = 0; y < coarse.height; ++y)
    for (int x = 0; x < coarse.width; ++x) {
      double kept = moment.ambient *
                    (1.0 - (0.30 * low.at<std::uint8_t>(y, x) + 0.30 * wide.at<std::uint8_t>(y, x)) / 255.0);
      left.at<float>(y, x) = static_cast<float>(kept);
    }
  if (moment.leaning) {
    const Shadow& shadow = *moment.leaning;
    const auto middle = camera_from_room(camera_, {shadow.place.x, shadow.place.y, cloth_});
    const auto side = camera_from_room(camera_, {shadow.place.x + shadow.radii.x(), shadow.place.y, cloth_});
    if (middle && side) {
      const double radius = (*side - *middle).norm();
      for (int y = 0; y < coarse.height; ++y)
        for (int x = 0; x < coarse.width; ++x) {
          const double far =
              (Eigen::Vector2d(fresh_.x + kCoarse * x, fresh_.y + kCoarse * y) - *middle).norm() / radius;
          const double dark = 1.0 / (1.0 + far * far * far * far);
          left.at<float>(y, x) *=
              static_cast<float>(1.0 - dark * (1.0 - static_cast<double>(shadow.ambient_left)));
        }
    }
  }
  cv::resize(left, room_left, fresh_.size(), 0, 0, cv::INTER_LINEAR);
  beam.convertTo(beam_left, CV_32F, -1.0 / 255.0, 1.0);
}

void TableVideo::paint(const Moment& moment, const PosedThing& posed, cv::Mat& light) const {
  const cv::Mat room = ambient_(fresh_), beam = beams_.at(moment.picture)(fresh_);
  const int share = 255 / static_cast<int>(posed.places.size());
  for (const Part& part : posed.thing.parts) {
    std::vector<std::vector<cv::Point>> outlines;
    cv::Rect box;
    for (const Place& place : posed.places) {
      outlines.push_back(outline_at(part, place, part.height, false));
      if (outlines.back().empty()) return;
      cv::Rect one = cv::boundingRect(outlines.back());
      one = cv::Rect(cv::Point(one.x >> kFraction, one.y >> kFraction) - cv::Point(3, 3),
                     cv::Point(one.br().x >> kFraction, one.br().y >> kFraction) + cv::Point(4, 4));
      box = box.empty() ? one : box | one;
    }
    box &= fresh_;
    if (box.empty()) continue;
    cv::Mat cover = cv::Mat::zeros(box.size(), CV_8U), once;
    for (const auto& outline : outlines) {
      once = cv::Mat::zeros(box.size(), CV_8U);
      fill(once, outline, box.tl(), 1, share);
      cover += once;
    }
    cv::GaussianBlur(cover, cover, cv::Size(5, 5), std::max(camera_.blur, 0.3));
    const cv::Rect here = box - fresh_.tl();
    const float most = static_cast<float>(share) * static_cast<float>(posed.places.size());
    const auto strength = static_cast<float>(moment.ambient);
    for (int y = 0; y < here.height; ++y) {
      auto* out = light.ptr<float>(here.y + y) + 3 * here.x;
      const auto* lux = room.ptr<float>(here.y + y) + 3 * here.x;
      const auto* more = beam.ptr<float>(here.y + y) + 3 * here.x;
      const auto* mask = cover.ptr<std::uint8_t>(y);
      for (int x = 0; x < here.width; ++x) {
        if (mask[x] == 0) continue;
        const float alpha = std::min(static_cast<float>(mask[x]) / most, 1.0f);
        for (int c = 0; c < 3; ++c) {
          const float own =
              part.albedo[2 - c] * (strength * moment.tint[2 - c] * lux[3 * x + c] + more[3 * x + c]);
          out[3 * x + c] += alpha * (own - out[3 * x + c]);
        }
      }
    }
  }
}

void TableVideo::expose(const cv::Mat& light, double stops, std::uint64_t seed) {
  const double white = white_level_ / std::exp2(stops);
  const auto electrons =
      static_cast<float>(std::clamp(camera_.electrons_per_lux * white, 20.0, camera_.full_well));
  const auto read2 = static_cast<float>(camera_.read_noise * camera_.read_noise);
  const float gain[3] = {camera_.white_balance.z() / static_cast<float>(white),
                         camera_.white_balance.y() / static_cast<float>(white),
                         camera_.white_balance.x() / static_cast<float>(white)};
  const std::vector<float>& noise = deviates();
  const auto& curve = tone_curve();
  Dice dice(seed);
  std::vector<float> level(static_cast<std::size_t>(3 * light.cols));
  for (int y = 0; y < light.rows; ++y) {
    const auto* in = light.ptr<float>(y);
    const auto* left = vignette_.ptr<float>(fresh_.y + y) + fresh_.x;
    const auto spread = static_cast<int>(noise.size()) - 3 * light.cols;
    const float* deviate = noise.data() + dice.below(spread);
    for (int x = 0; x < light.cols; ++x)
      for (int c = 0; c < 3; ++c)
        level[static_cast<std::size_t>(3 * x + c)] = in[3 * x + c] * left[x] * gain[c];
    for (std::size_t i = 0; i < level.size(); ++i)
      level[i] =
          65535.0f * (level[i] + deviate[i] * std::sqrt(level[i] * electrons + read2) / electrons) + 0.5f;
    auto* out = frame_.ptr<std::uint8_t>(fresh_.y + y) + 3 * fresh_.x;
    for (std::size_t i = 0; i < level.size(); ++i)
      out[i] = curve[static_cast<std::size_t>(std::min(std::max(level[i], 0.0f), 65535.0f))];
  }
}

// The cloth and the light on it, over the fresh part of the frame, as it is dragged; `shade` is the light of
// room and beam over that on flat cloth.
TableVideo::Cloth TableVideo::lying(const Moment& moment) const {
  const cv::Mat &beam = beams_.at(moment.picture), albedo = albedo_(fresh_);
  Cloth out{albedo, beam(fresh_), cv::Mat(fresh_.size(), CV_32FC2, cv::Scalar::all(1.0))};
  if (!moment.drag) return out;
  const Eigen::Vector3d up(0.0, 0.0, cloth_), eye = camera_.camera_from_room.inverse().translation() - up,
                                              lamp = lamp_ - up;
  const Place& place = room_.cloth->place;
  const Eigen::Rotation2Dd turn(-place.turn);
  const Eigen::Vector2d middle(place.x, place.y), half = 0.5 * room_.cloth->size;
  const auto on_cloth = [&](const Eigen::Vector2d& own) {
    return std::abs(own.x()) <= half.x() && std::abs(own.y()) <= half.y();
  };
  // Ripples are smooth: every other pixel is enough. Where cloth and light come from, as steps of pixels.
  const cv::Size nodes((fresh_.width + 1) / kSparse, (fresh_.height + 1) / kSparse);
  cv::Mat steps(nodes, CV_32FC4, cv::Scalar::all(0.0)), shade(nodes, CV_32FC2, cv::Scalar::all(1.0));
  for (int y = 0; y < nodes.height; ++y)
    for (int x = 0; x < nodes.width; ++x) {
      const int px = std::min(fresh_.x + kSparse * x, frame_.cols - 5),
                py = std::min(fresh_.y + kSparse * y, frame_.rows - 5);
      const auto mat_at = [&](int i, int j) {
        const cv::Vec2f at = mat_from_pixel_.at<cv::Vec2f>(j, i);
        return Eigen::Vector2d(static_cast<double>(at[0]), static_cast<double>(at[1]));
      };
      const Eigen::Vector2d here = mat_at(px, py), own = turn * (here - middle);
      if (!on_cloth(own) && !on_cloth(turn * (here + rumpled(*moment.drag, here, eye, lamp).cloth - middle)))
        continue;
      Eigen::Matrix2d mat_from_step;
      mat_from_step << 0.25 * (mat_at(px + 4, py) - here), 0.25 * (mat_at(px, py + 4) - here);
      const Eigen::Matrix2d step_from_mat = mat_from_step.inverse();
      const Rumple rumple = rumpled(*moment.drag, here, eye, lamp);
      const Eigen::Vector2f cloth = (step_from_mat * rumple.cloth).cast<float>(),
                            light = (step_from_mat * rumple.light).cast<float>();
      steps.at<cv::Vec4f>(y, x) = {cloth.x(), cloth.y(), light.x(), light.y()};
      shade.at<cv::Vec2f>(y, x) = {static_cast<float>(rumple.room), static_cast<float>(rumple.beam)};
    }
  // Nodes lie on pixels, so they are laid out by hand rather than by resize, which takes cells.
  cv::Mat from(fresh_.size(), CV_32FC2), lit(fresh_.size(), CV_32FC2);
  for (int y = 0; y < fresh_.height; ++y)
    for (int x = 0; x < fresh_.width; ++x) {
      const int i = x / kSparse, j = y / kSparse, right = std::min(i + x % kSparse, nodes.width - 1),
                below = std::min(j + y % kSparse, nodes.height - 1);
      const cv::Vec4f step = 0.5f * (steps.at<cv::Vec4f>(j, i) + steps.at<cv::Vec4f>(below, right));
      const cv::Vec2f here(static_cast<float>(fresh_.x + x), static_cast<float>(fresh_.y + y));
      from.at<cv::Vec2f>(y, x) = here + cv::Vec2f(step[0], step[1]);
      lit.at<cv::Vec2f>(y, x) = here + cv::Vec2f(step[2], step[3]);
      out.shade.at<cv::Vec2f>(y, x) = 0.5f * (shade.at<cv::Vec2f>(j, i) + shade.at<cv::Vec2f>(below, right));
    }
  out.albedo = out.beam = cv::Mat();  // not over what they were
  cv::remap(albedo_, out.albedo, from, cv::noArray(), cv::INTER_LINEAR, cv::BORDER_REPLICATE);
  cv::remap(beam, out.beam, lit, cv::noArray(), cv::INTER_LINEAR, cv::BORDER_REPLICATE);
  return out;
}

const cv::Mat& TableVideo::frame(const Moment& moment, std::uint64_t seed, int jpeg) {
  if (beams_.count(moment.picture) == 0) throw std::invalid_argument("no picture of that number is shown");
  cv::Mat room_left, beam_left;
  darken(moment, room_left, beam_left);
  cv::Mat light(fresh_.size(), CV_32FC3);
  const cv::Mat room = ambient_(fresh_);
  const Cloth cloth = lying(moment);
  const float tint[3] = {moment.tint[2], moment.tint[1], moment.tint[0]};
  for (int y = 0; y < light.rows; ++y) {
    auto* out = light.ptr<float>(y);
    const auto *lux = room.ptr<float>(y), *more = cloth.beam.ptr<float>(y), *rho = cloth.albedo.ptr<float>(y);
    const auto *some = room_left.ptr<float>(y), *rest = beam_left.ptr<float>(y),
               *shade = cloth.shade.ptr<float>(y);
    for (int x = 0; x < light.cols; ++x) {
      const float ambient = some[x] * shade[2 * x], sent = rest[x] * shade[2 * x + 1];
      for (int c = 0; c < 3; ++c)
        out[3 * x + c] = rho[3 * x + c] * (tint[c] * ambient * lux[3 * x + c] + sent * more[3 * x + c]);
    }
  }
  for (const PosedThing& posed : moment.things) paint(moment, posed, light);
  expose(light, moment.exposure_stops, seed);
  cv::Mat view = frame_(fresh_);
  if (camera_.sharpening > 0.0) {
    cv::Mat soft;
    cv::GaussianBlur(view, soft, cv::Size(5, 5), 1.0);
    cv::addWeighted(view, 1.0 + camera_.sharpening, soft, -camera_.sharpening, 0.0, view);
  }
  if (jpeg > 0) {
    std::vector<std::uint8_t> bytes;
    cv::imencode(".jpg", view, bytes, {cv::IMWRITE_JPEG_QUALITY, jpeg});
    cv::imdecode(bytes, cv::IMREAD_COLOR).copyTo(view);
  }
  return frame_;
}

}  // namespace cowlcast::calibration::virtual_table
