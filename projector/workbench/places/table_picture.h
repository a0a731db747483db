// TablePicture: what each step of calibrating looks like, drawn.
//
//   picture->show_step(TableStep::lay);
//   picture->show_photographs({{image, "IMG_1.jpg"}});     // in place of the drawing of that step
//   picture->show_result(error_picture(map));
#pragma once

#include <QImage>
#include <QWidget>
#include <vector>

namespace cowlcast::projector {

enum class TableStep { print, lay, photograph, calibrate, check, stay };

struct PhotographSeen {
  QImage picture;  ///< small; null: could not be read
  QString name;
};

class TablePicture : public QWidget {
  Q_OBJECT

 public:
  explicit TablePicture(QWidget* parent = nullptr);

  void show_step(TableStep step);
  void show_photographs(std::vector<PhotographSeen> photographs);
  void show_result(const QImage& result);
  /// The figure of light for the check by hand.
  void show_figure(const QImage& figure);

 protected:
  void paintEvent(QPaintEvent* event) override;

 private:
  void paint_photographs(QPainter& painter) const;

  TableStep step_ = TableStep::print;
  std::vector<PhotographSeen> photographs_;
  QImage result_, figure_;
};

}  // namespace cowlcast::projector
