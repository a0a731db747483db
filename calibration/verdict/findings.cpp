#include "calibration/verdict/findings.h"

#include <Eigen/Cholesky>
#include <Eigen/Geometry>
#include <algorithm>
#include <cmath>
#include <map>
#include <optional>

#include "calibration/words.h"

namespace cowlcast::calibration {
namespace {

constexpr double kMoved = 0.6;         // mm: a sheet or picture nearer than this has not moved
constexpr double kScale = 0.0015;      // relative: printers differ less from page to page
constexpr double kLifted = 1.5;        // mm
constexpr double kSignificance = 6.0;  // standard deviations

// One sighting's miss and what each unknown of its group would do to it.
struct Row {
  Eigen::Vector2d miss = Eigen::Vector2d::Zero();  // pixels
  Eigen::Matrix<double, 2, Eigen::Dynamic> slope;
  double sigma = 1.0;
};

struct Explained {
  Eigen::VectorXd unknowns, sigma;
};

// Robust least squares (Cauchy's weights); nothing with too few rows.
std::optional<Explained> explain(const std::vector<Row>& rows, double noise) {
  if (rows.empty()) return std::nullopt;
  const Eigen::Index n = rows[0].slope.cols();
  if (static_cast<Eigen::Index>(rows.size()) < n + 3) return std::nullopt;
  Explained out{Eigen::VectorXd::Zero(n), Eigen::VectorXd::Zero(n)};
  double spread = 1e3;  // wide at first: the group may be far off
  for (int round = 0; round < 8; ++round) {
    Eigen::MatrixXd normal = Eigen::MatrixXd::Identity(n, n) * 1e-12;
    Eigen::VectorXd side = Eigen::VectorXd::Zero(n);
    std::vector<double> sizes;
    for (const Row& row : rows) {
      const Eigen::Vector2d left = (row.miss - row.slope * out.unknowns) / (noise * row.sigma);
      sizes.push_back(left.norm() / 1.1774);
      const double weight =
          1.0 / (1.0 + left.squaredNorm() / (9.0 * spread * spread)) / std::pow(noise * row.sigma, 2);
      normal += weight * row.slope.transpose() * row.slope;
      side += weight * row.slope.transpose() * row.miss;
    }
    std::nth_element(sizes.begin(), sizes.begin() + static_cast<std::ptrdiff_t>(sizes.size() / 2),
                     sizes.end());
    spread = std::max(1.0, sizes[sizes.size() / 2]);
    const Eigen::LDLT<Eigen::MatrixXd> factor(normal);
    out.unknowns = factor.solve(side);
    out.sigma = spread * factor.solve(Eigen::MatrixXd::Identity(n, n)).diagonal().cwiseMax(0.0).cwiseSqrt();
  }
  return out;
}

// How a pixel of a photograph follows a mat point: per mm along x, y and up.
std::optional<Eigen::Matrix<double, 2, 3>> pixel_slope(const Scene& scene, int photo,
                                                       const Eigen::Vector2d& mat) {
  const ScenePhoto& p = scene.photos[static_cast<size_t>(photo)];
  const Lens lens = scene.lenses[static_cast<size_t>(p.lens)].lens(std::exp(p.focus));
  const Eigen::Isometry3d camera_from_mat = p.camera_from_mat.transform();
  Eigen::Matrix<double, 2, 3> out;
  const auto at = [&](const Eigen::Vector3d& point) {
    const Eigen::Vector3d seen = camera_from_mat * point;
    return lens.pixel_from_ray(seen.head<2>() / seen.z());
  };
  for (int k = 0; k < 3; ++k) {
    const Eigen::Vector3d step = 0.05 * Eigen::Vector3d::Unit(k), here(mat.x(), mat.y(), 0.0);
    out.col(k) = (at(here + step) - at(here - step)) / 0.1;
  }
  return out.allFinite() ? std::optional(out) : std::nullopt;
}

// A turn of a radian about `middle`, in mm.
Eigen::Vector2d turning(const Eigen::Vector2d& mat, const Eigen::Vector2d& middle) {
  return {-(mat.y() - middle.y()), mat.x() - middle.x()};
}

double typical_noise(const std::vector<PaperSighting>& sightings, const std::vector<double>& residuals) {
  std::vector<double> sizes;
  for (size_t i = 0; i < sightings.size(); ++i)
    if (sightings[i].used) sizes.push_back(residuals[i] / sightings[i].sigma);
  if (sizes.empty()) return 1.0;
  std::nth_element(sizes.begin(), sizes.begin() + static_cast<std::ptrdiff_t>(sizes.size() / 2), sizes.end());
  return std::max(0.3, sizes[sizes.size() / 2] / 1.1774);
}

class Sheets {
 public:
  Sheets(const Scene& scene, double least)
      : scene_(scene), least_(least), noise_(typical_noise(scene.paper, paper_misses())) {}

