// Over random tables and cloth of 0 to 5 mm: how far drawn lines, stop marks and bands lie from true, when
// the map itself is exactly true.
//
//   drawn_lines [FIRST COUNT]
#include "tests/projector/drawn_lines.h"

#include <cstdio>
#include <cstdlib>
#include <numbers>
#include <random>

using namespace cowlcast;
using namespace cowlcast::projector;

int main(int argc, char** argv) {
  const int first = argc > 1 ? std::atoi(argv[1]) : 1, count = argc > 2 ? std::atoi(argv[2]) : 40;
  const drafting::Piece front = testing::cowl_front(), corners = testing::cornered_piece();
  testing::Drawn all;
  for (int seed = first; seed < first + count; ++seed) {
    std::mt19937 dice(static_cast<unsigned>(seed));
    std::uniform_real_distribution<double> share(0.0, 1.0);
    const double cloth = 5.0 * share(dice), angle = 2.0 * std::numbers::pi * share(dice);
    const double blade = kBladeSizes[static_cast<size_t>(4.0 * share(dice)) % 4];
    const testing::TrueTable table = testing::true_table(static_cast<unsigned>(seed));
    const testing::DrawnLines at(table, cloth, 2.0);
    testing::Drawn drawn;
    at.lines_of(front, angle, drawn);
    at.marks_of(corners, angle, {blade, std::max(0.3, cloth), 0.5}, drawn);
    at.marks_of(front, angle, {blade, std::max(0.3, cloth), 0.5}, drawn);
    std::printf(
        "%4d %4d x %4d, cloth %.1f mm, blade %2.0f: lines %.3f %.3f of %zu, %d missing; stops %.3f of %zu; "
        "bands %.3f of %zu\n",
        seed, table.map.width, table.map.height, cloth, blade, drawn.lines.share(0.95), drawn.lines.worst(),
        drawn.lines.mm.size(), drawn.lines.missing, drawn.stops.worst(), drawn.stops.mm.size(),
        drawn.bands.worst(), drawn.bands.mm.size());
    std::fflush(stdout);
    for (auto part : {&testing::Drawn::lines, &testing::Drawn::stops, &testing::Drawn::bands}) {
      testing::Strays &into = all.*part, &from = drawn.*part;
      into.mm.insert(into.mm.end(), from.mm.begin(), from.mm.end());
      into.missing += from.missing;
    }
  }
  std::printf(
      "all %d: lines %.3f (95 %%) %.3f (worst) mm at %zu places, %d missing; stop marks %.3f %.3f at %zu; "
      "bands %.3f %.3f at %zu\n",
      count, all.lines.share(0.95), all.lines.worst(), all.lines.mm.size(), all.lines.missing,
      all.stops.share(0.95), all.stops.worst(), all.stops.mm.size(), all.bands.share(0.95), all.bands.worst(),
      all.bands.mm.size());
  return 0;
}
