#include "projector/language/language.h"

#include <gtest/gtest.h>

#include <QFile>
#include <QRegularExpression>
#include <filesystem>
#include <fstream>
#include <set>
#include <sstream>

namespace cowlcast::projector {
namespace {

namespace fs = std::filesystem;

QString text_of(const fs::path& path) {
  std::ifstream in(path, std::ios::binary);
  std::ostringstream text;
  text << in.rdbuf();
  return QString::fromStdString(text.str());
}

/// Every sentence that the sources give to be translated.
std::set<QString> sentences_in(const QString& source) {
  static const QRegularExpression call(QString::fromLatin1(
      R"re((?:\btr|\btranslated|QT_TRANSLATE_NOOP)\(\s*(?:"[A-Za-z]+",\s*)?((?:"(?:[^"\\]|\\.)*"\s*)+)[,)])re"));
  static const QRegularExpression literal(QString::fromLatin1(R"re("((?:[^"\\]|\\.)*)")re"));
  std::set<QString> found;
  for (auto calls = call.globalMatch(source); calls.hasNext();) {
    QString sentence;
    for (auto parts = literal.globalMatch(calls.next().captured(1)); parts.hasNext();)
      sentence += parts.next().captured(1);
    sentence.replace(QLatin1String("\\n"), QLatin1String("\n"))
        .replace(QLatin1String("\\\""), QLatin1String("\""));
    if (!sentence.isEmpty()) found.insert(sentence);
  }
  return found;
}

TEST(Language, GermanIsCompleteAndKeepsWhatIsFilledIn) {
  SourceTranslator german;
  ASSERT_TRUE(german.read(text_of(fs::path(COWLCAST_SOURCE_DIR) / "data/languages/de.ts").toUtf8()));
  std::set<QString> all;
  for (const char* room :
       {"projector/language", "projector/project", "projector/table", "projector/workbench"})
    for (const auto& file : fs::recursive_directory_iterator(fs::path(COWLCAST_SOURCE_DIR) / room))
      if (file.path().extension() == ".cpp") all.merge(sentences_in(text_of(file.path())));
  EXPECT_GT(all.size(), 250u);
  static const QRegularExpression place(QStringLiteral("%\\d"));
  for (const QString& sentence : all) {
    const QString words = german.sentences().value(sentence);
    EXPECT_FALSE(words.isEmpty()) << sentence.toStdString();
    EXPECT_EQ(words.count(place), sentence.count(place)) << sentence.toStdString();
    EXPECT_LE(words.count(QLatin1Char('&')), 1) << words.toStdString();
  }
  for (auto one = german.sentences().keyBegin(); one != german.sentences().keyEnd(); ++one)
    EXPECT_TRUE(all.count(*one)) << "no longer said: " << one->toStdString();
}

TEST(Language, WhatIsUnfinishedOrBrokenStaysEnglish) {
  SourceTranslator translator;
  EXPECT_TRUE(translator.read(
      "<TS><context><message><source>a</source><translation type=\"unfinished\">b</translation>"
      "</message><message><source>c</source><translation>d</translation></message></context>"
      "</TS>"));
  EXPECT_TRUE(translator.translate("any", "a", nullptr, -1).isEmpty());
  EXPECT_EQ(translator.translate("any", "c", nullptr, -1), QStringLiteral("d"));
  EXPECT_FALSE(translator.read("<TS><context>"));
  EXPECT_TRUE(translator.isEmpty());
}

}  // namespace
}  // namespace cowlcast::projector
