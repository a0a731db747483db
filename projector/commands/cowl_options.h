// What `draft` and `top` share: the base read from a file, and the maker's choices as options.
#pragma once

#include "drafting/cowl/cowl_front.h"
#include "projector/commands/command.h"

namespace cowlcast::projector {

/// The choices of a cowl that every drafting command offers, as typed.
struct CowlOptions {
  drafting::CowlWishes wishes;
  bool full = false;
  double max_swing = 30.0;  ///< degrees
};

/// Adds --neckline-drop, --slashes, --facing, --allowance, --full, --max-swing, --cloth-width.
void add_cowl_options(CLI::App& command, const std::shared_ptr<CowlOptions>& options);

/// The choices as drafting takes them.
drafting::CowlWishes wishes_of(const CowlOptions& options);

/// A base front: the word demo, a piece file or an SVG drawing. Throws FileError and Refusal.
drafting::Piece read_base_front(const std::string& name);

/// A base back the same way.
drafting::Piece read_base_back(const std::string& name);

}  // namespace cowlcast::projector
