// History: every change to a project, to be undone and done again.
//
//   History history(project);
//   history.step("Lower the neckline", changed, "neckline");   // changed: a whole Project
//   history.undo();
//
// A step is a whole project and the sentence that says what was done, so undoing
// cannot miss a part. Steps that follow one another with the same key are one
// step, so that a drag is undone as a whole; `settle` ends such a run. What
// happened at the table (a stroke that is cut) is no step: `note` writes it into
// every step, since undoing cannot make cloth whole again.
#pragma once

#include <deque>
#include <functional>
#include <string>

#include "projector/project/project.h"

namespace cowlcast::projector {

class History {
 public:
  explicit History(Project start = {}, size_t most_steps = 200);

  const Project& now() const { return states_[place_].project; }

  /// Goes on to `next`; what was undone before is forgotten, and so are the oldest steps beyond the most
  /// that are kept. An empty key never merges.
  void step(std::string sentence, Project next, const std::string& merge_key = {});

  /// The next step is one of its own.
  void settle() { open_key_.clear(); }

  /// Edits the project at every step.
  void note(const std::function<void(Project&)>& edit);

  bool can_undo() const { return place_ > 0; }
  bool can_redo() const { return place_ + 1 < states_.size(); }

  /// Of the step that `undo` takes back, that `redo` does again; empty when there is none.
  std::string undo_sentence() const;
  std::string redo_sentence() const;

  /// Do nothing when there is nothing to undo or redo.
  void undo();
  void redo();

 private:
  struct State {
    Project project;
    std::string sentence;  // of the step that led here
  };
  std::deque<State> states_;  // never empty
  size_t place_ = 0;
  size_t most_steps_;
  std::string open_key_;  // of the last step, while it may still grow
};

}  // namespace cowlcast::projector
