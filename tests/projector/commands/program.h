// Runs the real program and keeps what it said.
#pragma once

#include <array>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>

namespace cowlcast::projector::testing {

struct Ran {
  int code = -1;
  std::string out, err;
};

inline std::string text_of(const std::filesystem::path& path) {
  std::ifstream in(path, std::ios::binary);
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

/// Runs `cowlcast ARGUMENTS` in `folder`, `input` on its standard input.
inline Ran run_cowlcast(const std::filesystem::path& folder, const std::string& arguments,
                        const std::string& input = "") {
  std::filesystem::create_directories(folder);
  const auto in = folder / "stdin.txt", out = folder / "stdout.txt", err = folder / "stderr.txt";
  std::ofstream(in, std::ios::binary) << input;
  const std::string line = "cd \"" + folder.string() + "\" && \"" COWLCAST_PROGRAM "\" " + arguments +
                           " < \"" + in.string() + "\" > \"" + out.string() + "\" 2> \"" + err.string() +
                           "\"";
  const int status = std::system(line.c_str());
  return {WIFEXITED(status) ? WEXITSTATUS(status) : -1, text_of(out), text_of(err)};
}

}  // namespace cowlcast::projector::testing
