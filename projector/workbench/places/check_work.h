// CheckWork: the calibration checked by hand: crosses of light, and what a tape says between them.
//
//   auto* check = new CheckWork(document, settings, false);
//   connect(check, &CheckWork::disagrees, this, [](const QString& words) { ... });
//
// Readings are judged against what tape and map leave open together and kept with the table in the project,
// one undoable step each. A reading is of the map whose light it was laid on: once the map is mended, light
// of before is put out, and readings of it mend nothing any more. The quick one has two crosses and no more
// words than it needs.
#pragma once

#include <QComboBox>

#include "projector/table/check_light.h"
#include "projector/workbench/controls.h"
#include "projector/workbench/document.h"
#include "projector/workbench/places/beam.h"

namespace cowlcast::projector {

/// "120.35 cm", "47 13/32 in".
QString tape_words(double mm, Units units);

/// A length read from a tape: to a tenth of a millimetre, or a 32nd of an inch.
class TapeBox : public LengthBox {
  Q_OBJECT

 public:
  TapeBox(Settings& settings, double most);

 protected:
  QString textFromValue(double mm) const override;

 private:
  Settings& settings_;
};

class CheckWork : public QWidget {
  Q_OBJECT

 public:
  CheckWork(Document& document, Settings& settings, bool quick);

  void show_project();
  /// Full screen on the projector, or on the simulated table.
  void show_figure();
  /// What the tape reads between the crosses that are chosen.
  void judge(double mm);
  void refine_scale();
  /// What the projector shows.
  QImage picture() const;
  /// Verdicts, the newest last.
  QString words() const { return verdicts_->text(); }
  void choose_distance(int which);

 signals:
  void refused(const QString& reason);
  /// A reading lies beyond what tape and map leave open.
  void disagrees(const QString& words);
  void agreed();

 private:
  const calibration::TableMap* map() const;
  CheckGrid grid() const;
  calibration::CheckFigure figure_of(const calibration::CheckedReading& checked) const;
  bool of_this_map(const calibration::CheckedReading& checked) const;
  /// Those that were laid on the figure of the last one, which `figure` becomes.
  std::vector<calibration::HandReading> readings_of_this_map(calibration::CheckFigure& figure) const;
  /// Whether the scale may be mended by it: laid on that figure of this map, and not used yet.
  bool mends(const calibration::CheckedReading& checked, const calibration::CheckFigure& figure) const;
  std::string which_map() const;
  void name_crosses();
  QString mended_words() const;
  QString verdict(const calibration::CheckedReading& checked) const;
  void measure_simulated();

  Document& document_;
  Settings& settings_;
  bool quick_, with_grid_ = false;
  Beam beam_;
  OneOf* grid_ = nullptr;
  QComboBox* distances_ = nullptr;
  TapeBox* tape_ = nullptr;
  QPushButton *show_ = nullptr, *judge_ = nullptr, *measure_ = nullptr, *refine_ = nullptr;
  QLabel *verdicts_ = nullptr, *tape_label_ = nullptr;
  std::string lit_map_, mended_map_;  ///< whose figure is lit, and which one `mended_by_` led to
  double mended_by_ = 1.0;
};

}  // namespace cowlcast::projector
