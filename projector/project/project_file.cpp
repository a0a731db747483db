#include "projector/project/project_file.h"

#include <QFile>
#include <QFileInfo>
#include <QSaveFile>

#include "calibration/refusal.h"
#include "drafting/refusal.h"
#include "projector/project/project_json.h"

namespace cowlcast::projector {
namespace {

using drafting::Refusal;
using nlohmann::json;

constexpr const char* kFormat = "cowlcast project";
constexpr qint64 kLargest = 200'000'000;  // bytes; a project with two drawings is under a megabyte

/// None yet: schema 1 is the first.
const std::vector<Migration>& migrations() {
  static const std::vector<Migration> steps;
  return steps;
}

Project project_from(const json& in) {
  Project project;
  if (in.contains("name")) project.name = in.at("name").get<std::string>();
  if (in.contains("pattern")) project.pattern = pattern_from(in.at("pattern"));
  if (in.contains("cowl")) project.cowl = cowl_from(in.at("cowl"));
  if (in.contains("top")) project.top = top_from(in.at("top"));
  if (in.contains("cloth")) project.cloth = cloth_from(in.at("cloth"));
  if (in.contains("table")) project.table = table_from(in.at("table"));
  if (in.contains("cutting"))
    for (const auto& [piece, record] : in.at("cutting").items())
      project.cutting[piece] = record_from_json(record.dump());
  if (auto old = project.cutting.extract("camisole panel")) {  // as the inner panel was called once
    old.key() = old.mapped().piece = "inner panel";
    project.cutting.insert(std::move(old));
  }
  return project;
}

json parsed(const std::string& text) {
  json in = json::parse(text, nullptr, false);
  if (in.is_discarded())
    throw Refusal(
        "This project is damaged or not complete: it does not read to its end. Open a copy of it, or look "
        "for one among the work that was kept.");
  if (!in.is_object() || !in.contains("format") || in.at("format") != kFormat)
    throw Refusal("This file is not a Cowlcast project. Choose a file whose name ends in .cowlcast.");
  return in;
}

std::string name_of(const QString& path) {
  return QStringLiteral("\"%1\"").arg(QFileInfo(path).fileName()).toStdString();
}

}  // namespace

void bring_up_to_date(json& project, const std::vector<Migration>& steps) {
  const int last = static_cast<int>(steps.size()) + 1;
  const int schema = project.at("schema").get<int>();
  if (schema > last)
    throw Refusal(
        "This project was saved by a newer Cowlcast than this one, which would lose part of it. Update the "
        "program, then open it.");
  if (schema < 1) throw Refusal("This project's schema is none that ever was. Open a copy of the file.");
  for (int from = schema; from < last; ++from) steps[static_cast<size_t>(from) - 1](project);
  project["schema"] = last;
}

std::string project_to_json(const Project& project, const QByteArray& thumbnail_png) {
  json cutting = json::object();
  for (const auto& [piece, record] : project.cutting) cutting[piece] = json::parse(record_to_json(record));
  json out{{"format", kFormat},
           {"schema", kProjectSchema},
           {"units", "mm"},
           {"name", project.name},
           {"pattern", pattern_to(project.pattern)},
           {"cowl", cowl_to(project.cowl)},
           {"top", top_to(project.top)},
           {"cloth", cloth_to(project.cloth)},
           {"table", table_to(project.table)},
           {"cutting", cutting}};
  if (!thumbnail_png.isEmpty()) out["thumbnail"] = thumbnail_png.toBase64().toStdString();
  return out.dump(1, ' ', false, json::error_handler_t::replace) + "\n";
}

Project project_from_json(const std::string& text) {
  try {
    json in = parsed(text);
    bring_up_to_date(in, migrations());
    return project_from(in);
  } catch (const json::exception&) {
    throw Refusal(
        "This project is damaged: a part of it is not what it should be. Open a copy of it, or look for one "
        "among the work that was kept.");
  } catch (const calibration::Refusal& reason) {
    throw Refusal(std::string("The table kept in this project cannot be read. ") + reason.what());
  }
}

QByteArray thumbnail_from_json(const std::string& text) {
  const json in = json::parse(text, nullptr, false);
  if (!in.is_object() || !in.contains("thumbnail") || !in.at("thumbnail").is_string()) return {};
  return QByteArray::fromBase64(QByteArray::fromStdString(in.at("thumbnail").get<std::string>()));
}

std::string read_whole(const QString& path) {
  QFile file(path);
  if (!file.open(QIODevice::ReadOnly))
    throw Refusal(name_of(path) + " cannot be read: " + file.errorString().toStdString() +
                  ". Check that it is there and that you may read it.");
  if (file.size() > kLargest)
    throw Refusal(name_of(path) + " is far too large for a project. Choose another file.");
  const QByteArray bytes = file.readAll();
  if (file.error() != QFileDevice::NoError)
    throw Refusal(name_of(path) + " cannot be read to its end: " + file.errorString().toStdString() +
                  ". Try again, or use a copy.");
  return bytes.toStdString();
}

void write_whole(const QString& path, std::string_view bytes) {
  QSaveFile file(path);
  const auto size = static_cast<qint64>(bytes.size());
  if (file.open(QIODevice::WriteOnly) && file.write(bytes.data(), size) == size && file.commit()) return;
  throw Refusal(name_of(path) + " cannot be saved: " + file.errorString().toStdString() +
                ". The old file is as it was. Save under another name or make room on the disk.");
}

Project read_project(const QString& path) {
  const std::string text = read_whole(path);
  try {
    return project_from_json(text);
  } catch (const Refusal& reason) {
    throw Refusal(name_of(path) + ": " + reason.what());
  }
}

void write_project(const QString& path, const Project& project, const QByteArray& thumbnail_png) {
  write_whole(path, project_to_json(project, thumbnail_png));
}

}  // namespace cowlcast::projector
