// EdgeNames: the six edges of a base as buttons, to say which line of a drawing each is.
//
// The person chooses an edge and clicks its line; after each the next edge without a
// line is chosen by itself.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "projector/workbench/controls.h"

namespace cowlcast::projector {

class EdgeNames : public QWidget {
  Q_OBJECT

 public:
  EdgeNames();

  bool front() const { return front_; }
  void set_front(bool front);
  /// The edge that the next click names.
  const std::string& role() const { return roles_.at(static_cast<size_t>(chosen_)); }

  /// Shows which edges have a line; `both`: front and back are there to choose from.
  void show_named(const std::map<std::string, std::string>& roles, bool both);
  /// To the next edge without a line.
  void go_on(const std::map<std::string, std::string>& roles);

 signals:
  void changed();

 private:
  OneOf* which_;
  std::vector<QPushButton*> buttons_;
  std::vector<std::string> roles_;
  bool front_ = true;
  int chosen_ = 0;
};

}  // namespace cowlcast::projector
