// What follows from a project: bases, pieces, laying out, and what is still missing.
//
//   Garment garment = garment_of(project);
//   for (const drafting::Piece& piece : garment.pieces) show(piece);
//   for (const Missing& gap : missing_in(project, garment)) mark(gap.place, gap.sentence);
//
// Pure functions of plain values: worked out anew whenever it is shown, never
// kept. A draft takes about a millisecond. Nothing here throws for what a person
// chose; what cannot be is said in a sentence, cause then cure. The sentences of
// this room are translated when the program has a translator, those of the
// drafting room are not.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "drafting/garment/top.h"
#include "projector/cutting/begin.h"
#include "projector/project/project.h"

namespace cowlcast::projector {

/// Where one works in the window, in the order of the job.
enum class Place { table, pattern, cowl, cloth, cutting, sewing };

/// The bases a pattern gives.
struct Bases {
  std::optional<drafting::Piece> front, back;
  std::vector<std::string> cautions;  ///< read, but perhaps not meant
  /// Why there is no front, or no back though one was given; empty: no reason.
  std::string front_refusal, back_refusal;
};

/// The built-in block or the maker's own drawings. Without a choice there is neither base nor refusal.
Bases bases_of(const PatternChoice& pattern);

/// Measures behind a pattern: of its size, or as given; none for a drawing.
std::optional<drafting::BodyMeasures> measures_of(const PatternChoice& pattern);

/// The lengths of a body that are still the sample's and were not said to be the wearer's; none for another
/// source. The ease is a wish, no measure.
std::vector<double drafting::BodyMeasures::*> sample_measures(const PatternChoice& pattern);

/// The wishes as the drafting room takes them: the project's own, with the cloth's width, on the bias when
/// the cloth is woven.
drafting::CowlWishes cowl_wishes_of(const Project& project);
drafting::TopWishes top_wishes_of(const Project& project);

/// The garment as far as it can be drafted.
struct Garment {
  Bases bases;
  std::optional<drafting::CowlDraft> cowl;  ///< with a base front and a drape that works
  std::optional<drafting::Top> top;         ///< with a base back, too
  std::vector<drafting::Piece> pieces;      ///< to cut, in order; those the top is to have
  std::string refusal;                      ///< why no cowl, or no top, was drafted; empty: no reason
};
Garment garment_of(const Project& project);

/// Of the piece's cloth above the mat when it lies to be cut: two layers when it is cut on the fold, mm.
double cloth_height(const ClothChoice& cloth, const drafting::Piece& piece);

/// The person's own ways at the table.
struct AtTheTable {
  double blade = 45.0;  ///< diameter, mm
  Hand hand = Hand::right;
  double band = BladeOverlay{}.band_width;  ///< mm
  bool inches = false;                      ///< lengths on the table
};

/// What `begun` needs to lay and cut a piece of this project.
CuttingWishes cutting_wishes_of(const Project& project, const drafting::Piece& piece,
                                const AtTheTable& person);

/// The strokes of a piece, piece frame, in outline order. Throws drafting::Refusal for a blade that does not
/// reach through the cloth.
std::vector<Cut> strokes_of(const drafting::Piece& piece, const Blade& blade);

/// The record of a piece by its name, when it is of this very shape; else a new one. One that was begun in
/// another shape (the cowl was changed since) is told in `why`.
Record record_of(const Project& project, const drafting::Piece& piece, std::string* why = nullptr);

/// Pieces of which something is cut in another shape than they have now, by name and in its order: cutting
/// would go on with other lines.
std::vector<std::string> changed_after_cutting(const Project& project, const Garment& garment);

/// Something a place still lacks.
struct Missing {
  Place place = Place::table;
  std::string sentence;  ///< the whole of it
  std::string brief;     ///< in two or three words
};

/// At most one a place, in the order of places; a place that is not named lacks nothing.
std::vector<Missing> missing_in(const Project& project, const Garment& garment);

}  // namespace cowlcast::projector
