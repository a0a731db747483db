#include "projector/cutting/screens.h"

namespace cowlcast::projector {
namespace {

std::string size_text(int width, int height) {
  return std::to_string(width) + " x " + std::to_string(height);
}

}  // namespace

ScreenChoice choice_of(const std::vector<ScreenSeen>& screens, const ScreenSeen& wanted) {
  for (size_t i = 0; i < screens.size(); ++i) {
    const ScreenSeen& screen = screens[i];
    if (screen.name != wanted.name) continue;
    if (screen.width == wanted.width && screen.height == wanted.height) return {static_cast<int>(i), ""};
    return {-1, "The projector's screen " + wanted.name + " now has " +
                    size_text(screen.width, screen.height) + " pixels, so nothing is drawn. Set it back to " +
                    size_text(wanted.width, wanted.height) + "; the work is kept."};
  }
  return {-1, "The projector's screen " + wanted.name +
                  " is gone. Plug it in or switch it on again; the work is kept."};
}

int likely_index(const std::vector<ScreenSeen>& screens, const std::string& last, int width, int height) {
  int only = -1, fitting = 0;
  for (size_t i = 0; i < screens.size(); ++i) {
    if (screens[i].width != width || screens[i].height != height) continue;
    if (screens[i].name == last) return static_cast<int>(i);
    only = static_cast<int>(i);
    ++fitting;
  }
  return fitting == 1 ? only : -1;
}

std::string list_of(const std::vector<ScreenSeen>& screens) {
  std::string list;
  for (size_t i = 0; i < screens.size(); ++i)
    list += (i == 0 ? "" : "; ") + std::to_string(i + 1) + ": " + screens[i].name + ", " +
            size_text(screens[i].width, screens[i].height);
  return list;
}

}  // namespace cowlcast::projector
