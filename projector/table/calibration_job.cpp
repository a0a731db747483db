#include "projector/table/calibration_job.h"

#include "calibration/refusal.h"
#include "projector/table/lens_file.h"

namespace cowlcast::projector {
namespace {

std::vector<calibration::Photograph> photographs_of(const CalibrationJob& job,
                                                    std::vector<std::string>& unread) {
  std::vector<calibration::Photograph> photographs = calibration::load_photographs(job.files, unread);
  if (photographs.empty())
    throw calibration::Refusal(unread.empty() ? "There are no photographs of the table yet. Take some first."
                                              : unread.front());
  for (calibration::Photograph& photograph : photographs)
    if (photograph.camera.empty()) photograph.camera = job.camera_name;
  return photographs;
}

}  // namespace

CalibrationOutcome calibrated(const CalibrationJob& job, const std::stop_token& stop,
                              const std::function<void(CalibrationStage)>& entered) {
  const auto enter = [&](CalibrationStage stage) {
    if (stop.stop_requested()) throw Stopped();
    if (entered) entered(stage);
  };
  enter(CalibrationStage::reading);
  CalibrationOutcome outcome;
  const std::vector<calibration::Photograph> photographs = photographs_of(job, outcome.cautions);
  calibration::CalibrationRequest request = job.request;
  request.known_lenses = read_lens_memory(job.lens_memory);
  enter(CalibrationStage::solving);
  outcome.report = calibration::calibrate(photographs, request);
  enter(CalibrationStage::done);
  const auto& warnings = outcome.report.warnings;
  outcome.cautions.insert(outcome.cautions.end(), warnings.begin(), warnings.end());
  try {
    write_lens_memory(job.lens_memory, request.known_lenses, outcome.report.lenses);
  } catch (const std::exception& reason) {  // the table is found: that is what was asked for
    outcome.cautions.push_back(std::string("The lens is not remembered. ") + reason.what());
  }
  return outcome;
}

}  // namespace cowlcast::projector
