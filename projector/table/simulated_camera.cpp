#include "projector/table/simulated_camera.h"

#include <algorithm>
#include <cmath>
#include <mutex>
#include <thread>

#include "calibration/target/target.h"
#include "calibration/virtual_table/fixed_film.h"
#include "calibration/virtual_table/truth.h"
#include "calibration/watch/border_marks.h"
#include "calibration/watch/edge_tags.h"

namespace cowlcast::projector {
namespace {

namespace room_model = calibration::virtual_table;

constexpr double kFrame = 0.1;  // seconds
constexpr int kTags = 8;
constexpr double kClear = 75.0;                           // mm between a tag and a mark of light
constexpr double kEyeHeight = 1500.0, kEyeAside = 180.0;  // mm

Point mat_point(const room_model::CuttingMat& mat, const Point& own) {
  return Point(mat.place.x, mat.place.y) + Eigen::Rotation2Dd(mat.place.turn) * own;
}

/// The middle of a tag that lies the share `way` of the way around the mat's edge.
Point at_edge(const room_model::CuttingMat& mat, double way) {
  const Point half = 0.5 * mat.size - Point::Constant(32.0);
  const Point corners[] = {{-half.x(), -half.y()}, {half.x(), -half.y()}, half, {-half.x(), half.y()}};
  const double sides = 4.0 * (way - std::floor(way));
  const auto side = static_cast<size_t>(sides);
  return mat_point(mat,
                   corners[side] + (sides - std::floor(sides)) * (corners[(side + 1) % 4] - corners[side]));
}

/// Glued around the mat's edge, clear of the marks of light.
void glue_tags(room_model::Room& room) {
  std::vector<Point> marks;
  for (const Point& pixel : calibration::border_marks(room.projector.width, room.projector.height).centres)
    if (const auto lit = room_model::mat_from_projector(room.projector, pixel)) marks.push_back(*lit);
  const auto clear = [&](const Point& at) {
    return std::all_of(marks.begin(), marks.end(),
                       [&](const Point& mark) { return (mark - at).norm() > kClear; });
  };
  const double paper = calibration::kEdgeTagSide + 2.0 * calibration::kEdgeTagRim;
  for (int k = 0; k < kTags; ++k) {
    Point at = at_edge(room.mat, (k + 0.5) / kTags);
    for (int step = 1; step < 20 && !clear(at); ++step)
      at = at_edge(room.mat, (k + 0.5 + 0.04 * (step % 2 == 0 ? step : -step)) / kTags);
    room_model::PaperSheet tag;
    tag.page = calibration::edge_tag_picture(k + 1, 6.0);
    tag.pixel_mm = paper / tag.page.cols;
    tag.paper = {paper, paper};
    tag.place = {at.x(), at.y(), room.mat.place.turn};
    room.sheets.push_back(tag);
  }
}

/// A camera on a stand, as far away as it must be to see light, sheets and tags.
room_model::RoomCamera eye_over(const room_model::Room& room) {
  room_model::RoomCamera eye;
  eye.width = 1920;
  eye.height = 1080;
  const Eigen::Vector3d middle(room.mat.place.x, room.mat.place.y, 0.0);
  const Eigen::Vector3d from = middle + Eigen::Vector3d(kEyeAside, -kEyeAside, kEyeHeight);
  const Eigen::Vector3d view = (middle - from).normalized(),
                        right = view.cross(Eigen::Vector3d::UnitY()).normalized();
  Eigen::Isometry3d pose = Eigen::Isometry3d::Identity();
  pose.linear() << right, view.cross(right), view;
  pose.translation() = from;
  eye.camera_from_room = pose.inverse();
  eye.optic.centre = {962.0, 537.0};
  double widest = 0.0;
  const auto see = [&](const Point& p) {
    const Eigen::Vector3d seen = eye.camera_from_room * Eigen::Vector3d(p.x(), p.y(), 0.0);
    widest = std::max({widest, std::abs(seen.x() / seen.z()) / 960.0, std::abs(seen.y() / seen.z()) / 540.0});
  };
  for (const Point& p : room_model::lit_outline(room.projector)) see(p);
  for (const room_model::PaperSheet& sheet : room.sheets)
    for (const Point& p : room_model::paper_outline(sheet)) see(p);
  eye.optic.focal = Eigen::Vector2d::Constant(0.94 / widest);
  eye.optic.k1 = -0.03;
  eye.optic.k2 = 0.006;
  return eye;
}

cv::Mat grey_picture(const QImage& picture) {
  const QImage grey = picture.convertToFormat(QImage::Format_Grayscale8);
  return cv::Mat(grey.height(), grey.width(), CV_8UC1, const_cast<uchar*>(grey.constBits()),
                 static_cast<size_t>(grey.bytesPerLine()))
      .clone();
}

}  // namespace

struct SimulatedCamera::Scene {
  mutable std::mutex mutex;  // of all below
  SimulatedTable table;
  room_model::Room room;
  room_model::RoomCamera eye;
  cv::Mat picture;
  int room_number = 0, picture_number = 0;  // of changes
  bool plugged = true;
};

namespace {

void print_sheets(room_model::Room& room) {
  static const std::vector<cv::Mat> pages = [] {
    std::vector<cv::Mat> made;
    for (const room_model::PaperSheet& sheet : simulated_table().session.room.sheets)
      made.push_back(sheet.page);
    return made;
  }();
  size_t number = 0;
  for (room_model::PaperSheet& sheet : room.sheets)
    if (sheet.page.empty() && number < pages.size()) sheet.page = pages[number++];
}

class Device : public calibration::CameraDevice {
 public:
  explicit Device(std::shared_ptr<const SimulatedCamera::Scene> scene) : scene_(std::move(scene)) {}

