// Document: the project that the workbench has open, with its history and its file.
//
//   Document document;
//   document.change(tr("Drape of 50 cm").toStdString(), [](Project& p) { p.cowl.drape = 500; }, "drape");
//   connect(&document, &Document::changed, this, &Place::show_it);
//
// Every place of the workbench is made with a Document& and comes to the project by it alone, so that all
// can be undone and nothing is lost: within ten seconds of a change it is in a work copy on the disk.
#pragma once

#include <QObject>
#include <QString>
#include <QTimer>
#include <functional>
#include <memory>
#include <string>

#include "projector/project/history.h"
#include "projector/project/work_copy.h"

namespace cowlcast::projector {

/// Where and how soon work is kept.
struct Keeping {
  QString folder = work_folder();
  int after_ms = 2000;  ///< a change is handed over to be written so long after it, at most
};

class Document : public QObject {
  Q_OBJECT

 public:
  explicit Document(QObject* parent = nullptr) : Document(Keeping(), parent) {}
  explicit Document(Keeping keeping, QObject* parent = nullptr);
  /// Work that is not saved stays behind as a work copy.
  ~Document() override;

  const Project& project() const { return history_.now(); }

  /// One step that can be undone: `sentence` says it ("Lower the neckline"), `edit` does it to a copy of the
  /// project. Steps with the same non-empty key that follow one another are one, until `settle`.
  void change(const std::string& sentence, const std::function<void(Project&)>& edit,
              const std::string& merge_key = {});

  /// Ends a run of merged steps: the handle was let go.
  void settle() { history_.settle(); }

  /// What happened at the table, which undoing cannot take back: a stroke that is cut.
  void note(const std::function<void(Project&)>& edit);

  bool can_undo() const { return history_.can_undo(); }
  bool can_redo() const { return history_.can_redo(); }
  QString undo_sentence() const { return QString::fromStdString(history_.undo_sentence()); }
  QString redo_sentence() const { return QString::fromStdString(history_.redo_sentence()); }
  void undo();
  void redo();

  /// Where it is saved; empty: nowhere yet.
  const QString& path() const { return path_; }
  /// Its name for a window's title: of the file, or of the project, or "New project".
  QString title() const;
  /// True when all of it is in its file, or when it is new and untouched.
  bool saved() const { return saved_; }

  /// These throw drafting::Refusal with cause and cure; the document is then as it was. What was not saved
  /// before is given up: ask first.
  void start_new(Project project = {});
  void open(const QString& path);
  void save();
  void save_as(const QString& path);

  /// A new project, not saved yet, with all choices of this one and nothing cut.
  void begin_variant();

  /// Goes on with work that was left behind; its copy is removed once this document has one of its own.
  void recover(const FoundWork& found);

  /// Before the window closes for good: what is not saved is given up, work copy and all.
  void give_up();

 signals:
  void begun();                           ///< another project is there: what was said of the last one is over
  void changed();                         ///< the project, or what can be undone
  void state_changed();                   ///< path, title or saved
  void trouble(const QString& sentence);  ///< work cannot be kept; told once until it can again

 private:
  void begin(Project project, const QString& path, bool saved);
  void touched();
  void keep();
  void look_for_trouble();
  void tell(const std::string& reason);

  Keeping keeping_;
  History history_;
  QString path_;
  bool saved_ = true;
  QTimer to_keep_, to_look_;
  std::unique_ptr<WorkCopy> copy_;  // from the first change on
  std::unique_ptr<ProjectLock> lock_;
  std::string told_trouble_;
};

}  // namespace cowlcast::projector
