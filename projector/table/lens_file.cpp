#include "projector/table/lens_file.h"

#include <QFile>
#include <QStandardPaths>

#include "drafting/refusal.h"
#include "projector/project/project_file.h"

namespace cowlcast::projector {
namespace {

QString text_of(const std::filesystem::path& path) {
  return QString::fromStdU16String(path.u16string());
}

}  // namespace

std::filesystem::path lens_memory_path(const std::string& option) {
  if (option == "none") return {};
  if (!option.empty()) return option;
  const QString folder = QStandardPaths::writableLocation(QStandardPaths::GenericDataLocation);
  if (folder.isEmpty()) return {};
  return std::filesystem::path(folder.toStdU16String()) / "cowlcast" / "lenses.json";
}

std::vector<calibration::KnownLens> read_lens_memory(const std::filesystem::path& path) {
  if (path.empty() || !QFile::exists(text_of(path))) return {};
  return calibration::lens_memory_from_json(read_whole(text_of(path)));
}

void write_lens_memory(const std::filesystem::path& path, std::vector<calibration::KnownLens> memory,
                       const std::vector<calibration::KnownLens>& lenses) {
  if (path.empty() || lenses.empty()) return;
  for (const calibration::KnownLens& lens : lenses) calibration::keep_lens(memory, lens);
  std::error_code failed;
  if (path.has_parent_path()) std::filesystem::create_directories(path.parent_path(), failed);
  write_whole(text_of(path), calibration::lens_memory_to_json(memory));
}

}  // namespace cowlcast::projector
