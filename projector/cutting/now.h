// The present time, as records have it: "2000-01-31T09:30:00Z".
#pragma once

#include <QDateTime>
#include <string>

namespace cowlcast::projector {

inline std::string present_time() {
  return QDateTime::currentDateTimeUtc().toString(QStringLiteral("yyyy-MM-ddTHH:mm:ssZ")).toStdString();
}

}  // namespace cowlcast::projector
