#include "projector/frame/png.h"

#include <QBuffer>
#include <QByteArray>
#include <cmath>
#include <stdexcept>

namespace cowlcast::projector {
namespace {

std::string encoded(const QImage& picture) {
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  if (!picture.save(&buffer, "PNG")) throw std::runtime_error("A picture could not be made into a PNG file.");
  return bytes.toStdString();
}

}  // namespace

std::string png_bytes(const QImage& picture) {
  return encoded(picture.convertToFormat(QImage::Format_RGB888));
}

std::string png_bytes(const cv::Mat& picture, double dots_per_inch) {
  QImage image = image_from(picture);
  if (dots_per_inch > 0.0) {
    const int per_metre = static_cast<int>(std::lround(dots_per_inch / 0.0254));
    image.setDotsPerMeterX(per_metre);
    image.setDotsPerMeterY(per_metre);
  }
  return encoded(image);
}

QImage image_from(const cv::Mat& picture) {
  const bool grey = picture.type() == CV_8UC1;
  if (!grey && picture.type() != CV_8UC3) throw std::runtime_error("A picture of this kind cannot be saved.");
  const QImage view(picture.data, picture.cols, picture.rows, static_cast<qsizetype>(picture.step),
                    grey ? QImage::Format_Grayscale8 : QImage::Format_BGR888);
  return view.copy();
}

cv::Mat bgr_from(const QImage& picture) {
  const QImage bgr = picture.convertToFormat(QImage::Format_BGR888);
  return cv::Mat(bgr.height(), bgr.width(), CV_8UC3, const_cast<uchar*>(bgr.constBits()),
                 static_cast<size_t>(bgr.bytesPerLine()))
      .clone();
}

}  // namespace cowlcast::projector
