// Which screen to draw on, and what to say when there is none: decided on plain values.
//
//   ScreenChoice choice = choice_of(plugged_in, {"HDMI-1", 1920, 1080});
//   if (choice.index >= 0) draw_on(choice.index); else say(choice.words);
#pragma once

#include <string>
#include <vector>

namespace cowlcast::projector {

/// A screen by its name and its own pixels.
struct ScreenSeen {
  std::string name;
  int width = 0, height = 0;
};

struct ScreenChoice {
  int index = -1;     ///< of the screen to draw lines on; -1: on none
  std::string words;  ///< then: why, and what to do
};

/// Lines belong on the screen of that name only while it has those pixels; on any other they would be wrong.
ScreenChoice choice_of(const std::vector<ScreenSeen>& screens, const ScreenSeen& wanted);

/// The screen to begin on when none is named: `last` when it is plugged in with the wanted pixels, else the
/// only one with those pixels; -1 when that does not tell.
int likely_index(const std::vector<ScreenSeen>& screens, const std::string& last, int width, int height);

/// "1920 × 1080"
std::string pixels_in_words(int width, int height);

/// "HDMI-1, 1920 × 1080"
std::string in_words(const ScreenSeen& screen);

/// "1: HDMI-1, 1920 × 1080; 2: ..."
std::string list_of(const std::vector<ScreenSeen>& screens);

}  // namespace cowlcast::projector
