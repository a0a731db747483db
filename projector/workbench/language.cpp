#include "projector/workbench/language.h"

#include <QCoreApplication>
#include <QFile>
#include <QXmlStreamReader>

/// The files that are linked in with this library must be made known by name.
static void make_languages_known() {
  Q_INIT_RESOURCE(languages);
}

namespace cowlcast::projector {
namespace {

/// Qt asks for the names of keys by itself, wherever a shortcut is shown.
[[maybe_unused]] constexpr const char* keys[] = {
    QT_TRANSLATE_NOOP("QShortcut", "Ctrl"), QT_TRANSLATE_NOOP("QShortcut", "Shift"),
    QT_TRANSLATE_NOOP("QShortcut", "Return"), QT_TRANSLATE_NOOP("QShortcut", "Backspace")};

}  // namespace

bool SourceTranslator::read(const QByteArray& ts) {
  sentences_.clear();
  QXmlStreamReader xml(ts);
  QString source;
  while (!xml.atEnd()) {
    if (xml.readNext() != QXmlStreamReader::StartElement) continue;
    if (xml.name() == QLatin1String("source")) {
      source = xml.readElementText();
    } else if (xml.name() == QLatin1String("translation")) {
      const bool finished = xml.attributes().value(QLatin1String("type")).isEmpty();
      const QString words = xml.readElementText();
      if (finished && !words.isEmpty()) sentences_.insert(source, words);
    }
  }
  if (xml.hasError()) sentences_.clear();
  return !xml.hasError();
}

QString SourceTranslator::translate(const char*, const char* source, const char*, int) const {
  return sentences_.value(QString::fromUtf8(source));
}

void use_language(const QString& code) {
  static SourceTranslator translator;
  QCoreApplication::removeTranslator(&translator);
  if (code == QLatin1String("en")) return;
  make_languages_known();
  QFile file(QStringLiteral(":/languages/%1.ts").arg(code));
  if (file.open(QIODevice::ReadOnly) && translator.read(file.readAll()))
    QCoreApplication::installTranslator(&translator);
}

}  // namespace cowlcast::projector
