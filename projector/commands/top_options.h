// The options of `cowlcast top`, and the wishes they make.
#pragma once

#include <optional>

#include "drafting/garment/top.h"
#include "drafting/hang/hang.h"
#include "projector/commands/base_options.h"
#include "projector/commands/cowl_options.h"

namespace cowlcast::projector {

/// As typed.
struct TopOptions {
  std::shared_ptr<BaseOptions> base = std::make_shared<BaseOptions>();
  std::shared_ptr<CowlOptions> cowl = std::make_shared<CowlOptions>();
  std::string back, out, paper = "a4", weight = "even", openings;
  double drape = 0.0, hang = 0.0, back_drape = 0.0, back_drop = -1.0, camisole_depth = 0.0;
  std::string camisole_finish = "turned", arm_finish;
  double finish_width = 0.0, finish_stretch = 1.08;
  drafting::TopWishes top;
  std::vector<std::string> slashes, carried;
  std::vector<drafting::Polyline> drawn_slashes;  ///< in the base's file; they count when none are said
  bool ranges = false, cut_anyway = false;
};

void add_top_options(CLI::App& command, const std::shared_ptr<TopOptions>& options);

/// What is wrong with the options, found before anything is read. Throws ValidationError.
void check(const TopOptions& options);

/// Wishes from the options alone, all but the drape. Throws ValidationError.
drafting::TopWishes wishes_of(const TopOptions& options);

/// Openings relative to each other from the top down: none for even ones. Throws ValidationError.
std::vector<double> proportions_of(const std::string& weight, int count);

/// The wearer's levels for the picture of the hang, when her measures are known.
std::optional<drafting::HangLevels> levels_of(const TopOptions& options);

}  // namespace cowlcast::projector
