// Found again: where a piece lies after its cloth has moved, by marks that were chalked before.
//
//   // She chalked the crosses of the last part, moved the cloth, and points marks out:
//   Found found = found_laying(crosses, pointed, expected);
//   double own = found.doubt.farthest(part.shown);      // mm, 95 times in 100
//   if (own > FindRules{}.at_cut_line) ...              // `find_again` refuses that for you
//
// The fit is a turn and a shift only, never a stretch: the piece keeps its true size, and marks that do not
// agree with it are refused. Marks look alike on cloth, so every order is tried in which they can have been
// pointed out, and one that would turn the piece far from where it is expected is never taken.
//
// How far apart two marks lie says nothing of an error across the line between them, and that error grows
// with the distance from the marks. So each laying comes with a `LayingDoubt`, which tells at any place of
// the piece how far the light may be off. It counts chalking and pointing; the map's own error, cloth that
// stretches between the marks, and a cloth turned over with two marks alone are not in it.
#pragma once

#include <Eigen/Core>
#include <cstddef>
#include <string>
#include <vector>

#include "projector/frame/laying.h"

namespace cowlcast::projector {

/// How uncertain it is where a piece lies against where it lay before: a small shift and turn.
struct LayingDoubt {
  /// Of the shift along the piece's x and y (mm) and the turn about the piece's origin (radians).
  Eigen::Matrix3d covariance = Eigen::Matrix3d::Zero();

  /// The radius (mm) that holds the true place of a point of the piece (piece frame, mm) at least 95 times
  /// in 100: exact where the error goes one way or all ways alike, in between up to 4 % too large.
  double at(const Point& piece) const;

  /// The largest of `at` over points of the piece; 0 without points. Over a line with straight stretches it
  /// is reached at a corner.
  double farthest(const std::vector<Point>& piece) const;
};

/// Of a piece found twice in a row: the second time by marks chalked where the first said.
LayingDoubt operator+(const LayingDoubt& a, const LayingDoubt& b);

struct FindRules {
  /// Standard deviation of a mark, pointed out, from where its cross was lit, mm, along x and along y each:
  /// 1 mm in all by a chalk stroke 1 to 2 mm wide, and a click is a whole pixel of about 0.7 mm. Common
  /// practice, no source.
  double mark_sigma = 0.75;
  /// A mark farther than this from its place, mm, is no matter of chance: the cloth is stretched or the mark
  /// is another. Nearly three standard deviations.
  double residual = 2.0;
  /// How far off a cut line may be by one finding, mm, 95 times in 100: an eighth of an inch, what cutting
  /// with shears along a drawn line strays by. Common practice, no source.
  double at_cut_line = 3.0;
  /// The cloth is moved along the table; a greater turn than this (radians) is a wrong order of marks.
  double turn = 0.7853981633974483;
};

/// A laying fitted to marks.
struct Found {
  Laying laying;
  std::vector<size_t> which = {};      ///< of the crosses, from 0: the one that each pointed mark is
  std::vector<double> residuals = {};  ///< of each pointed mark: the distance from its place, mm
  LayingDoubt doubt = {};              ///< of this finding alone
};

/// The laying that brings crosses (piece frame, mm) to where their marks were pointed out (mat mm), by least
/// squares. Of the crosses all or some may have been pointed out, two at least and six at most in all;
/// `pointed` is thought to follow their order. Any other order is tried too: of those that fit, the one
/// nearest to `expected` is taken, when no nearer one is ruled out by more than chance. `expected` tells also
/// whether the piece lies face down, and its height.
///
/// The doubt is that of `rules.mark_sigma`, or of what the residuals show of more than that.
///
/// Throws drafting::Refusal for fewer than two marks, marks closer together than 60 mm, marks that fit in no
/// order (`rules.residual`), fit only turned (`rules.turn`), or fit in several ways of which none is clear.
Found found_laying(const std::vector<Point>& crosses, const std::vector<Point>& pointed,
                   const Laying& expected, const FindRules& rules = {});

/// The same, refused as well when a point of `shown` (of the cut line, piece frame) may be off by more than
/// `rules.at_cut_line`.
Found find_again(const std::vector<Point>& crosses, const std::vector<Point>& pointed, const Laying& expected,
                 const std::vector<Point>& shown, const FindRules& rules = {});

/// What is left open when each of these crosses (piece frame, mm) was met, each with an error of `sigma` mm
/// along x and along y. Two different ones at least.
LayingDoubt doubt_of_meeting(const std::vector<Point>& crosses, double sigma = FindRules{}.mark_sigma);

/// "1.4 mm": as the words on the table have it.
std::string in_mm(double value);

}  // namespace cowlcast::projector
