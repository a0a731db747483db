// ClothShift: whether the cloth still lies where it lay when its lines were laid.
//
//   ClothShift shift(backdrop);
//   shift.laid();                                    // whenever the piece has been laid
//   shift.about({.stroke = next, .piece = outline, .cut = {...}});
//   shift.look(frame, picture, seconds, blade);      // for every frame
//   if (shift.told()) say(words(*shift.told()));
//
// A blade drags cloth along, and a sleeve or a ruler does. The lines stay where they are, so what is cut then
// is wrong and looks right. Patches of the cloth about the stroke that comes next are read in turn
// (`ClothPatch`), and each counts by what it says most of some seconds; near the blade nothing is asked,
// since what it pulls along springs back. At least `kFewest` that agree tell, by `kTells` mm or more; told is
// then until as many say that the cloth lies as it lay, within `kRight` mm.
//
// Whether it can be told at all is a matter of the cloth. A print shows it. Even cloth shows it by chalk or
// pins about the stroke, where the camera has learnt them; else by the cloth's edges, wherever they are:
// since nobody knows whether cloth or mat is seen there, `kFewestFar` of them far apart must agree, and
// what is seen about the stroke must not gainsay them. Without either nothing is ever told. Not told
// either: cloth that has gone by more than about 9 pixels of the camera, which looks like another cloth; by
// whole repeats of its print; along stripes, unless edges tell; what gives way between a stroke and edges
// that lie still; not all of what was dragged about one small place of the stroke alone.
#pragma once

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "projector/guard/cloth_patch.h"

namespace cowlcast::projector {

/// Cloth that does not lie as it lay.
struct ToldShift {
  Point by{0.0, 0.0};              ///< where it has gone, mm
  std::vector<Point> places = {};  ///< patches that tell so, mat mm
  bool at_stroke = true;           ///< false: elsewhere on the table, and the stroke's own place is not known
};

/// Cause and cure, a sentence each.
std::string words(const ToldShift& shift);

class ClothShift {
 public:
  /// mm: seams that differ by less are eased in (common practice, no source); patches stray by a tenth of it.
  static constexpr double kTells = 2.0;
  static constexpr double kRight = 1.2;  ///< mm
  static constexpr int kFewest = 3, kFewestFar = 4;

  explicit ClothShift(const Backdrop& backdrop);

  /// What counts: the stroke that comes next, the piece's outline, and the strokes that are cut, mat mm.
  struct Where {
    Polyline stroke = {}, piece = {};
    std::vector<Polyline> cut = {};
  };
  void about(const Where& where);

  /// The piece has been laid on the cloth as it lies: so it is right from now on.
  void laid();

  /// The camera has learnt the cloth anew, and nothing has been put right by that: as far as it had gone
  /// `before` it still has.
  void owes(const ClothShift& before, double seconds);

  /// `blade`: where it is on its stroke, once it has begun.
  void look(const cv::Mat& frame, const cv::Mat& picture, double seconds, const std::optional<Point>& blade);

  const std::optional<ToldShift>& told() const { return told_; }
  /// Whether it would be seen, were the cloth about this stroke to shift.
  bool sees() const;

  /// What each patch about the stroke says now, for looking at: place and shift, mm.
  struct Said {
    Point place, by;
    Point only{0.0, 0.0};  ///< the one way it can tell of; zero: both
    bool near = true;
    bool told_so = false;  ///< it has agreed to the shift that is told
    /// What it would say, had the cloth gone by so much.
    Point of(const Point& whole) const { return only.isZero() ? whole : Point(only.dot(whole) * only); }
  };
  std::vector<Said> said(double seconds) const;

 private:
  struct Look {
    double seconds;
    ClothPatch::Reading reading;
  };
  struct Followed {
    ClothPatch patch;
    std::vector<Look> looks = {};
    std::optional<Point> base = {};  // mm: where it is right
    bool told_so = false;
  };
  struct Active {
    Followed* followed;
    bool near;
  };
  std::optional<Point> says(const Followed& followed, double seconds) const;
  void take_as_right(double seconds);
  void judge(double seconds);
  void note_who_told(const std::vector<Said>& all);
  static std::optional<ToldShift> at_stroke(const std::vector<Said>& all, const Point& by,
                                            const Point& about);
  static std::optional<ToldShift> elsewhere(const std::vector<Said>& all, const Point& by);
  static std::optional<ToldShift> agreed(const std::vector<Said>& all, double least);
  Point base_near(const Point& place) const;

  std::unique_ptr<const ClothLook> cloth_;
  std::vector<cv::Point> places_;
  std::vector<Point> mats_;  // of these, mm
  std::map<size_t, Followed> followed_;
  std::vector<Active> active_;
  size_t next_ = 0;
  double due_ = 0.0, seen_at_ = 0.0;  // patches that should have been looked at; when a frame came, seconds
  Point owed_{0.0, 0.0};
  bool lying_ = false;             // the piece was laid just now
  std::optional<double> laid_at_;  // since when it is seen how it lies, seconds
  std::optional<double> since_;    // when a shift was seen first, seconds
  std::optional<ToldShift> told_;
};

}  // namespace cowlcast::projector
