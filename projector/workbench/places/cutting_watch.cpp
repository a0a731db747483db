// The watch in the cutting place: a camera that stays, and two crosses where there is none.
#include <algorithm>
#include <utility>

#include "projector/workbench/places/cutting_place.h"

namespace cowlcast::projector {
namespace {

constexpr double kSimulatedCloth = 80.0;  // mm of it around the piece

}  // namespace

QWidget* CuttingPlace::make_watch() {
  watch_ = new WatchWork({[this] { return *view_; }, [this] { return light_->frame(); },
                          [this](CuttingView view, const calibration::TableMap& map) {
                            take_from_watch(std::move(view), map);
                          }});
  connect(watch_, &WatchWork::changed, this, [this] {
    if (view_) show_view();
  });
  connect(watch_, &WatchWork::asked, this, [this] { act(Act::look); });
  connect(watch_, &WatchWork::to_the_table, this, [this] { emit wanted(Place::table); });
  connect(watch_, &WatchWork::table_found, this, &CuttingPlace::keep_found_table);
  connect(watch_, &WatchWork::ended, this, &CuttingPlace::watch_ended);
  connect(watch_, &WatchWork::begun, this, [this] {
    if (watch_->simulated() == nullptr) return;
    SimulatedCloth cloth = cloth_for(view_->piece, view_->laying, kSimulatedCloth);
    cloth.colour = document().project().cloth.colours.front();
    watch_->simulated()->lay(cloth, *document().project().table.map);
  });
  return watch_;
}

void CuttingPlace::follow_watch() {
  const TableChoice& table = document().project().table;
  const bool waived = view_ && (block_.empty() || std::find(view_->waived.begin(), view_->waived.end(),
                                                            block_) != view_->waived.end());
  const bool seen = table.simulated || (window_ && window_->isVisible());
  watch_->follow(table, waived && seen);
}

void CuttingPlace::take_from_watch(CuttingView next, const calibration::TableMap& map) {
  view_ = std::move(next);
  if (window_) window_->set_view(*view_, map);
  show_view();
}

// A fact of the table, which undoing cannot take back; of this calibration alone.
void CuttingPlace::keep_found_table(const calibration::TableMap& map,
                                    const calibration::FixedCamera& camera) {
  document().note([&](Project& project) {
    if (!project.table.map || project.table.map->made_at != map.made_at) return;
    project.table.map = map;
    project.table.fixed_camera = camera;
  });
  if (view_) show_view();
}

void CuttingPlace::watch_ended() {
  if (!view_) return;
  CuttingView view = blocked(*view_, block_);
  view.light = Light::lines;
  view.border_marks = view.camera_asked = false;
  view.camera = CameraAsk::none;
  view.notice = {};
  view_ = std::move(view);
  if (window_) window_->set_view(*view_);
}

}  // namespace cowlcast::projector
