#include "projector/workbench/document.h"

#include <QFileInfo>
#include <utility>

#include "drafting/refusal.h"
#include "projector/project/project_file.h"

namespace cowlcast::projector {

Document::Document(QObject* parent) : QObject(parent) {}
Document::~Document() = default;

void Document::change(const std::string& sentence, const std::function<void(Project&)>& edit,
                      const std::string& merge_key) {
  Project next = project();
  edit(next);
  history_.step(sentence, std::move(next), merge_key);
  touched();
}

void Document::note(const std::function<void(Project&)>& edit) {
  history_.note(edit);
  touched();
}

void Document::undo() {
  if (!can_undo()) return;
  history_.undo();
  touched();
}

void Document::redo() {
  if (!can_redo()) return;
  history_.redo();
  touched();
}

QString Document::title() const {
  if (!path_.isEmpty()) return QFileInfo(path_).completeBaseName();
  if (!project().name.empty()) return QString::fromStdString(project().name);
  return tr("New project");
}

void Document::start_new(Project project) {
  begin(std::move(project), {}, true);
}

void Document::open(const QString& path) {
  begin(read_project(path), path, true);
}

void Document::save() {
  if (path_.isEmpty())
    throw drafting::Refusal(tr("This project has no file yet. Save it under a name.").toStdString());
  save_as(path_);
}

void Document::save_as(const QString& path) {
  write_project(path, project());
  path_ = path;
  saved_ = true;
  emit state_changed();
}

void Document::begin(Project project, const QString& path, bool saved) {
  history_ = History(std::move(project));
  path_ = path;
  saved_ = saved;
  emit changed();
  emit state_changed();
}

void Document::touched() {
  const bool was_saved = std::exchange(saved_, false);
  emit changed();
  if (was_saved) emit state_changed();
}

}  // namespace cowlcast::projector
