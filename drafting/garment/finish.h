// Finish: how an edge that is sewn to nothing is made neat, and what to cut for it.
//
//   FinishedEdge top = finished({.kind = FinishKind::band}, "inner panel top", 372.0, false);
//   // top.cut_length of top.cut_width to cut
//
// Common practice, no source, for every figure here: a band or binding is a
// little shorter than its edge so that the edge lies close; elastic that is to
// hold the edge shorter still; ends of a ring are joined by a seam, ends of an
// open edge are caught in the seams beside it.
#pragma once

#include <string>

namespace cowlcast::drafting {

enum class FinishKind {
  turned,   ///< the allowance turned in and stitched; nothing else to cut
  band,     ///< a folded band of the cloth, sewn on with a seam
  binding,  ///< a strip around the raw edge
  elastic   ///< flat elastic on the inside, turned in with the allowance
};

struct Finish {
  FinishKind kind = FinishKind::turned;
  double stretch = 1.08;  ///< edge over what is sewn to it; of no use to a turned edge
  double width = 10.0;    ///< finished width of band or binding, width of the elastic, mm
};

struct FinishedEdge {
  std::string name;
  Finish finish;
  double edge_length = 0.0;  ///< of the whole edge, both sides, mm
  double cut_length = 0.0;   ///< of the strip or elastic, its ends included, mm; 0 when turned
  double cut_width = 0.0;    ///< of the strip, mm; of elastic its own width; 0 when turned
};

/// `ring`: the edge closes on itself, as an armhole does. Throws Refusal for a
/// stretch that is not between 1 and 1.5 or a width not between 4 and 60 mm.
FinishedEdge finished(const Finish& finish, const std::string& name, double edge_length, bool ring);

/// The allowance that the edge needs: 0 under a binding, a seam's 10 mm under a
/// band, ½ in to turn, the elastic's own width and ⅛ in.
double allowance_for(const Finish& finish);

/// "turned", "band", "binding" and "elastic".
std::string finish_name(FinishKind kind);

/// One line for the record.
std::string finish_in_words(const FinishedEdge& edge);

}  // namespace cowlcast::drafting
