// The base of a draft, by file or by body: shared by `draft`, `top` and `teach`.
#pragma once

#include <optional>
#include <string>

#include "drafting/block/block.h"
#include "projector/commands/command.h"

namespace cowlcast::projector {

/// As typed; see `add_base_options`.
struct BaseOptions {
  std::string base, size, body;
  std::vector<std::string> drills;
};

/// Adds --base, --size, --body and --drill.
void add_base_options(CLI::App& command, const std::shared_ptr<BaseOptions>& options);

/// What is wrong with the options among themselves, found before anything is read. Throws ValidationError.
void check(const BaseOptions& options);

/// The wearer's measures when they are known: of the demo, a size or a body.
std::optional<drafting::BodyMeasures> measures_of(const BaseOptions& options);

/// True when the base is made from measures, the demo's or a body's, so that its back is known too.
bool has_own_back(const BaseOptions& options);

/// The base front; says its size on the standard output, and cautions on the error output. Throws FileError
/// and Refusal.
drafting::Piece read_base_front(const BaseOptions& options);

/// The slash lines drawn in the base's file, said on the standard output; none for a base of another kind.
std::vector<drafting::Polyline> read_slash_lines(const BaseOptions& options);

/// A base back the same way, from the file `back`, or made from the measures when that is empty.
drafting::Piece read_base_back(const BaseOptions& options, const std::string& back);

}  // namespace cowlcast::projector
