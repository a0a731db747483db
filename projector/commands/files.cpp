#include "projector/commands/files.h"

#include <algorithm>
#include <cctype>
#include <cerrno>
#include <cstring>
#include <fstream>
#include <sstream>
#include <system_error>

#include "drafting/refusal.h"
#include "projector/project/project_file.h"

namespace cowlcast::projector {
namespace {

namespace fs = std::filesystem;

std::string quoted(const fs::path& path) {
  std::string text = "\"";
  text += path.string();
  text += '"';
  return text;
}

std::string last_reason() {
  return errno != 0 ? std::generic_category().message(errno) : std::string("unknown reason");
}

}  // namespace

std::string read_file(const fs::path& path, std::string_view what) {
  std::error_code failed;
  if (!fs::exists(path, failed))
    throw FileError("There is no file " + quoted(path) + ". Give the name of " + std::string(what) + ".");
  if (fs::is_directory(path, failed))
    throw FileError(quoted(path) + " is a folder. Give the name of " + std::string(what) + ".");
  errno = 0;
  std::ifstream in(path, std::ios::binary);
  std::ostringstream text;
  if (!in || (in.peek() != std::ifstream::traits_type::eof() && !(text << in.rdbuf())))
    throw FileError("Cannot read " + quoted(path) + ": " + last_reason() + ". Check that you may read it.");
  return text.str();
}

void expect_room_for(const fs::path& path) {
  std::error_code failed;
  if (fs::is_directory(path, failed))
    throw FileError("Cannot write " + quoted(path) + ": it is a folder. Give a file name.");
  const fs::path folder = path.has_parent_path() ? path.parent_path() : fs::path(".");
  if (!fs::is_directory(folder, failed))
    throw FileError("Cannot write " + quoted(path) + ": there is no folder " + quoted(folder) +
                    ". Make it first or choose another place.");
}

void write_file(const fs::path& path, std::string_view bytes) {
  expect_room_for(path);
  try {
    write_whole(QString::fromStdString(path.string()), bytes);
  } catch (const drafting::Refusal& reason) {
    throw FileError(reason.what());
  }
}

void make_folder(const fs::path& path) {
  std::error_code failed;
  fs::create_directories(path, failed);
  if (!fs::is_directory(path))
    throw FileError("Cannot make the folder " + quoted(path) + ": " +
                    (failed ? failed.message() : std::string("something else has that name")) +
                    ". Choose another place.");
}

std::vector<fs::path> files_ending(const fs::path& folder, const std::vector<std::string>& endings) {
  std::error_code failed;
  if (!fs::is_directory(folder, failed))
    throw FileError("There is no folder " + quoted(folder) + ". Give the folder that holds the photographs.");
  std::vector<fs::path> found;
  fs::directory_iterator entries(folder, failed);
  if (failed)
    throw FileError("Cannot look into " + quoted(folder) + ": " + failed.message() +
                    ". Check that you may read it.");
  for (const fs::directory_entry& entry : entries) {
    std::string ending = entry.path().extension().string();
    std::transform(ending.begin(), ending.end(), ending.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    const bool hidden = entry.path().filename().string().starts_with(".");
    if (!hidden && entry.is_regular_file(failed) &&
        std::find(endings.begin(), endings.end(), ending) != endings.end())
      found.push_back(entry.path());
  }
  std::sort(found.begin(), found.end());
  return found;
}

}  // namespace cowlcast::projector
