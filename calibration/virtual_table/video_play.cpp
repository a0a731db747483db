#include "calibration/virtual_table/video_play.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <stdexcept>

namespace cowlcast::calibration::virtual_table {

namespace {

using Eigen::Vector2d;

constexpr double kCounts = std::numbers::pi * 6.0 * 6.0;  // mm²: a disc of 12 mm
constexpr double kCell = 2.0;                             // mm: of the grid that areas are counted on
constexpr double kBeat = 0.02;                            // s: of the cloth's giving way

double eased(double x) {
  x = std::clamp(x, 0.0, 1.0);
  return x * x * (3.0 - 2.0 * x);
}

Vector2d left_of(const Vector2d& way) {
  return {-way.y(), way.x()};
}

bool contains(const std::vector<Vector2d>& outline, const Vector2d& p) {
  bool in = false;
  for (std::size_t i = 0, j = outline.size() - 1; i < outline.size(); j = i++)
    if ((outline[i].y() > p.y()) != (outline[j].y() > p.y()) &&
        p.x() <
            (outline[j].x() - outline[i].x()) * (p.y() - outline[i].y()) / (outline[j].y() - outline[i].y()) +
                outline[i].x())
      in = !in;
  return in;
}

Vector2d own_from_mat(const Place& place, const Vector2d& mat) {
  const double c = std::cos(place.turn), s = std::sin(place.turn);
  const double dx = mat.x() - place.x, dy = mat.y() - place.y;
  return {c * dx + s * dy, c * dy - s * dx};
}

double angle_of(const Vector2d& way) {
  return std::atan2(way.y(), way.x());
}

Vector2d unit(double angle) {
  return {std::cos(angle), std::sin(angle)};
}

}  // namespace

CuttingPlay::CuttingPlay(Dice& dice, const PlayOptions& options) : options_(options) {
  if (options.stroke.size() < 2) throw std::invalid_argument("a stroke needs two points");
  lengths_.push_back(0.0);
  for (std::size_t i = 1; i < options.stroke.size(); ++i)
    lengths_.push_back(lengths_.back() + (options.stroke[i] - options.stroke[i - 1]).norm());
  length_ = lengths_.back();
  look_ = draw_cutter(dice);
  lean_ = dice.uniform(0.25, 0.6);
  add_cutting(dice);
  add_holding_hand(dice);
  if (options.gives_way > 0.0) add_drag(dice);
  if (dice.chance(options.offcut)) add_offcut(dice);
  for (int k = dice.below(3); k > 0 && dice.chance(0.3); --k) {
    const Vector2d place = at(dice.uniform(0.0, length_), dice.uniform(-options.other, options.holding));
    journeys_.push_back({trifle(dice),
                         {{-1.0, {place.x(), place.y(), 0.0}}, {seconds_ + 1.0, {place.x(), place.y(), 0.0}}},
                         false});
  }
  while (dice.chance(options.eventful) && intrusions_.size() < 3) add_event(dice);
}

// Off the stroke by `off` mm towards the holding side.
Vector2d CuttingPlay::at(double along, double off) const {
  const Vector2d way = travel(along);
  const double held = std::clamp(along, 0.0, length_);
  std::size_t i = 1;
  while (i + 1 < lengths_.size() && lengths_[i] < held) ++i;
  const Vector2d on = options_.stroke[i - 1] + (along - lengths_[i - 1]) * way;
  return on + (options_.holding_left ? off : -off) * left_of(way);
}

Vector2d CuttingPlay::travel(double along) const {
  std::size_t i = 1;
  while (i + 1 < lengths_.size() && lengths_[i] < along) ++i;
  return (options_.stroke[i] - options_.stroke[i - 1]).normalized();
}

void CuttingPlay::add_cutting(Dice& dice) {
  double t = dice.uniform(0.8, 2.2), along = 0.0;
  steps_.push_back({t, 0.0, 1.0});
  t += dice.uniform(0.5, 1.0);
  steps_.push_back({t, 0.0, 0.0});
  t += dice.uniform(0.1, 0.6);
  steps_.push_back({t, 0.0, 0.0});
  cutting_from_ = t;
  const double speed = dice.uniform(70.0, 260.0);
  while (along < length_) {
    const double step = std::min(dice.uniform(60.0, 260.0), length_ - along);
    along += step;
    t += step / speed * dice.uniform(0.9, 1.2);
    steps_.push_back({t, along, 0.0});
    if (along < length_ && dice.chance(0.4)) {
      if (dice.chance(0.3)) {
        along -= dice.uniform(5.0, 20.0);
        t += 0.25;
      }
      t += dice.uniform(0.1, 0.8);
      steps_.push_back({t, along, 0.0});
    }
  }
  cutting_to_ = t;
  t += dice.uniform(0.1, 0.5);
  steps_.push_back({t, length_, 0.0});
  t += dice.uniform(0.5, 1.0);
  steps_.push_back({t, length_, 1.0});
  seconds_ = t + dice.uniform(0.2, 1.2);
}

double CuttingPlay::blade(double t) const {
  if (t <= steps_.front().t) return 0.0;
  for (std::size_t i = 1; i < steps_.size(); ++i)
    if (t < steps_[i].t) {
      const Step &a = steps_[i - 1], &b = steps_[i];
      return a.along + (b.along - a.along) * (t - a.t) / std::max(b.t - a.t, 1e-6);
    }
  return length_;
}

double CuttingPlay::away(double t) const {
  if (t <= steps_.front().t) return 1.0;
  for (std::size_t i = 1; i < steps_.size(); ++i)
    if (t < steps_[i].t) {
      const Step &a = steps_[i - 1], &b = steps_[i];
      return a.away + (b.away - a.away) * eased((t - a.t) / std::max(b.t - a.t, 1e-6));
    }
  return 1.0;
}

// The cloth gives way the more the farther the blade goes without a stop, and springs back at each, though
// not all of the way.
void CuttingPlay::add_drag(Dice& dice) {
  most_.moved = {options_.gives_way * dice.uniform(0.2, 1.0), options_.gives_way * dice.normal(0.1)};
  most_.reach = dice.uniform(30.0, 90.0);
  most_.ripple = dice.chance(0.6) ? most_.moved.x() * dice.uniform(0.2, 1.0) : 0.0;
  most_.ripple_length = dice.uniform(12.0, 30.0);
  slips_ = dice.uniform(0.0, 0.15);
  const double stays = dice.uniform(0.0, 0.4);
  Push push;
  double rests = 0.0;  // share that is left when the blade stands
  for (double t = 0.0; t <= seconds_ + kBeat; t += kBeat) {
    const double gone = t > cutting_from_ ? std::max(blade(t) - blade(t - kBeat), 0.0) : 0.0;
    if (gone > 0.0) {
      push.share += (1.0 - push.share) * gone / 80.0;
      push.left += gone / length_;
      rests = stays * push.share;
    } else {
      push.share += (rests - push.share) * kBeat / 0.1;
    }
    pushes_.push_back(push);
  }
}

std::optional<Drag> CuttingPlay::drag(double t) const {
  if (pushes_.empty()) return std::nullopt;
  const auto beat = static_cast<std::size_t>(std::max(t, 0.0) / kBeat);
  const Push& push = pushes_[std::min(beat, pushes_.size() - 1)];
  Drag now = most_;
  const double along = blade(t);
  now.way = travel(along);
  now.at = at(along, 0.0);
  const Vector2d whole = (options_.stroke.back() - options_.stroke.front()).normalized();
  now.slipped = options_.slipped + push.left * slips_ * most_.moved.x() * whole;
  now.moved = push.share * (most_.moved.x() * now.way + most_.moved.y() * left_of(now.way));
  now.ripple = push.share * most_.ripple;
  return now;
}

// Behind the blade a hand folds away what has been cut off: the mat lies bare, and beside it the cloth upside
// down.
void CuttingPlay::add_offcut(Dice& dice) {
  const double t = dice.uniform(cutting_from_ + 0.5, cutting_to_ + 0.1), far = blade(t) - 80.0;
  if (far < 70.0) return;
  const double wide = dice.uniform(25.0, 70.0), from = std::max(far - 250.0, 0.0);
  const Vector2d origin = at(far, 0.0);
  std::vector<Vector2d> strip;
  for (double s = from; s <= far; s += 5.0) strip.push_back(at(s, 0.0) - origin);
  for (double s = far; s >= from; s -= 5.0) strip.push_back(at(s, -wide) - origin);
  const Vector2d out = (options_.holding_left ? -1.0 : 1.0) * left_of(travel(0.5 * (from + far)));
  const auto key = [](double when, const Vector2d& place) { return Key{when, {place.x(), place.y(), 0.0}}; };
  const double end = t + dice.uniform(0.4, 1.0);
  journeys_.push_back(
      {{"mat", {{strip, 0.0, options_.mat}}}, {key(t, origin), key(seconds_ + 1.0, origin)}, false, true});
  journeys_.push_back(
      {{"offcut", {{strip, dice.uniform(3.0, 20.0), options_.underside}}},
       {key(t, origin), key(end, origin + wide * out), key(seconds_ + 1.0, origin + wide * out)},
       false,
       true});
  const Vector2d grasp = at(0.5 * (from + far), -0.7 * wide);
  const double turn = angle_of(-out);
  const auto hand = [&](double when, double away) {
    const Vector2d tip = grasp + away * out;
    return Key{when, {tip.x(), tip.y(), turn}};
  };
  journeys_.push_back({flat_hand(options_.skin, options_.sleeve),
                       {hand(t - 0.6, 300.0), hand(t, 0.0), hand(end, wide), hand(end + 0.6, wide + 300.0)},
                       true});
}

// The cutter in its hand. The grip points back along the way and towards the person; away from the cloth it
// is drawn back the same way.
PosedThing CuttingPlay::tool(double t) const {
  const double along = blade(t);
  const Vector2d on = at(along, 0.0);
  Vector2d way = travel(std::max(along - 5.0, 0.0)) + travel(std::min(along + 5.0, length_));
  way.normalize();
  const Vector2d home = (options_.stands - on).normalized();
  Vector2d trail = (1.0 - lean_) * -way + lean_ * home;
  trail.normalize();
  const Vector2d elbow = 165.0 * trail + 270.0 * (0.4 * trail + 0.6 * home).normalized();
  const Vector2d moved = on + 700.0 * away(t) * (0.3 * trail + 0.7 * home).normalized();
  return {cutter_in_hand(look_, way, trail, elbow), {{moved.x(), moved.y(), 0.0}}};
}

Place CuttingPlay::place_of(const Journey& journey, double t) {
  const auto& keys = journey.keys;
  for (std::size_t i = 1; i < keys.size(); ++i)
    if (t < keys[i].t || i + 1 == keys.size()) {
      const double x = eased((t - keys[i - 1].t) / std::max(keys[i].t - keys[i - 1].t, 1e-6));
      const Place &a = keys[i - 1].place, &b = keys[i].place;
      return {a.x + x * (b.x - a.x), a.y + x * (b.y - a.y), a.turn + x * (b.turn - a.turn)};
    }
  return keys.front().place;
}

std::vector<PosedThing> CuttingPlay::things(double t, double exposure) const {
  std::vector<PosedThing> out;
  for (const Journey& journey : journeys_) {
    if (t < journey.keys.front().t || t > journey.keys.back().t) continue;
    const Place now = place_of(journey, t), before = place_of(journey, t - exposure);
    if (std::hypot(now.x - before.x, now.y - before.y) < 0.7)
      out.push_back({journey.thing, {now}});
    else
      out.push_back({journey.thing, {before, place_of(journey, t - 0.5 * exposure), now}});
  }
  if (away(t) < 1.0) out.push_back(tool(t));
  return out;
}

// The other hand holds the cloth beside the corridor, where the person can reach: only on strokes that lead
// away from her.
void CuttingPlay::add_holding_hand(Dice& dice) {
  const Vector2d whole = (options_.stroke.back() - options_.stroke.front()).normalized();
  const Vector2d from = (options_.stroke.front() - options_.stands).normalized();
  if (whole.dot(from) < 0.6 || dice.chance(0.3)) return;
  Journey hand{flat_hand(options_.skin, options_.sleeve), {}, true};
  const double turn = dice.uniform(-0.35, 0.1);
  double along = dice.uniform(0.0, 80.0), t = steps_.front().t - 0.3;
  const double clear = dice.uniform(12.0, 50.0);
  const auto key = [&](double when, double extra) {
    const Vector2d tip = at(along, options_.holding + clear + extra);
    const Vector2d way = travel(along);
    hand.keys.push_back({when, {tip.x(), tip.y(), angle_of(way) + (options_.holding_left ? turn : -turn)}});
  };
  key(t, 300.0);
  t += 0.6;
  key(t, 0.0);
  while (t < cutting_to_) {
    t += dice.uniform(0.6, 1.6);
    key(t, 0.0);
    along = std::clamp(blade(t) + dice.uniform(-30.0, 140.0), 0.0, length_);
    t += dice.uniform(0.3, 0.5);
    key(t, 0.0);
  }
  key(t + 0.7, 350.0);
  journeys_.push_back(hand);
}

void CuttingPlay::add_event(Dice& dice) {
  Journey event;
  const int kind = dice.below(7);
  const bool lies = dice.chance(0.15), dropped = kind >= 2 && kind <= 4 && dice.chance(0.6);
  const double arrives = lies ? -1.0 : dice.uniform(0.5, std::max(cutting_to_ - 0.6, 0.6));
  const double leaves = std::max(arrives, 0.0) + dice.uniform(0.5, 2.5);
  const double first = blade(leaves + 0.4) + nose + 45.0;
  if (first > length_ - 15.0) return;  // the blade would be there
  const double along = dice.uniform(first, length_ - 10.0);
  const bool from_holding = dice.chance(0.8);
  const double off = from_holding ? dice.uniform(-8.0, options_.holding - 16.0) : dice.uniform(-2.0, 30.0);
  const Vector2d target = at(along, off);
  Vector2d in = (options_.holding_left == from_holding ? -1.0 : 1.0) * left_of(travel(along));
  in = unit(angle_of(in) + dice.uniform(-0.6, 0.6));
  Thing extra;
  switch (kind) {
    case 0:
      event.thing = pointing_hand(dice, options_.skin, options_.sleeve);
      break;
    case 1:
      event.thing = flat_hand(options_.skin, options_.sleeve);
      break;
    case 2:
      event.thing = pattern_weight(dice);
      extra = flat_hand(options_.skin, options_.sleeve);
      break;
    case 3:
      event.thing = pin_cluster(dice);
      extra = pointing_hand(dice, options_.skin, options_.sleeve);
      break;
    case 4:
      event.thing = scissors(dice);
      break;
    case 5:
      event.thing = ruler(dice);
      break;
    default:
      event.thing = cat_paw(dice);
      break;
  }
  const double turn = angle_of(in);
  const Vector2d wander(dice.normal(2.0), dice.normal(2.0)), outside = target - (off + 260.0) * in;
  const double coming = dice.uniform(0.2, 0.7), going = dice.uniform(0.25, 0.6);
  const auto key = [&](double t, const Vector2d& at_tip) { return Key{t, {at_tip.x(), at_tip.y(), turn}}; };
  if (lies || dropped) {
    event.keys = {key(arrives, target), key(leaves, target)};
  } else {
    event.keys = {key(arrives - coming, outside), key(arrives, target),
                  key(0.5 * (arrives + leaves), target + wander), key(leaves, target),
                  key(leaves + going, outside)};
    if (!extra.parts.empty()) {  // brought by a hand that goes away and fetches it again
      const Vector2d behind = target - 22.0 * in, out = outside - 22.0 * in;
      journeys_.push_back({extra,
                           {key(arrives - coming, out), key(arrives, behind), key(arrives + 0.15, behind),
                            key(arrives + 0.5, out)},
                           true});
      journeys_.push_back(
          {extra, {key(leaves - 0.4, out), key(leaves, behind), key(leaves + going, out)}, true});
      note_intrusion(journeys_[journeys_.size() - 2]);
      note_intrusion(journeys_.back());
    }
  }
  note_intrusion(event);
  journeys_.push_back(std::move(event));
}

double CuttingPlay::inside(const Journey& journey, const Place& place, double from, Vector2d* middle) const {
  // The stretch of the corridor that the thing's parts can reach at all.
  double area = 0.0;
  Vector2d sum(0.0, 0.0);
  const double radius2 = 330.0 * 330.0;
  for (double s = std::max(from, 0.0) + 0.5 * kCell; s < length_; s += kCell) {
    if ((at(s, 0.0) - Vector2d(place.x, place.y)).squaredNorm() > radius2) continue;
    for (double v = -options_.other + 0.5 * kCell; v < options_.holding; v += kCell) {
      const Vector2d mat = at(s, v), own = own_from_mat(place, mat);
      for (const Part& part : journey.thing.parts)
        if (contains(part.outline, own)) {
          area += kCell * kCell;
          sum += mat;
          break;
        }
    }
  }
  if (middle != nullptr && area > 0.0) *middle = sum * (kCell * kCell / area);
  return area;
}

void CuttingPlay::note_intrusion(const Journey& journey) {
  Intrusion found{journey.thing.name, -1.0, 0.0, {0.0, 0.0}};
  const auto counts = [&](double t, Vector2d* middle) {
    return inside(journey, place_of(journey, t), blade(t) + nose, middle) >= kCounts;
  };
  const double begin = std::max(journey.keys.front().t, 0.0);
  double before = begin;
  for (double t = begin; t <= std::min(journey.keys.back().t, seconds_); t += 0.04) {
    Vector2d middle;
    if (!counts(t, &middle)) {
      if (found.from >= 0.0) break;
      before = t;
      continue;
    }
    if (found.from < 0.0) {
      double late = t;
      while (late - before > 0.005)
        (counts(0.5 * (before + late), nullptr) ? late : before) = 0.5 * (before + late);
      found.from = late;
      found.where = middle;
    }
    found.to = t;
  }
  if (found.from >= 0.0) intrusions_.push_back(found);
}

bool CuttingPlay::anything_near(double t, const Vector2d& place, double radius, bool trifles) const {
  for (const Journey& journey : journeys_) {
    if (journey.cloth || journey.counts == trifles || t < journey.keys.front().t || t > journey.keys.back().t)
      continue;
    const Place now = place_of(journey, t);
    const Vector2d own = own_from_mat(now, place);
    bool near = false;
    for (const Part& part : journey.thing.parts) {
      near = near || contains(part.outline, own);
      for (std::size_t i = 0, j = part.outline.size() - 1; i < part.outline.size() && !near; j = i++) {
        const Vector2d edge = part.outline[i] - part.outline[j];
        const double x =
            std::clamp((own - part.outline[j]).dot(edge) / std::max(edge.squaredNorm(), 1e-9), 0.0, 1.0);
        near = (part.outline[j] + x * edge - own).norm() < radius;
      }
    }
    if (near) return true;
  }
  return false;
}

}  // namespace cowlcast::calibration::virtual_table
