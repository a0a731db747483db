// Pieces on paper at 1:1, and the drafting record, as PDF.
//
//   std::string pdf = pieces_to_pdf({front, back}, Paper::tiled_a4);
//
// One large page for all pieces, A0 pages, or A4 or Letter pages to be laid
// edge to edge: each tile shows its row and column, a frame to trim on, crosses
// that meet the neighbours'; one holds a square of 100 mm to measure, and tiles
// with nothing on them are left out. True size holds when printed at 100 %, not
// fitted to the page.
#pragma once

#include <string>
#include <vector>

#include "drafting/garment/top.h"
#include "drafting/piece/piece.h"

namespace cowlcast::drafting {

enum class Paper { one_page, a0, tiled_a4, tiled_letter };

/// Throws Refusal when there is nothing to print, or a piece is larger than an
/// A0 page or one page of 5 m.
std::string pieces_to_pdf(const std::vector<Piece>& pieces, Paper paper);

/// One A4 page with every number of the draft.
std::string record_to_pdf(const Top& top);

/// The record's lines as plain text.
std::string record_of(const Top& top);

}  // namespace cowlcast::drafting
