#include "projector/workbench/places/sewing_place.h"

#include <QFileDialog>
#include <QHBoxLayout>
#include <algorithm>

#include "drafting/export/pieces_pdf.h"
#include "drafting/refusal.h"
#include "drafting/teaching/steps.h"
#include "projector/language/said.h"
#include "projector/project/project_file.h"
#include "projector/project/sewing_order.h"
#include "projector/workbench/places/scenes.h"

namespace cowlcast::projector {
namespace {

constexpr int last_step = static_cast<int>(drafting::step_count) - 1;
constexpr int opening_step = static_cast<int>(drafting::opening_step_number);
constexpr int open = 100;           // of the slider
constexpr int ms_between = 40;      // while it plays
constexpr int playing_time = 4000;  // ms, as the lesson on the table takes

}  // namespace

SewingPlace::SewingPlace(Document& document, Settings& settings, CurrentGarment& garment)
    : Workplace(Place::sewing, document, settings, garment),
      canvas_(new Canvas(settings)),
      middle_(new QStackedWidget),
      step_(opening_step) {
  set_lead(tr("What is sewn after what, which seams meet, what else is cut, and how the front was drafted."));
  middle_->addWidget(
      make_waiting(tr("Seams and steps are shown here, once there is a base front to draft from.")));
  middle_->addWidget(side_by_side(canvas_, make_panel()));
  body()->addWidget(middle_, 1);
  describe(*canvas_, tr("Drawing of the step"), tr("One step of the draft, true to scale"));
  timer_.setInterval(ms_between);
  connect(&timer_, &QTimer::timeout, this, [this] {
    if (opening_->value() >= open) play(false);
    opening_->setValue(opening_->value() + open * ms_between / playing_time);
  });
}

QWidget* SewingPlace::make_panel() {
  auto* panel = new Panel;
  refusal_ = new NoteBox;
  panel->add(refusal_);
  add_lesson(*panel);
  panel->add_gap();
  panel->add_heading(tr("In this order"));
  order_ = panel->add_words({});
  panel->add_gap();
  panel->add_heading(tr("Seams that meet"));
  seams_ = panel->add_words({});
  panel->add_gap();
  panel->add_heading(tr("Also to cut"));
  extras_ = panel->add_words({});
  panel->add_gap();
  handout_ = make_button(tr("Save the han&dout …"), tr("A PDF of the steps, a page each, with their rules"));
  record_ = make_button(tr("Save the &record …"), tr("A PDF page with every number of the draft"));
  connect(handout_, &QPushButton::clicked, this, [this] {
    save_pdf(tr("Save the handout"), tr("handout.pdf"),
             [this] { return drafting::steps_to_pdf(*garment().now().cowl); });
  });
  connect(record_, &QPushButton::clicked, this, [this] {
    save_pdf(tr("Save the record"), tr("record.pdf"),
             [this] { return drafting::record_to_pdf(*garment().now().top); });
  });
  panel->add(handout_);
  panel->add(record_);
  panel->end();
  return panel;
}

void SewingPlace::add_lesson(Panel& panel) {
  step_title_ = panel.add_heading({});
  rule_ = panel.add_words({});
  auto* row = new QWidget;
  auto* line = new QHBoxLayout(row);
  line->setContentsMargins(0, 0, 0, 0);
  back_ = make_button(tr("Step &back"), tr("The step before"));
  next_ = make_button(tr("&Next step"), tr("The step after"));
  for (QPushButton* button : {back_, next_}) {
    button->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed);
    line->addWidget(button, 1);
  }
  panel.add(row);
  connect(back_, &QPushButton::clicked, this, [this] { go_to_step(step_ - 1); });
  connect(next_, &QPushButton::clicked, this, [this] { go_to_step(step_ + 1); });
  opening_ = new QSlider(Qt::Horizontal);
  opening_->setRange(0, open);
  opening_->setValue(open);
  opening_->setPageStep(10);
  panel.add_labelled(tr("&Opening"), tr("From closed, on the left, to open as drafted"), opening_);
  connect(opening_, &QSlider::valueChanged, this, [this] { show_step(); });
  play_ = make_button(tr("&Play the opening"), tr("The slash lines open from closed to as drafted"));
  play_->setCheckable(true);
  connect(play_, &QPushButton::clicked, this, &SewingPlace::play);
  panel.add(play_);
}

void SewingPlace::go_to_step(int step) {
  play(false);
  step_ = std::clamp(step, 0, last_step);
  show_step();
  canvas_->show_all();
}

