#include "drafting/garment/finish.h"

#include <cstdio>

#include "drafting/piece/assemble.h"
#include "drafting/refusal.h"

namespace cowlcast::drafting {
namespace {

// Common practice, no source.
constexpr double seam = 10.0;     // mm, joins a ring's ends and a band to its edge
constexpr double tail = 13.0;     // mm of each end of an open edge's strip, caught in the seam beside it
constexpr double turn_in = 12.7;  // mm, half an inch
constexpr double beside = 3.175;  // mm between elastic and cut edge, an eighth of an inch

}  // namespace

std::string finish_name(FinishKind kind) {
  switch (kind) {
    case FinishKind::band:
      return "band";
    case FinishKind::binding:
      return "binding";
    case FinishKind::elastic:
      return "elastic";
    case FinishKind::turned:
      break;
  }
  return "turned";
}

FinishedEdge finished(const Finish& finish, const std::string& name, double edge_length, bool ring) {
  if (!(finish.stretch >= 1.0 && finish.stretch <= 1.5)) {
    throw Refusal("The stretch of the " + name + "'s " + finish_name(finish.kind) +
                  " must be between 1 and 1.5 times its length. Give it in between.");
  }
  if (!(finish.width >= 4.0 && finish.width <= 60.0)) {
    throw Refusal("The width of the " + name + "'s " + finish_name(finish.kind) + " must be between " +
                  mm_in_words(4.0) + " and " + mm_in_words(60.0) + ". Give it in between.");
  }
  FinishedEdge edge{name, finish, edge_length, 0.0, 0.0};
  if (finish.kind == FinishKind::turned) return edge;
  edge.cut_length = edge_length / finish.stretch + 2.0 * (ring ? seam : tail);
  // A band is doubled, with a seam at both raw edges; a binding goes around the edge and is turned in on both
  // sides.
  edge.cut_width = finish.kind == FinishKind::band      ? 2.0 * (finish.width + seam)
                   : finish.kind == FinishKind::binding ? 4.0 * finish.width
                                                        : finish.width;
  return edge;
}

double allowance_for(const Finish& finish) {
  switch (finish.kind) {
    case FinishKind::band:
      return seam;
    case FinishKind::binding:
      return 0.0;
    case FinishKind::elastic:
      return finish.width + beside;
    case FinishKind::turned:
      break;
  }
  return turn_in;
}

std::string finish_in_words(const FinishedEdge& edge) {
  char text[200];
  if (edge.finish.kind == FinishKind::turned) {
    std::snprintf(text, sizeof text, "%-19s %8.1f mm long, turned in and stitched", edge.name.c_str(),
                  edge.edge_length);
  } else {
    std::snprintf(text, sizeof text, "%-19s %8.1f mm long, %s to cut %.1f mm long and %.1f mm wide",
                  edge.name.c_str(), edge.edge_length, finish_name(edge.finish.kind).c_str(), edge.cut_length,
                  edge.cut_width);
  }
  return text;
}

}  // namespace cowlcast::drafting
