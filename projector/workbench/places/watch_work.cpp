#include "projector/workbench/places/watch_work.h"

#include <QVBoxLayout>
#include <algorithm>
#include <utility>

#include "projector/guard/cut_watch.h"
#include "projector/language/said.h"
#include "projector/workbench/controls.h"
#include "projector/workbench/look/theme.h"

namespace cowlcast::projector {
namespace {

constexpr double kHoldAfter = 2.0;  // seconds, after which exposure and focus stay
constexpr double kBump = 6.0;       // mm

QString headline(WatchStanding::Kind kind) {
  using Kind = WatchStanding::Kind;
  switch (kind) {
    case Kind::not_learnt:
      return WatchWork::tr(
          "The table is not learnt yet. Begin to cut, lay the cloth clear of the marks of light, "
          "and stand clear.");
    case Kind::learning:
      return WatchWork::tr("The camera learns the table. Stand clear for some seconds.");
    case Kind::watching:
      return WatchWork::tr("The camera watches the table.");
    case Kind::moved:
      return WatchWork::tr("Something was moved, and the lines are taken away.");
    case Kind::unseen:
      return WatchWork::tr("The camera sees too little to tell.");
    case Kind::gone:
      return WatchWork::tr("Nobody watches: the camera sends no pictures.");
  }
  return {};
}

}  // namespace

WatchWork::WatchWork(ShownLines lines) : lines_(std::move(lines)), state_(new QLabel) {
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->setSpacing(grown(7));
  watch_ =
      make_button(tr("Let the camera watch"),
                  tr("Whether table, projector or camera are moved, and what lies ahead of the blade. An aid "
                     "that misses things: keep your other hand out of the blade's way (Ctrl+G)"),
                  QKeySequence(QStringLiteral("Ctrl+G")));
  watch_->setCheckable(true);
  connect(watch_, &QPushButton::clicked, this, &WatchWork::want);
  sound_ =
      make_button(tr("With a sound"), tr("A short one when it sees something ahead of the blade (Ctrl+U)"),
                  QKeySequence(QStringLiteral("Ctrl+U")));
  sound_->setCheckable(true);
  connect(sound_, &QPushButton::clicked, this, [this](bool on) { *with_sound_ = on; });
  look_ = make_button(tr("The camera looks again"),
                      tr("It learns the table, or finds it again after a move; R does the same (Ctrl+R)"),
                      QKeySequence(QStringLiteral("Ctrl+R")));
  connect(look_, &QPushButton::clicked, this, &WatchWork::asked);
  bump_ =
      make_button(tr("Bump the projector"), tr("On the simulated table, to see what happens then (Ctrl+B)"),
                  QKeySequence(QStringLiteral("Ctrl+B")));
  connect(bump_, &QPushButton::clicked, this, [this] {
    if (simulated()) simulated_->knock_projector(kBump);
  });
  place_ = make_button(tr("To the camera's place …"),
                       tr("In Table, where a camera that stays finds out where it stands (Ctrl+Shift+G)"),
                       QKeySequence(QStringLiteral("Ctrl+Shift+G")));
  connect(place_, &QPushButton::clicked, this, &WatchWork::to_the_table);
  state_->setWordWrap(true);
  for (QWidget* widget : std::initializer_list<QWidget*>{watch_, sound_, state_, look_, bump_, place_})
    column->addWidget(widget);
  connect(&timer_, &QTimer::timeout, this, &WatchWork::show_state);
  timer_.setInterval(100);
}

WatchStanding WatchWork::standing() const {
  return live_ ? live_->standing() : WatchStanding{};
}

void WatchWork::want(bool watch) {
  wanted_ = watch;
  emit changed();
}

void WatchWork::follow(const TableChoice& table, bool shown) {
  known_ = table.fixed_camera.has_value() && table.map.has_value();
  const std::string basis = known_ ? table.map->made_at + table.camera : std::string();
  if (basis != basis_) {
    end();
    watching_.reset();
    basis_ = basis;
  }
  const bool now = wanted_ && known_ && shown;
  if (now && !live_) begin(table);
  if (!now && live_) {
    const bool moved = standing().kind == WatchStanding::Kind::moved;
    end();
    if (!moved) emit ended();  // what was moved stays said
  }
  show_state();
}

void WatchWork::begin(const TableChoice& table) {
  if (!watching_) {
    watching_ = std::make_unique<Watching>(TableWatch(*table.map, *table.fixed_camera));
    forget_cloth();
  }
  const calibration::FixedCamera& camera = *table.fixed_camera;
  calibration::CameraRequest request{
      .spec = table.camera, .width = camera.width, .height = camera.height, .hold_after = kHoldAfter};
  const bool simulated = table.camera == kSimulatedCamera;
  if (simulated && !simulated_) simulated_ = std::make_unique<SimulatedCamera>();
  if (!simulated) simulated_.reset();
  live_ = std::make_unique<LiveWatch>(lines_, request, *watching_,
                                      simulated ? simulated_->opener() : calibration::open_camera);
  live_->found_again = [this](const TableWatch& found) { emit table_found(found.map(), found.camera()); };
  timer_.start();
  emit begun();
}

void WatchWork::end() {
  timer_.stop();
  live_.reset();
}

void WatchWork::forget_cloth() {
  if (!watching_) return;
  end();
  watching_ = std::make_unique<Watching>(watching_->table());
  watching_->add(std::make_unique<CutWatch>([on = with_sound_] {
    if (*on) beep_soon();
  }));
}

void WatchWork::show_state() {
  watch_->setChecked(wanted_);
  watch_->setEnabled(known_);
  sound_->setEnabled(known_);
  place_->setVisible(!known_);
  look_->setVisible(live_ != nullptr);
  bump_->setVisible(live_ != nullptr && simulated_ != nullptr);
  QString words;
  if (!known_)
    words =
        tr("No camera's place is known for this calibration, so nobody watches. Check two crosses before "
           "cutting.");
  else if (!wanted_)
    words = tr("Nobody watches the table.");
  else if (!live_)
    words = tr("It watches as soon as the lines are shown on the projector.");
  else {
    const WatchStanding stands = live_->standing();
    words = headline(stands.kind);
    if (!stands.words.empty()) words += QLatin1Char(' ') + said(QString::fromStdString(stands.words));
    const std::string& notice = lines_.view().notice.words;
    if (stands.kind == WatchStanding::Kind::watching && !notice.empty() && notice != stands.words)
      words += QLatin1Char('\n') + said(QString::fromStdString(notice));
  }
  if (words == told_) return;
  told_ = words;
  state_->setText(words);
  state_->setMinimumHeight(std::max(0, state_->heightForWidth(state_->width())));
}

}  // namespace cowlcast::projector