/// Who wants less motion sees the end at once.
void SewingPlace::play(bool on) {
  const bool moving = on && !settings().preferences().less_motion;
  if (on) {
    step_ = opening_step;
    opening_->setValue(moving ? 0 : open);
    show_step();
  }
  moving ? timer_.start() : timer_.stop();
  play_->setChecked(moving);
}

void SewingPlace::hideEvent(QHideEvent*) {
  play(false);
}

void SewingPlace::show_step() {
  const auto& draft = garment().last_cowl();
  if (!draft) return;
  const drafting::Step step = drafting::teaching_step(*draft, static_cast<size_t>(step_),
                                                      opening_->value() / static_cast<double>(open));
  step_title_->setText(tr("Step %1 of %2: %3")
                           .arg(step_ + 1)
                           .arg(last_step + 1)
                           .arg(said(QString::fromStdString(step.title))));
  step_title_->setWordWrap(true);
  rule_->setText(in_own_words(step.rule));
  back_->setEnabled(step_ > 0);
  next_->setEnabled(step_ < last_step);
  opening_->setEnabled(step_ == opening_step);
  Scene scene = step_scene(step);
  // All steps in one place, so that a piece is seen to move.
  scene.lines.push_back({.points = drafting::reach_of_steps(*draft), .closed = true, .colour = {}});
  canvas_->show_scene(std::move(scene));
}

void SewingPlace::show_order() {
  const Garment& now = garment().now();
  if (!now.top) {
    order_->setText(tr("The order of sewing follows from the pieces, once there is a back, too."));
    return;
  }
  QString rows;
  for (const std::string& step : sewing_order(*now.top))
    rows += QStringLiteral("<li>") + QString::fromStdString(step).toHtmlEscaped() + QStringLiteral("</li>");
  order_->setText(QStringLiteral("<ol style='margin-left: 0px; -qt-list-indent: 1'>") + rows +
                  QStringLiteral("</ol>"));
}

void SewingPlace::show_seams() {
  const Garment& now = garment().now();
  if (!now.top) {
    seams_->setText(tr("Seams are laid along each other once there is a back, too."));
    return;
  }
  QString rows;
  for (const drafting::Walk& walk : now.top->walks) {
    const bool good = drafting::walks(walk);
    rows += QStringLiteral("<p>%1 <b>%2</b>: %3</p>")
                .arg(good ? QStringLiteral("✓") : QStringLiteral("⚠"),
                     said(QString::fromStdString(walk.name)).toHtmlEscaped(),
                     good ? tr("%1 on both").arg(length_words(walk.first_length))
                          : tr("%1 and %2: they do not meet")
                                .arg(length_words(walk.first_length), length_words(walk.second_length)));
  }
  seams_->setText(rows);
}

void SewingPlace::show_extras() {
  const Garment& now = garment().now();
  if (!now.top) {
    extras_->setText(tr("Elastic and bands are reckoned once there is a back, too."));
    return;
  }
  const drafting::NeckElastic& elastic = now.top->elastic;
  QString rows =
      QStringLiteral("<p>") +
      tr("Clear elastic for the back neck, %1 wide: <b>%2</b> with both tails, set %3 from the edge.")
          .arg(length_words(elastic.width), length_words(elastic.elastic_length),
               length_words(elastic.from_edge)) +
      QStringLiteral("</p>");
  for (const drafting::FinishedEdge& edge : now.top->finishes)
    rows += QStringLiteral("<p>") +
            in_own_words(drafting::finish_in_words(edge)).simplified().toHtmlEscaped() +
            QStringLiteral("</p>");
  extras_->setText(rows);
}

void SewingPlace::save_pdf(const QString& title, const QString& name,
                           const std::function<std::string()>& make) {
  QString file = QFileDialog::getSaveFileName(this, title, name, tr("PDF pages (*.pdf)"));
  if (file.isEmpty()) return;
  if (!file.endsWith(QLatin1String(".pdf"), Qt::CaseInsensitive)) file += QStringLiteral(".pdf");
  try {
    write_whole(file, make());
  } catch (const drafting::Refusal& reason) {
    refusal_->say(QString::fromUtf8(reason.what()));
  }
}

void SewingPlace::show_project() {
  const Garment& now = garment().now();
  const bool waiting = !garment().last_cowl();
  middle_->setCurrentIndex(waiting ? 0 : 1);
  if (waiting) return;
  refusal_->clear();
  if (!now.refusal.empty())
    refusal_->say(in_own_words(now.refusal), tr("To the cowl"), [this] { emit wanted(Place::cowl); });
  handout_->setEnabled(now.cowl.has_value());
  record_->setEnabled(now.top.has_value());
  show_order();
  show_seams();
  show_extras();
  show_step();
}

}  // namespace cowlcast::projector
