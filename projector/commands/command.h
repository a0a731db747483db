// What the commands share: how they are added, and how their options read.
//
// Each command has a file of its own with one `add_...` function: it describes
// the command to the parser and leaves in `job` what to do when it is chosen.
// Exit codes: 0 done, 2 wrong usage, 3 refused with a reason, 1 anything else.
#pragma once

#include <CLI/CLI.hpp>
#include <filesystem>
#include <functional>
#include <iostream>
#include <memory>
#include <string>
#include <vector>

#include "calibration/table_map/table_map.h"
#include "projector/commands/numbers.h"

#include "drafting/piece/piece.h"

namespace cowlcast::projector {

using Job = std::function<void()>;

void add_sheets(CLI::App& app, Job& job);
void add_targets(CLI::App& app, Job& job);
void add_calibrate(CLI::App& app, Job& job);
void add_locate(CLI::App& app, Job& job);
void add_draft(CLI::App& app, Job& job);
void add_top(CLI::App& app, Job& job);
void add_frame(CLI::App& app, Job& job);
void add_cast(CLI::App& app, Job& job);
void add_demo(CLI::App& app, Job& job);

/// An option that is a length: "480", "48cm", "19in"; `at_least` in mm.
CLI::Option* add_length(CLI::App& command, const std::string& name, double& mm, const std::string& help,
                        double at_least = 0.0);

/// An option "X,Y,DEGREES": two lengths and an angle.
struct PlaceOption {
  double x = 0.0, y = 0.0;  ///< mm
  double angle = 0.0;       ///< radians
};
CLI::Option* add_place(CLI::App& command, const std::string& name, PlaceOption& place,
                       const std::string& help);

/// An option "1920x1080".
CLI::Option* add_picture_size(CLI::App& command, PictureSize& size);

/// An option for the colour of the cloth, "#1b2a4a" or a name.
CLI::Option* add_colour(CLI::App& command, const std::string& name, unsigned& colour,
                        const std::string& help);

/// "area reaches from x .. to .. mm and y .. to .. mm", for messages.
std::string lit_box(const calibration::TableMap& map, double height);

/// The piece in a file made by `cowlcast draft`; one that is cut full comes whole, its mirrored half joined
/// on. Throws FileError, drafting::Refusal.
drafting::Piece read_piece(const std::string& path);

/// Throws calibration::Refusal for cloth that no garment is made of.
void check_cloth(double height);

}  // namespace cowlcast::projector
