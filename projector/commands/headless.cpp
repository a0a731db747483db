#include "projector/commands/headless.h"

#include <QByteArray>

namespace cowlcast::projector {
namespace {

int argument_count = 1;
char program_name[] = "cowlcast";
char* arguments[] = {program_name, nullptr};

}  // namespace

Headless::Headless() {
  if (QCoreApplication::instance() != nullptr) return;
  qputenv("QT_QPA_PLATFORM", QByteArrayLiteral("offscreen"));
  application_ = std::make_unique<QGuiApplication>(argument_count, arguments);
}

Headless::~Headless() = default;

}  // namespace cowlcast::projector
