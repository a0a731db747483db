// A picture full screen on the projector, one of its pixels to one of the projector's.
//
//   PictureWindow window(*screen, target);
//   window.key = [&](int pressed) { ... };
//   window.open();
#pragma once

#include <QImage>
#include <QScreen>
#include <QWidget>
#include <functional>

namespace cowlcast::projector {

class PictureWindow : public QWidget {
 public:
  /// Throws calibration::Refusal, with the list of screens, when the screen has other pixels than the
  /// picture.
  PictureWindow(QScreen& screen, const QImage& picture);

  /// Full screen on its screen.
  void open();

  /// Another picture of the same size.
  void show_picture(const QImage& picture);
  const QImage& picture() const { return picture_; }

  /// Called with Qt's key for every key but Escape, which closes.
  std::function<void(int)> key;

 protected:
  void paintEvent(QPaintEvent* event) override;
  void keyPressEvent(QKeyEvent* event) override;

 private:
  QImage picture_;
  QString screen_name_;
};

}  // namespace cowlcast::projector
