// The maker's choices for a cowl as options: shared by `draft`, `top` and `teach`.
#pragma once

#include "drafting/cowl/cowl_front.h"
#include "projector/commands/command.h"

namespace cowlcast::projector {

/// The choices of a cowl that every drafting command offers, as typed.
struct CowlOptions {
  drafting::CowlWishes wishes;
  std::vector<std::string> allowances_set;    ///< roles given by --allowance
  std::vector<drafting::Corner> corners_set;  ///< given by --corner
  std::string slash_form = "squared", notch = "mark";
  bool full = false;
  double max_swing = 30.0;                        ///< degrees
  std::vector<const CLI::Option*> slash_options;  ///< each of which says how the slash lines run
};

/// Adds --neckline-drop, --slashes, --slash-form, --facing, --allowance, --corner, --notch, --full,
/// --max-swing, --cloth-width.
void add_cowl_options(CLI::App& command, const std::shared_ptr<CowlOptions>& options);

/// True when the maker said on the command line how the slash lines run, so that those drawn in the base's
/// file do not count.
bool says_slash_lines(const CowlOptions& options);

/// The choices as drafting takes them.
drafting::CowlWishes wishes_of(const CowlOptions& options);

/// Throws drafting::Refusal, naming the edges there are, when an allowance or a corner was set that none of
/// the pieces has.
void require_edges(const CowlOptions& options, const std::vector<drafting::Piece>& pieces);

/// "neckline, shoulder, ...": every edge that can have an allowance.
std::string edges_with_allowance();

}  // namespace cowlcast::projector
