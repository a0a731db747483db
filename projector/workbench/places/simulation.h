// The simulated table as the workbench uses it: its photographs as files.
#pragma once

#include <QString>
#include <functional>
#include <stop_token>
#include <string>
#include <vector>

#include "projector/table/simulated_table.h"

namespace cowlcast::projector {

/// In the user's own data folder.
QString simulation_folder();

/// True for a photograph that was made there.
bool is_simulated(const std::string& photograph);

struct SimulatedPhotographs {
  std::vector<std::string> files;
  calibration::CalibrationRequest request;  ///< pixels and rulers
};

/// Takes them anew; `made` is told before each how many are done of how many. Throws
/// drafting::Refusal, and Stopped when `stop` was asked for.
SimulatedPhotographs simulated_photographs(const QString& folder, const std::stop_token& stop,
                                           const std::function<void(int done, int all)>& made);

}  // namespace cowlcast::projector
