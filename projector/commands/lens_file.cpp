#include "projector/commands/lens_file.h"

#include <QStandardPaths>

#include "projector/commands/files.h"

namespace cowlcast::projector {

std::filesystem::path lens_memory_path(const std::string& option) {
  if (option == "none") return {};
  if (!option.empty()) return option;
  const QString folder = QStandardPaths::writableLocation(QStandardPaths::GenericDataLocation);
  if (folder.isEmpty()) return {};
  return std::filesystem::path(folder.toStdString()) / "cowlcast" / "lenses.json";
}

std::vector<calibration::KnownLens> read_lens_memory(const std::filesystem::path& path) {
  std::error_code failed;
  if (path.empty() || !std::filesystem::exists(path, failed)) return {};
  return calibration::lens_memory_from_json(read_file(path, "a lens memory"));
}

void write_lens_memory(const std::filesystem::path& path, std::vector<calibration::KnownLens> memory,
                       const std::vector<calibration::KnownLens>& lenses) {
  if (path.empty() || lenses.empty()) return;
  for (const calibration::KnownLens& lens : lenses) calibration::keep_lens(memory, lens);
  if (path.has_parent_path()) make_folder(path.parent_path());
  write_file(path, calibration::lens_memory_to_json(memory));
}

}  // namespace cowlcast::projector
