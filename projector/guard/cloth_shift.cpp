#include "projector/guard/cloth_shift.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

#include "calibration/refusal.h"
#include "drafting/geometry/polyline.h"

namespace cowlcast::projector {
namespace {

constexpr double kAbout = 120.0;           // mm about the stroke
constexpr double kOnCloth = 25.0;          // mm about the piece: cloth for certain
constexpr double kOffCuts = 25.0;          // mm: nearer to a cut nothing is as it was
constexpr double kApart[] = {80.0, 30.0};  // mm from patch to patch
constexpr size_t kPatches = 32;            // about the stroke, and elsewhere
constexpr double kRound = 0.7;             // s in which each patch is looked at once
constexpr double kLasts = 4.0;             // s that a look counts
constexpr double kSame = 0.5;              // mm between the looks of one patch at rest
constexpr double kBladeReach = 130.0;      // mm: a blade pulls cloth along so far, common practice, no source
constexpr double kTogether = 100.0;        // mm: patches that should tell about the same
constexpr double kBeside = 50.0;           // mm: and those that may not gainsay it
constexpr double kDiffers = 0.9;           // mm, and the share of a shift, by which they may differ
constexpr double kDiffersShare = 0.25;
constexpr double kMoved = 0.9;               // mm: of a patch that says that the cloth has gone
constexpr double kSome = 0.25, kMost = 0.6;  // of a shift: what goes the same way, and what tells it strongly
constexpr double kTwoWays = 0.5;             // sine of the angle between two ways
constexpr double kSpread = 200.0;            // mm between those elsewhere
constexpr double kLying = 4.0;               // s after it was laid, in which it is seen how it lies
constexpr double kStays = 1.0;               // s

// Whether nothing that is cut parts the two places.
bool joined(const Point& a, const Point& b, const std::vector<Polyline>& cut) {
  for (const Polyline& line : cut)
    for (size_t i = 1; i < line.size(); ++i)
      if (drafting::crossing(a, b, line[i - 1], line[i])) return false;
  return true;
}

Point middle_of_piece(const ClothShift::Where& where) {
  const drafting::Box box = drafting::box_of(where.piece.empty() ? where.stroke : where.piece);
  return 0.5 * (box.low + box.high);
}

bool agrees(const ClothShift::Said& one, const Point& by) {
  return (one.by - one.of(by)).norm() < std::max(kDiffers, kDiffersShare * by.norm());
}

double middle_of(std::vector<double> values) {
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::nth_element(values.begin(), middle, values.end());
  return *middle;
}

}  // namespace

std::string words(const ToldShift& shift) {
  const bool across = std::abs(shift.by.x()) >= std::abs(shift.by.y());
  const char* way = across ? (shift.by.x() > 0.0 ? "to the right" : "to the left")
                           : (shift.by.y() > 0.0 ? "away from you" : "towards you");
  char text[160];
  std::snprintf(
      text, sizeof text,
      shift.at_stroke
          ? "The cloth has shifted by about %.0f mm %s since the piece was laid."
          : "The cloth's edge, or a mark on it, has shifted by about %.0f mm %s since the piece was laid.",
      shift.by.norm(), way);
  return text;
}

ClothShift::ClothShift(const Backdrop& backdrop)
    : cloth_(std::make_unique<const ClothLook>(backdrop)), places_(telling_places(*cloth_)) {
  const TableSight& sight = cloth_->sight;
  std::vector<cv::Point> kept;
  for (const cv::Point& at : places_) try {
      mats_.push_back(sight.camera.mat_from_pixel(Point(at.x, at.y), sight.cloth));
      kept.push_back(at);
    } catch (const calibration::Refusal&) {
      continue;  // not on the table
    }
  places_ = kept;
}

void ClothShift::about(const Where& where) {
  active_.clear();
  next_ = 0;
  std::vector<Point> chosen;
  Polyline outline = where.piece;
  if (!outline.empty()) outline.push_back(outline.front());
  const Point middle = middle_of_piece(where);
  const auto near_line = [&](const Point& at, double within) {
    return drafting::nearest(where.stroke, at).distance < within;
  };
  const auto on_piece = [&](const Point& at) {
    return !outline.empty() &&
           (drafting::contains(where.piece, at) || drafting::nearest(outline, at).distance < kOnCloth);
  };
  const auto choose = [&](bool near, double apart, size_t most) {
    for (size_t i = 0; i < places_.size() && active_.size() < most; ++i) {
      const Point& at = mats_[i];
      if ((near_line(at, kOnCloth) || (near_line(at, kAbout) && on_piece(at))) != near) continue;
      const auto too_near = [&](const Point& other) { return (other - at).norm() < apart; };
      const auto cut_here = [&](const Polyline& line) {
        return drafting::nearest(line, at).distance < kOffCuts;
      };
      if (std::any_of(chosen.begin(), chosen.end(), too_near) ||
          std::any_of(where.cut.begin(), where.cut.end(), cut_here))
        continue;
      // Cut off, it may be laid anywhere.
      const Point foot = drafting::point_at(where.stroke, drafting::nearest(where.stroke, at).along);
      if (!joined(at, foot, where.cut) || !joined(at, middle, where.cut)) continue;
      chosen.push_back(at);
      Followed& followed = followed_.try_emplace(i, Followed{ClothPatch(*cloth_, places_[i])}).first->second;
      active_.push_back({&followed, near});
    }
  };
  // First some all over, then more of them.
  for (const bool near : {true, false}) {
    const size_t most = active_.size() + kPatches;
    for (const double apart : kApart) choose(near, apart, most);
  }
}

bool ClothShift::sees() const {
  const auto count =
      std::count_if(active_.begin(), active_.end(), [](const Active& one) { return one.near; });
  return count >= kFewest;
}

void ClothShift::laid() {
  laid_at_.reset();
  lying_ = true;
  owed_ = {0.0, 0.0};
  told_.reset();
  for (auto& [place, followed] : followed_) {
    followed.base.reset();
    followed.told_so = false;
    followed.looks.clear();
  }
}

void ClothShift::owes(const ClothShift& before, double seconds) {
  std::vector<double> x, y;
  for (const Said& one : before.said(seconds))
    if (one.near) {
      x.push_back(one.by.x());
      y.push_back(one.by.y());
    }
  told_ = before.told_;
  if (told_)
    owed_ = told_->by;
  else if (x.size() >= static_cast<size_t>(kFewest))
    owed_ = {middle_of(x), middle_of(y)};
}

std::optional<Point> ClothShift::says(const Followed& followed, double seconds) const {
  const std::vector<Look>& looks = followed.looks;
  if (looks.size() < 3 || seconds - looks[looks.size() - 3].seconds > kLasts) return std::nullopt;
  const Point &a = looks[looks.size() - 3].reading.shift, &b = looks[looks.size() - 2].reading.shift,
              &c = looks.back().reading.shift;
  if ((a - b).norm() > kSame || (b - c).norm() > kSame) return std::nullopt;
  return Point(middle_of({a.x(), b.x(), c.x()}), middle_of({a.y(), b.y(), c.y()}));
}

// Where the cloth about a place is right, by the nearest patch that knows.
Point ClothShift::base_near(const Point& place) const {
  Point base(0.0, 0.0);
  double least = 1e300;
  for (const auto& [at, followed] : followed_)
    if (const double far = (followed.patch.place() - place).norm(); followed.base && far < least) {
      least = far;
      base = *followed.base;
    }
  return base;
}

// After the piece was laid: what the patches say then is right.
void ClothShift::take_as_right(double seconds) {
  if (!lying_) return;
  int known = 0;
  for (const Active& one : active_)
    if (const auto by = says(*one.followed, seconds)) {
      if (!laid_at_) laid_at_ = seconds;
      one.followed->base = by;
      ++known;
    }
  if (known >= kFewest && seconds - *laid_at_ > kLying) lying_ = false;
}

std::vector<ClothShift::Said> ClothShift::said(double seconds) const {
  std::vector<Said> all;
  for (const Active& one : active_)
    if (const auto by = says(*one.followed, seconds)) {
      const Point& place = one.followed->patch.place();
      Said said{place, *by, one.followed->looks.back().reading.only, one.near, one.followed->told_so};
      said.by += said.of(owed_ - one.followed->base.value_or(base_near(place)));
      all.push_back(said);
    }
  return all;
}

void ClothShift::look(const cv::Mat& frame, const cv::Mat& picture, double seconds,
                      const std::optional<Point>& blade) {
  const auto count = static_cast<double>(active_.size());
  due_ = std::min(due_ + count / kRound * std::clamp(seconds - seen_at_, 0.0, 0.5), count);
  seen_at_ = seconds;
  for (; due_ >= 1.0; due_ -= 1.0) {
    Followed& one = *active_[next_++ % active_.size()].followed;
    if (blade && (one.patch.place() - *blade).norm() < kBladeReach) {
      one.looks.clear();
      continue;
    }
    const Point guess = one.looks.empty() ? Point(0.0, 0.0) : one.looks.back().reading.pixels;
    if (const auto reading = one.patch.read(frame, picture, guess)) {
      if (one.looks.size() > 8) one.looks.erase(one.looks.begin());
      one.looks.push_back({seconds, *reading});
    }
  }
  take_as_right(seconds);
  if (!lying_) judge(seconds);
}

// What all patches say of cloth that has gone by so much about a place of the stroke. A blade drags most
// where it was, so those farther off may have gone less, but the same way.
std::optional<ToldShift> ClothShift::at_stroke(const std::vector<Said>& all, const Point& by,
                                               const Point& about) {
  ToldShift group{.by = by, .places = {}, .at_stroke = true};
  int with = 0, strongly = 0, against = 0;
  for (const Said& one : all) {
    const double far = (one.place - about).norm();
    const Point whole = one.of(by);
    if (!one.near || far > kTogether || whole.norm() < kMoved) continue;  // it could not tell
    const double share = one.by.dot(whole) / whole.squaredNorm(), aside = (one.by - share * whole).norm();
    if (share > kSome && aside < std::max(kDiffers, kDiffersShare * by.norm())) {
      ++with;
      strongly += share > kMost ? 1 : 0;
      group.places.push_back(one.place);
    } else if (far < kBeside) {
      ++against;
    }
  }
  if (with < kFewest || strongly < 2 || with <= against) return std::nullopt;
  return group;
}

// The same where nobody knows whether cloth is seen: what lies still says nothing there, but what is seen of
// the stroke's own cloth does.
std::optional<ToldShift> ClothShift::elsewhere(const std::vector<Said>& all, const Point& by) {
  ToldShift group{.by = by, .places = {}, .at_stroke = false};
  double spread = 0.0;
  for (const Said& one : all) {
    if (one.near && !agrees(one, by)) return std::nullopt;
    if (!agrees(one, by) || one.by.norm() < kMoved) continue;
    for (const Point& place : group.places) spread = std::max(spread, (place - one.place).norm());
    group.places.push_back(one.place);
  }
  if (group.places.size() < static_cast<size_t>(kFewestFar) || spread < kSpread) return std::nullopt;
  return group;
}

// The largest shift at the stroke, of `least` mm or more, that patches agree on; else the one elsewhere that
// most do. Tried is what each says, and what two say together that tell of two ways.
std::optional<ToldShift> ClothShift::agreed(const std::vector<Said>& all, double least) {
  std::optional<ToldShift> here, there;
  const auto attempt = [&](const Point& by, const Said& seed) {
    if (by.norm() < least) return;
    if (seed.near) {
      if (here && here->by.norm() >= by.norm()) return;
      if (const auto group = at_stroke(all, by, seed.place)) here = group;
    } else if (const auto group = elsewhere(all, by)) {
      if (!there || group->places.size() > there->places.size()) there = group;
    }
  };
  for (size_t i = 0; i < all.size(); ++i) {
    const Said& one = all[i];
    if (one.by.norm() < kMoved) continue;
    attempt(one.by, one);
    for (size_t j = i + 1; !one.only.isZero() && j < all.size(); ++j) {
      const Said& other = all[j];
      if (other.near != one.near || (one.near && (other.place - one.place).norm() > kTogether)) continue;
      Eigen::Matrix2d ways;
      ways << one.only.transpose(), other.only.transpose();
      if (std::abs(ways.determinant()) < kTwoWays) continue;
      attempt(ways.inverse() * Point(one.only.dot(one.by), other.only.dot(other.by)), one);
    }
  }
  return here ? here : there;
}

void ClothShift::judge(double seconds) {
  const std::vector<Said> all = said(seconds);
  const double least = told_ ? kRight : kTells;
  if (const std::optional<ToldShift> found = agreed(all, least)) {
    if (!since_) since_ = seconds;
    if (told_ || seconds - *since_ >= kStays) {
      told_ = found;
      note_who_told(all);
    }
    return;
  }
  since_.reset();
  if (!told_) return;
  // Only what is seen to lie as it lay takes it back: cloth for certain, or patches that told it themselves.
  int right = 0;
  for (const Said& one : all)
    if ((one.told_so || (one.near && told_->at_stroke)) && one.by.norm() < kRight &&
        one.of(told_->by).norm() > kRight)
      ++right;
  if (right < (told_->at_stroke ? kFewest : kFewestFar)) return;
  told_.reset();
  for (auto& [at, followed] : followed_) followed.told_so = false;
}

void ClothShift::note_who_told(const std::vector<Said>& all) {
  for (const Active& active : active_)
    for (const Said& one : all)
      if (one.place == active.followed->patch.place() && agrees(one, told_->by) && one.by.norm() > kMoved)
        active.followed->told_so = true;
}

}  // namespace cowlcast::projector
