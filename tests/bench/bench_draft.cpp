// How long one draft takes: the median over many, for a few drapes.
//
//   bench_draft [repeats]
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <vector>

#include "drafting/block/block.h"
#include "drafting/cowl/cowl_front.h"

using namespace cowlcast::drafting;

int main(int count, char** words) {
  const int repeats = count > 1 ? std::max(1, std::atoi(words[1])) : 500;
  const Piece base = block_front(demo_measures());
  for (const double drape : {160.0, 300.0, 480.0, 640.0, 800.0}) {
    CowlWishes wishes;
    wishes.drape = drape;
    std::vector<double> times;
    size_t points = 0;
    for (int i = 0; i < repeats; ++i) {
      const auto start = std::chrono::steady_clock::now();
      const CowlDraft draft = draft_cowl_front(base, wishes);
      times.push_back(
          std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count());
      points = draft.front.seam_line.size();
    }
    std::sort(times.begin(), times.end());
    std::printf("drape %4.0f mm: median %.3f ms, 95 in 100 below %.3f ms, %zu points\n", drape,
                times[times.size() / 2], times[times.size() * 95 / 100], points);
  }
}
