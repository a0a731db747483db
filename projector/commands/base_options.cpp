#include "projector/commands/base_options.h"

#include <cstdio>
#include <string_view>
#include <utility>

#include "drafting/block/sizes.h"
#include "drafting/geometry/polyline.h"
#include "drafting/intake/svg_base.h"
#include "drafting/piece/assemble.h"
#include "drafting/piece/base_size.h"
#include "drafting/piece/marks.h"
#include "drafting/refusal.h"
#include "projector/commands/files.h"

namespace cowlcast::projector {
namespace {

using drafting::BodyMeasures;
using drafting::Piece;

constexpr std::pair<const char*, double BodyMeasures::*> measures[] = {
    {"bust", &BodyMeasures::bust_girth},
    {"waist", &BodyMeasures::waist_girth},
    {"hip", &BodyMeasures::hip_girth},
    {"neck", &BodyMeasures::neck_girth},
    {"shoulder", &BodyMeasures::shoulder_length},
    {"back-waist", &BodyMeasures::back_waist_length},
    {"waist-to-hem", &BodyMeasures::waist_to_hem},
    {"ease", &BodyMeasures::ease}};

const char* const body_wanted =
    "measures such as bust=92cm,neck=36.5cm,back-waist=41cm; the others are waist, hip, shoulder, "
    "waist-to-hem and ease";

[[noreturn]] void wrong(const std::string& option, const std::string& text, const std::string& wanted) {
  throw CLI::ValidationError(option, "cannot use \"" + text + "\": give " + wanted);
}

std::vector<std::pair<double BodyMeasures::*, double>> body_of(const std::string& text) {
  std::vector<std::pair<double BodyMeasures::*, double>> given;
  for (const std::string& item : parts_of(text, ',')) {
    const std::vector<std::string> halves = parts_of(item, '=');
    const auto mm = halves.size() == 2 ? length_mm(halves[1]) : std::nullopt;
    double BodyMeasures::*member = nullptr;
    for (const auto& [name, place] : measures)
      if (halves[0] == name) member = place;
    if (!mm || member == nullptr) wrong("--body", text, body_wanted);
    given.push_back({member, *mm});
  }
  return given;
}

/// "pocket,80,300": a drill mark on the base front.
drafting::DrillMark drill_of(const std::string& text) {
  const std::vector<std::string> parts = parts_of(text, ',');
  const auto out = parts.size() == 3 ? length_mm(parts[1]) : std::nullopt;
  const auto up = parts.size() == 3 ? length_mm(parts[2]) : std::nullopt;
  if (!out || !up || parts[0].empty())
    wrong("--drill", text,
          "a name, how far out from the centre front and how far up from the hem there, "
          "for example pocket,80,300");
  return {parts[0], drafting::Point(*out, *up)};
}

void add_drills(Piece& piece, const BaseOptions& options) {
  for (const std::string& text : options.drills) {
    const drafting::DrillMark drill = drill_of(text);
    if (!drafting::contains(piece.seam_line, drill.at))
      throw drafting::Refusal("The drill mark \"" + drill.name + "\" would lie outside the base front, " +
                              drafting::place_in_words(drill.at) + ". Give a place inside its seam lines.");
    drafting::add_drill_mark(piece, drill.name, drill.at);
  }
}

/// What a file is by its first bytes, when it is nothing that could hold a base.
std::string other_kind(const std::string& text) {
  const auto starts = [&](std::string_view bytes) { return text.starts_with(bytes); };
  if (starts("\x89PNG") || starts("\xff\xd8\xff") || starts("GIF8") || starts("BM")) return "is a picture";
  if (starts("%PDF")) return "is a PDF";
  if (starts("PK\x03\x04")) return "is a packed archive";
  if (starts("\x1f\x8b")) return "is a compressed file";
  if (text.find("SECTION") < 40 && text.find("$ACADVER") != std::string::npos) return "is a DXF drawing";
  if (text.find("\"cowlcast table map\"") != std::string::npos) return "is a calibrated table";
  if (text.find("\"cowlcast cutting record\"") != std::string::npos) return "is a cutting record";
  return "";
}

bool is_piece_file(const std::string& text) {
  const size_t first = text.find_first_not_of(" \t\r\n");
  return first != std::string::npos && text[first] == '{';
}

/// A piece file's piece, when it can serve as a base.
Piece base_from_file(const std::string& text, const std::string& name, const char* centre) {
  const Piece piece = drafting::piece_from_json(text);
  const auto refuse = [&](const std::string& why) {
    throw drafting::Refusal("The piece in \"" + name + "\" " + why);
  };
  if (piece.cowl)
    refuse("is a cowl already, opened and trued. Give the plain base it was drafted from (base.json).");
  for (const char* role : {centre, "hem", "side-seam", "armhole", "shoulder", "neckline"}) {
    if (!drafting::has_edge(piece, role))
      refuse("is the piece \"" + piece.name + "\", which has no " + role + " edge. Give a plain base with " +
             centre + ", hem, side-seam, armhole, shoulder and neckline.");
  }
  if (!piece.points.contains("neck-point"))
    refuse("does not say where its neck point is. Add \"neck-point\" to its points.");
  return piece;
}

Piece read_base(const std::string& name, bool front) {
  const char* const wanted = front ? "a base front (SVG or piece file), or say demo"
                                   : "a base back (SVG or piece file), or say demo";
  const std::string text = read_file(name, wanted);
  const std::string kind = other_kind(text);
  if (!kind.empty()) {
    throw drafting::Refusal("\"" + name + "\" " + kind +
                            ", not a base. Give an SVG drawing in which each edge " +
                            "is a path with its role as id, or a piece file such as base.json.");
  }
  if (is_piece_file(text)) return base_from_file(text, name, front ? "centre-front" : "centre-back");
  std::vector<std::string> cautions;
  try {
    Piece piece = front ? drafting::base_front_from_svg(text, &cautions)
                        : drafting::base_back_from_svg(text, &cautions);
    for (const std::string& caution : cautions) std::cerr << "Caution: " << caution << '\n';
    return piece;
  } catch (const drafting::Refusal& reason) {
    std::string words = reason.what();
    for (const std::string& caution : cautions) words += " " + caution;
    throw drafting::Refusal(words);
  }
}

Piece said(Piece piece) {
  std::cout << drafting::base_size_in_words(piece) << '\n';
  for (const std::string& caution : drafting::base_size_cautions(piece))
    std::cerr << "Caution: " << caution << '\n';
  return piece;
}

void say_measures(const BodyMeasures& m) {
  std::cout << "measures:";
  for (const auto& [name, place] : measures) {
    char text[40];
    std::snprintf(text, sizeof text, "%s %s %.1f cm", place == measures[0].second ? "" : ",", name,
                  m.*place / 10.0);
    std::cout << text;
  }
  std::cout
      << "\nbust and neck of a size are those of ASTM D5585-11e1; what was not given follows the bust in "
         "this program's own proportions: measure where you can\n";
}

}  // namespace

void add_base_options(CLI::App& command, const std::shared_ptr<BaseOptions>& options) {
  command.add_option("--base", options->base,
                     "base front: a piece file (.json), an SVG drawing with named edges, or the word demo;\n"
                     "left out, one is drafted from --size or --body");
  command.add_option("--size", options->size, "a standard size, 00 to 20 (ASTM D5585)")->type_name("SIZE");
  command
      .add_option("--body", options->body,
                  "the wearer's measures, as bust=92cm,neck=36.5cm; also waist, hip, shoulder, back-waist,\n"
                  "waist-to-hem, ease. What is left out follows the size or the bust")
      ->type_name("NAME=LENGTH,...");
  command
      .add_option(
          "--drill", options->drills,
          "a drill mark on the base front, carried along by the part it lies on; may be given again:\n"
          "its name, how far out from the centre front and how far up from the hem, pocket,80,300")
      ->type_name("NAME,OUT,UP")
      ->expected(1)
      ->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
}

void check(const BaseOptions& options) {
  bool has_bust = !options.size.empty();
  if (!options.body.empty()) {
    for (const auto& [member, mm] : body_of(options.body)) has_bust |= member == &BodyMeasures::bust_girth;
    if (!has_bust) wrong("--body", options.body, "the bust too, or --size");
  }
  for (const std::string& text : options.drills) drill_of(text);
  const auto& sizes = drafting::standard_sizes();
  if (!options.size.empty() &&
      std::none_of(sizes.begin(), sizes.end(), [&](const auto& size) { return size.name == options.size; }))
    wrong("--size", options.size, "00, 0, 2, 4, 6, 8, 10, 12, 14, 16, 18 or 20");
  if (options.base.empty() && !has_bust)
    throw CLI::ValidationError("--base", "is missing: give it, or --size, or --body with the bust");
  if (options.base == "demo" && has_bust)
    throw CLI::ValidationError("--base",
                               "demo has measures of its own: leave out --base demo, or --size and --body");
}

std::optional<BodyMeasures> measures_of(const BaseOptions& options) {
  if (options.base == "demo") return drafting::demo_measures();
  if (options.size.empty() && options.body.empty()) return std::nullopt;
  const auto given =
      options.body.empty() ? std::vector<std::pair<double BodyMeasures::*, double>>{} : body_of(options.body);
  double bust = 0.0;
  for (const auto& [member, mm] : given)
    if (member == &BodyMeasures::bust_girth) bust = mm;
  BodyMeasures body =
      options.size.empty() ? drafting::measures_for_bust(bust) : drafting::measures_of_size(options.size);
  if (!options.size.empty() && bust > 0.0) {  // the rest follows the bust that was measured
    body = drafting::measures_for_bust(bust);
  }
  for (const auto& [member, mm] : given) body.*member = mm;
  return body;
}

bool has_own_back(const BaseOptions& options) {
  return options.base.empty() || options.base == "demo";
}

Piece read_base_front(const BaseOptions& options) {
  Piece piece;
  if (has_own_back(options)) {
    if (options.base.empty()) say_measures(*measures_of(options));
    piece = said(drafting::block_front(*measures_of(options)));
  } else {
    piece = said(read_base(options.base, true));
  }
  add_drills(piece, options);
  return piece;
}

std::vector<drafting::Polyline> read_slash_lines(const BaseOptions& options) {
  if (has_own_back(options)) return {};
  const std::string text = read_file(options.base, "a base front");
  if (is_piece_file(text)) return {};
  auto lines = drafting::slash_lines_from_svg(text);
  if (!lines.empty())
    std::cout << "slash lines         " << lines.size() << ", as drawn in " << options.base << '\n';
  return lines;
}

Piece read_base_back(const BaseOptions& options, const std::string& back) {
  if (back.empty()) return said(drafting::block_back(*measures_of(options)));
  if (back == "demo") return said(drafting::block_back(drafting::demo_measures()));
  return said(read_base(back, false));
}

}  // namespace cowlcast::projector
