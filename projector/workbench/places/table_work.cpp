// What the table's place does: files, light on the projector, work beside the window.
#include <QDir>
#include <QFileDialog>
#include <QFileInfo>

#include "calibration/refusal.h"
#include "calibration/sheet/sheet.h"
#include "calibration/target/target.h"
#include "projector/frame/png.h"
#include "projector/language/said.h"
#include "projector/project/project_file.h"
#include "projector/table/lens_file.h"
#include "projector/workbench/places/simulation.h"
#include "projector/workbench/places/table_place.h"

namespace cowlcast::projector {

void TablePlace::save_sheets(const QString& file) {
  try {
    const auto paper =
        settings().preferences().letter_paper ? calibration::Paper::letter : calibration::Paper::a4;
    write_whole(file, calibration::sheets_pdf(paper, sheet_count_->value()));
    notice_->clear();
    saved_sheets_->setText(tr("Saved as %1. Print it at 100 %.").arg(QDir::toNativeSeparators(file)));
  } catch (const std::exception& reason) {
    refuse(QString::fromUtf8(reason.what()));
  }
}

void TablePlace::show_light(bool target) {
  const TableChoice& table = document().project().table;
  try {
    const QImage lights[] = {image_from(calibration::plain_picture(table.width, table.height)),
                             image_from(calibration::target_picture(table.width, table.height))};
    light_.show(lights[target ? 1 : 0], table);
    light_.key = [this, plain = lights[0], chequered = lights[1], shows = target](int key) mutable {
      if (key != Qt::Key_Space && key != Qt::Key_PageDown && key != Qt::Key_PageUp) return;
      shows = !shows;
      light_.show(shows ? chequered : plain, document().project().table);
    };
    notice_->clear();
  } catch (const std::exception& reason) {
    refuse(QString::fromUtf8(reason.what()));
  }
}

void TablePlace::save_light(const QString& folder) {
  const TableChoice& table = document().project().table;
  try {
    if (table.width == 0)
      throw calibration::Refusal(
          tr("It is not said which screen the projector is. Choose it in the list above.").toStdString());
    const QDir place(folder);
    write_whole(place.filePath(QStringLiteral("target.png")),
                png_bytes(calibration::target_picture(table.width, table.height)));
    write_whole(place.filePath(QStringLiteral("plain.png")),
                png_bytes(calibration::plain_picture(table.width, table.height)));
    notice_->clear();
  } catch (const std::exception& reason) {
    refuse(QString::fromUtf8(reason.what()));
  }
}

void TablePlace::pick_photographs() {
  add_photographs(QFileDialog::getOpenFileNames(this, tr("Photographs of the table"), {},
                                                tr("Photographs (*.jpg *.jpeg *.png *.JPG *.JPEG *.PNG)")));
}

void TablePlace::pick_folder() {
  const QString folder = watch_.folder().isEmpty() ? QFileDialog::getExistingDirectory(
                                                         this, tr("Folder that photographs arrive in"))
                                                   : QString();
  watch_.watch(folder);
  watched_->setText(folder.isEmpty()
                        ? QString()
                        : tr("Watching %1. Press again to end.").arg(QDir::toNativeSeparators(folder)));
}

void TablePlace::remove_photographs() {
  std::vector<std::string> left;
  const auto& all = document().project().table.photographs;
  for (int i = 0; i < list_->count(); ++i)
    if (!list_->item(i)->isSelected()) left.push_back(all.at(static_cast<size_t>(i)));
  if (left.size() == all.size()) return;
  document().change(tr("Leave photographs out").toStdString(),
                    [&](Project& project) { project.table.photographs = left; });
  if (left.empty()) picture_->show_photographs({});
}

void TablePlace::lay_out_simulated_table() {
  go_to_step(TableStep::photograph);
  work_.start<SimulatedPhotographs>(
      [this](const std::stop_token& stop) {
        return simulated_photographs(simulation_folder(), stop, [this](int done, int all) {
          work_.tell([this, done, all] {
            say_progress(tr("Photograph %1 of %2 of the simulated table").arg(done + 1).arg(all), done, all);
          });
        });
      },
      [this](const SimulatedPhotographs& made) {
        document().change(tr("Lay out the simulated table").toStdString(), [&](Project& project) {
          TableChoice& table = project.table;
          table.photographs = made.files;
          table.width = made.request.width;
          table.height = made.request.height;
          table.ruler_across = made.request.rulers->across;
          table.ruler_down = made.request.rulers->down;
          table.lamp_height = 0.0;
        });
        show_project();
      },
      [this](const QString& reason) { refuse(reason); });
  say_progress(tr("Laying out the simulated table"), 0, 0);
}

void TablePlace::calibrate() {
  const TableChoice& table = document().project().table;
  go_to_step(TableStep::calibrate);
  if (table.photographs.empty()) {
    notice_->say(tr("There are no photographs of the table yet. Take some first."), tr("To the photographs"),
                 [this] { go_to_step(TableStep::photograph); });
    return;
  }
  if (table.width == 0) {
    notice_->say(tr("It is not said which screen the projector is, so its pixels are not known. Choose it."),
                 tr("To the projector"), [this] { go_to_step(TableStep::lay); });
    return;
  }
  if ((table.ruler_across > 0.0) != (table.ruler_down > 0.0)) {
    notice_->say(tr("Only one of a sheet's two rulers is typed in, and the scale needs both. Measure the "
                    "other as well, or set this one to 0 too."),
                 tr("To the rulers"), [this] { go_to_step(TableStep::print); });
    return;
  }
  CalibrationJob job;
  job.files = table.photographs;
  job.request.width = table.width;
  job.request.height = table.height;
  if (table.ruler_across > 0.0 && table.ruler_down > 0.0)
    job.request.rulers = calibration::Rulers{table.ruler_across, table.ruler_down};
  if (table.lamp_height > 0.0) job.request.lamp_height = table.lamp_height;
  const bool simulated = is_simulated(table.photographs.front());
  if (!simulated) job.lens_memory = lens_memory_path("");
  work_.start<CalibrationOutcome>(
      [this, job](const std::stop_token& stop) {
        return calibrated(job, stop, [this](CalibrationStage stage) {
          work_.tell([this, stage] {
            say_progress(stage == CalibrationStage::reading ? tr("Reading the photographs")
                                                            : tr("Finding sheets and light in them"),
                         0, 0);
          });
        });
      },
      [this, simulated](const CalibrationOutcome& outcome) { take_in(outcome, simulated); },
      [this](const QString& reason) {
        notice_->say(reason, tr("To the photographs"), [this] { go_to_step(TableStep::photograph); });
      });
  say_progress(tr("Reading the photographs"), 0, 0);
}

void TablePlace::take_in(const CalibrationOutcome& outcome, bool simulated) {
  summary_of_ = outcome.report.map.made_at;
  summary_ = said(QString::fromStdString(outcome.report.summary).trimmed());
  caution_words_.clear();
  for (const std::string& caution : outcome.cautions)
    caution_words_ += tr("Caution: %1").arg(in_own_words(caution)) + QLatin1Char('\n');
  notice_->clear();
  document().change(tr("Calibrate the table").toStdString(), [&](Project& project) {
    project.table.map = outcome.report.map;
    project.table.simulated = simulated;
    project.table.checks.clear();  // they were of the calibration before, and so was the camera's place
    project.table.fixed_camera.reset();
  });
  show_map();
}

}  // namespace cowlcast::projector
