// Where lenses are remembered between calibrations.
#pragma once

#include <filesystem>
#include <vector>

#include "calibration/solve/lens_memory.h"

namespace cowlcast::projector {

/// The file that an option `--lens-memory` names; empty text: the one in the user's own data folder. "none"
/// gives an empty path: nothing is remembered.
std::filesystem::path lens_memory_path(const std::string& option);

/// What is in it; nothing where there is no such file. Throws calibration::Refusal for a file of another
/// kind.
std::vector<calibration::KnownLens> read_lens_memory(const std::filesystem::path& path);

/// Adds `lenses` and writes it whole. Throws drafting::Refusal.
void write_lens_memory(const std::filesystem::path& path, std::vector<calibration::KnownLens> memory,
                       const std::vector<calibration::KnownLens>& lenses);

}  // namespace cowlcast::projector
