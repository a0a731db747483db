#include "projector/workbench/places/check_work.h"

#include <QLocale>
#include <algorithm>
#include <cmath>

#include "calibration/refusal.h"
#include "projector/cutting/now.h"
#include "projector/workbench/look/theme.h"

namespace cowlcast::projector {
namespace {

constexpr double kMmPerInch = 25.4;
constexpr double kMostTape = 10'000.0;  // mm
constexpr double kReadTo = 0.5;         // mm: how well a tape is read, a standard deviation
constexpr double kSameMap = 0.005;      // mm between a distance drawn then and now

QString inches_to_a_32nd(double mm) {
  const long long parts = std::llround(mm / kMmPerInch * 32.0);
  long long above = parts % 32, below = 32;
  while (above > 0 && above % 2 == 0) {
    above /= 2;
    below /= 2;
  }
  QString words = QString::number(parts / 32);
  if (above > 0) words += QStringLiteral(" %1/%2").arg(above).arg(below);
  return words + QStringLiteral(" in");
}

/// "A to C", and of the second figure "A2 to C2".
QString pair_words(char from, char to, int number) {
  calibration::CheckFigure figure;
  figure.number = number;
  return CheckWork::tr("%1 to %2")
      .arg(QString::fromStdString(figure.label(from)), QString::fromStdString(figure.label(to)));
}

QString pair_words(const calibration::HandReading& reading) {
  return pair_words(reading.from, reading.to, reading.figure);
}

}  // namespace

QString tape_words(double mm, Units units) {
  return units == Units::inches ? inches_to_a_32nd(mm) : QStringLiteral("%1 cm").arg(0.1 * mm, 0, 'f', 2);
}

TapeBox::TapeBox(Settings& settings, double most) : LengthBox(settings, 0.0, most), settings_(settings) {
  show_mm(0.0);
}

QString TapeBox::textFromValue(double mm) const {
  return tape_words(mm, settings_.preferences().units);
}

CheckWork::CheckWork(Document& document, Settings& settings, bool quick)
    : document_(document), settings_(settings), quick_(quick) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(grown(7));
  const auto labelled = [&](const QString& label, const QString& tip, QWidget* widget) {
    auto* words = new QLabel(label);
    words->setBuddy(widget);
    words->setToolTip(tip);
    describe(*widget, label, tip);
    column->addWidget(words);
    column->addWidget(widget);
    return words;
  };
  if (!quick_) {
    grid_ =
        new OneOf(tr("A grid with it"),
                  {{tr("No &grid"), tr("The crosses, and a square with its diagonals")},
                   {tr("&With a grid"), tr("Lines every centimetre, or every inch, over the whole light")}});
    grid_->show_chosen(0);
    connect(grid_, &OneOf::chosen, this, [this](int which) {
      with_grid_ = which == 1;
      show_project();
    });
    column->addWidget(grid_);
  }
  show_ = make_button(quick_ ? tr("Li&ght two crosses") : tr("&Light the figure"),
                      tr("Full screen on the projector, on the bare mat. Escape there ends it"),
                      quick_ ? QKeySequence(QStringLiteral("Ctrl+K")) : QKeySequence());
  connect(show_, &QPushButton::clicked, this, &CheckWork::show_figure);
  column->addWidget(show_);
  distances_ = new QComboBox;
  for (const auto& [from, to] : distances_to_measure(quick_)) distances_->addItem(pair_words(from, to, 1));
  if (quick_)
    distances_->hide();
  else
    labelled(tr("Meas&ured from"), tr("From the middle of one cross to the middle of the other"), distances_);
  if (quick_) distances_->setParent(this);
  connect(distances_, &QComboBox::activated, this, [this] { tape_->show_mm(0.0); });
  tape_ = new TapeBox(settings, kMostTape);
  tape_label_ =
      labelled(quick_ ? tr("%1, by tape (&X)").arg(distances_->itemText(0)) : tr("The tape rea&ds"),
               tr("Laid straight on the bare mat, read to half a millimetre or a 32nd of an inch"), tape_);
  measure_ = make_button(tr("&Measure on the simulated table"),
                         tr("Lays a tape there, between the two crosses of light"),
                         quick_ ? QKeySequence(QStringLiteral("Ctrl+E")) : QKeySequence());
  connect(measure_, &QPushButton::clicked, this, &CheckWork::measure_simulated);
  column->addWidget(measure_);
  judge_ = make_button(tr("&Judge it"), tr("Compares it with what the map says and how sure that is"),
                       quick_ ? QKeySequence(QStringLiteral("Ctrl+J")) : QKeySequence());
  connect(judge_, &QPushButton::clicked, this, [this] { judge(tape_->mm()); });
  column->addWidget(judge_);
  verdicts_ = new QLabel;
  verdicts_->setWordWrap(true);
  verdicts_->setTextInteractionFlags(Qt::TextSelectableByMouse);
  column->addWidget(verdicts_);
  if (quick_)  // their keys are others there
    for (QPushButton* button : {measure_, judge_}) {
      const QKeySequence key = button->shortcut();
      button->setText(button->text().remove(QLatin1Char('&')));
      button->setShortcut(key);
    }
  if (!quick_) {
    refine_ =
        make_button(tr("Mend the s&cale by the tape"),
                    tr("Where the rulers were not measured: all distances are stretched to what the tape "
                       "says, and the calibration knows its scale better. Can be undone"));
    connect(refine_, &QPushButton::clicked, this, &CheckWork::refine_scale);
    column->addWidget(refine_);
  }
}

