#include "projector/workbench/current_garment.h"

namespace cowlcast::projector {

CurrentGarment::CurrentGarment(Document& document) : document_(document) {
  connect(&document_, &Document::changed, this, [this] { fresh_ = false; });
}

void CurrentGarment::bring_up_to_date() {
  if (fresh_) return;
  const std::optional<drafting::Piece> before = std::move(garment_.bases.front);
  garment_ = garment_of(document_.project());
  missing_ = missing_in(document_.project(), garment_);
  const std::optional<drafting::Piece>& base = garment_.bases.front;
  if (!base || !before || base->seam_line != before->seam_line) last_cowl_.reset();
  if (garment_.cowl) last_cowl_ = garment_.cowl;
  fresh_ = true;
}

const Garment& CurrentGarment::now() {
  bring_up_to_date();
  return garment_;
}

const std::vector<Missing>& CurrentGarment::missing() {
  bring_up_to_date();
  return missing_;
}

const std::optional<drafting::CowlDraft>& CurrentGarment::last_cowl() {
  bring_up_to_date();
  return last_cowl_;
}

}  // namespace cowlcast::projector