  bool read(cv::Mat& picture) override {
    follow();
    {
      const std::lock_guard lock(scene_->mutex);
      if (!scene_->plugged) return false;
    }
    const double now = calibration::steady_seconds();
    if (next_ > now) std::this_thread::sleep_for(std::chrono::duration<double>(next_ - now));
    next_ = std::max(next_ + kFrame, now);
    picture = film_->frame(calibration::steady_seconds(), ++frames_).clone();
    return true;
  }
  bool is_film() const override { return false; }
  double frames_a_second() const override { return 1.0 / kFrame; }

 private:
  // The light of the scene as it is now.
  void follow() {
    room_model::Room room;
    room_model::RoomCamera eye;
    cv::Mat shown;
    {
      const std::lock_guard lock(scene_->mutex);
      if (room_ == scene_->room_number && picture_ == scene_->picture_number) return;
      if (room_ != scene_->room_number) dark_.release();
      room_ = scene_->room_number;
      picture_ = scene_->picture_number;
      room = scene_->room;
      eye = scene_->eye;
      shown = scene_->picture;
    }
    print_sheets(room);
    if (dark_.empty()) {
      dark_ = room_model::linear_photograph(room, eye, shown * 0);
      plain_ = room_model::linear_photograph(room, eye, calibration::plain_picture(shown.cols, shown.rows));
    }
    if (!film_)  // the exposure suits plain light, and stays
      film_.emplace(room_model::FilmLight{dark_, plain_}, eye,
                    std::vector<cv::Rect>{{0, 0, eye.width, eye.height}});
    film_->change({dark_, light_of(room, eye, shown)});
  }

  // Light adds up, so an even picture is a share of plain light.
  cv::Mat light_of(const room_model::Room& room, const room_model::RoomCamera& eye,
                   const cv::Mat& shown) const {
    double least = 0.0, most = 0.0;
    cv::minMaxLoc(shown, &least, &most);
    if (least < most) return room_model::linear_photograph(room, eye, shown);
    return dark_ + std::pow(most / 255.0, room.projector.gamma) * (plain_ - dark_);
  }

  std::shared_ptr<const SimulatedCamera::Scene> scene_;
  std::optional<room_model::FixedFilm> film_;
  cv::Mat dark_, plain_;  // linear light of the room with a black and a white picture
  int room_ = -1, picture_ = -1;
  std::uint64_t frames_ = 0;
  double next_ = 0.0;
};

}  // namespace

SimulatedCamera::SimulatedCamera() : scene_(std::make_shared<Scene>()) {
  scene_->table = bare_simulated_table();  // what is printed on the sheets is drawn when they are looked at
  scene_->room = scene_->table.session.room;
  glue_tags(scene_->room);
  scene_->eye = eye_over(scene_->room);
  scene_->picture = cv::Mat::zeros(scene_->room.projector.height, scene_->room.projector.width, CV_8UC1);
}

calibration::CameraRequest SimulatedCamera::request() const {
  return {.spec = kSimulatedCamera, .width = scene_->eye.width, .height = scene_->eye.height};
}

calibration::OpenCamera SimulatedCamera::opener() const {
  return [scene = scene_](const calibration::CameraRequest&) -> std::unique_ptr<calibration::CameraDevice> {
    const std::lock_guard lock(scene->mutex);
    if (!scene->plugged) return nullptr;
    return std::make_unique<Device>(scene);
  };
}

void SimulatedCamera::project(const QImage& picture) {
  cv::Mat shown = grey_picture(picture);
  const std::lock_guard lock(scene_->mutex);
  if (shown.size() != scene_->picture.size()) return;  // not this table's projector
  if (cv::norm(shown, scene_->picture, cv::NORM_INF) == 0.0) return;
  scene_->picture = std::move(shown);
  ++scene_->picture_number;
}

void SimulatedCamera::lay(const SimulatedCloth& cloth, const calibration::TableMap& map) {
  const room_model::Cloth laid = laid_on(scene_->table, map, cloth);
  const std::lock_guard lock(scene_->mutex);
  room_model::Room& room = scene_->room;
  std::erase_if(room.sheets, [](const room_model::PaperSheet& sheet) { return sheet.paper.x() > 100.0; });
  room.light.lux = scene_->table.session.room.light.lux * cloth.room_light;
  room.cloth = laid;
  ++scene_->room_number;
}

void SimulatedCamera::knock_projector(double mm) {
  const std::lock_guard lock(scene_->mutex);
  auto& pose = scene_->room.projector.projector_from_room;
  pose = pose * Eigen::Translation3d(mm, 0.0, 0.0);
  ++scene_->room_number;
}

void SimulatedCamera::plug(bool in) {
  const std::lock_guard lock(scene_->mutex);
  scene_->plugged = in;
}

}  // namespace cowlcast::projector
