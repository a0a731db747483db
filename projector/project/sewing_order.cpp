#include "projector/project/sewing_order.h"

#include <QCoreApplication>
#include <algorithm>

namespace cowlcast::projector {
namespace {

using drafting::FinishKind;
using drafting::Top;

QString tr(const char* text) {
  return QCoreApplication::translate("sewing_order", text);
}

std::string translated(const char* text) {
  return tr(text).toStdString();
}

void add_back_neck(std::vector<std::string>& steps, const Top& top) {
  if (top.back_cowl) {
    steps.push_back(translated("Turn the back's facing in along its cowl edge and pin it, as the front's."));
  } else if (top.elastic.elastic_length > 0.0) {
    steps.push_back(
        translated("Set the clear elastic to the back neckline, stretched a little, and turn it in."));
  }
}

void add_cowl(std::vector<std::string>& steps, const Top& top) {
  steps.push_back(top.cowl.facing
                      ? translated("Sew the facing to the cowl edge, right sides together, turn it "
                                   "inside and pin it along the shoulders.")
                      : translated("Turn the front's facing inside along the cowl edge; do not press "
                                   "the fold. Pin it along the shoulders."));
  if (top.cowl.tacked_length > 0.0)
    steps.push_back(
        translated("Tack up the front's tuck at its drill marks, so that its side seams are as long as the "
                   "back's."));
}

void add_inner_panel(std::vector<std::string>& steps, const Top& top) {
  if (!top.camisole) return;
  steps.push_back(translated("Finish the inner panel's top edge and turn up its hem."));
  steps.push_back(
      translated("Lay the inner panel under the wrong side of the front, side seams and armholes edge to "
                 "edge, its hem at the front's drill mark, and baste both there."));
}

void add_armholes(std::vector<std::string>& steps, const Top& top) {
  const bool sleeves = std::any_of(top.carried.begin(), top.carried.end(),
                                   [](const auto& piece) { return drafting::has_edge(piece, "sleeve-cap"); });
  if (sleeves) steps.push_back(translated("Set the sleeves into the open armholes, notch to notch."));
  steps.push_back(sleeves ? translated("Sew each side seam and sleeve seam in one, notch to notch.")
                          : translated("Sew the side seams, notch to notch."));
  if (sleeves) return;
  for (const drafting::FinishedEdge& edge : top.finishes)
    if (edge.name == "an armhole")
      steps.push_back(
          edge.finish.kind == FinishKind::turned
              ? translated("Turn the armholes in and stitch them.")
              : translated("Close each armhole's strip to a ring, set it on, stretched evenly, and finish "
                           "it."));
}

}  // namespace

std::vector<std::string> sewing_order(const Top& top) {
  std::vector<std::string> steps{
      translated("Mark notches and drill marks on every piece before it is moved.")};
  add_back_neck(steps, top);
  add_cowl(steps, top);
  add_inner_panel(steps, top);
  steps.push_back(
      translated("Sew the shoulders: the back lies between the front and its facing, so that the facing's "
                 "ends are caught. Turn it out."));
  add_armholes(steps, top);
  steps.push_back(
      translated("Turn up the hem. Try the top on, let the cowl fall, and tack its facing at the shoulders "
                 "if it wants to roll out."));
  return steps;
}

}  // namespace cowlcast::projector
