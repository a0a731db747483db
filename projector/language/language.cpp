#include "projector/language/language.h"

#include <QCoreApplication>
#include <QFile>
#include <QXmlStreamReader>
#include <cstring>
#include <optional>

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

using Sentences = QHash<QString, QString>;

/// None when the text is no .ts file.
std::optional<Sentences> sentences_of(const QByteArray& ts) {
  Sentences all;
  QXmlStreamReader xml(ts);
  QString source;
  while (!xml.atEnd()) {
    if (xml.readNext() != QXmlStreamReader::StartElement) continue;
    if (xml.name() == QLatin1String("source")) {
      source = xml.readElementText();
    } else if (xml.name() == QLatin1String("translation")) {
      const bool finished = xml.attributes().value(QLatin1String("type")).isEmpty();
      const QString words = xml.readElementText();
      if (finished && !words.isEmpty()) all.insert(source, words);
    }
  }
  if (xml.hasError()) return std::nullopt;
  return all;
}

QByteArray file_of(const QString& name) {
  QFile file(QStringLiteral(":/languages/%1.ts").arg(name));
  return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
}

}  // namespace

bool SourceTranslator::read(const QByteArray& ts) {
  const std::optional<Sentences> all = sentences_of(ts);
  sentences_ = all.value_or(Sentences());
  return all.has_value();
}

bool SourceTranslator::read_rooms(const QByteArray& ts) {
  const std::optional<Sentences> all = sentences_of(ts);
  rooms_.clear();
  if (!all) return false;
  for (auto one = all->begin(); one != all->end(); ++one) rooms_.add(one.key(), one.value());
  for (auto one = sentences_.begin(); one != sentences_.end(); ++one)
    if (!one.key().contains(QLatin1Char('%'))) rooms_.add(one.key(), one.value());  // names of edges
  return true;
}

QString SourceTranslator::translate(const char* context, const char* source, const char*, int) const {
  const QString words = QString::fromUtf8(source);
  return std::strcmp(context, kRooms) == 0 ? rooms_.said(words) : sentences_.value(words);
}

void use_language(const QString& code) {
  static SourceTranslator translator;
  QCoreApplication::removeTranslator(&translator);
  if (code == QLatin1String("en")) return;
  make_languages_known();
  if (translator.read(file_of(code)) && translator.read_rooms(file_of(code + QStringLiteral("-rooms"))))
    QCoreApplication::installTranslator(&translator);
}

}  // namespace cowlcast::projector
