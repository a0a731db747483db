// What the places' canvases show, made from the garment; no widgets here.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "drafting/cowl/cowl_front.h"
#include "drafting/intake/svg_lines.h"
#include "drafting/teaching/steps.h"
#include "projector/project/derive.h"
#include "projector/project/on_cloth.h"
#include "projector/workbench/canvas/scene.h"
#include "projector/workbench/lengths.h"

namespace cowlcast::projector {

/// "centre front" for "centre-front", in the person's language.
QString role_in_words(const std::string& role);

/// Base front and back beside each other, every edge named.
Scene base_scene(const Bases& bases);

/// The lines of a drawing as it was opened, those with a role named; each can be clicked by its id.
Scene drawing_scene(const std::vector<drafting::SvgLine>& lines,
                    const std::map<std::string, std::string>& roles);

/// The slashed base on the left, the opened front on the right with its centre front on x = 0, and their
/// handles. `working` false: the last front that could be drafted, faint, while what is asked for cannot.
Scene cowl_scene(const drafting::CowlDraft& draft, const drafting::CowlWishes& wishes, Units units,
                 bool working);

/// How far left of its own place the slashed base is shown, mm.
double base_shift(const drafting::CowlDraft& draft);

/// All pieces laid open between the selvedges; what is wider than the cloth in the colour of a refusal.
Scene cloth_scene(const ClothUse& use, const ClothChoice& cloth, Units units);

/// A step of the lesson.
Scene step_scene(const drafting::Step& step);

}  // namespace cowlcast::projector
