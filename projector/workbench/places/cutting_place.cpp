#include "projector/workbench/places/cutting_place.h"

#include <QGuiApplication>
#include <QLocale>
#include <QVBoxLayout>
#include <algorithm>
#include <utility>

#include "calibration/refusal.h"
#include "drafting/geometry/polyline.h"
#include "drafting/refusal.h"
#include "projector/cutting/now.h"
#include "projector/cutting/remembered.h"
#include "projector/cutting/view_marks.h"
#include "projector/language/said.h"
#include "projector/table/simulated_table.h"
#include "projector/workbench/look/theme.h"

namespace cowlcast::projector {
namespace {

constexpr double kLookFinely = 0.9;  // pixels to a mm
constexpr double kDimmed = 0.25;     // of the room's light, as one would at such a table

bool same_laying(const Laying& a, const Laying& b) {
  return a.x == b.x && a.y == b.y && a.angle == b.angle && a.mirrored == b.mirrored;
}

/// The cloth on the simulated table: around the piece as it lies.
SimulatedCloth cloth_around(const CuttingView& view, const std::vector<unsigned>& colours) {
  SimulatedCloth cloth = cloth_for(view.piece, view.laying, 80.0);
  cloth.colour = colours.front();
  cloth.room_light = kDimmed;
  return cloth;
}

}  // namespace

const drafting::Piece* CuttingPlace::piece() const {
  const std::vector<drafting::Piece>& all = garment().now().pieces;
  const drafting::Piece* first_left = nullptr;
  for (const drafting::Piece& one : all) {
    if (one.name == chosen_) return &one;
    const Record record = record_of(document().project(), one);
    const bool cut = record.strokes > 0 && record.cut >= record.strokes;
    if (first_left == nullptr && !cut) first_left = &one;
  }
  return first_left != nullptr ? first_left : all.empty() ? nullptr : &all.front();
}

AtTheTable CuttingPlace::person() const {
  const Preferences& preferences = settings().preferences();
  return {.blade = preferences.blade,
          .hand = preferences.left_handed ? Hand::left : Hand::right,
          .inches = preferences.units == Units::inches};
}

void CuttingPlace::choose_piece(const std::string& name) {
  chosen_ = name;
  show_project();
}

void CuttingPlace::say_empty(const QString& words, const QString& action, Place where) {
  empty_words_->setText(words);
  empty_way_->setText(action);
  describe(*empty_way_, action, tr("Goes there"));
  empty_place_ = where;
  middle_->setCurrentIndex(0);
  panel_->hide();
  view_.reset();
  basis_.reset();
  watch_->end();
  window_.reset();
}

void CuttingPlace::begin_anew() {
  looking_.stop();
  notice_->clear();
  chosen_.clear();
  basis_.reset();
  view_.reset();
  watch_->end();
  window_.reset();
}

void CuttingPlace::show_project() {
  const Project& project = document().project();
  if (!project.table.map) {
    say_empty(tr("The table is not calibrated yet, so it is not known where the light lands on your mat."),
              tr("To the &table"), Place::table);
    return;
  }
  const drafting::Piece* chosen = piece();
  if (chosen == nullptr && garment().now().bases.front) {
    say_empty(in_own_words(garment().now().refusal), tr("To the &cowl"), Place::cowl);
    return;
  }
  if (chosen == nullptr) {
    say_empty(tr("There is no piece to cut yet: no plain front is chosen that a cowl could be drafted from."),
              tr("To the &pattern"), Place::pattern);
    return;
  }
  middle_->setCurrentIndex(1);
  panel_->show();
  chosen_ = chosen->name;
  show_pieces();
  show_screens();
  const AtTheTable who = person();
  const Basis now{chosen->name,
                  shape_of(*chosen),
                  project.table.map->made_at,
                  who.blade,
                  cloth_height(project.cloth, *chosen),
                  who.hand,
                  project.cloth.colours};
  if (view_) view_->inches = who.inches;
  if (basis_ != now) {
    watch_->end();
    if (basis_ && (basis_->piece != now.piece || basis_->shape != now.shape)) watch_->forget_cloth();
    window_.reset();
    basis_ = now;
    begin(*chosen, *project.table.map);
  } else if (view_) {
    follow_calibration(record_of(project, *chosen));
    if (is_laying(*view_)) follow_undone_move(*chosen);
  }
  show_view();
}

void CuttingPlace::follow_undone_move(const drafting::Piece& chosen) {
  const std::map<std::string, Record>& records = document().project().cutting;
  const auto record = records.find(chosen.name);
  if (record == records.end() || same_laying(record->second.laying, view_->laying)) return;
  const double height = view_->laying.height;
  view_->laying = record->second.laying;
  view_->laying.height = height;
  if (window_) window_->set_view(*view_);
}

void CuttingPlace::begin(const drafting::Piece& piece, const calibration::TableMap& map) {
  const Project& project = document().project();
  notice_->clear();
  view_.reset();
  try {
    std::string changed;
    Record record = record_of(project, piece, &changed);
    const std::string now = present_time();
    record.cautions_read_at = std::max(record.cautions_read_at, Remembered().cautions_read_at());
    CuttingWishes wishes = cutting_wishes_of(project, piece, person());
    if (record.cut == 0 && !record.piece.empty() && record.shape == shape_of(piece)) {
      wishes.at = record.laying;
      wishes.at->height = wishes.height;
    }
    try {
      view_ = begun(map, piece, wishes, record, now);
    } catch (const drafting::Refusal& unknown) {  // which strokes are cut
      if (record.cut == 0) throw;
      changed = unknown.what();
      std::string read_at = std::move(record.cautions_read_at);
      record = {};
      record.cautions_read_at = std::move(read_at);
      view_ = begun(map, piece, wishes, record, now);
    } catch (const calibration::Refusal&) {  // it lies outside of this light
      if (!wishes.at) throw;
      wishes.at.reset();
      view_ = begun(map, piece, wishes, record, now);
    }
    block_ = {};
    follow_calibration(record);
    if (!changed.empty())
      notice_->say(in_own_words(changed), document().can_undo() ? tr("Undo the last change") : QString(),
                   [this] { document().undo(); });
  } catch (const std::exception& reason) {
    notice_->say(in_own_words(reason.what()));
  }
}

// A check by hand may speak against the calibration, or for it again, amid the work.
void CuttingPlace::follow_calibration(const Record& record) {
  const TableChoice& table = document().project().table;
  if (!view_) return;
  const auto block = table.simulated
                         ? std::nullopt
                         : calibration_block(*table.map, readings_of(table), record, present_time());
  const std::string before = std::exchange(block_, block.value_or(std::string()));
  if (before == block_) return;
  view_ = blocked(*view_, block_);
  if (window_) window_->set_view(*view_);
}

void CuttingPlace::act(Act act, Pace pace) {
  if (!view_ || act == Act::end) return;
  become(after(*view_, act, pace));
  if (window_) window_->set_view(*view_);
}

void CuttingPlace::drag(const QPointF& from, const QPointF& to) {
  if (!view_ || !is_laying(*view_)) return;
  try {
    const calibration::TableMap& map = *document().project().table.map;
    const double height = view_->laying.height;
    become(dragged(*view_, map.mat_from_projector({to.x(), to.y()}, height) -
                               map.mat_from_projector({from.x(), from.y()}, height)));
    if (window_) window_->set_view(*view_);
  } catch (const calibration::Refusal&) {  // off the table: the piece stays
  }
}

void CuttingPlace::become(CuttingView next) {
  const CuttingView before = std::exchange(*view_, std::move(next));
  const bool moved = is_laying(*view_) && is_laying(before) && !same_laying(before.laying, view_->laying);
  if (before.cautions_read != view_->cautions_read) Remembered().keep_cautions_read_at(present_time());
  shown_ = false;
  if (before.cut != view_->cut || before.waived.size() != view_->waived.size())
    note_record();
  else if (moved)
    keep_laying();
  if (!shown_) show_view();  // the window may have shown the changed project already
}

void CuttingPlace::note_record() {
  const Project& project = document().project();
  Record record = record_of(project, view_->piece);
  if (record.cut == 0) record.table_made_at = project.table.map->made_at;
  record = recorded(*view_, record, present_time());
  document().note([&](Project& edited) { edited.cutting[record.piece] = record; });
}

void CuttingPlace::keep_laying() {
  const std::string name = view_->piece.name;
  Record record = record_of(document().project(), view_->piece);
  if (record.cut > 0) {  // laid anew amid the work: that is no plan but a fact
    record.laying = view_->laying;
    document().note([&](Project& edited) { edited.cutting[name] = record; });
    return;
  }
  record = recorded(*view_, record, present_time());
  document().change(
      tr("Lay the %1").arg(said(QString::fromStdString(name))).toStdString(),
      [&](Project& edited) { edited.cutting[name] = record; }, "lay " + name);
}

void CuttingPlace::show_view() {
  follow_watch();
  shown_ = true;
  show_words();
  check_->show_project();
  if (!view_) {
    light_->show_frame({});
    light_->show_table({});
    return;
  }
  const calibration::TableMap& map = *document().project().table.map;
  light_->show_frame(painter_.draw(map, *view_).copy());
  if (watch_->simulated() != nullptr) watch_->simulated()->project(light_->frame());
  const bool simulated = document().project().table.simulated;
  seen_as_->setVisible(simulated);
  if (simulated && on_cloth_) {
    if (view_->light == Light::lines) soon_.start();  // not what a camera learns by
  } else {
    light_->show_table({});
    looking_words_->clear();
  }
}

void CuttingPlace::look_at_table() {
  if (!view_ || !document().project().table.map) return;
  struct Look {
    QImage picture;
    double mm95 = 0.0;
    int measured = 0;
  };
  looking_words_->setText(tr("Photographing the simulated table …"));
  const SimulatedCloth cloth = cloth_around(*view_, document().project().cloth.colours);
  looking_.start<Look>(
      [map = *document().project().table.map, frame = light_->frame(), cloth,
       view = *view_](const std::stop_token& stop) {
        const SimulatedTable table = simulated_table();
        Look look{seen_from_above(table, map, frame, cloth, kLookFinely)};
        if (stop.stop_requested() || view.phase == Phase::cautions) return look;
        const auto line =
            line_on_cloth(table, map, laid(view.laying, view.piece.cut_line), true, cloth.height);
        look.mm95 = line.mm95;
        look.measured = line.measured;
        return look;
      },
      [this](const Look& look) {
        if (!on_cloth_) return;
        light_->show_table(look.picture);
        looking_words_->setText(look.measured > 0 ? tr("Seen from above, the room dimmed. Read back from the "
                                                       "simulated cloth, the cut line lies "
                                                       "within %1 mm of true, 95 times in 100.")
                                                        .arg(QLocale().toString(look.mm95, 'f', 2))
                                                  : tr("Seen from above, the room dimmed."));
      },
      [this](const QString& reason) { looking_words_->setText(reason); });
}

/// It has ended: none is kept out of sight.
void CuttingPlace::close_window() {
  if (window_ && !window_->view().ended) return;  // another one since
  window_.reset();
  if (view_) view_->ended = view_->asked = false;
}

void CuttingPlace::show_on_projector() {
  if (!view_) return;
  const calibration::TableMap& map = *document().project().table.map;
  try {
    QScreen* screen = QGuiApplication::screens().value(screens_->currentIndex());
    if (screen == nullptr)
      throw calibration::Refusal(tr("That screen is gone. Choose another one from the list.").toStdString());
    Remembered().keep_screen(screen->name().toStdString());
    CuttingView shown = *view_;
    shown.ended = shown.asked = false;
    window_ = std::make_unique<CuttingWindow>(map, shown, *screen);
    window_->changed = [this](const CuttingView& now) {
      become(now);
      if (now.ended) QTimer::singleShot(0, this, &CuttingPlace::close_window);
    };
    window_->open();
    notice_->clear();
    follow_watch();
  } catch (const std::exception& reason) {
    notice_->say(in_own_words(reason.what()));
  }
}

}  // namespace cowlcast::projector
