// Lenses that were once found well, kept by camera and picture size for the next calibration.
//
//   std::vector<KnownLens> memory = lens_memory_from_json(text);
//   CalibrationReport report = calibrate(photographs, {.width = 1920, .height = 1080, .known_lenses =
//   memory}); for (const KnownLens& lens : report.lenses) keep_lens(memory, lens);
//
// A remembered lens joins a fit only after the photographs alone have been
// fitted, and only when they do not speak against it; else it is dropped and that
// is said. It is held loosely: a lens breathes with its focus and may be shaken.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "calibration/solve/fit.h"
#include "calibration/solve/scene.h"

namespace cowlcast::calibration {

struct KnownLens {
  std::string camera;             ///< maker and model as photographs tell them, or a live camera's name
  int width = 0, height = 0;      ///< of the pictures, pixels
  std::array<double, 8> lens{};   ///< as LensNumbers
  std::array<double, 8> sigma{};  ///< standard deviations, that of the focal length relative
};

std::string lens_memory_to_json(const std::vector<KnownLens>& memory);
/// Throws Refusal for a text that is no lens memory.
std::vector<KnownLens> lens_memory_from_json(const std::string& text);

/// Adds a lens, or takes the place of the same camera's unless that was known much better.
void keep_lens(std::vector<KnownLens>& memory, const KnownLens& lens);

/// What is remembered of a camera's lens at that size of picture, held as loosely as a lens changes from day
/// to day; nothing when it is not known.
std::optional<LensBelief> believed_lens(const std::vector<KnownLens>& memory, const std::string& camera,
                                        int width, int height);

/// Lets remembered lenses join the scene's beliefs where the fit as it stands does not contradict them, and
/// fits again. `cameras`: a name for each of the scene's lenses, empty when not known. Returns plain
/// sentences on what was dropped; the scene is then as it was.
std::vector<std::string> heed_known_lenses(Scene& scene, const FitNoise& noise,
                                           const std::vector<std::string>& cameras,
                                           const std::vector<KnownLens>& memory);

/// The scene's lenses that are known well enough to be remembered.
std::vector<KnownLens> lenses_worth_keeping(Scene& scene, const FitNoise& noise,
                                            const std::vector<std::string>& cameras);

}  // namespace cowlcast::calibration
