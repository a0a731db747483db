// What the rooms say, in German: nothing they say is left out, and real refusals come out whole.
#include "projector/language/rooms.h"

#include <gtest/gtest.h>

#include <QFile>
#include <QRegularExpression>
#include <filesystem>
#include <functional>
#include <set>

#include "calibration/refusal.h"
#include "calibration/solve/calibrate.h"
#include "drafting/block/block.h"
#include "drafting/block/sizes.h"
#include "drafting/cowl/cowl_front.h"
#include "drafting/intake/svg_base.h"
#include "drafting/refusal.h"
#include "drafting/teaching/steps.h"
#include "projector/cutting/view.h"
#include "projector/language/language.h"
#include "projector/language/said.h"

namespace cowlcast::projector {
namespace {

namespace fs = std::filesystem;

QString text_of(const fs::path& path) {
  QFile file(QString::fromStdString(path.string()));
  return file.open(QIODevice::ReadOnly) ? QString::fromUtf8(file.readAll()) : QString();
}

QHash<QString, QString> sentences_of(const char* name) {
  SourceTranslator translator;
  EXPECT_TRUE(translator.read(text_of(fs::path(COWLCAST_SOURCE_DIR) / "data/languages" / name).toUtf8()));
  return translator.sentences();
}

/// Printed, written into files, or drawn for the simulated room alone: these stay English.
bool stays_english(const std::string& file) {
  for (const char* room : {"virtual_table", "export/", "sheet/draw", "watch/edge_tags", "steps_export",
                           "piece_json", "hang_svg"})
    if (file.find(room) != std::string::npos) return true;
  return false;
}

/// Runs of at least three words within the string literals of a source, parted where something is filled
/// in and after full stops.
std::set<QString> runs_of_words(QString source) {
  static const QRegularExpression comment(QStringLiteral("//[^\n]*"));
  static const QRegularExpression call(QString::fromLatin1(
      R"re((\b(?:invalid_argument|logic_error|runtime_error|static_assert)\([^;]*?)?((?:"(?:[^"\\\n]|\\.)*"\s*)+))re"));
  static const QRegularExpression literal(QString::fromLatin1(R"re("((?:[^"\\]|\\.)*)")re"));
  static const QRegularExpression parting(
      QString::fromLatin1(R"re(%-?[0-9.*]*[a-z]+\b(?![a-z])|\\n|(?<=[.!?:])\s+(?=[A-Z])|[<>{}]|\\")re"));
  static const QRegularExpression three(QStringLiteral("[A-Za-z']+[ ,;]+[A-Za-z']+[ ,;]+[A-Za-z']+"));
  std::set<QString> found;
  for (auto calls = call.globalMatch(source.remove(comment)); calls.hasNext();) {
    const auto one = calls.next();
    if (!one.captured(1).isEmpty()) continue;
    QString words;
    for (auto parts = literal.globalMatch(one.captured(2)); parts.hasNext();)
      words += parts.next().captured(1);
    for (QString run : words.split(parting, Qt::SkipEmptyParts)) {
      run = run.trimmed();
      while (!run.isEmpty() && (run.back().isPunct() || run.back().isSpace())) run.chop(1);
      while (!run.isEmpty() && (run.front().isPunct() || run.front().isSpace())) run.remove(0, 1);
      if (three.match(run).hasMatch()) found.insert(run);
    }
  }
  return found;
}

TEST(Rooms, NothingTheySayIsLeftOut) {
  QString all;
  for (const char* name : {"de.ts", "de-rooms.ts"}) {
    const auto sentences = sentences_of(name);
    for (auto one = sentences.begin(); one != sentences.end(); ++one) all += one.key() + QLatin1Char('\n');
  }
  size_t asked = 0;
  for (const char* room : {"calibration", "drafting", "projector/blade", "projector/cutting",
                           "projector/frame", "projector/guard", "projector/teaching"})
    for (const auto& file : fs::recursive_directory_iterator(fs::path(COWLCAST_SOURCE_DIR) / room)) {
      if (file.path().extension() != ".cpp" || stays_english(file.path().string())) continue;
      for (const QString& run : runs_of_words(text_of(file.path()))) {
        if (run.startsWith(QLatin1String("cowlcast ")) || run.endsWith(QLatin1String("in millimetres")))
          continue;  // in files
        ++asked;
        EXPECT_TRUE(all.contains(run)) << file.path().filename() << ": " << run.toStdString();
      }
    }
  EXPECT_GT(asked, 300u);
}

TEST(Rooms, WhatIsFilledInIsKept) {
  static const QRegularExpression gap(QStringLiteral("%[1-9]"));
  const auto sentences = sentences_of("de-rooms.ts");
  for (auto one = sentences.begin(); one != sentences.end(); ++one) {
    std::set<QString> english, german;
    for (auto gaps = gap.globalMatch(one.key()); gaps.hasNext();) english.insert(gaps.next().captured());
    for (auto gaps = gap.globalMatch(one.value()); gaps.hasNext();) german.insert(gaps.next().captured());
    EXPECT_EQ(english, german) << one.key().toStdString();
  }
}

TEST(Rooms, SayNamesNumbersAndSentencesWithinSentences) {
  RoomSentences rooms;
  rooms.add(QStringLiteral("The %1 of the %2 is %3 mm long."), QStringLiteral("%3 mm lang: %1 (%2)."));
  rooms.add(QStringLiteral("hem"), QStringLiteral("Saum"));
  rooms.add(QStringLiteral("Change it."), QStringLiteral("Ändern Sie das."));
  EXPECT_EQ(rooms.said(QStringLiteral("The hem of the sail is 12.5 mm long. Change it.")),
            QStringLiteral("12.5 mm lang: Saum (sail). Ändern Sie das."));
  rooms.add(QStringLiteral("The path \"%1\" is empty."), QStringLiteral("Der Pfad „%1“ ist leer."));
  EXPECT_EQ(rooms.said(QStringLiteral("The path \"hem\" is empty.")),
            QStringLiteral("Der Pfad „hem“ ist leer."));
  EXPECT_EQ(rooms.said(QStringLiteral("HEM\n\n  hem")), QStringLiteral("SAUM\n\n  Saum"));
  EXPECT_EQ(rooms.said(QStringLiteral("Nobody knows this. Change it.")),
            QStringLiteral("Nobody knows this. Ändern Sie das."));
}

/// What a refusal says; empty when nothing was refused.
std::string refusal_of(const std::function<void()>& act) {
  try {
    act();
  } catch (const drafting::Refusal& reason) {
    return reason.what();
  } catch (const calibration::Refusal& reason) {
    return reason.what();
  }
  return {};
}

class InGerman : public ::testing::Test {
 protected:
  void SetUp() override { use_language(QStringLiteral("de")); }
  void TearDown() override { use_language(QStringLiteral("en")); }

  /// Whether every sentence was found. German has none of these words.
  static void expect_german(const std::string& english) {
    ASSERT_FALSE(english.empty());
    static const QRegularExpression words(
        QStringLiteral("\\b(the|is|are|and|of|with|that|it|would|must|which|from)\\b"));
    const QString german = said(QString::fromStdString(english));
    EXPECT_FALSE(words.match(german).hasMatch()) << english << "\n" << german.toStdString();
  }
};

TEST_F(InGerman, RefusalsOfTheDraft) {
  const drafting::Piece base = drafting::block_front(drafting::measures_of_size("12"));
  const auto draft = [&](const std::function<void(drafting::CowlWishes&)>& wish) {
    drafting::CowlWishes wishes;
    wish(wishes);
    expect_german(refusal_of([&] { drafting::draft_cowl_front(base, wishes); }));
  };
  draft([](auto& w) { w.drape = 1500.0; });
  draft([](auto& w) { w.drape = 100.0; });
  draft([](auto& w) { w.drape = -1.0; });
  draft([](auto& w) { w.neckline_drop = 900.0; });
  draft([](auto& w) { w.facing_depth = 400.0; });
  draft([](auto& w) { w.slash_count = 9; });
  draft([](auto& w) { w.allowances["armhole"] = 300.0; });
  draft([](auto& w) { w.allowances["sleeve"] = 10.0; });
  draft([](auto& w) { w.set_openings = {0.4, 0.4, 0.4}; });
  draft([](auto& w) { w.cloth_width = 100.0; });
  expect_german(refusal_of([] { drafting::measures_of_size("13"); }));
}

TEST_F(InGerman, RefusalsOfDrawings) {
  const auto read = [](const std::string& svg) {
    expect_german(refusal_of([&] { drafting::base_front_from_svg(svg); }));
  };
  read("no drawing");
  read("<a/>");
  const std::string good = text_of(fs::path(COWLCAST_SOURCE_DIR) / "data/demo-base.svg").toStdString();
  const auto changed = [&](const std::string& from, const std::string& to) {
    std::string svg = good;
    const size_t at = svg.find(from);
    ASSERT_NE(at, std::string::npos) << from;
    read(svg.replace(at, from.size(), to));
  };
  changed("id=\"hem\"", "id=\"heem\"");
  changed("mm\"", "parsecs\"");
  changed(" d=\"M", " d=\"X");
}

TEST_F(InGerman, RefusalsOfTheTable) {
  expect_german(refusal_of([] { calibration::calibrate({}, {}); }));
  calibration::CalibrationRequest request;
  request.width = 1920;
  request.height = 1080;
  request.rulers = calibration::Rulers{120.0, 180.0};
  expect_german(refusal_of([&] { calibration::calibrate({}, request); }));
}

TEST_F(InGerman, WordsAtTheTableAndStepsOfTheLesson) {
  for (const std::string& caution : cautions()) expect_german(caution);
  EXPECT_EQ(said(std::string("STROKE 2 OF 5: SIDE SEAM")), "ZUG 2 VON 5: SEITENNAHT");
  EXPECT_EQ(said(std::string("then: facing edge")), "dann: Belegkante");
}

}  // namespace
}  // namespace cowlcast::projector
