// The guide keeps step with the window: a chapter for each place, and no label that the window does not have.
#include "projector/workbench/guide.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QFile>
#include <QRegularExpression>
#include <QTest>
#include <set>

#include "projector/language/language.h"
#include "projector/workbench/workplace.h"

namespace cowlcast::projector {
namespace {

constexpr Place kPlaces[] = {Place::table, Place::pattern, Place::cowl,
                             Place::cloth, Place::cutting, Place::sewing};

QByteArray bytes_of(const QString& name) {
  QFile file(QStringLiteral(COWLCAST_SOURCE_DIR "/data/") + name);
  return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
}

QString text_of(const QString& language) {
  return QString::fromUtf8(bytes_of(QStringLiteral("guide/%1.md").arg(language)));
}

/// Every sentence of the window, as it is read: without the marks of its keys.
std::set<QString> labels(const QString& language) {
  SourceTranslator translator;
  EXPECT_TRUE(translator.read(bytes_of(QStringLiteral("languages/de.ts"))));
  static const QRegularExpression key_behind(QStringLiteral(" \\(&.\\)$"));
  std::set<QString> all;
  for (auto one = translator.sentences().begin(); one != translator.sentences().end(); ++one) {
    QString words = language == QLatin1String("en") ? one.key() : one.value();
    all.insert(words.remove(key_behind).remove(QLatin1Char('&')));
  }
  return all;
}

class Guide : public ::testing::TestWithParam<const char*> {
 protected:
  void SetUp() override { use_language(language); }
  void TearDown() override { use_language(QStringLiteral("en")); }
  const QString language = QString::fromLatin1(GetParam());
};

TEST_P(Guide, OpensAtThePlaceOneIsAt) {
  GuideWindow guide(language, nullptr);
  for (const Place place : kPlaces) {
    guide.open_at(place);
    QTest::qWait(20);
    EXPECT_EQ(guide.chapter(), title_of(place));
  }
  guide.resize(guide.width() - 200, guide.height() + 60);
  QTest::qWait(20);
  EXPECT_EQ(guide.chapter(), title_of(Place::sewing)) << "another width leaves the reader where she was";
}

TEST_P(Guide, NamesOnlyLabelsThatTheWindowHas) {
  static const QRegularExpression bold(QStringLiteral("\\*\\*([^*]+)\\*\\*"));
  const std::set<QString> all = labels(language);
  int found = 0;
  const QString text = text_of(language);
  const qsizetype end = text.indexOf(QLatin1String("\n## "), text.indexOf(title_of(Place::sewing)) + 1);
  for (auto one = bold.globalMatch(text.left(end)); one.hasNext(); ++found) {
    QString words = one.next().captured(1);
    if (words == QLatin1String("bold") || words == QLatin1String("fetter")) continue;
    if (words.endsWith(QLatin1Char('.'))) words.chop(1);
    EXPECT_TRUE(all.count(words) > 0) << words.toStdString();
  }
  EXPECT_GT(found, 15);
}

TEST_P(Guide, HasAllItsPictures) {
  static const QRegularExpression picture(QStringLiteral("!\\[[^\\]]+\\]\\(([^)]+)\\)"));
  GuideWindow guide(language, nullptr);
  guide.open_at(Place::table);
  QTest::qWait(20);
  const auto* page = guide.findChild<GuidePage*>();
  int found = 0;
  for (auto one = picture.globalMatch(text_of(language)); one.hasNext(); ++found) {
    const QString name = one.next().captured(1);
    const QImage image =
        const_cast<GuidePage*>(page)->loadResource(QTextDocument::ImageResource, QUrl(name)).value<QImage>();
    EXPECT_GT(image.width(), 600) << name.toStdString();
    EXPECT_LE(image.deviceIndependentSize().width(), page->viewport()->width()) << name.toStdString();
  }
  EXPECT_EQ(found, 6);
}

INSTANTIATE_TEST_SUITE_P(EachLanguage, Guide, ::testing::Values("en", "de"),
                         [](const auto& one) { return std::string(one.param); });

TEST(GuideLanguages, AreTheSameChapterByChapter) {
  const auto heads = [](const QString& text) { return text.count(QLatin1String("\n## ")); };
  EXPECT_EQ(heads(text_of(QStringLiteral("en"))), heads(text_of(QStringLiteral("de"))));
}

}  // namespace
}  // namespace cowlcast::projector