const calibration::TableMap* CheckWork::map() const {
  const auto& map = document_.project().table.map;
  return map ? &*map : nullptr;
}

CheckGrid CheckWork::grid() const {
  if (!with_grid_) return CheckGrid::none;
  return settings_.preferences().units == Units::inches ? CheckGrid::inches : CheckGrid::centimetres;
}

QImage CheckWork::picture() const {
  return check_light(*map(), check_light_figure(*map(), grid()), {quick_, grid()});
}

void CheckWork::show_project() {
  const TableChoice& table = document_.project().table;
  show_->setEnabled(map() != nullptr && !table.simulated);
  judge_->setEnabled(map() != nullptr);
  measure_->setVisible(table.simulated);
  if (!lit_map_.empty() && lit_map_ != which_map()) {
    beam_.off();  // its crosses lie where the map does not say any more
    lit_map_.clear();
  }
  name_crosses();
  calibration::CheckFigure figure;
  if (refine_ != nullptr) refine_->setEnabled(!readings_of_this_map(figure).empty());
  QStringList lines;
  const size_t most = quick_ ? 1 : 6;
  for (size_t i = table.checks.size() - std::min(most, table.checks.size()); i < table.checks.size(); ++i)
    lines << verdict(table.checks[i].checked);
  if (const QString mended = mended_words(); !mended.isEmpty()) lines << mended;
  verdicts_->setText(lines.join(QLatin1Char('\n')));
  verdicts_->setMinimumHeight(std::max(0, verdicts_->heightForWidth(verdicts_->width())));
  verdicts_->setVisible(!lines.isEmpty());
}

void CheckWork::show_figure() {
  try {
    beam_.show(picture(), document_.project().table);
    lit_map_ = which_map();
  } catch (const std::exception& reason) {
    emit refused(QString::fromUtf8(reason.what()));
  }
}

void CheckWork::choose_distance(int which) {
  distances_->setCurrentIndex(which);
}

std::string CheckWork::which_map() const {
  return map() == nullptr ? std::string() : map()->made_at + '/' + std::to_string(map()->revision);
}

/// As they are called in the light.
void CheckWork::name_crosses() {
  const int number = map() == nullptr ? 1 : map()->revision + 1;
  const auto pairs = distances_to_measure(quick_);
  for (size_t i = 0; i < pairs.size(); ++i)
    distances_->setItemText(static_cast<int>(i), pair_words(pairs[i].first, pairs[i].second, number));
  if (quick_) tape_label_->setText(tr("%1, by tape (&X)").arg(distances_->itemText(0)));
}

bool CheckWork::of_this_map(const calibration::CheckedReading& checked) const {
  return map() != nullptr && checked.reading.figure == map()->revision + 1;
}

std::vector<calibration::HandReading> CheckWork::readings_of_this_map(
    calibration::CheckFigure& figure) const {
  std::vector<calibration::HandReading> readings;
  const auto& checks = document_.project().table.checks;
  if (checks.empty() || !of_this_map(checks.back().checked)) return readings;
  figure = figure_of(checks.back().checked);
  for (const KeptCheck& kept : checks)
    if (mends(kept.checked, figure)) readings.push_back(kept.checked.reading);
  return readings;
}

bool CheckWork::mends(const calibration::CheckedReading& checked,
                      const calibration::CheckFigure& figure) const {
  if (!of_this_map(checked) || checked.used) return false;
  const double drawn = (figure.at(checked.reading.from) - figure.at(checked.reading.to)).norm();
  return std::abs(drawn - checked.drawn) < kSameMap;
}

/// The figure whose distance the reading is of: with inches its sides are others.
calibration::CheckFigure CheckWork::figure_of(const calibration::CheckedReading& checked) const {
  for (const CheckGrid grid : {CheckGrid::none, CheckGrid::inches}) {
    const calibration::CheckFigure figure = check_light_figure(*map(), grid);
    const double drawn = (figure.at(checked.reading.from) - figure.at(checked.reading.to)).norm();
    if (std::abs(drawn - checked.drawn) < kSameMap) return figure;
  }
  return check_light_figure(*map(), grid());
}

