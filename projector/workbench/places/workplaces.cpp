#include "projector/workbench/places/workplaces.h"

#include "projector/workbench/places/cloth_place.h"
#include "projector/workbench/places/cowl_place.h"
#include "projector/workbench/places/cutting_place.h"
#include "projector/workbench/places/pattern_place.h"
#include "projector/workbench/places/sewing_place.h"
#include "projector/workbench/places/table_place.h"

namespace cowlcast::projector {

std::vector<Workplace*> make_workplaces(Document& document, Settings& settings, CurrentGarment& garment) {
  return {new TablePlace(document, settings, garment),   new PatternPlace(document, settings, garment),
          new CowlPlace(document, settings, garment),    new ClothPlace(document, settings, garment),
          new CuttingPlace(document, settings, garment), new SewingPlace(document, settings, garment)};
}

}  // namespace cowlcast::projector
