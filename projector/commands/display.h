// What the commands that show something on the projector's screen share.
#pragma once

#include <QImage>
#include <QScreen>
#include <memory>
#include <opencv2/core.hpp>
#include <string>

class QApplication;

namespace cowlcast::projector {

/// False where windows cannot open.
bool has_display();

/// Qt with windows. Throws std::runtime_error where there is no screen to open one on.
std::unique_ptr<QApplication> open_display();

/// The screen named, or the one used last, or the only one of that size. It is remembered. Throws
/// calibration::Refusal with the list of screens when that does not tell.
QScreen& projector_screen(const std::string& wanted, int width, int height);

/// An 8-bit grey picture for windows.
QImage window_picture(const cv::Mat& grey);

}  // namespace cowlcast::projector
