// Files by the user's names: read whole, written whole or not at all.
//
//   TableMap map = TableMap::from_json(read_file(path, "a table file made by `cowlcast calibrate`"));
//   write_file(out / "front.json", piece_to_json(front));
//
// A full disk or a pulled plug leaves the old file as it was (`write_whole` of
// `projector/project` does the writing).
#pragma once

#include <filesystem>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace cowlcast::projector {

/// A file or folder could not be read or written: which one, why, and what to do.
class FileError : public std::runtime_error {
 public:
  explicit FileError(const std::string& reason) : std::runtime_error(reason) {}
};

/// The bytes of a file; `what` says what it should be, for the message. Throws FileError.
std::string read_file(const std::filesystem::path& path, std::string_view what);

/// Throws FileError when no file can be written there: a folder of that name, or none to put it in. To be
/// asked before long work.
void expect_room_for(const std::filesystem::path& path);

/// Throws FileError; the old file, if any, is then untouched.
void write_file(const std::filesystem::path& path, std::string_view bytes);

/// Makes a folder and those above it. Throws FileError.
void make_folder(const std::filesystem::path& path);

/// The files of a folder with one of these endings (lower case, with the dot; capitals in the name
/// count too), by name. Throws FileError.
std::vector<std::filesystem::path> files_ending(const std::filesystem::path& folder,
                                                const std::vector<std::string>& endings);

}  // namespace cowlcast::projector
