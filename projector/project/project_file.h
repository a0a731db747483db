// The project file: one garment's project as JSON, saved whole or not at all.
//
//   write_project("blue top.cowlcast", project, thumbnail_png);
//   Project again = read_project("blue top.cowlcast");
//
// What stands in it is told in README.md, "Files". Guarantees: a project read
// back is the project that was written, number by number; a file is replaced
// only once all of the new one is on the disk; a file of an older schema is
// brought up to date step by step as it is read; a newer one is refused rather
// than read in part, so nothing in it is ever lost by saving again.
#pragma once

#include <QByteArray>
#include <QString>
#include <functional>
#include <nlohmann/json_fwd.hpp>
#include <string>
#include <string_view>
#include <vector>

#include "projector/project/project.h"

namespace cowlcast::projector {

inline constexpr int kProjectSchema = 1;

/// The ending of project files, with the dot.
inline const QString kProjectEnding = QStringLiteral(".cowlcast");

/// JSON text; `thumbnail_png` are the bytes of a small picture for those who choose among files.
std::string project_to_json(const Project& project, const QByteArray& thumbnail_png = {});

/// Throws drafting::Refusal for text that is no project, is damaged, or was written by a newer program:
/// cause, then cure.
Project project_from_json(const std::string& text);

/// The bytes of the picture in a project's text; none where there is none.
QByteArray thumbnail_from_json(const std::string& text);

/// Throw drafting::Refusal with cause and cure, for what the disk does too.
Project read_project(const QString& path);
void write_project(const QString& path, const Project& project, const QByteArray& thumbnail_png = {});

/// All bytes of a file, and all bytes written at once: the file at `path` is the old one or the new one,
/// also when the program or the machine stops in between.
std::string read_whole(const QString& path);
void write_whole(const QString& path, std::string_view bytes);

/// Brings a project's JSON from its own schema up to the next one.
using Migration = std::function<void(nlohmann::json&)>;

/// Applies, in order, the migrations from the project's own schema to the last; `steps[0]` leads from 1 to
/// 2. Throws drafting::Refusal for a schema the steps do not reach from.
void bring_up_to_date(nlohmann::json& project, const std::vector<Migration>& steps);

}  // namespace cowlcast::projector
