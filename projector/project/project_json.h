// The parts of a project as JSON; `project_file.h` makes a file of them. Reading a part throws
// drafting::Refusal or nlohmann's exception; a member that is missing keeps its default.
#pragma once

#include <nlohmann/json.hpp>

#include "projector/project/project.h"

namespace cowlcast::projector {

nlohmann::json pattern_to(const PatternChoice& pattern);
PatternChoice pattern_from(const nlohmann::json& in);

nlohmann::json cowl_to(const drafting::CowlWishes& cowl);
drafting::CowlWishes cowl_from(const nlohmann::json& in);

nlohmann::json top_to(const TopChoice& top);
TopChoice top_from(const nlohmann::json& in);

nlohmann::json cloth_to(const ClothChoice& cloth);
ClothChoice cloth_from(const nlohmann::json& in);

nlohmann::json table_to(const TableChoice& table);
TableChoice table_from(const nlohmann::json& in);

}  // namespace cowlcast::projector
