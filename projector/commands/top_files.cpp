#include "projector/commands/top_files.h"

#include <set>

#include "drafting/export/piece_dxf.h"
#include "drafting/export/piece_svg.h"
#include "drafting/export/pieces_pdf.h"
#include "drafting/teaching/steps.h"

namespace cowlcast::projector {
namespace {

/// "cowl front" as "cowl-front"; letters, digits and dashes only.
std::string file_stem(const std::string& name) {
  std::string stem;
  for (const char c : name) {
    const bool capital = c >= 'A' && c <= 'Z';
    if (capital || (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9'))
      stem += capital ? static_cast<char>(c - 'A' + 'a') : c;
    else if (!stem.empty() && stem.back() != '-')
      stem += '-';
  }
  while (stem.ends_with('-')) stem.pop_back();
  return stem.empty() ? "piece" : stem;
}

drafting::Paper paper_of(const std::string& name) {
  if (name == "letter") return drafting::Paper::tiled_letter;
  if (name == "a0") return drafting::Paper::a0;
  if (name == "one") return drafting::Paper::one_page;
  return drafting::Paper::tiled_a4;
}

void add_teaching(std::vector<NamedFile>& files, const drafting::CowlDraft& draft,
                  const std::string& before) {
  files.push_back({before + "steps.svg", drafting::steps_to_svg(draft)});
  files.push_back({before + "opening.svg", drafting::opening_to_animated_svg(draft)});
  files.push_back({before + "handout.pdf", drafting::steps_to_pdf(draft)});
}

}  // namespace

std::vector<NamedFile> files_of(const drafting::Top& top, const std::string& paper,
                                const std::string& hang_svg) {
  const std::vector<drafting::Piece> pieces = drafting::pieces_of(top);
  std::vector<NamedFile> files;
  std::set<std::string> taken{"steps", "opening", "hang", "back-steps", "back-opening"};
  for (const drafting::Piece& piece : pieces) {
    const std::string first = file_stem(piece.name);
    std::string stem = first;
    for (int number = 2; !taken.insert(stem).second; ++number) stem = first + "-" + std::to_string(number);
    files.push_back({stem + ".json", drafting::piece_to_json(piece)});
    files.push_back({stem + ".svg", drafting::piece_to_svg(piece)});
  }
  files.push_back({"top.pdf", drafting::pieces_to_pdf(pieces, paper_of(paper))});
  files.push_back({"top.dxf", drafting::pieces_to_dxf(pieces)});
  files.push_back({"record.txt", drafting::record_of(top)});
  files.push_back({"record.pdf", drafting::record_to_pdf(top)});
  add_teaching(files, top.cowl, "");
  if (top.back_cowl) add_teaching(files, *top.back_cowl, "back-");
  if (!hang_svg.empty()) files.push_back({"hang.svg", hang_svg});
  return files;
}

}  // namespace cowlcast::projector
