// The files of a whole top, made before any is written.
//
//   for (const NamedFile& file : files_of(top, "a4", hang)) write_file(out / file.name, file.bytes);
#pragma once

#include <string>
#include <vector>

#include "drafting/garment/top.h"

namespace cowlcast::projector {

struct NamedFile {
  std::string name, bytes;
};

/// `paper`: a4, letter, a0 or one. `hang_svg` may be empty: then it is left out.
/// Piece files are called by the piece's name, no two the same. Throws Refusal.
std::vector<NamedFile> files_of(const drafting::Top& top, const std::string& paper,
                                const std::string& hang_svg);

}  // namespace cowlcast::projector
