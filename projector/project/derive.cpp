#include "projector/project/derive.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>

#include "drafting/block/sizes.h"
#include "drafting/intake/svg_base.h"
#include "drafting/piece/base_size.h"
#include "drafting/refusal.h"
#include "projector/project/drawn_slashes.h"
#include "projector/project/on_cloth.h"

namespace cowlcast::projector {
namespace {

using drafting::Piece;
using drafting::Refusal;

QString tr(const char* text) {
  return QCoreApplication::translate("derive", text);
}

std::string translated(const char* text) {
  return tr(text).toStdString();
}

/// What `draft` gives; a refusal goes to `refusal`.
template <typename Draft>
auto tried(const Draft& draft, std::string& refusal) -> std::optional<decltype(draft())> {
  try {
    return draft();
  } catch (const Refusal& reason) {
    refusal = reason.what();
    return std::nullopt;
  }
}

std::optional<Piece> drawn_base(const PatternDrawing& drawing, bool front, Bases& bases) {
  if (drawing.svg.empty()) return std::nullopt;
  std::vector<std::string> cautions;
  std::string& refusal = front ? bases.front_refusal : bases.back_refusal;
  auto piece = tried(
      [&] {
        const std::string svg = svg_of(drawing);
        return front ? drafting::base_front_from_svg(svg, &cautions)
                     : drafting::base_back_from_svg(svg, &cautions);
      },
      refusal);
  bases.cautions.insert(bases.cautions.end(), cautions.begin(), cautions.end());
  return piece;
}

int pieces_cut(const Project& project, const std::vector<Piece>& pieces) {
  int done = 0;
  for (const Piece& piece : pieces) {
    const Record record = record_of(project, piece);
    if (record.strokes > 0 && record.cut >= record.strokes) ++done;
  }
  return done;
}

}  // namespace

std::optional<drafting::BodyMeasures> measures_of(const PatternChoice& pattern) {
  if (pattern.source == PatternSource::body) return pattern.body;
  if (pattern.source != PatternSource::size) return std::nullopt;
  std::string unknown;
  return tried([&] { return drafting::measures_of_size(pattern.size); }, unknown);
}

std::vector<double drafting::BodyMeasures::*> sample_measures(const PatternChoice& pattern) {
  using Body = drafting::BodyMeasures;
  std::vector<double Body::*> left;
  if (pattern.source != PatternSource::body || pattern.body_is_own) return left;
  const Body sample = drafting::demo_measures();
  for (const auto member : {&Body::bust_girth, &Body::waist_girth, &Body::hip_girth, &Body::neck_girth,
                            &Body::shoulder_length, &Body::back_waist_length, &Body::waist_to_hem})
    if (pattern.body.*member == sample.*member) left.push_back(member);
  return left;
}

Bases bases_of(const PatternChoice& pattern) {
  Bases bases;
  if (pattern.source == PatternSource::none) return bases;
  if (pattern.source == PatternSource::drawing) {
    bases.front = drawn_base(pattern.front, true, bases);
    bases.back = drawn_base(pattern.back, false, bases);
  } else if (const auto measures = measures_of(pattern)) {
    bases.front = tried([&] { return drafting::block_front(*measures); }, bases.front_refusal);
    bases.back = tried([&] { return drafting::block_back(*measures); }, bases.back_refusal);
  } else if (!pattern.size.empty()) {
    bases.front_refusal = translated("There is no such size. Choose one from the list.");
  }
  for (const auto& base : {bases.front, bases.back}) {
    if (!base) continue;
    for (const std::string& caution : drafting::base_size_cautions(*base)) bases.cautions.push_back(caution);
  }
  return bases;
}

drafting::CowlWishes cowl_wishes_of(const Project& project) {
  drafting::CowlWishes wishes = project.cowl;
  wishes.cloth_width = project.cloth.width;
  wishes.on_bias = project.cloth.kind == ClothKind::woven;
  return wishes;
}

drafting::TopWishes top_wishes_of(const Project& project) {
  drafting::TopWishes wishes;
  wishes.cowl = cowl_wishes_of(project);
  wishes.camisole = project.top.camisole;
  wishes.camisole_depth = project.top.camisole_depth;
  return wishes;
}

Garment garment_of(const Project& project) {
  Garment garment;
  garment.bases = bases_of(project.pattern);
  const Bases& bases = garment.bases;
  if (!bases.front) return garment;
  if (bases.back)
    garment.top =
        tried([&] { return drafting::draft_top(*bases.front, *bases.back, top_wishes_of(project)); },
              garment.refusal);
  if (garment.top) {
    garment.cowl = garment.top->cowl;
    garment.pieces = drafting::pieces_of(*garment.top);
    if (!project.top.back)
      std::erase_if(garment.pieces, [&](const Piece& piece) { return piece.name == garment.top->back.name; });
    return garment;
  }
  // Without a back, or with a panel that cannot be, the cowl alone still can.
  std::string refusal;
  garment.cowl =
      tried([&] { return drafting::draft_cowl_front(*bases.front, cowl_wishes_of(project)); }, refusal);
  if (garment.refusal.empty()) garment.refusal = refusal;
  if (!garment.cowl) return garment;
  garment.pieces = {garment.cowl->front};
  if (garment.cowl->facing) garment.pieces.push_back(*garment.cowl->facing);
  return garment;
}

double cloth_height(const ClothChoice& cloth, const Piece& piece) {
  return piece.fold ? 2.0 * cloth.thickness : cloth.thickness;
}

CuttingWishes cutting_wishes_of(const Project& project, const Piece& piece, const AtTheTable& person) {
  CuttingWishes wishes;
  wishes.height = cloth_height(project.cloth, piece);
  wishes.cloth = project.cloth.colours;
  wishes.blade.diameter = person.blade;
  wishes.blade.cloth = wishes.height;
  wishes.hand = person.hand;
  wishes.band = person.band;
  wishes.inches = person.inches;
  return wishes;
}

std::vector<Cut> strokes_of(const Piece& piece, const Blade& blade) {
  return cuts_of(cut_runs(piece), blade, {});
}

Record record_of(const Project& project, const Piece& piece, std::string* why) {
  const auto found = project.cutting.find(piece.name);
  if (found == project.cutting.end()) return {};
  const Record& record = found->second;
  if (belongs_to(record, piece)) return record;
  if (why != nullptr)
    *why = translated(
        "This piece was changed after cutting it was begun, so what is cut no longer belongs to it. Undo the "
        "change to go on, or begin it anew on fresh cloth.");
  Record fresh;
  fresh.cautions_read_at = record.cautions_read_at;
  return fresh;
}

std::vector<std::string> changed_after_cutting(const Project& project, const Garment& garment) {
  std::vector<std::string> names;
  for (const Piece& piece : garment.pieces) {
    const auto found = project.cutting.find(piece.name);
    if (found != project.cutting.end() && !belongs_to(found->second, piece)) names.push_back(piece.name);
  }
  std::sort(names.begin(), names.end());
  return names;
}

namespace {

std::optional<Missing> lacking_table(const Project& project) {
  if (!project.table.map)
    return Missing{Place::table, translated("Not calibrated yet."), translated("not calibrated")};
  if (project.table.simulated)
    return Missing{Place::table, translated("Only the simulated table so far."),
                   translated("only simulated")};
  return std::nullopt;
}

std::optional<Missing> lacking_pattern(const Project& project, const Bases& bases) {
  if (!bases.front_refusal.empty())
    return Missing{Place::pattern, bases.front_refusal, translated("front is refused")};
  if (!bases.back_refusal.empty())
    return Missing{Place::pattern, bases.back_refusal, translated("back is refused")};
  if (!bases.front)
    return Missing{Place::pattern, translated("No base front is chosen yet."), translated("not chosen")};
  if (!sample_measures(project.pattern).empty())
    return Missing{Place::pattern, translated("Some of the body measures are still the sample's, not yours."),
                   translated("sample measures")};
  if (!bases.back && project.top.back)
    return Missing{Place::pattern,
                   translated("The base back is not opened yet, so only the front can be cut."),
                   translated("back is missing")};
  return std::nullopt;
}

std::optional<Missing> lacking_cloth(const Project& project, const Garment& garment) {
  if (const std::string wide = too_wide_for_cloth(project, garment); !wide.empty())
    return Missing{Place::cloth, wide, translated("too narrow")};
  return std::nullopt;
}

std::optional<Missing> lacking_cutting(const Project& project, const Garment& garment) {
  if (garment.pieces.empty())
    return Missing{Place::cutting, translated("There is no piece to cut yet."), translated("no piece yet")};
  const int all = static_cast<int>(garment.pieces.size()), done = pieces_cut(project, garment.pieces);
  if (done == all) return std::nullopt;
  return Missing{Place::cutting,
                 tr("%1 of %2 pieces are still to cut.").arg(all - done).arg(all).toStdString(),
                 tr("%1 of %2 to cut").arg(all - done).arg(all).toStdString()};
}

}  // namespace

std::vector<Missing> missing_in(const Project& project, const Garment& garment) {
  std::vector<Missing> missing;
  const auto add = [&](std::optional<Missing> gap) {
    if (gap) missing.push_back(std::move(*gap));
  };
  add(lacking_table(project));
  add(lacking_pattern(project, garment.bases));
  if (!garment.refusal.empty()) add(Missing{Place::cowl, garment.refusal, translated("refused as it is")});
  add(lacking_cloth(project, garment));
  add(lacking_cutting(project, garment));
  if (garment.cowl && !garment.bases.back && project.top.back)
    add(Missing{Place::sewing, translated("Seams and their order follow once there is a base back, too."),
                translated("after the back")});
  return missing;
}

}  // namespace cowlcast::projector
