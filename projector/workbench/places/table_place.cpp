#include "projector/workbench/places/table_place.h"

#include <QDateTime>
#include <QDragEnterEvent>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QImageReader>
#include <QLocale>
#include <QMimeData>
#include <algorithm>

#include "projector/table/error_picture.h"
#include "projector/table/slant_trouble.h"
#include "projector/workbench/look/theme.h"
#include "projector/workbench/places/simulation.h"

namespace cowlcast::projector {
namespace {

constexpr int kThumbnail = 420;  // pixels

QStringList dropped_photographs(const QMimeData& data) {
  QStringList files;
  for (const QUrl& url : data.urls())
    if (url.isLocalFile()) files << url.toLocalFile();
  return files;
}

PhotographSeen seen(const std::string& file) {
  QImageReader reader(QString::fromStdString(file));
  reader.setAutoTransform(true);
  if (const QSize size = reader.size(); size.isValid())
    reader.setScaledSize(size.scaled(kThumbnail, kThumbnail, Qt::KeepAspectRatio));
  return {reader.read(), QFileInfo(QString::fromStdString(file)).fileName()};
}

/// The stated error in the middle of the light, and the most of it anywhere in the light, mm.
std::pair<double, double> errors_of(const calibration::TableMap& map, double cloth) {
  constexpr int across = 17, down = 11;
  double most = 0.0;
  for (int i = 0; i < across; ++i)
    for (int j = 0; j < down; ++j) {
      const Point pixel(i * (map.width - 1.0) / (across - 1), j * (map.height - 1.0) / (down - 1));
      most = std::max(most, map.error_at(map.mat_from_projector(pixel, cloth), cloth));
    }
  const Point middle(0.5 * (map.width - 1), 0.5 * (map.height - 1));
  return {map.error_at(map.mat_from_projector(middle, cloth), cloth), most};
}

}  // namespace

TablePlace::TablePlace(Document& document, Settings& settings, CurrentGarment& garment)
    : Workplace(Place::table, document, settings, garment) {
  setAcceptDrops(true);
  panels_ = new QStackedWidget;
  QWidget* middle = make_middle();
  make_camera_panel();
  make_stay_panel();
  for (Panel* panel :
       std::initializer_list<Panel*>{make_print_panel(), make_lay_panel(), make_photograph_panel(),
                                     make_calibrate_panel(), make_check_panel(), stay_, camera_panel_}) {
    panels_->addWidget(panel);
    panels_->setMaximumWidth(panel->maximumWidth());
  }
  body()->addWidget(middle, 1);
  body()->addWidget(panels_);
  set_lead(
      tr("Sheets, a few photographs, and the program knows where every point of light lands on your mat."));
  connect(&watch_, &FolderWatch::arrived, this, &TablePlace::add_photographs);
  connect(&work_, &Background::busy_changed, this, [this](bool busy) {
    working_->setVisible(busy);
    calibrate_->setEnabled(!busy);
    emit busy_changed();
  });
  go_to_step(TableStep::print);
}

QWidget* TablePlace::make_middle() {
  auto* middle = new QWidget;
  auto* column = new QVBoxLayout(middle);
  column->setContentsMargins(grown(24), 0, grown(24), grown(20));
  column->setSpacing(grown(12));
  steps_ = new OneOf(tr("Steps of calibrating"),
                     {{tr("&1  Print"), tr("Make the sheets and measure their rulers")},
                      {tr("&2  Lay"), tr("Lay the sheets in the projector's light")},
                      {tr("&3  Photos"), tr("Bring in photographs of the table")},
                      {tr("&4  Calibrate"), tr("Work out where the light lands, and how right that is")},
                      {tr("&5  Check"), tr("Compare distances of light with a tape")},
                      {tr("&6  Watch"), tr("Let a camera that stays find where it stands")}});
  connect(steps_, &OneOf::chosen, this, [this](int which) { go_to_step(static_cast<TableStep>(which)); });
  notice_ = new NoteBox;
  working_ = new QWidget;
  auto* row = new QHBoxLayout(working_);
  row->setContentsMargins(0, 0, 0, 0);
  working_words_ = new QLabel;
  progress_ = new QProgressBar;
  progress_->setTextVisible(false);
  describe(*progress_, tr("Progress"), tr("How far the work beside the window has come"));
  auto* stop = make_button(tr("St&op"), tr("Leave the work; nothing of the project is changed"),
                           QKeySequence(QStringLiteral("Ctrl+.")));
  connect(stop, &QPushButton::clicked, this, [this] {
    work_.stop();
    notice_->offer(
        tr("Stopped; nothing is changed. What was begun may run on unseen for some seconds; you can go "
           "on working."),
        {}, {});
  });
  row->addWidget(working_words_);
  row->addWidget(progress_, 1);
  row->addWidget(stop);
  working_->hide();
  picture_ = new TablePicture;
  live_ = new LivePicture;
  pictures_ = new QStackedWidget;
  pictures_->addWidget(picture_);
  pictures_->addWidget(live_);
  for (QWidget* widget : std::initializer_list<QWidget*>{steps_, notice_, working_})
    column->addWidget(widget);
  column->addWidget(pictures_, 1);
  return middle;
}

void TablePlace::go_to_step(TableStep step) {
  if (step != step_) camera_.stop();
  step_ = step;
  steps_->show_chosen(static_cast<int>(step));
  panels_->setCurrentWidget(
      step == TableStep::photograph && by_camera_ ? camera_panel_ : panels_->widget(static_cast<int>(step)));
  picture_->show_step(step);
  notice_->clear();
  show_picture();
  if (step == TableStep::check) show_figure();
}

void TablePlace::begin_anew() {
  work_.stop();
  camera_.stop();
  by_camera_ = false;
  go_to_step(TableStep::print);
  saved_sheets_->clear();
}

void TablePlace::show_project() {
  const TableChoice& table = document().project().table;
  for (auto [box, mm] : {std::pair{across_, table.ruler_across}, std::pair{down_, table.ruler_down}}) {
    const QSignalBlocker quiet(box);
    box->setValue(mm);
  }
  lamp_->show_mm(table.lamp_height);
  show_screens();
  show_photographs();
  show_map();
  camera_panel_->show_project();
  stay_->show_project();
  check_->show_project();
  if (step_ == TableStep::check) show_figure();
}

void TablePlace::show_photographs() {
  const auto& files = document().project().table.photographs;
  if (files == seen_ && list_->count() == static_cast<int>(files.size())) return;
  seen_ = files;
  list_->clear();
  for (const std::string& file : files) {
    auto* item = new QListWidgetItem(QFileInfo(QString::fromStdString(file)).fileName(), list_);
    item->setToolTip(QString::fromStdString(file));
  }
  looking_.start<std::vector<PhotographSeen>>(
      [files](const std::stop_token& stop) {
        std::vector<PhotographSeen> all;
        for (const std::string& file : files)
          if (!stop.stop_requested()) all.push_back(seen(file));
        return all;
      },
      [this](const std::vector<PhotographSeen>& all) { picture_->show_photographs(all); },
      [this](const QString& reason) { refuse(reason); });
}

QString TablePlace::when_words(const std::string& made_at) {
  const QDateTime then = QDateTime::fromString(QString::fromStdString(made_at), Qt::ISODate).toLocalTime();
  if (then.date() != QDate::currentDate()) return QLocale().toString(then, QLocale::ShortFormat);
  return tr("today at %1").arg(then.toString(QStringLiteral("HH:mm")));
}

QString TablePlace::result_in_words() const {
  const Project& project = document().project();
  if (!project.table.map) return {};
  const auto [middle, most] = errors_of(*project.table.map, project.cloth.thickness);
  return tr("On this project's cloth a line lies within %1 mm of true in the middle of the light and within "
            "%2 mm "
            "everywhere in it, 95 times in 100.")
      .arg(QLocale().toString(middle, 'f', 2), QLocale().toString(most, 'f', 2));
}

void TablePlace::show_map() {
  const TableChoice& table = document().project().table;
  if (!table.map) {
    shown_map_.clear();
    picture_->show_result({});
    result_->setText(tr("Not calibrated yet."));
    cautions_->hide();
    numbers_->hide();
    return;
  }
  const calibration::TableMap& map = *table.map;
  // A tape that mends the scale leaves the time as it was.
  const std::string of_map = map.made_at + std::to_string(map.scale.relative_sigma);
  if (of_map != shown_map_) {
    shown_map_ = of_map;
    picture_->show_result(error_picture(map));
  }
  QString words =
      tr("<b>Calibrated %1.</b>").arg(when_words(map.made_at)) + QLatin1Char(' ') + result_in_words();
  if (table.simulated) words += QStringLiteral("<br>") + tr("This is the simulated table, not yours.");
  if (map.scale.source == "page")
    words += QStringLiteral("<br>") +
             tr("The size rests on the printed page alone: measure the rulers for a sure scale.");
  const double thickness = document().project().cloth.thickness;
  if (slant_trouble(map, lit_outline(map, thickness), thickness))
    words +=
        QStringLiteral("<br>") +
        tr("For cloth this thick measure the height of the projector's lens, below, and calibrate again.");
  result_->setText(words);
  const bool fresh = summary_of_ == map.made_at;
  cautions_->setText(fresh ? caution_words_ : QString());
  cautions_->setVisible(!cautions_->text().isEmpty());
  summary_words_->setText(fresh ? summary_ : QString());
  numbers_->setVisible(fresh);
}

void TablePlace::say_progress(const QString& words, int done, int all) {
  working_words_->setText(words);
  progress_->setRange(0, all);  // 0 of 0: it goes on, nobody knows how far
  progress_->setValue(done);
}

void TablePlace::refuse(const QString& reason) {
  notice_->say(reason);
}

void TablePlace::add_photographs(const QStringList& files) {
  QStringList others;
  std::vector<std::string> added;
  const auto& known = document().project().table.photographs;
  for (const QString& file : files) {
    const std::string path = QFileInfo(file).absoluteFilePath().toStdString();
    if (!is_photograph(file))
      others << QFileInfo(file).fileName();
    else if (std::find(known.begin(), known.end(), path) == known.end())
      added.push_back(path);
  }
  if (!added.empty())
    document().change(tr("Add photographs").toStdString(), [&](Project& project) {
      auto& photographs = project.table.photographs;
      std::erase_if(photographs, [](const std::string& file) { return is_simulated(file); });
      photographs.insert(photographs.end(), added.begin(), added.end());
    });
  go_to_step(TableStep::photograph);
  show_project();
  if (!others.isEmpty())
    notice_->say(
        tr("%1 is no JPEG or PNG photograph and was left out. Set the camera to JPEG, or save a copy as "
           "JPEG.")
            .arg(others.join(QStringLiteral(", "))));
}

void TablePlace::dragEnterEvent(QDragEnterEvent* event) {
  if (!dropped_photographs(*event->mimeData()).isEmpty()) event->acceptProposedAction();
}

void TablePlace::dropEvent(QDropEvent* event) {
  add_photographs(dropped_photographs(*event->mimeData()));
}

}  // namespace cowlcast::projector