  std::vector<Finding> all() {
    std::vector<Finding> out;
    for (int sheet = 0; sheet < static_cast<int>(scene_.sheets.size()); ++sheet) {
      if (scene_.sheets.size() > 1)
        if (const auto finding = scale(sheet)) {
          out.push_back(*finding);
          continue;
        }
      if (const auto finding = curl(sheet)) out.push_back(*finding);
      for (int photo = 0; photo < static_cast<int>(scene_.photos.size()); ++photo)
        if (const auto finding = moved(sheet, photo)) out.push_back(*finding);
    }
    return out;
  }

 private:
  std::vector<double> paper_misses() const {
    std::vector<double> out;
    for (const PaperSighting& s : scene_.paper) {
      const auto at = scene_.photo_from_sheet(s.photo, s.sheet, s.printed);
      out.push_back(at ? (s.pixel - *at).norm() : 1e3);
    }
    return out;
  }

  // Rows of all sightings that `takes` accepts; `unknowns` gives what each unknown does on the mat.
  template <typename Takes, typename Unknowns>
  std::vector<Row> rows(const Takes& takes, const Unknowns& unknowns) const {
    std::vector<Row> out;
    for (const PaperSighting& s : scene_.paper) {
      if (!takes(s)) continue;
      const Eigen::Vector2d mat = scene_.mat_from_sheet(s.sheet, s.printed);
      const auto at = scene_.photo_from_sheet(s.photo, s.sheet, s.printed);
      const auto slope = pixel_slope(scene_, s.photo, mat);
      if (at && slope) out.push_back({s.pixel - *at, *slope * unknowns(s, mat), s.sigma});
    }
    return out;
  }

  Eigen::Vector2d middle(int sheet) const { return scene_.mat_from_sheet(sheet, {0, 0}); }

  std::optional<Finding> moved(int sheet, int photo) const {
    const auto group = rows([&](const PaperSighting& s) { return s.sheet == sheet && s.photo == photo; },
                            [&](const PaperSighting&, const Eigen::Vector2d& mat) {
                              Eigen::Matrix3d out = Eigen::Matrix3d::Zero();
                              out.topLeftCorner<2, 2>().setIdentity();
                              out.topRightCorner<2, 1>() = turning(mat, middle(sheet));
                              return out;
                            });
    const auto shift = explain(group, noise_);
    if (!shift) return std::nullopt;
    // A turn counts by what it does at the sheet's ends.
    const double size = std::hypot(shift->unknowns.head<2>().norm(), 120.0 * shift->unknowns[2]);
    const double sigma = std::hypot(shift->sigma.head<2>().norm(), 120.0 * shift->sigma[2]);
    if (size < least_ * kMoved || size < kSignificance * sigma) return std::nullopt;
    return Finding{Oddity::sheet_moved, sheet, photo, size, {}};
  }

  std::optional<Finding> scale(int sheet) const {
    const double turn = scene_.sheets[static_cast<size_t>(sheet)].place[2];
    const auto group = rows([&](const PaperSighting& s) { return s.sheet == sheet; },
                            [&](const PaperSighting& s, const Eigen::Vector2d& mat) {
                              Eigen::Matrix<double, 3, 5> out = Eigen::Matrix<double, 3, 5>::Zero();
                              out.topLeftCorner<2, 2>().setIdentity();
                              out.block<2, 1>(0, 2) = turning(mat, middle(sheet));
                              const Eigen::Rotation2Dd rotate(turn);
                              out.block<2, 1>(0, 3) = rotate * Eigen::Vector2d(s.printed.x(), 0.0);
                              out.block<2, 1>(0, 4) = rotate * Eigen::Vector2d(0.0, s.printed.y());
                              return out;
                            });
    const auto change = explain(group, noise_);
    if (!change) return std::nullopt;
    const int k = std::abs(change->unknowns[3]) > std::abs(change->unknowns[4]) ? 3 : 4;
    const double size = change->unknowns[k];
    const bool both = change->unknowns[3] * change->unknowns[4] > 0.0 || std::abs(size) > 3.0 * kScale;
    if (std::abs(size) < least_ * kScale || std::abs(size) < kSignificance * change->sigma[k] || !both)
      return std::nullopt;
    return Finding{Oddity::sheet_scale, sheet, -1, size, {}};
  }