QString CheckWork::verdict(const calibration::CheckedReading& checked) const {
  const Units units = settings_.preferences().units;
  const auto small = [units](double mm) {
    return units == Units::inches ? QStringLiteral("%1 in").arg(QLocale().toString(mm / kMmPerInch, 'f', 3))
                                  : QStringLiteral("%1 mm").arg(QLocale().toString(mm, 'f', 1));
  };
  const QString off = small(std::abs(checked.reading.mm - checked.drawn));
  const QString words =
      checked.agrees()
          ? tr("%1: drawn %2, measured %3. It agrees: off by %4, within the %5 that tape and map leave open.")
          : tr("%1: drawn %2, measured %3. It does not agree: off by %4, and tape and map leave open %5.");
  const QString all = words.arg(pair_words(checked.reading), tape_words(checked.drawn, units),
                                tape_words(checked.reading.mm, units), off, small(checked.allowed));
  return of_this_map(checked) ? all : tr("Before the table was mended: %1").arg(all);
}

/// That the tape mended the scale, and what is to be done now.
QString CheckWork::mended_words() const {
  if (map() == nullptr || map()->scale.source.find("tape") == std::string::npos) return {};
  const QString within = QLocale().toString(196.0 * map()->scale.relative_sigma, 'f', 3);
  QString words = mended_map_ == which_map()
                      ? tr("The scale was mended by %1 %. It is known within %2 % now.")
                            .arg(QLocale().toString(100.0 * (mended_by_ - 1.0), 'f', 3), within)
                      : tr("The scale was mended by a tape. It is known within %1 % now.").arg(within);
  const auto& checks = document_.project().table.checks;
  if (checks.empty() || !of_this_map(checks.back().checked))
    words += QLatin1Char(' ') + tr("Light the figure anew and measure %1 once more: all light lies "
                                   "otherwise now, and readings of before mend nothing any more.")
                                    .arg(distances_->itemText(0));
  return words;
}

void CheckWork::judge(double mm) {
  if (map() == nullptr) return;
  if (mm <= 0.0) {
    emit refused(tr("It is not typed in yet what the tape reads. Measure, and type it into the field."));
    return;
  }
  try {
    const auto [from, to] = distances_to_measure(quick_).at(static_cast<size_t>(distances_->currentIndex()));
    const auto checked = calibration::judged(*map(), check_light_figure(*map(), grid()),
                                             {{from, to, mm, kReadTo, map()->revision + 1}})
                             .front();
    document_.change(tr("Check %1 by hand").arg(pair_words(checked.reading)).toStdString(),
                     [&](Project& project) {
                       project.table.checks.push_back({present_time(), checked});
                     });
    tape_->show_mm(0.0);
    show_project();
    if (checked.agrees())
      emit agreed();
    else
      emit disagrees(
          tr("The light does not lie where the calibration says: from %1 the tape reads otherwise. "
             "Measure again; if it stays so, calibrate again before cutting. Where only the size is in "
             "doubt, because the rulers were not measured, the tape can mend it.")
              .arg(pair_words(checked.reading)));
  } catch (const std::exception& reason) {
    emit refused(QString::fromUtf8(reason.what()));
  }
}

void CheckWork::refine_scale() {
  try {
    calibration::CheckFigure figure;
    const auto readings = readings_of_this_map(figure);
    if (readings.empty()) return;
    calibration::refuse_used(readings_of(document_.project().table), readings);
    const calibration::RefinedScale refined = calibration::refine_scale(*map(), figure, readings);
    mended_by_ = refined.factor;
    mended_map_ = refined.map.made_at + '/' + std::to_string(refined.map.revision);
    document_.change(tr("Mend the scale by the tape").toStdString(), [&](Project& project) {
      for (KeptCheck& kept : project.table.checks)
        if (mends(kept.checked, figure)) kept.checked.used = true;
      project.table.map = refined.map;
      project.table.fixed_camera.reset();  // its millimetres were the old ones
    });
    show_project();
    emit agreed();
  } catch (const std::exception& reason) {
    emit refused(QString::fromUtf8(reason.what()));
  }
}

void CheckWork::measure_simulated() {
  if (map() == nullptr) return;
  const calibration::CheckFigure figure = check_light_figure(*map(), grid());
  const auto [from, to] = distances_to_measure(quick_).at(static_cast<size_t>(distances_->currentIndex()));
  tape_->show_mm(std::round(2.0 * tape_on_simulated_table(*map(), figure.at(from), figure.at(to))) / 2.0);
}

}  // namespace cowlcast::projector
