#include "projector/workbench/document.h"

#include <QFileInfo>
#include <utility>

#include "drafting/refusal.h"
#include "projector/project/project_file.h"
#include "projector/project/thumbnail.h"

namespace cowlcast::projector {
namespace {

constexpr int kThumbnail = 192;   // pixels
constexpr int kLookAfter = 1500;  // ms after handing work over: has it been written?

bool same_file(const QString& a, const QString& b) {
  return !a.isEmpty() && QFileInfo(a) == QFileInfo(b);
}

}  // namespace

Document::Document(Keeping keeping, QObject* parent) : QObject(parent), keeping_(std::move(keeping)) {
  to_keep_.setSingleShot(true);
  to_keep_.setInterval(keeping_.after_ms);
  connect(&to_keep_, &QTimer::timeout, this, &Document::keep);
  to_look_.setSingleShot(true);
  to_look_.setInterval(kLookAfter);
  connect(&to_look_, &QTimer::timeout, this, &Document::look_for_trouble);
}

Document::~Document() {
  if (to_keep_.isActive()) keep();
}

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
  give_up();
  lock_.reset();
  begin(std::move(project), {}, true);
}

void Document::open(const QString& path) {
  auto lock = same_file(path, path_) ? std::move(lock_) : std::make_unique<ProjectLock>(path);
  Project opened;
  try {
    opened = read_project(path);
  } catch (...) {
    if (same_file(path, path_)) lock_ = std::move(lock);
    throw;
  }
  give_up();
  lock_ = std::move(lock);
  begin(std::move(opened), path, true);
}

void Document::save() {
  if (path_.isEmpty())
    throw drafting::Refusal(tr("This project has no file yet. Save it under a name.").toStdString());
  save_as(path_);
}

void Document::save_as(const QString& path) {
  std::unique_ptr<ProjectLock> lock;
  if (!same_file(path, path_)) lock = std::make_unique<ProjectLock>(path);
  write_project(path, project(), thumbnail_png(garment_of(project()), kThumbnail));
  if (lock) lock_ = std::move(lock);
  path_ = path;
  saved_ = true;
  give_up();
  emit state_changed();
}

void Document::begin_variant() {
  Project variant = variant_of(project());
  variant.name = tr("%1, a variant").arg(title()).toStdString();
  give_up();
  lock_.reset();
  begin(std::move(variant), {}, false);
  to_keep_.start();
}

void Document::recover(const FoundWork& found) {
  if (!found.project) throw drafting::Refusal(found.refusal);
  std::unique_ptr<ProjectLock> lock;
  if (!found.path.isEmpty())
    lock = same_file(found.path, path_) ? std::move(lock_) : std::make_unique<ProjectLock>(found.path);
  give_up();
  lock_ = std::move(lock);
  begin(*found.project, found.path, false);
  keep();
  copy_->wait();
  if (!copy_->trouble().empty()) return;  // the old copy is better than none
  forget(found);
}

void Document::give_up() {
  to_keep_.stop();
  if (copy_) copy_->drop();
}

void Document::begin(Project project, const QString& path, bool saved) {
  history_ = History(std::move(project));
  path_ = path;
  saved_ = saved;
  emit begun();
  emit changed();
  emit state_changed();
}

void Document::touched() {
  const bool was_saved = std::exchange(saved_, false);
  if (!to_keep_.isActive()) to_keep_.start();
  emit changed();
  if (was_saved) emit state_changed();
}

void Document::keep() {
  to_keep_.stop();
  try {
    if (!copy_) copy_ = std::make_unique<WorkCopy>(keeping_.folder);
    copy_->keep(project(), path_);
    to_look_.start();
  } catch (const drafting::Refusal& reason) {
    tell(reason.what());
    to_keep_.start();
  }
}

void Document::look_for_trouble() {
  if (!copy_) return;
  tell(copy_->trouble());
  if (!told_trouble_.empty()) to_keep_.start();  // there may be room again
}

void Document::tell(const std::string& reason) {
  if (reason == told_trouble_) return;
  told_trouble_ = reason;
  if (!reason.empty()) emit trouble(QString::fromStdString(reason));
}

}  // namespace cowlcast::projector
