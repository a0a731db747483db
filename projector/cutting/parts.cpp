#include "projector/cutting/parts.h"

#include <cmath>
#include <cstdio>
#include <numbers>
#include <utility>

#include "drafting/refusal.h"

namespace cowlcast::projector {
namespace {

constexpr double kTurned = 2.0 * std::numbers::pi / 180.0;

const char* const kFindIt =
    "Click on your marks, or move the cloth until they meet the crosses and press space.";

CuttingView to_be_found(CuttingView view) {
  view.pointed.clear();
  view.to_find = true;
  view.laying = view.parts[view.part].laying;
  view.kept = view.laying;
  view.doubt.reset();
  view.phase = Phase::laying;
  view.message = kFindIt;
  return view;
}

CuttingView as_left(CuttingView view) {
  PartBefore left = std::move(view.before.back());
  view.before.pop_back();
  --view.part;
  view.laying = left.laying;
  view.kept = left.kept;
  view.phase = left.phase;
  view.plan = std::move(left.plan);
  view.ordered = left.ordered;
  view.crosses = std::move(left.crosses);
  view.doubt = left.doubt;
  view.to_find = false;
  view.message = "As it was before N. If the cloth was moved meanwhile, lay its marks on the crosses again.";
  return view;
}

std::string listed(const std::vector<double>& lengths) {
  std::string text;
  for (const double length : lengths) {
    char number[32];
    std::snprintf(number, sizeof number, "%s%.1f", text.empty() ? "" : ", ", length);
    text += number;
  }
  return text;
}

std::string listed(const std::vector<size_t>& which) {
  std::string text;
  for (const size_t i : which) text += (text.empty() ? "" : ", ") + std::to_string(i + 1);
  return text;
}

std::string error_in_words(const CuttingView& view) {
  return " The cut lines of this part lie within " + in_mm(part_error(view).value_or(0.0)) + ".";
}

bool in_order(const std::vector<size_t>& which) {
  for (size_t i = 0; i < which.size(); ++i)
    if (which[i] != i) return false;
  return true;
}

LayingDoubt with_parts_before(const CuttingView& view, const LayingDoubt& own) {
  const std::optional<LayingDoubt>& earlier = view.before.back().doubt;
  return earlier ? *earlier + own : own;
}

CuttingView met(CuttingView view) {
  view.to_find = false;
  view.kept = view.laying;
  view.doubt = with_parts_before(view, doubt_of_meeting(view.crosses));
  view.message = "Taken as met." + error_in_words(view);
  return view;
}

}  // namespace

CuttingView next_part(CuttingView view) {
  if (view.to_find) {
    view.message = "This part has yet to be found again. Page up goes back to the part before.";
    return view;
  }
  if (view.part + 1 >= view.parts.size()) return view;
  view.before.push_back(
      {view.laying, view.kept, view.phase, view.plan, view.ordered, view.cut, view.crosses, view.doubt});
  view.crosses = view.parts[view.part].chalk;
  ++view.part;
  return to_be_found(std::move(view));
}

CuttingView found_by_marks(CuttingView view, bool asked) {
  if (view.pointed.empty()) {
    view.asked = !asked;
    if (asked) return met(std::move(view));
    view.message = "Do all your marks lie on their crosses? Space once more: yes.";
    return view;
  }
  try {
    const Found found = find_again(view.crosses, view.pointed, view.laying, view.parts[view.part].shown);
    view.laying = found.laying;
    view.kept = view.laying;
    view.doubt = with_parts_before(view, found.doubt);
    view.to_find = false;
    view.message = "Found again: marks " + listed(found.residuals) + " mm off." + error_in_words(view);
    if (!in_order(found.which)) view.message += " They were taken as marks " + listed(found.which) + ".";
  } catch (const drafting::Refusal& refusal) {
    view.message = refusal.what();
    if (view.pointed.size() < 2) return view;  // one more is asked for
  }
  view.pointed.clear();
  return view;
}

CuttingView back_in_parts(CuttingView view) {
  if (!view.pointed.empty()) {
    view.pointed.pop_back();
    view.message = "Mark " + std::to_string(view.pointed.size() + 1) + ": point it out again.";
  } else if (!view.before.empty() && view.cut > cut_before_part(view)) {
    view.message = "Something of this part is cut already, so it stays where it is.";
  } else if (!view.before.empty()) {
    return view.to_find ? as_left(std::move(view)) : to_be_found(std::move(view));
  }
  return view;
}

bool can_go_back_in_parts(const CuttingView& view) {
  return !view.pointed.empty() || (!view.before.empty() && view.cut <= cut_before_part(view));
}

int cut_before_part(const CuttingView& view) {
  return view.before.empty() ? 0 : view.before.back().cut;
}

CuttingView with_parts_as_laid(CuttingView view) {
  if (view.lit.empty() || !view.before.empty() || view.cut > 0 || !is_laying(view)) return view;
  if (!view.parts.empty()) {
    const Laying& divided = view.parts.front().laying;
    const double turn = std::remainder(view.laying.angle - divided.angle, 2.0 * std::numbers::pi);
    if (view.laying.mirrored == divided.mirrored && std::abs(turn) <= kTurned) return view;
  }
  const std::optional<Laying> kept = view.kept;
  try {
    const bool were_parts = !view.parts.empty();
    view = in_parts(view, view.lit);
    if (were_parts || !view.parts.empty()) view.message = "The parts were divided anew.";
  } catch (const drafting::Refusal& refusal) {
    view.parts.clear();
    view.message = refusal.what();
  }
  view.kept = kept;
  return view;
}

std::optional<double> part_error(const CuttingView& view) {
  const bool moved =
      is_laying(view) && view.kept && apart(view.laying, *view.kept, view.piece.cut_line) > 0.05;
  if (view.before.empty() || !view.doubt || moved) return std::nullopt;
  return view.doubt->farthest(view.parts[view.part].shown);
}

CuttingView in_parts(CuttingView view, const Polyline& lit) {
  view.lit = lit;
  view.part = 0;
  view.parts = light_steps(view.piece.cut_line, view.laying, lit);
  if (view.parts.size() < 2) {
    view.parts.clear();
    return view;
  }
  view.laying = view.parts.front().laying;
  view.kept = view.laying;
  return view;
}

CuttingView after_pointing(CuttingView view, const Point& mat) {
  if (!view.to_find) return view;
  view.asked = false;
  view.pointed.push_back(mat);
  if (view.pointed.size() == view.crosses.size()) return found_by_marks(std::move(view), false);
  view.message = "Now mark " + std::to_string(view.pointed.size() + 1) + ".";
  if (view.pointed.size() >= 2) view.message += " Or space: these are all.";
  return view;
}

}  // namespace cowlcast::projector
