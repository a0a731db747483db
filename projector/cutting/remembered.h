// Remembered: what the person at this machine keeps from one sitting at the table to the next.
//
//   Remembered remembered;
//   remembered.keep_screen("HDMI-1");
//   likely_index(screens_seen(), remembered.screen(), 1920, 1080);   // next time, too
//
// One store for window and command line, where the system keeps such things. It is no part of any garment,
// and losing it costs a choice and a reading of the cautions, no more. Writing never throws: a store that
// cannot be written forgets.
#pragma once

#include <QSettings>
#include <string>

namespace cowlcast::projector {

class Remembered {
 public:
  /// Name of the screen that was the projector last; empty: none yet.
  std::string screen() const { return text(kScreen); }
  void keep_screen(const std::string& name) { keep(kScreen, name); }

  /// When the cautions were read last, as records have times; empty: never.
  std::string cautions_read_at() const { return text(kCautions); }
  void keep_cautions_read_at(const std::string& at) { keep(kCautions, at); }

 private:
  static constexpr auto kScreen = "projector-screen", kCautions = "cautions-read-at";
  std::string text(const char* key) const {
    return store_.value(QLatin1String(key)).toString().toStdString();
  }
  void keep(const char* key, const std::string& value) {
    store_.setValue(QLatin1String(key), QString::fromStdString(value));
  }

  QSettings store_{QStringLiteral("cowlcast"), QStringLiteral("cowlcast")};
};

}  // namespace cowlcast::projector
