// What the commands that show something on the projector's screen share.
#pragma once

#include <QImage>
#include <QScreen>
#include <functional>
#include <memory>
#include <opencv2/core.hpp>
#include <string>

#include "calibration/camera/frame_source.h"
#include "projector/showing/picture_window.h"

class QApplication;

namespace cowlcast::projector {

/// False where windows cannot open.
bool has_display();

/// Qt with windows. Throws std::runtime_error where there is no screen to open one on.
std::unique_ptr<QApplication> open_display();

/// The screen named, or the one used last, or the only one of that size. It is remembered. Throws
/// calibration::Refusal with the list of screens when that does not tell.
QScreen& projector_screen(const std::string& wanted, int width, int height);

/// Shows `window` and hands each new frame of a camera to `look`, until the window is closed or a film ends.
/// What `look` answers, or what is amiss with the camera, is told on standard output, once each; the last of
/// it is returned. Passes on what `look` throws.
std::string show_and_look(PictureWindow& window, calibration::CameraFeed& feed,
                          const std::function<std::string(const calibration::CameraFrame&)>& look);

/// An 8-bit grey picture for windows.
QImage window_picture(const cv::Mat& grey);

}  // namespace cowlcast::projector