  std::optional<Finding> curl(int sheet) const {
    std::map<int, int> photos;
    for (const PaperSighting& s : scene_.paper)
      if (s.sheet == sheet) photos[s.photo]++;
    if (photos.size() < 2) return std::nullopt;  // one view alone cannot tell height from place
    Finding out{Oddity::sheet_curled, sheet, -1, 0.0, {}};
    const int corners = sheet_layout(scene_.sheets[static_cast<size_t>(sheet)].paper).corner_count();
    bool certain = false;
    for (int corner = 0; corner < corners; ++corner) {
      // Height from each photograph that sees this corner: they must agree.
      double weights = 0.0, sum = 0.0, agree = 0.0;
      int count = 0;
      std::vector<std::pair<double, double>> heights;
      for (const PaperSighting& s : scene_.paper) {
        if (s.sheet != sheet || s.corner != corner) continue;
        const Eigen::Vector2d mat = scene_.mat_from_sheet(sheet, s.printed);
        const auto at = scene_.photo_from_sheet(s.photo, s.sheet, s.printed);
        const auto slope = pixel_slope(scene_, s.photo, mat);
        if (!at || !slope) continue;
        const Eigen::Vector2d up = slope->col(2), miss = s.pixel - *at;
        const double weight = up.squaredNorm() / std::pow(noise_ * s.sigma, 2);
        const double height = up.dot(miss) / std::max(1e-9, up.squaredNorm());
        heights.emplace_back(height, weight);
        sum += weight * height;
        weights += weight;
        ++count;
      }
      if (count < 2) continue;
      const double height = sum / weights;
      for (const auto& [h, w] : heights)
        agree += std::abs(h - height) < std::max(0.5, 0.35 * height) ? 1.0 : 0.0;
      if (agree < count) continue;
      if (height > 0.5 * kLifted && height > kSignificance / std::sqrt(weights)) {
        out.corners.push_back(corner);
        out.size = std::max(out.size, height);
        certain = certain || height > least_ * kLifted;
      }
    }
    // A sheet that stands up as a whole is another matter: it lies on something.
    if (!certain || out.corners.size() < 2) return std::nullopt;
    return out;
  }

  const Scene& scene_;
  double least_, noise_;
};

std::string photo_name(const Scene& scene, int photo) {
  return scene.photos[static_cast<size_t>(photo)].name;
}

std::string sheet_name(const Scene& scene, int sheet) {
  return std::to_string(scene.sheets[static_cast<size_t>(sheet)].number);
}

}  // namespace

std::vector<Finding> find_sheet_oddities(const Scene& scene, double least) {
  return Sheets(scene, least).all();
}

void leave_out(Scene& scene, const Finding& finding) {
  if (finding.oddity == Oddity::sheet_moved)
    std::erase_if(scene.paper, [&](const PaperSighting& s) {
      return s.sheet == finding.sheet && s.photo == finding.photo;
    });
  if (finding.oddity == Oddity::sheet_curled)
    std::erase_if(scene.paper, [&](const PaperSighting& s) {
      const bool whole = finding.corners.empty();
      return s.sheet == finding.sheet && (whole || std::find(finding.corners.begin(), finding.corners.end(),
                                                             s.corner) != finding.corners.end());
    });
}

std::string words(const Scene& scene, const Finding& finding) {
  switch (finding.oddity) {
    case Oddity::sheet_moved:
      return "Sheet " + sheet_name(scene, finding.sheet) + " moved between photographs: in " +
             photo_name(scene, finding.photo) + " it lies " + fixed(finding.size, 1) +
             " mm from its place in the others.";
    case Oddity::sheet_scale:
      return "Sheet " + sheet_name(scene, finding.sheet) +
             " is printed at another scale than the others: it is " +
             fixed(100.0 * std::abs(finding.size), 1) + " % " + (finding.size > 0.0 ? "larger." : "smaller.");
    case Oddity::sheet_curled:
      return "A corner of sheet " + sheet_name(scene, finding.sheet) + " is lifted or curled: it stands up " +
             (finding.size < 0.5 ? "a fraction of a mm." : "about " + fixed(finding.size, 0) + " mm.");
    case Oddity::picture_moved:
      return "The projector's picture moved between photographs: in " + photo_name(scene, finding.photo) +
             " it lies " + fixed(finding.size, 1) + " mm from where the others have it.";
  }
  return {};
}

}  // namespace cowlcast::calibration
