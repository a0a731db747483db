// Slash lines that a maker has drawn into the base's own file: how they become wishes.
//
//   wishes.slashes = slashes_along(drafting::slash_lines_from_svg(text));   // the command line
//   take_drawn_slashes(project);                                            // the window, when a front opens
//
// Pure functions; nothing says yet that the lines can be slashed: drafting does.
#pragma once

#include <string>
#include <vector>

#include "projector/project/project.h"

namespace cowlcast::projector {

/// Slash lines along drawn ones, from the top down.
std::vector<drafting::SlashWish> slashes_along(const std::vector<drafting::Polyline>& lines);

/// The drawing's text with the roles that were set by hand.
std::string svg_of(const PatternDrawing& drawing);

/// How many of the project's slash lines are drawn ones.
int drawn_slashes(const Project& project);

/// The cowl is slashed as the front's drawing says; those of an earlier drawing go. A drawing without slash
/// lines, or one whose edges are not all known yet, leaves other slash lines as they are. False when none was
/// taken.
bool take_drawn_slashes(Project& project);

}  // namespace cowlcast::projector
