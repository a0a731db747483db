// CurrentGarment: what follows from the document's project, worked out once a change.
//
//   CurrentGarment garment(document);
//   if (garment.now().cowl) show(garment.now().cowl->front);
//
// Shared by the places, so that a drag drafts once and not once a place.
#pragma once

#include <QObject>
#include <optional>

#include "projector/project/derive.h"
#include "projector/workbench/document.h"

namespace cowlcast::projector {

class CurrentGarment : public QObject {
  Q_OBJECT

 public:
  explicit CurrentGarment(Document& document);

  const Garment& now();
  const std::vector<Missing>& missing();
  /// The last cowl that could be drafted from this base, for showing beside a refusal; none when the base
  /// has changed since.
  const std::optional<drafting::CowlDraft>& last_cowl();

 private:
  void bring_up_to_date();

  Document& document_;
  bool fresh_ = false;
  Garment garment_;
  std::vector<Missing> missing_;
  std::optional<drafting::CowlDraft> last_cowl_;
};

}  // namespace cowlcast::projector
