// What tests of the workbench share: places that stand alone, and the event loop run until something is so.
#pragma once

#include <QCoreApplication>
#include <QElapsedTimer>
#include <QTemporaryDir>
#include <QThread>
#include <functional>

#include "projector/workbench/current_garment.h"
#include "projector/workbench/document.h"
#include "projector/workbench/settings.h"

namespace cowlcast::projector::testing {

/// Built with the address sanitizer, the simulated camera draws slower than a watch waits for.
#if defined(__SANITIZE_ADDRESS__)
inline constexpr bool kSanitized = true;
#elif defined(__has_feature)
#if __has_feature(address_sanitizer)
inline constexpr bool kSanitized = true;
#else
inline constexpr bool kSanitized = false;
#endif
#else
inline constexpr bool kSanitized = false;
#endif

/// Runs the event loop until `so` holds; false when it does not within `most_ms`.
inline bool until(const std::function<bool()>& so, int most_ms = 600'000) {
  QElapsedTimer clock;
  clock.start();
  while (!so()) {
    if (clock.elapsed() > most_ms) return false;
    QCoreApplication::processEvents(QEventLoop::AllEvents, 20);
    QThread::msleep(2);
  }
  return true;
}

/// A document with what a place is made of; nothing of it is left behind.
struct Stand {
  QTemporaryDir folder;
  Document document{Keeping{folder.filePath(QStringLiteral("work"))}};
  Settings settings{folder.filePath(QStringLiteral("settings.ini"))};
  CurrentGarment garment{document};
  ~Stand() { document.give_up(); }
};

}  // namespace cowlcast::projector::testing
