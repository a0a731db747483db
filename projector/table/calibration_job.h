// A calibration as command line and window do it: photographs read, lenses remembered.
//
//   CalibrationJob job{.files = photographs, .request = {.width = 1920, .height = 1080}};
//   job.lens_memory = lens_memory_path("");
//   CalibrationOutcome outcome = calibrated(job, stop, [](CalibrationStage stage) { tell(stage); });
//
// Takes some seconds; made to run beside the window.
#pragma once

#include <filesystem>
#include <functional>
#include <stop_token>
#include <string>
#include <vector>

#include "calibration/solve/calibrate.h"

namespace cowlcast::projector {

struct CalibrationJob {
  std::vector<std::string> files;           ///< photographs, JPEG or PNG
  calibration::CalibrationRequest request;  ///< its known lenses come from the memory
  std::string camera_name;                  ///< for photographs that do not tell it themselves
  std::filesystem::path lens_memory;        ///< empty: no lens is remembered
};

enum class CalibrationStage { reading, solving, done };

struct CalibrationOutcome {
  calibration::CalibrationReport report;
  std::vector<std::string> cautions;  ///< files that could not be read, the report's warnings, a memory that
                                      ///< could not be kept
};

/// It was asked to stop, and did.
struct Stopped {};

/// `entered` is called at each stage, by the same thread. Throws calibration::Refusal with cause and cure,
/// and Stopped at the next stage after `stop` was asked for: what is being solved is solved to its end.
CalibrationOutcome calibrated(const CalibrationJob& job, const std::stop_token& stop = {},
                              const std::function<void(CalibrationStage)>& entered = {});

}  // namespace cowlcast::projector
