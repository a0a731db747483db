#include "projector/workbench/tour.h"

#include <QHBoxLayout>
#include <QPainter>
#include <algorithm>

#include "projector/workbench/controls.h"
#include "projector/workbench/look/theme.h"
#include "projector/workbench/workplace.h"

namespace cowlcast::projector {

TourTask tour_task(const Project& project, const Garment& garment) {
  if (!project.table.map)
    return project.table.photographs.empty() ? TourTask::photograph : TourTask::calibrate;
  if (!garment.bases.front) return TourTask::base;
  const bool any_cut = std::any_of(project.cutting.begin(), project.cutting.end(),
                                   [](const auto& record) { return record.second.cut > 0; });
  if (any_cut) return TourTask::end;
  return project.cowl.drape == drafting::CowlWishes().drape ? TourTask::drape : TourTask::cut;
}

Place place_of(TourTask task) {
  switch (task) {
    case TourTask::photograph:
    case TourTask::calibrate:
      return Place::table;
    case TourTask::base:
      return Place::pattern;
    case TourTask::drape:
      return Place::cowl;
    case TourTask::cut:
    case TourTask::end:
      break;
  }
  return Place::cutting;
}

QString words_of(TourTask task) {
  switch (task) {
    case TourTask::photograph:
      return TourBar::tr(
          "Light that is to be cut by must lie true on the mat. Printed sheets and a few photographs see to "
          "that. "
          "Here a simulated table is photographed in place of yours.");
    case TourTask::calibrate:
      return TourBar::tr(
          "From the photographs the program works out where every point of light lands, and says how far off "
          "it "
          "may be.");
    case TourTask::base:
      return TourBar::tr(
          "A cowl front is drafted from a plain front that fits. For now, take one in a standard size.");
    case TourTask::drape:
      return TourBar::tr(
          "The drape is the cowl's length from shoulder seam to shoulder seam. Drag it, and the front "
          "opens.");
    case TourTask::cut:
      return TourBar::tr(
          "Read the cautions, lay the piece, then cut the first stroke: a ring where to begin, arrows, and a "
          "hatched band that reminds the other hand to stay out. All of it is an aid to the eye and stops no "
          "blade.");
    case TourTask::end:
      return TourBar::tr(
          "The first stroke is cut by light; the space bar goes on, stroke by stroke, and what is cut is "
          "kept. At "
          "your own table all goes the same way, with your own photographs.");
  }
  return {};
}

QString offer_of(TourTask task) {
  switch (task) {
    case TourTask::photograph:
      return TourBar::tr("Photograph the simulated table");
    case TourTask::calibrate:
      return TourBar::tr("Calibrate it");
    case TourTask::base:
      return TourBar::tr("Take size 8");
    case TourTask::drape:
      return TourBar::tr("Open it to 54 cm");
    case TourTask::cut:
      return TourBar::tr("Go on at the table");
    case TourTask::end:
      break;
  }
  return {};
}

TourBar::TourBar(QWidget* parent)
    : QFrame(parent), count_(new QLabel), words_(new QLabel), offer_(new QPushButton) {
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(grown(20), grown(12), grown(20), grown(12));
  row->setSpacing(grown(16));
  count_->setFont(letters(TextSize::large, true));
  words_->setWordWrap(true);
  leave_ = make_button(tr("Leave the tour"), tr("The project stays as it is (Ctrl+Shift+T)"),
                       QKeySequence(QStringLiteral("Ctrl+Shift+T")));
  offer_->setProperty("primary", true);
  connect(offer_, &QPushButton::clicked, this, [this] { emit went_on(task_); });
  connect(leave_, &QPushButton::clicked, this, &TourBar::left);
  row->addWidget(count_);
  row->addWidget(words_, 1);
  row->addWidget(offer_);
  row->addWidget(leave_);
}

void TourBar::show_task(TourTask task, bool there, bool busy, const QString& result) {
  task_ = task;
  const int number = static_cast<int>(task) + 1, all = static_cast<int>(TourTask::end) + 1;
  count_->setText(tr("Tour, %1 of %2").arg(number).arg(all));
  const QString words = result.isEmpty() ? words_of(task) : result;
  words_->setText(words);
  words_->setAccessibleName(words);
  offer_->setText(there ? offer_of(task) : tr("On to: %1").arg(title_of(place_of(task))));
  offer_->setShortcut(QKeySequence(QStringLiteral("Ctrl+Shift+Return")));  // a new text takes it away
  describe(*offer_, offer_->text(),
           there ? tr("Does this step for you (Ctrl+Shift+Return)") : tr("Goes there (Ctrl+Shift+Return)"));
  offer_->setFixedWidth(offer_->sizeHint().width());  // else its words are cut until the next layout
  offer_->setVisible(task != TourTask::end);
  // While it is done the keyboard waits here, and not on the button beside it, which leaves the tour.
  if (busy && offer_->hasFocus()) setFocus();
  offer_->setEnabled(!busy);
  if (!busy && hasFocus()) offer_->setFocus();
  leave_->setText(task == TourTask::end ? tr("End the tour") : tr("Leave the tour"));
  leave_->setShortcut(QKeySequence(QStringLiteral("Ctrl+Shift+T")));
  describe(*leave_, leave_->text(), tr("The project stays as it is (Ctrl+Shift+T)"));
}

void TourBar::paintEvent(QPaintEvent*) {
  QPainter painter(this);
  painter.fillRect(rect(), theme().tint);
  painter.setPen(QPen(theme().accent, 2));
  painter.drawLine(rect().bottomLeft(), rect().bottomRight());
}

}  // namespace cowlcast::projector
