#include "projector/project/history.h"

#include <utility>

namespace cowlcast::projector {

History::History(Project start, size_t most_steps) : most_steps_(most_steps) {
  states_.push_back({std::move(start), {}});
}

void History::step(std::string sentence, Project next, const std::string& merge_key) {
  const bool grows = !merge_key.empty() && merge_key == open_key_ && place_ > 0 && !can_redo();
  if (grows) {
    states_[place_].project = std::move(next);
    return;
  }
  states_.resize(place_ + 1);
  states_.push_back({std::move(next), std::move(sentence)});
  ++place_;
  if (place_ > most_steps_) {
    states_.pop_front();
    --place_;
  }
  open_key_ = merge_key;
}

void History::note(const std::function<void(Project&)>& edit) {
  for (State& state : states_) edit(state.project);
}

std::string History::undo_sentence() const {
  return can_undo() ? states_[place_].sentence : std::string();
}

std::string History::redo_sentence() const {
  return can_redo() ? states_[place_ + 1].sentence : std::string();
}

void History::undo() {
  settle();
  if (can_undo()) --place_;
}

void History::redo() {
  settle();
  if (can_redo()) ++place_;
}

}  // namespace cowlcast::projector
