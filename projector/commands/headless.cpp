#include "projector/commands/headless.h"

#include <QByteArray>
#include <iostream>

namespace cowlcast::projector {
namespace {

int argument_count = 1;
char program_name[] = "cowlcast";
char* arguments[] = {program_name, nullptr};

// Qt's remarks on the machine are nothing to the person who wants a picture.
void keep_quiet(QtMsgType type, const QMessageLogContext&, const QString& message) {
  if (type == QtCriticalMsg || type == QtFatalMsg) std::cerr << message.toStdString() << '\n';
}

}  // namespace

Headless::Headless() {
  if (QCoreApplication::instance() != nullptr) return;
  qputenv("QT_QPA_PLATFORM", QByteArrayLiteral("offscreen"));
  qInstallMessageHandler(keep_quiet);
  application_ = std::make_unique<QGuiApplication>(argument_count, arguments);
}

Headless::~Headless() = default;

}  // namespace cowlcast::projector
