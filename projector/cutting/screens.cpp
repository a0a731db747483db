#include "projector/cutting/screens.h"

namespace cowlcast::projector {

std::string pixels_in_words(int width, int height) {
  return std::to_string(width) + " × " + std::to_string(height);
}

std::string in_words(const ScreenSeen& screen) {
  return (screen.name.empty() ? "" : screen.name + ", ") + pixels_in_words(screen.width, screen.height);
}

ScreenChoice choice_of(const std::vector<ScreenSeen>& screens, const ScreenSeen& wanted) {
  for (size_t i = 0; i < screens.size(); ++i) {
    const ScreenSeen& screen = screens[i];
    if (screen.name != wanted.name) continue;
    if (screen.width == wanted.width && screen.height == wanted.height) return {static_cast<int>(i), ""};
    return {-1, "The projector's screen " + wanted.name + " now has " +
                    pixels_in_words(screen.width, screen.height) +
                    " pixels, so nothing is drawn. Set it back to " +
                    pixels_in_words(wanted.width, wanted.height) + "; the work is kept."};
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
    list += (i == 0 ? "" : "; ") + std::to_string(i + 1) + ": " + in_words(screens[i]);
  return list;
}

}  // namespace cowlcast::projector
