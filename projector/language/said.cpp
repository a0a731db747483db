#include "projector/language/said.h"

#include <QCoreApplication>

#include "projector/language/language.h"

namespace cowlcast::projector {

QString said(const QString& words) {
  return QCoreApplication::translate(kRooms, words.toUtf8().constData());
}

std::string said(const std::string& words) {
  return QCoreApplication::translate(kRooms, words.c_str()).toStdString();
}

}  // namespace cowlcast::projector
