// Kills a working window at random moments and says what was lost.
//
//   killed_work --trials 100 --first 1
#include <QCoreApplication>
#include <QTemporaryDir>
#include <algorithm>
#include <cstdio>

#include "tests/projector/workbench/killed_work.h"

int main(int argc, char** argv) {
  using namespace cowlcast::projector;
  const QCoreApplication application(argc, argv);
  const QStringList words = QCoreApplication::arguments();
  if (words.size() == 5 && words[1] == testing::kWorker)
    return testing::work_until_killed(words[2], words[3].toInt(), words[4].toUInt());

  int trials = 100;
  unsigned first = 1;
  for (int i = 1; i + 1 < words.size(); i += 2) {
    if (words[i] == QStringLiteral("--trials")) trials = words[i + 1].toInt();
    if (words[i] == QStringLiteral("--first")) first = words[i + 1].toUInt();
  }
  int unreadable = 0, too_much = 0, changes = 0;
  double most_lost = 0.0;
  for (unsigned seed = first; seed < first + static_cast<unsigned>(trials); ++seed) {
    std::mt19937 random(seed);
    const int life_ms = static_cast<int>(random() % 25'000);
    const QTemporaryDir folder;
    const testing::Killed killed = testing::kill_after(life_ms, folder.path(), Keeping().after_ms, seed);
    std::printf("%u: killed after %.2f s and %d changes; lost the last %.2f s%s%s\n", seed, 1e-3 * life_ms,
                killed.changes, killed.lost_s,
                killed.unreadable.empty() ? "" : "; does not open: ", killed.unreadable.c_str());
    std::fflush(stdout);
    unreadable += killed.unreadable.empty() ? 0 : 1;
    too_much += killed.lost_s > 10.0 ? 1 : 0;
    changes += killed.changes;
    most_lost = std::max(most_lost, killed.lost_s);
  }
  std::printf(
      "%d killed, %d changes: %d do not open again, %d lost more than 10 s, the most lost is %.2f s\n",
      trials, changes, unreadable, too_much, most_lost);
  return unreadable + too_much == 0 ? 0 : 1;
}
