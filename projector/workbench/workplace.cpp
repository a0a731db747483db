#include "projector/workbench/workplace.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QVBoxLayout>

#include "projector/language/said.h"
#include "projector/workbench/lengths.h"
#include "projector/workbench/look/theme.h"

namespace cowlcast::projector {

QString title_of(Place place) {
  switch (place) {
    case Place::table:
      return Workplace::tr("Table");
    case Place::pattern:
      return Workplace::tr("Pattern");
    case Place::cowl:
      return Workplace::tr("Cowl");
    case Place::cloth:
      return Workplace::tr("Cloth");
    case Place::cutting:
      return Workplace::tr("Cutting");
    case Place::sewing:
      return Workplace::tr("Sewing");
  }
  return {};
}

Icon icon_of(Place place) {
  switch (place) {
    case Place::table:
      return Icon::table;
    case Place::pattern:
      return Icon::pattern;
    case Place::cowl:
      return Icon::cowl;
    case Place::cloth:
      return Icon::cloth;
    case Place::cutting:
      return Icon::cutting;
    case Place::sewing:
      return Icon::sewing;
  }
  return Icon::missing;
}

Workplace::Workplace(Place place, Document& document, Settings& settings, CurrentGarment& garment)
    : place_(place),
      document_(document),
      settings_(settings),
      garment_(garment),
      lead_(new QLabel),
      body_(new QHBoxLayout) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(0);
  auto* head = new QVBoxLayout;
  head->setContentsMargins(grown(24), grown(12), grown(24), grown(14));
  head->setSpacing(2);
  auto* heading = new QLabel(title_of(place));
  heading->setFont(letters(TextSize::title, true));
  lead_->setWordWrap(true);
  head->addWidget(heading);
  head->addWidget(lead_);
  column->addLayout(head);
  body_->setContentsMargins(0, 0, 0, 0);
  body_->setSpacing(0);
  column->addLayout(body_, 1);
  setAccessibleName(title_of(place));
}

QWidget* Workplace::make_waiting(const QString& why) {
  auto* inside = new QWidget;
  inside->setFixedWidth(grown(560));
  auto* column = new QVBoxLayout(inside);
  column->setSpacing(grown(20));
  auto* words = new QLabel(why);
  words->setFont(letters(TextSize::large));
  words->setWordWrap(true);
  auto* button = make_button(tr("Choose a &pattern"), tr("To the place where the base front is chosen"));
  button->setProperty("primary", true);
  button->setFont(letters(TextSize::large, true));
  button->setFixedHeight(grown(60));
  connect(button, &QPushButton::clicked, this, [this] { emit wanted(Place::pattern); });
  column->addWidget(words);
  column->addWidget(button);
  return centred(inside);
}

void Workplace::let_edit(LengthBox& box, const std::function<void(Project&, double mm)>& edit) {
  const std::string name = box.accessibleName().toStdString();
  connect(&box, &LengthBox::edited, this, [this, name, edit](double mm) {
    document_.change(
        name, [&](Project& project) { edit(project, mm); }, "field " + name);
  });
  connect(&box, &LengthBox::editingFinished, this, [this] { document_.settle(); });
}

void Workplace::set_lead(const QString& sentence) {
  lead_->setText(sentence);
}

QString Workplace::length_words(double mm) const {
  return QString::fromStdString(length_in_words(mm, settings_.preferences().units));
}

QString Workplace::in_own_words(const std::string& sentence) const {
  return QString::fromStdString(lengths_in_own_units(said(sentence), settings_.preferences().units));
}

}  // namespace cowlcast::projector
