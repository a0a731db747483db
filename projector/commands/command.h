// What the commands share: how they are added, and how their options read.
//
// Each command has a file of its own with one `add_...` function: it describes
// the command to the parser and leaves in `job` what to do when it is chosen.
// Exit codes: 0 done, 2 for what the command line can never take, 3 for a job that is refused with a reason,
// 1 anything else.
#pragma once

#include <CLI/CLI.hpp>
#include <filesystem>
#include <functional>
#include <iostream>
#include <limits>
#include <memory>
#include <string>
#include <vector>

#include "calibration/table_map/table_map.h"
#include "drafting/piece/piece.h"
#include "projector/blade/blade.h"
#include "projector/commands/numbers.h"

namespace cowlcast::projector {

using Job = std::function<void()>;

/// The program's window, until it is closed: what it does without a command. `file`: the project to open, or
/// none.
void open_workbench(const std::string& file = {});

void add_sheets(CLI::App& app, Job& job);
void add_targets(CLI::App& app, Job& job);
void add_screens(CLI::App& app, Job& job);
void add_capture(CLI::App& app, Job& job);
void add_calibrate(CLI::App& app, Job& job);
void add_camera(CLI::App& app, Job& job);
void add_check(CLI::App& app, Job& job);
void add_locate(CLI::App& app, Job& job);
void add_draft(CLI::App& app, Job& job);
void add_top(CLI::App& app, Job& job);
void add_teach(CLI::App& app, Job& job);
void add_frame(CLI::App& app, Job& job);
void add_cast(CLI::App& app, Job& job);
void add_demo(CLI::App& app, Job& job);

/// An option that is a length: "480", "48cm", "19in"; the limits in mm.
CLI::Option* add_length(CLI::App& command, const std::string& name, double& mm, const std::string& help,
                        double at_least = 0.0, double at_most = std::numeric_limits<double>::infinity());

/// An option "X,Y,DEGREES": two lengths and an angle.
struct PlaceOption {
  double x = 0.0, y = 0.0;  ///< mm
  double angle = 0.0;       ///< radians
};
CLI::Option* add_place(CLI::App& command, const std::string& name, PlaceOption& place,
                       const std::string& help);

/// An option "1920x1080".
CLI::Option* add_picture_size(CLI::App& command, PictureSize& size);

/// The option --camera-size: pixels to ask a camera for; `size` as it stands is the default.
CLI::Option* add_camera_size(CLI::App& command, PictureSize& size);

/// The option --height: of the cloth's upper face above the mat.
CLI::Option* add_cloth_height(CLI::App& command, double& mm);

/// What cutting and drawing a piece ask about cloth and blade: --cloth, --mirrored, --blade, --band, --hand.
struct WorkOptions {
  std::vector<unsigned> cloth{0xff808080};  ///< colours, one for plain cloth
  bool mirrored = false;
  double blade = 45.0, band = 60.0;  ///< mm
  std::string hand = "right";
};
void add_work_options(CLI::App& command, WorkOptions& options);

/// The blade at work on cloth `height` mm thick; what is thinner than the usual cloth is cut as that.
Blade blade_for(const WorkOptions& options, double height);

/// What to say when the room should be dimmed for this cloth; empty when it need not.
std::string dim_room_advice(const std::vector<unsigned>& cloth);

/// What to say when it is little known how the light slants, so that lines about `places` (mat mm) are off on
/// cloth this high; empty when they are right enough.
std::string thick_cloth_caution(const calibration::TableMap& map, const Polyline& places, double height);

/// "area reaches from x .. to .. mm and y .. to .. mm", for messages.
std::string lit_box(const calibration::TableMap& map, double height);

/// The piece in a file made by `cowlcast draft`; one that is cut full comes whole, its mirrored half joined
/// on. Throws FileError, drafting::Refusal.
drafting::Piece read_piece(const std::string& path);

}  // namespace cowlcast::projector
