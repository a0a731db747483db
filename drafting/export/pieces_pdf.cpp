#include "drafting/export/pieces_pdf.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <sstream>

#include "drafting/export/pdf_page.h"
#include "drafting/export/summary.h"
#include "drafting/geometry/polyline.h"
#include "drafting/piece/marks.h"
#include "drafting/refusal.h"

namespace cowlcast::drafting {
namespace {

constexpr double gap = 30.0;          // mm between pieces
constexpr double page_margin = 15.0;  // mm that no printer needs to reach

struct PageSize {
  double width, height;
};

PageSize size_of(Paper paper) {
  if (paper == Paper::a0) return {841.0, 1189.0};       // ISO 216
  if (paper == Paper::tiled_a4) return {210.0, 297.0};  // ISO 216
  return {215.9, 279.4};                                // Letter
}

/// Pieces side by side on one plan, y down, in mm.
struct Plan {
  std::vector<Point> shifts;  // plan from piece: x + shift, shift - y
  double width = 0.0, height = 0.0;
};

Plan plan_of(const std::vector<Piece>& pieces) {
  Plan plan;
  for (const Piece& piece : pieces) {
    const Box box = box_of(piece.cut_line);
    plan.shifts.push_back({plan.width - box.low.x(), box.high.y()});
    plan.width += box.width() + gap;
    plan.height = std::max(plan.height, box.height());
  }
  plan.width -= gap;
  return plan;
}

Polyline placed(const Polyline& line, const Point& shift) {
  Polyline result;
  result.reserve(line.size());
  for (const Point& p : line) result.push_back({p.x() + shift.x(), shift.y() - p.y()});
  return result;
}

void draw_piece(PdfSheet& sheet, const Piece& piece, const Point& shift) {
  for (const Polyline& run : lines_to_cut(piece)) sheet.line(placed(run, shift), false, 0.5);
  for (const Edge& edge : piece.edges) {
    const bool folded = edge.role == "cowl-edge";
    sheet.line(placed(edge.points, shift), false, 0.3,
               folded ? std::vector<double>{12, 3, 2, 3} : std::vector<double>{4, 2});
  }
  for (const Notch& notch : piece.notches) {
    for (const Polyline& line : notch_lines(notch)) sheet.line(placed(line, shift), false, 0.4);
  }
  for (const DrillMark& drill : drill_marks(piece)) {
    for (const double side : {-3.0, 3.0})
      sheet.line(placed({drill.at - Point(3, side), drill.at + Point(3, side)}, shift), false, 0.4);
    const Point at = placed({drill.at}, shift)[0];
    sheet.text(at + Point(5, 1), name_in_words(drill.name), 4.0);
  }
  const auto segment = [&](const std::optional<Segment>& line, const std::vector<double>& dashes) {
    if (line) sheet.line(placed({line->from, line->to}, shift), false, 0.4, dashes);
  };
  segment(whole_fold(piece), {14, 3, 1.5, 3});
  segment(piece.grain, {});
  if (piece.grain) {
    const Point along = (piece.grain->to - piece.grain->from).normalized(), across(-along.y(), along.x());
    for (const auto& [tip, way] :
         {std::pair{piece.grain->to, along}, std::pair{piece.grain->from, Point(-along)}}) {
      sheet.line(placed({tip - 8.0 * way + 3.0 * across, tip, tip - 8.0 * way - 3.0 * across}, shift), false,
                 0.4);
    }
  }
  const Point words = piece.grain ? Point(piece.grain->from + Point(6, 4)) : piece.cut_line.front();
  const Point at = placed({words}, shift)[0];
  sheet.text(at, piece.name, 6.0);
  sheet.text(at + Point(0, 8),
             piece.fold     ? "cut 1 on the fold"
             : piece.mirror ? "half: mirror at the centre"
                            : "cut",
             5.0);
}

void draw_measuring_square(PdfSheet& sheet, const Point& corner) {
  sheet.line({corner, corner + Point(100, 0), corner + Point(100, 100), corner + Point(0, 100)}, true, 0.2);
  sheet.text(corner + Point(3, 8), "100 mm square: measure it; print at 100 %", 4.0);
}

void draw_all(PdfSheet& sheet, const std::vector<Piece>& pieces, const Plan& plan, const Point& origin) {
  for (size_t i = 0; i < pieces.size(); ++i) draw_piece(sheet, pieces[i], plan.shifts[i] + origin);
}

std::string one_page(const std::vector<Piece>& pieces) {
  const Plan plan = plan_of(pieces);
  const double width = plan.width + 2 * page_margin, height = std::max(plan.height, 100.0) + 2 * page_margin;
  if (width > 5000.0 || height > 5000.0) {
    throw Refusal("The pieces do not fit one page of 5 m. Print them on A0 or on tiles.");
  }
  PdfSheet sheet(width, height);
  draw_all(sheet, pieces, plan, {page_margin, page_margin});
  return sheet.finish();
}

std::string on_a0(const std::vector<Piece>& pieces) {
  const PageSize page = size_of(Paper::a0);
  PdfSheet sheet(page.width, page.height);
  bool first = true;
  double right = page_margin;
  for (const Piece& piece : pieces) {
    const Box box = box_of(piece.cut_line);
    if (box.width() > page.width - 2 * page_margin || box.height() > page.height - 2 * page_margin) {
      throw Refusal("The " + piece.name +
                    " is larger than an A0 page. Print it on one large page or on tiles.");
    }
    if (!first && right + box.width() > page.width - page_margin) {
      sheet.next_page(page.width, page.height);
      right = page_margin;
    }
    draw_piece(sheet, piece, {right - box.low.x(), page_margin + box.high.y()});
    right += box.width() + gap;
    first = false;
  }
  return sheet.finish();
}

/// True when a tile, in the plan, holds a bit of a piece: of its cut line or its inside.
bool holds_a_piece(const Box& tile, const std::vector<Piece>& pieces, const Plan& plan) {
  for (size_t i = 0; i < pieces.size(); ++i) {
    Polyline outline = placed(pieces[i].cut_line, plan.shifts[i]);
    if (contains(outline, 0.5 * (tile.low + tile.high))) return true;
    outline.push_back(outline.front());
    for (size_t k = 1; k < outline.size(); ++k) {
      // Box around the stretch: may keep a tile too many, never drops one.
      const Point low = outline[k - 1].cwiseMin(outline[k]), high = outline[k - 1].cwiseMax(outline[k]);
      if ((low.array() <= tile.high.array()).all() && (high.array() >= tile.low.array()).all()) return true;
    }
  }
  return false;
}

std::string on_tiles(const std::vector<Piece>& pieces, Paper paper) {
  const PageSize page = size_of(paper);
  const double wide = page.width - 2 * page_margin, tall = page.height - 2 * page_margin;
  const Plan plan = plan_of(pieces);
  const int columns = static_cast<int>(std::ceil(plan.width / wide));
  // The square to measure stands whole on one tile: below the pieces, or at the next row's head.
  double square_top = plan.height + 5.0;
  if (std::floor(square_top / tall) != std::floor((square_top + 100.0) / tall))
    square_top = std::ceil(square_top / tall) * tall + 5.0;
  const int square_row = static_cast<int>(std::floor(square_top / tall)), rows = square_row + 1;
  if (columns * rows > 400)
    throw Refusal("The pieces would need more than 400 pages. Print fewer pieces at a time.");
  PdfSheet sheet(page.width, page.height);
  bool first = true;
  for (int row = 0; row < rows; ++row) {
    for (int column = 0; column < columns; ++column) {
      const Point corner(column * wide, row * tall);
      const bool square = row == square_row && column == 0;
      if (!square && !holds_a_piece({corner, corner + Point(wide, tall)}, pieces, plan)) continue;
      if (!first) sheet.next_page(page.width, page.height);
      first = false;
      const Point origin(page_margin - column * wide, page_margin - row * tall);
      sheet.clip(page_margin, page_margin, wide, tall);
      draw_all(sheet, pieces, plan, origin);
      if (square) draw_measuring_square(sheet, origin + Point(5, square_top));
      sheet.unclip();
      const Point low(page_margin, page_margin), high(page_margin + wide, page_margin + tall);
      sheet.line({low, {high.x(), low.y()}, high, {low.x(), high.y()}}, true, 0.15, {2, 2});
      for (const double share : {0.25, 0.75}) {
        for (const double y : {low.y(), high.y()}) {
          const double x = low.x() + share * wide;
          sheet.line({{x - 4, y}, {x + 4, y}}, false, 0.3);
          sheet.line({{x, y - 4}, {x, y + 4}}, false, 0.3);
        }
        for (const double x : {low.x(), high.x()}) {
          const double y = low.y() + share * tall;
          sheet.line({{x - 4, y}, {x + 4, y}}, false, 0.3);
          sheet.line({{x, y - 4}, {x, y + 4}}, false, 0.3);
        }
      }
      char words[80];
      std::snprintf(words, sizeof words, "row %d of %d, column %d of %d", row + 1, rows, column + 1, columns);
      sheet.text({page_margin, page.height - 5.0}, words, 4.0);
    }
  }
  return sheet.finish();
}

}  // namespace

std::string pieces_to_pdf(const std::vector<Piece>& pieces, Paper paper) {
  if (pieces.empty()) throw Refusal("There is no piece to print. Draft the top first.");
  if (paper == Paper::one_page) return one_page(pieces);
  if (paper == Paper::a0) return on_a0(pieces);
  return on_tiles(pieces, paper);
}

std::string record_of(const Top& top) {
  std::string text = "DRAFTING RECORD\n\nFront\n" + summary(top.cowl);
  char line[200];
  const auto add = [&](const char* format, auto... values) {
    std::snprintf(line, sizeof line, format, values...);
    text += line;
    text += '\n';
  };
  const CowlRecord& cowl = *top.cowl.front.cowl;
  for (size_t i = 0; i < cowl.slash_lines.size(); ++i) {
    const Segment& slash = cowl.slash_lines[i];
    add("slash line %zu        from (%.1f, %.1f) to its hinge at (%.1f, %.1f)", i + 1, slash.from.x(),
        slash.from.y(), slash.to.x(), slash.to.y());
  }
  add("hem drop            %8.1f mm at the side seam by the swing", top.cowl.hem_drop);
  if (top.cowl.crossing > 0.05)
    add("crossing            %8.1f mm over the centre front, as allowed", top.cowl.crossing);
  if (top.cowl.tacked_length > 0.0)
    add("tacked up           %8.1f mm at the side seams", top.cowl.tacked_length);
  text += "\nBack\n";
  if (top.back_cowl) text += summary(*top.back_cowl);
  if (top.elastic.seam_length > 0.0) {
    add("neck seam           %8.1f mm, shoulder seam to shoulder seam", top.elastic.seam_length);
    add("clear elastic       %8.1f mm to cut, %.1f mm wide, set %.1f mm from the edge",
        top.elastic.elastic_length, top.elastic.width, top.elastic.from_edge);
    add("its tails           %8.1f mm each, laid into the shoulder seams", top.elastic.tail);
  }
  if (!top.finishes.empty()) text += "\nFinishes\n";
  for (const FinishedEdge& edge : top.finishes) text += finish_in_words(edge) + "\n";
  text += "\nSeams walked\n";
  for (const Walk& walk : top.walks)
    text += walk_in_words(walk) + (walks(walk) ? "" : "  DOES NOT WALK") + "\n";
  text += "\nPieces\n";
  for (const Piece& piece : pieces_of(top)) {
    const Box box = box_of(piece.cut_line);
    add("%-20s cut %.0f mm across and %.0f mm long%s", piece.name.c_str(), box.width(), box.height(),
        piece.fold     ? ", on the fold"
        : piece.mirror ? ", to be mirrored"
                       : "");
  }
  return text;
}

std::string record_to_pdf(const Top& top) {
  constexpr size_t widest = 85;  // characters that fit an A4 page at 3.6 mm
  std::vector<std::string> lines;
  std::istringstream text(record_of(top));
  for (std::string line; std::getline(text, line); lines.push_back(line)) {
    const bool columns = line.find("  ") <= 20;  // these fit
    for (size_t at;
         !columns && line.size() > widest && (at = line.rfind(", ", widest)) != std::string::npos;) {
      lines.push_back(line.substr(0, at + 1));
      line.erase(0, at + 1);  // the space that stays says that the line goes on
    }
  }
  const double step = std::min(5.5, 260.0 / static_cast<double>(lines.size()));  // all on the one page
  PdfSheet sheet(210.0, 297.0);
  double y = 20.0;
  for (const std::string& line : lines) {
    const bool goes_on = line.starts_with(' ');
    const size_t wide = line.find("  ");  // a label, then its number: two columns
    const size_t value = wide == std::string::npos ? wide : line.find_first_not_of(' ', wide);
    const bool columns = wide > 0 && wide <= 20 && value != std::string::npos;
    sheet.text({goes_on ? 25.0 : 15.0, y}, columns ? line.substr(0, wide) : line.substr(goes_on ? 1 : 0),
               3.6);
    if (columns) sheet.text({55.0, y}, line.substr(value), 3.6);
    y += step;
  }
  return sheet.finish();
}

}  // namespace cowlcast::drafting
