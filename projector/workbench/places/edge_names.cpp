#include "projector/workbench/places/edge_names.h"

#include <QVBoxLayout>
#include <algorithm>

#include "projector/workbench/places/scenes.h"

namespace cowlcast::projector {
namespace {

bool has_line(const std::map<std::string, std::string>& roles, const std::string& role) {
  return std::any_of(roles.begin(), roles.end(), [&](const auto& one) { return one.second == role; });
}

}  // namespace

EdgeNames::EdgeNames() {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(grown(5));
  which_ = new OneOf(tr("Which drawing"), {{tr("Fron&t"), tr("Name the edges of the front's drawing")},
                                           {tr("Ba&ck"), tr("Name the edges of the back's drawing")}});
  connect(which_, &OneOf::chosen, this, [this](int which) {
    set_front(which == 0);
    emit changed();
  });
  column->addWidget(which_);
  for (int i = 0; i < 6; ++i) {
    auto* button = make_button(QString(), QString());
    button->setCheckable(true);
    connect(button, &QPushButton::clicked, this, [this, i] {
      chosen_ = i;
      emit changed();
    });
    column->addWidget(button);
    buttons_.push_back(button);
  }
  set_front(true);
}

void EdgeNames::set_front(bool front) {
  front_ = front;
  chosen_ = 0;
  roles_ = {front ? "centre-front" : "centre-back", "neckline", "shoulder", "armhole", "side-seam", "hem"};
}

void EdgeNames::show_named(const std::map<std::string, std::string>& roles, bool both) {
  which_->show_chosen(front_ ? 0 : 1);
  which_->setVisible(both);
  for (size_t i = 0; i < buttons_.size(); ++i) {
    const QString words = role_in_words(roles_[i]);
    buttons_[i]->setText(QStringLiteral("&%1  ").arg(i + 1) + words);
    buttons_[i]->setIcon(icon(has_line(roles, roles_[i]) ? Icon::done : Icon::missing));
    buttons_[i]->setChecked(static_cast<int>(i) == chosen_);
    describe(*buttons_[i], words, tr("Press, then click the line of the drawing that is the %1").arg(words));
  }
}

void EdgeNames::go_on(const std::map<std::string, std::string>& roles) {
  for (int i = 1; i <= 6; ++i) {
    const int next = (chosen_ + i) % 6;
    if (has_line(roles, roles_[static_cast<size_t>(next)])) continue;
    chosen_ = next;
    return;
  }
}

}  // namespace cowlcast::projector
