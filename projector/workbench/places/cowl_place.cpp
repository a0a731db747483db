#include "projector/workbench/places/cowl_place.h"

#include <algorithm>
#include <numbers>

#include "drafting/hang/hang.h"
#include "drafting/refusal.h"
#include "projector/project/drawn_slashes.h"
#include "projector/workbench/canvas/ruler.h"
#include "projector/workbench/places/scenes.h"

namespace cowlcast::projector {
namespace {

bool on_the_base(const std::string& id) {
  return id != "drape" && id != "facing";
}

/// What a handle may change, and no more: the cloth's part of the wishes stays with the cloth.
void take_over(Project& project, const drafting::CowlWishes& wishes) {
  const double width = project.cowl.cloth_width;
  const bool bias = project.cowl.on_bias;
  project.cowl = wishes;
  project.cowl.cloth_width = width;
  project.cowl.on_bias = bias;
}

QString step_words(const std::string& id) {
  if (id == "drape") return CowlPlace::tr("Drape");
  if (id == "facing") return CowlPlace::tr("Facing");
  if (id == "neckline") return CowlPlace::tr("Neckline");
  return CowlPlace::tr("Move a slash line");
}

}  // namespace

CowlPlace::CowlPlace(Document& document, Settings& settings, CurrentGarment& garment)
    : Workplace(Place::cowl, document, settings, garment),
      canvas_(new Canvas(settings)),
      middle_(new QStackedWidget) {
  set_lead(tr(
      "Drag the large handle outwards: the cowl opens as it goes. The small ones move neckline, slash lines "
      "and facing."));
  middle_->addWidget(make_waiting(tr("The cowl is opened from a base front, and there is none yet.")));
  middle_->addWidget(side_by_side(canvas_, make_panel()));
  body()->addWidget(middle_, 1);
  describe(*canvas_, tr("Drawing of the cowl"),
           tr("The slashed base on the left, the opened cowl front on the right"));
  connect(canvas_, &Canvas::taken, this, &CowlPlace::take);
  connect(canvas_, &Canvas::dragged, this, &CowlPlace::drag);
  connect(canvas_, &Canvas::stepped, this, &CowlPlace::step);
  connect(canvas_, &Canvas::let_go, this, [this] {
    range_.reset();
    held_back_.clear();
    this->document().settle();
    show_project();
  });
}

QWidget* CowlPlace::make_panel() {
  auto* panel = new Panel;
  refusal_ = new NoteBox;
  panel->add(refusal_);
  add_drape(*panel);
  add_slashes(*panel);
  add_pieces(*panel);
  panel->add_gap();
  panel->add_heading(tr("What comes of it"));
  results_ = panel->add_words({});
  panel->end();
  return panel;
}

void CowlPlace::add_drape(Panel& panel) {
  drape_ = panel.add_length(settings(), tr("&Drape"),
                            tr("The cowl's length, a tape laid along it from shoulder seam to shoulder seam"),
                            50, 3000);
  hang_ = panel.add_length(settings(), tr("Han&g"),
                           tr("How far the cowl's lowest place hangs below the neck points; sets the drape"),
                           5, 1500);
  picture_ = new HangPicture;
  panel.add(picture_);
  hang_words_ = panel.add_words({});
  panel.add_gap();
  neckline_ = panel.add_length(
      settings(), tr("&Neckline lowered by"),
      tr("How far the base's neckline is lowered at the centre front before it is slashed"), 0, 400);
  let_edit(*drape_, [](Project& project, double mm) {
    project.cowl.drape = mm;
    project.cowl.set_openings.clear();
  });
  let_edit(*hang_, [this](Project& project, double mm) {
    if (const auto& base = garment().now().bases.front)
      project.cowl.drape = drafting::drape_for_depth(2.0 * base->points.at("neck-point").x(), mm);
    project.cowl.set_openings.clear();
  });
  let_edit(*neckline_, [](Project& project, double mm) { project.cowl.neckline_drop = mm; });
}

void CowlPlace::add_slashes(Panel& panel) {
  panel.add_gap();
  panel.add_heading(tr("Slash lines"));
  std::vector<OneOf::Choice> counts;
  for (int i = 1; i <= 6; ++i)
    counts.push_back(
        {QStringLiteral("&%1").arg(i),
         tr("Slash lines: %1. More lines spread the fullness over more, smaller openings").arg(i)});
  count_ = new OneOf(tr("How many slash lines"), counts);
  panel.add(count_);
  connect(count_, &OneOf::chosen, this, [this](int which) {
    document().change(tr("%1 slash lines").arg(which + 1).toStdString(), [&](Project& project) {
      const Weight weight = weight_of(project.cowl);
      project.cowl.slash_count = which + 1;
      project.cowl.slashes.clear();
      project.cowl.set_openings.clear();
      project.cowl.proportions = proportions_of(weight, which + 1);
    });
  });
  weight_ =
      new OneOf(tr("Where it opens most"),
                {{tr("H&igh"), tr("The upper slash lines open most: the folds fall high, near the neck")},
                 {tr("Ali&ke"), tr("All slash lines open alike")},
                 {tr("L&ow"), tr("The lower slash lines open most: the folds fall low")}});
  panel.add(weight_);
  connect(weight_, &OneOf::chosen, this, [this](int which) {
    document().change(tr("Where the cowl opens most").toStdString(), [&](Project& project) {
      project.cowl.set_openings.clear();
      project.cowl.proportions = proportions_of(static_cast<Weight>(which), slash_count_of(project.cowl));
    });
  });
  by_default_ = make_button(tr("Slash &lines back in place"),
                            tr("Where your drawing has them, or where they lie by default"));
  panel.add(by_default_);
  connect(by_default_, &QPushButton::clicked, this, [this] {
    document().change(tr("Slash lines back in place").toStdString(), [](Project& project) {
      project.cowl.slash_count = slash_count_of(project.cowl);
      project.cowl.slashes.clear();
      if (project.pattern.source == PatternSource::drawing) take_drawn_slashes(project);
    });
  });
}

void CowlPlace::add_pieces(Panel& panel) {
  panel.add_gap();
  panel.add_heading(tr("Facing and pieces"));
  facing_ =
      panel.add_length(settings(), tr("Fa&cing depth"),
                       tr("How far the cloth goes on beyond the cowl's edge, to be folded inside"), 0, 200);
  let_edit(*facing_, [](Project& project, double mm) { project.cowl.facing_depth = mm; });
  const auto add_check = [&](const QString& text, const QString& tip,
                             const std::function<void(Project&, bool)>& edit) {
    auto* box = new QCheckBox(text);
    describe(*box, text, tip);
    panel.add(box);
    const std::string sentence = box->accessibleName().toStdString();
    connect(box, &QCheckBox::clicked, this, [this, sentence, edit](bool on) {
      document().change(sentence, [&](Project& project) { edit(project, on); });
    });
    return box;
  };
  own_facing_ = add_check(tr("Facing as a piece of its o&wn"), tr("Cut apart and sewn on, not folded over"),
                          [](Project& project, bool on) { project.cowl.separate_facing = on; });
  back_ = add_check(tr("&Back"), tr("The back is cut, too"),
                    [](Project& project, bool on) { project.top.back = on; });
  inner_panel_ =
      add_check(tr("Inner &panel"), tr("A panel under the cowl, so that it can be worn on its own"),
                [](Project& project, bool on) { project.top.camisole = on; });
  panel_depth_ = panel.add_length(settings(), tr("Inner panel's &top below the neck point"),
                                  tr("Where the inner panel's top edge lies at the centre front"), 20, 400);
  let_edit(*panel_depth_, [](Project& project, double mm) { project.top.camisole_depth = mm; });
}

void CowlPlace::take(const std::string& id) {
  document().settle();
  const auto& base = garment().now().bases.front;
  if (id != "drape" || !base) return;
  try {
    range_ = drafting::drape_range(*base, cowl_wishes_of(document().project()));
  } catch (const drafting::Refusal&) {
    range_.reset();
  }
}

void CowlPlace::drag(const std::string& id, const Point& place) {
  const auto& base = garment().now().bases.front;
  const auto& draft = garment().last_cowl();
  if (!base || !draft) return;
  Point at = place;
  if (on_the_base(id)) at.x() -= base_shift(*draft);
  const double grid = snap_step(canvas_->view().scale, settings().preferences().units);
  held_back_.clear();
  try {
    drafting::CowlWishes wishes = moved_handle(*base, cowl_wishes_of(document().project()), id, at, grid);
    if (id == "drape" && range_) {
      if (wishes.drape > range_->most) held_back_ = tr("the longest that works");
      if (wishes.drape < range_->least) held_back_ = tr("the shortest that works");
      wishes.drape = std::clamp(wishes.drape, range_->least, range_->most);
    }
    try_wishes(id, wishes, "drag " + id);
  } catch (const drafting::Refusal& reason) {
    refusal_->say(in_own_words(reason.what()));
  }
}

void CowlPlace::step(const std::string& id, int across, int up) {
  const auto& base = garment().now().bases.front;
  if (!base) return;
  try {
    const double grid = length_step(settings().preferences().units);
    try_wishes(id, stepped_handle(*base, cowl_wishes_of(document().project()), id, across, up, grid),
               "step " + id);
  } catch (const drafting::Refusal& reason) {
    refusal_->say(in_own_words(reason.what()));
  }
}

/// A handle goes where it works, and no further.
void CowlPlace::try_wishes(const std::string& id, const drafting::CowlWishes& wishes,
                           const std::string& merge_key) {
  const std::string reason = refusal_of(*garment().now().bases.front, wishes);
  if (!reason.empty()) {
    refusal_->say(in_own_words(reason));
    return;
  }
  document().change(
      step_words(id).toStdString(), [&](Project& project) { take_over(project, wishes); }, merge_key);
}

void CowlPlace::mend(const WayOut& out) {
  document().change(tr("The nearest that works").toStdString(),
                    [&](Project& project) { take_over(project, out.wishes); });
}

QString CowlPlace::mended_words(const WayOut& out) const {
  switch (out.mended) {
    case Mended::drape:
      return tr("Use a drape of %1").arg(length_words(out.wishes.drape));
    case Mended::neckline:
      return tr("Lower the neckline by %1").arg(length_words(out.wishes.neckline_drop));
    case Mended::facing:
      return tr("Use a facing of %1").arg(length_words(out.wishes.facing_depth));
    case Mended::slash_count:
      return tr("Use %1 slash lines").arg(out.wishes.slash_count);
    case Mended::slashes_by_default:
      return tr("Slash lines back in place");
    case Mended::even_openings:
      return tr("Open them evenly");
  }
  return {};
}

void CowlPlace::show_refusal() {
  const Garment& now = garment().now();
  if (now.refusal.empty()) {
    refusal_->clear();
    return;
  }
  if (const auto out = way_out(*now.bases.front, cowl_wishes_of(document().project()))) {
    refusal_->say(in_own_words(now.refusal), mended_words(*out), [this, out] { mend(*out); });
  } else if (document().can_undo()) {
    refusal_->say(in_own_words(now.refusal), tr("Undo the last change"), [this] { document().undo(); });
  } else {
    refusal_->say(in_own_words(now.refusal));
  }
}

void CowlPlace::show_fields(const Project& project) {
  drape_->show_mm(project.cowl.drape);
  neckline_->show_mm(project.cowl.neckline_drop);
  facing_->show_mm(project.cowl.facing_depth);
  panel_depth_->show_mm(project.top.camisole_depth);
  panel_depth_->setEnabled(project.top.camisole);
  count_->show_chosen(slash_count_of(project.cowl) - 1);
  const Weight weight = weight_of(project.cowl);
  weight_->show_chosen(weight == Weight::own ? -1 : static_cast<int>(weight));
  by_default_->setEnabled(!project.cowl.slashes.empty());
  own_facing_->setChecked(project.cowl.separate_facing);
  back_->setChecked(project.top.back);
  back_->setEnabled(garment().now().bases.back.has_value());
  inner_panel_->setChecked(project.top.camisole);
  inner_panel_->setEnabled(garment().now().bases.back.has_value());
}

void CowlPlace::show_results() {
  const Garment& now = garment().now();
  const Project& project = document().project();
  const double span = 2.0 * now.bases.front->points.at("neck-point").x();
  if (project.cowl.drape > span) {
    const double depth = drafting::hang_depth(span, project.cowl.drape);
    std::optional<drafting::HangLevels> levels;
    if (const auto measures = measures_of(project.pattern)) levels = drafting::hang_levels(*measures);
    hang_->show_mm(depth);
    picture_->show_hang(drafting::hang_line(span, project.cowl.drape), levels);
    hang_words_->setText(
        levels ? tr("Hangs about <b>%1</b> deep: %2.")
                     .arg(length_words(depth), in_own_words(drafting::depth_in_words(depth, *levels)))
               : tr("Hangs about <b>%1</b> below the neck points.").arg(length_words(depth)));
  } else {
    picture_->show_hang({}, std::nullopt);
    hang_words_->setText(tr("It does not hang: the neck points are %1 apart.").arg(length_words(span)));
  }
  if (!now.cowl) {
    results_->setText(tr("Nothing yet: see the message above."));
    return;
  }
  constexpr double degrees = 180.0 / std::numbers::pi;
  QStringList openings;
  for (const double angle : now.cowl->front.cowl->hinge_angles)
    openings.append(QString::number(angle * degrees, 'f', 0) + QStringLiteral("°"));
  results_->setText(
      tr("The slash lines open by <b>%1</b> from the top down; the whole front swings by <b>%2°</b>.<br>"
         "Cloth for the front: <b>%3</b> across and <b>%4</b> along.<br>"
         "Down the centre front, from the cowl's edge to the hem: <b>%5</b>.")
          .arg(openings.join(QStringLiteral(", ")))
          .arg(now.cowl->front.cowl->swing * degrees, 0, 'f', 0)
          .arg(length_words(now.cowl->cloth_width), length_words(now.cowl->cloth_length),
               length_words(now.cowl->front_length)));
}

void CowlPlace::show_project() {
  const bool waiting = !garment().now().bases.front;
  middle_->setCurrentIndex(waiting ? 0 : 1);
  if (waiting) return;
  const Project& project = document().project();
  show_fields(project);
  show_refusal();
  show_results();
  if (const auto& draft = garment().last_cowl()) {
    Scene scene =
        cowl_scene(*draft, project.cowl, settings().preferences().units, garment().now().cowl.has_value());
    if (!held_back_.isEmpty()) scene.handles.back().value += QStringLiteral(", ") + held_back_;
    canvas_->show_scene(std::move(scene));
  } else {
    canvas_->show_scene(base_scene(garment().now().bases));
  }
}

}  // namespace cowlcast::projector
