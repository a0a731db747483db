// Qt without a screen, for the commands that only draw pictures.
#pragma once

#include <QGuiApplication>
#include <memory>

namespace cowlcast::projector {

/// Keeps a QGuiApplication on the "offscreen" platform alive; fonts need one.
class Headless {
 public:
  Headless();
  ~Headless();
  Headless(const Headless&) = delete;
  Headless& operator=(const Headless&) = delete;

 private:
  std::unique_ptr<QGuiApplication> application_;
};

}  // namespace cowlcast::projector
