#include "projector/commands/cowl_options.h"

#include <algorithm>
#include <numbers>
#include <set>

#include "drafting/refusal.h"

namespace cowlcast::projector {
namespace {

using drafting::CornerForm;

[[noreturn]] void wrong(const std::string& option, const std::string& text, const std::string& wanted) {
  throw CLI::ValidationError(option, "cannot use \"" + text + "\": give " + wanted);
}

bool takes_allowance(const std::string& role) {
  const auto& roles = drafting::roles_with_allowance();
  return std::find(roles.begin(), roles.end(), role) != roles.end();
}

void set_allowance(CowlOptions& options, const std::string& text) {
  const std::vector<std::string> parts = parts_of(text, '=');
  const auto mm = parts.size() == 2 ? length_mm(parts[1]) : std::nullopt;
  if (!mm) wrong("--allowance", text, "an edge and a width, for example hem=30");
  if (!takes_allowance(parts[0]))
    wrong("--allowance", text, "one of the edges " + edges_with_allowance() + ", for example hem=30");
  if (*mm < 0.0)
    wrong("--allowance", text, "a width of 0 or more: allowances lie outside the seam line, never inside");
  if (*mm > drafting::widest_allowance) wrong("--allowance", text, "a width of 100 mm at most");
  options.wishes.allowances[parts[0]] = *mm;
  options.allowances_set.push_back(parts[0]);
}

/// "hem/side-seam=mirrored" or "all=squared".
void set_corner(CowlOptions& options, const std::string& text) {
  const std::string wanted =
      "two edges and mitred, squared or mirrored, for example hem/side-seam=mirrored, or all=squared";
  const std::vector<std::string> halves = parts_of(text, '=');
  if (halves.size() != 2) wrong("--corner", text, wanted);
  const std::vector<std::string> edges = parts_of(halves[0], '/');
  for (const CornerForm form : {CornerForm::mitred, CornerForm::squared, CornerForm::mirrored}) {
    if (halves[1] != drafting::corner_form_name(form)) continue;
    if (halves[0] == "all" && form != CornerForm::mirrored) {
      options.wishes.corners = {form, {}};
      return;
    }
    if (edges.size() == 2 && takes_allowance(edges[0]) && takes_allowance(edges[1])) {
      options.wishes.corners.list.push_back({edges[0], edges[1], form});
      options.corners_set.push_back({edges[0], edges[1], form});
      return;
    }
  }
  wrong("--corner", text, wanted + "; edges are " + edges_with_allowance());
}

/// An option that may be given again, each time handed to `read`.
template <typename Read>
CLI::Option* add_repeated(CLI::App& command, const std::string& name, const std::string& help, Read read) {
  return command
      .add_option_function<std::vector<std::string>>(
          name,
          [read](const std::vector<std::string>& texts) {
            for (const std::string& text : texts) read(text);
          },
          help)
      ->expected(1)
      ->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
}

bool meet(const drafting::Piece& piece, const drafting::Corner& corner) {
  std::vector<std::string> ring;
  for (const drafting::Edge& edge : piece.edges)
    if (edge.role != "cowl-edge") ring.push_back(edge.role);
  for (size_t i = 0; i < ring.size(); ++i) {
    const std::string &a = ring[i], &b = ring[(i + 1) % ring.size()];
    if ((a == corner.pressed && b == corner.beside) || (b == corner.pressed && a == corner.beside))
      return true;
  }
  return false;
}

}  // namespace

std::string edges_with_allowance() {
  std::string list;
  for (const std::string& role : drafting::roles_with_allowance()) list += (list.empty() ? "" : ", ") + role;
  return list;
}

void add_cowl_options(CLI::App& command, const std::shared_ptr<CowlOptions>& options) {
  drafting::CowlWishes& wishes = options->wishes;
  add_length(command, "--neckline-drop", wishes.neckline_drop,
             "how far the neckline is lowered at the centre front [60]");
  options->slash_options = {
      command
          .add_option("--slashes", wishes.slash_count,
                      "slash lines; those drawn in the base's file do not count then")
          ->check(CLI::Range(1, 6))
          ->capture_default_str(),
      command
          .add_option("--slash-form", options->slash_form,
                      "squared: curves, square to the centre front and to the shoulder; or straight. Lines\n"
                      "drawn in the base's file do not count then")
          ->check(CLI::IsMember({"squared", "straight"}))
          ->capture_default_str()};
  add_length(command, "--facing", wishes.facing_depth, "depth of the facing [50.8]", 0.0, 200.0);
  add_repeated(command, "--allowance",
               "seam allowance of an edge; may be given again. facing-shoulder follows the shoulder",
               [options](const std::string& text) { set_allowance(*options, text); })
      ->type_name("EDGE=LENGTH");
  add_repeated(command, "--corner",
               "how the cut line turns a corner; may be given again. mirrored: the first edge's allowance,\n"
               "pressed back, ends as the second's reflection (hem/side-seam is so from the start);\n"
               "squared: cut off across; mitred: to a point. all=squared sets every corner",
               [options](const std::string& text) { set_corner(*options, text); })
      ->type_name("EDGE/EDGE=FORM");
  command
      .add_option("--notch", options->notch,
                  "how notches are made: mark, slit (a snip) or vee (a small V), cut at most half-way into "
                  "the allowance")
      ->check(CLI::IsMember({"mark", "slit", "vee"}))
      ->capture_default_str();
  command.add_flag("--full", options->full, "cut full, in single cloth, not on the fold");
  command.add_option("--max-swing", options->max_swing, "most turn of the whole front, degrees, up to 60")
      ->check(CLI::Range(0.1, 60.0))
      ->capture_default_str();
  add_length(command, "--cloth-width", wishes.cloth_width, "width of the cloth [1500]", 300.0, 5000.0);
}

bool says_slash_lines(const CowlOptions& options) {
  return std::any_of(options.slash_options.begin(), options.slash_options.end(),
                     [](const CLI::Option* option) { return option->count() > 0; });
}

drafting::CowlWishes wishes_of(const CowlOptions& options) {
  drafting::CowlWishes wishes = options.wishes;
  wishes.on_fold = !options.full;
  wishes.max_swing = options.max_swing * std::numbers::pi / 180.0;
  wishes.slash_form =
      options.slash_form == "straight" ? drafting::SlashForm::straight : drafting::SlashForm::squared;
  wishes.notch_form = options.notch == "slit"  ? drafting::NotchForm::slit
                      : options.notch == "vee" ? drafting::NotchForm::vee
                                               : drafting::NotchForm::mark;
  // Folded in, the facing's shoulder lies on the front's and is caught in the same seam.
  const auto set = [&](const char* role) {
    return std::find(options.allowances_set.begin(), options.allowances_set.end(), role) !=
           options.allowances_set.end();
  };
  if (set("shoulder") && !set("facing-shoulder"))
    wishes.allowances["facing-shoulder"] = wishes.allowances["shoulder"];
  return wishes;
}

void require_edges(const CowlOptions& options, const std::vector<drafting::Piece>& pieces) {
  std::vector<std::string> there;
  for (const drafting::Piece& piece : pieces) {
    for (const std::string& role : drafting::roles_with_allowance(piece))
      if (std::find(there.begin(), there.end(), role) == there.end()) there.push_back(role);
  }
  std::string list;
  for (const std::string& role : there) list += (list.empty() ? "" : ", ") + role;
  for (const std::string& role : options.allowances_set) {
    if (std::find(there.begin(), there.end(), role) == there.end()) {
      throw drafting::Refusal("No piece here has a " + role +
                              " edge to give an allowance to. The edges there are: " + list +
                              ". Leave that allowance out.");
    }
  }
  for (const drafting::Corner& corner : options.corners_set) {
    if (std::none_of(pieces.begin(), pieces.end(), [&](const auto& piece) { return meet(piece, corner); })) {
      throw drafting::Refusal("No piece here has a corner between " + corner.pressed + " and " +
                              corner.beside + ". The edges there are, each meeting the next: " + list +
                              ". Leave that corner out.");
    }
  }
}

}  // namespace cowlcast::projector
