#include "drafting/block/block.h"

#include <cmath>
#include <numbers>

#include "drafting/geometry/curves.h"
#include "drafting/geometry/polyline.h"
#include "drafting/piece/assemble.h"
#include "drafting/refusal.h"

namespace cowlcast::drafting {
namespace {

constexpr double shoulder_slope = 20.0 * std::numbers::pi / 180.0;
constexpr double nape_below_neck_point = 20.0;  // mm
constexpr double hip_below_waist = 200.0;       // mm

/// Neckline from the neck point to the centre, square to both shoulder and centre.
Polyline neckline_of(const Point& neck_point, double depth) {
  const double width = neck_point.x();
  const Point down(-std::sin(shoulder_slope), -std::cos(shoulder_slope));
  Polyline line{neck_point};
  const Point end(0.0, neck_point.y() - depth);
  add_cubic(line, neck_point + 0.6 * depth * down, end + Point(0.55 * width, 0.0), end);
  return line;
}

double front_neck_depth(double width) {
  return 1.25 * width;
}
double back_neck_depth(double width) {
  return width * 0.33;
}

/// The width at which front and back necklines together measure the neck girth.
double neck_width_for(double girth) {
  double width = girth / 5.7;
  for (int i = 0; i < 20; ++i) {
    const double drawn = 2.0 * (length(neckline_of({width, 0}, front_neck_depth(width))) +
                                length(neckline_of({width, 0}, back_neck_depth(width))));
    width *= girth / drawn;
  }
  return width;
}

void check(const BodyMeasures& m) {
  const auto within = [](double value, double least, double most, const char* name) {
    if (!std::isfinite(value) || value < least || value > most) {
      throw Refusal(std::string("The ") + name + " of " +
                    (std::isfinite(value) ? mm_in_words(value) : "no number") +
                    " cannot be right: it should be between " + mm_in_words(least) + " and " +
                    mm_in_words(most) + ". Measure it again, in millimetres.");
    }
  };
  within(m.bust_girth, 500, 1800, "bust girth");
  within(m.waist_girth, 400, 1700, "waist girth");
  within(m.hip_girth, 500, 1900, "hip girth");
  within(m.neck_girth, 240, 560, "neck girth");
  within(m.shoulder_length, 60, 220, "shoulder length");
  within(m.back_waist_length, 250, 560, "back waist length");
  within(m.waist_to_hem, 0, 800, "length from waist to hem");
  within(m.ease, -0.2 * m.bust_girth, 400, "ease");
}

Piece block(const BodyMeasures& m, bool front) {
  check(m);
  // Heights from the hem: the neck point stands 20 mm above the nape.
  const double waist_y = m.waist_to_hem;
  const double neck_y = waist_y + m.back_waist_length + nape_below_neck_point;
  // Armhole depth below the neck point: an eighth of the bust and 95 mm.
  const double underarm_y = neck_y - (m.bust_girth / 8.0 + 95.0);
  // A quarter of each girth across.
  const double bust_x = (m.bust_girth + m.ease) / 4.0;
  const double waist_x = (m.waist_girth + m.ease) / 4.0;
  const double hip_x = (m.hip_girth + m.ease) / 4.0;
  const double hem_x = waist_x + (hip_x - waist_x) * std::min(1.0, m.waist_to_hem / hip_below_waist);

  const double neck_x = neck_width_for(m.neck_girth);
  const Point neck(neck_x, neck_y);
  const Point shoulder =
      neck + m.shoulder_length * Point(std::cos(shoulder_slope), -std::sin(shoulder_slope));
  // The chest is hollowed in from the shoulder point, more in front, 40 % up the armhole.
  const double chest_x = shoulder.x() - (front ? 16.0 : 9.0);
  const Point chest(chest_x, underarm_y + 0.4 * (shoulder.y() - underarm_y));
  if (bust_x < chest_x + 12.0) {
    throw Refusal("The bust girth of " + mm_in_words(m.bust_girth) + " is too small for a shoulder of " +
                  mm_in_words(m.shoulder_length) + ". Check both, and the ease.");
  }
  if (underarm_y < waist_y + 40.0) {
    throw Refusal("The back waist length of " + mm_in_words(m.back_waist_length) +
                  " leaves no side seam above the waist. Check it against the bust girth.");
  }

  const Point underarm(bust_x, underarm_y), waist(waist_x, waist_y), hem(hem_x, 0.0);
  Polyline side{hem};
  if (waist_y > 0.0) {
    add_cubic(side, hem + Point(0, 0.4 * waist_y), waist - Point(0, 0.4 * waist_y), waist);
  } else {
    side = {waist};
  }
  const double rise = underarm_y - waist_y;
  add_cubic(side, waist + Point(0, 0.4 * rise), underarm - Point(0.1 * (bust_x - waist_x), 0.35 * rise),
            underarm);

  Polyline armhole{underarm};
  const Point hollow = chest - underarm;
  add_cubic(armhole, underarm + Point(0.55 * hollow.x(), 0.0), chest - Point(0, 0.6 * hollow.y()), chest);
  const double upper = shoulder.y() - chest.y();
  const Point into_shoulder(std::sin(shoulder_slope), std::cos(shoulder_slope));
  add_cubic(armhole, chest + Point(0, 0.4 * upper), shoulder - 0.35 * upper * into_shoulder, shoulder);

  const Polyline neckline = neckline_of(neck, front ? front_neck_depth(neck_x) : back_neck_depth(neck_x));
  return assemble_base(front ? "base front" : "base back",
                       {{front ? "centre-front" : "centre-back", {neckline.back(), {0.0, 0.0}}},
                        {"hem", {{0.0, 0.0}, side.front()}},
                        {"side-seam", side},
                        {"armhole", armhole},
                        {"shoulder", {shoulder, neck}},
                        {"neckline", neckline}},
                       chest);
}

}  // namespace

BodyMeasures demo_measures() {
  // Invented for this demo.
  return {.bust_girth = 916.0,
          .waist_girth = 768.0,
          .hip_girth = 972.0,
          .neck_girth = 362.0,
          .shoulder_length = 121.0,
          .back_waist_length = 408.0,
          .waist_to_hem = 205.0,
          .ease = 16.0};
}

Piece block_front(const BodyMeasures& measures) {
  return block(measures, true);
}
Piece block_back(const BodyMeasures& measures) {
  return block(measures, false);
}

}  // namespace cowlcast::drafting
