#include "projector/cutting/record.h"

#include <gtest/gtest.h>

#include "drafting/refusal.h"

namespace cowlcast::projector {
namespace {

TEST(Record, ComesBackFromItsText) {
  Record record{.piece = "front",
                .table_made_at = "2000-01-01T08:00:00Z",
                .laying = {1.5, -2, 0.25, true, 1},
                .strokes = 5,
                .cut = 2,
                .seconds = 61.5,
                .cautions_read_at = "2000-01-01T08:30:00Z",
                .waivers = {}};
  record = waived(record, "because", "2000-01-01T08:00:00Z", "2000-01-01T09:00:00Z");
  const Record back = record_from_json(record_to_json(record));
  EXPECT_EQ(record_to_json(back), record_to_json(record));
  EXPECT_EQ(back.waivers.front().reason, "because");
  EXPECT_EQ(back.waivers.front().table, "2000-01-01T08:00:00Z");
  EXPECT_TRUE(back.laying.mirrored);
}

TEST(Record, DamagedOnesAreRefused) {
  for (const char* text : {"", "{}", "[]", "{\"format\": \"cowlcast cutting record\", \"schema\": 1}"})
    EXPECT_THROW(record_from_json(text), drafting::Refusal) << text;
  Record wrong;
  wrong.cut = 7;
  EXPECT_THROW(record_from_json(record_to_json(wrong)), drafting::Refusal);
}

TEST(Record, TimesAreCountedAsTheCalendarHasThem) {
  EXPECT_EQ(seconds_between("2000-02-28T23:59:59Z", "2000-03-01T00:00:00Z"),
            86401.0);  // 2000 was a leap year
  EXPECT_EQ(seconds_between("1999-12-31T00:00:00Z", "2000-01-01T00:00:00Z"), 86400.0);
  for (const char* text :
       {"", "yesterday", "2000-13-01T00:00:00Z", "2000-01-01T00:00:00", "2001-02-29T00:00:00Z"})
    EXPECT_FALSE(seconds_between(text, "2000-01-01T00:00:00Z")) << text;
}

TEST(Record, CautionsAreDueOnceADay) {
  Record record;
  EXPECT_TRUE(cautions_due(record, "2000-01-01T10:00:00Z"));
  record.cautions_read_at = "2000-01-01T08:00:00Z";
  EXPECT_FALSE(cautions_due(record, "2000-01-01T10:00:00Z"));
  EXPECT_TRUE(cautions_due(record, "2000-01-02T00:00:00Z"));
}

calibration::TableMap made_at(const std::string& when) {
  calibration::TableMap map;
  map.made_at = when;
  return map;
}

TEST(Record, OldOrChangedCalibrationBlocksUntilItIsWaived) {
  const calibration::TableMap map = made_at("2000-01-01T08:00:00Z");
  Record record;
  record.table_made_at = map.made_at;
  record.strokes = 5;
  const auto block = [&](const std::string& now) { return calibration_block(map, {}, record, now); };
  EXPECT_FALSE(block("2000-01-01T09:00:00Z"));
  const auto stale = block("2000-01-02T09:00:00Z");
  ASSERT_TRUE(stale);
  record = waived(record, *stale, map.made_at, "2000-01-02T09:00:00Z");
  EXPECT_FALSE(block("2000-01-02T15:00:00Z"));
  EXPECT_TRUE(block("2000-01-03T15:00:00Z")) << "a waiver is of that day's work";
  EXPECT_TRUE(block("2000-01-02T08:30:00Z")) << "and of no time before";
  EXPECT_EQ(waived(record, *stale, map.made_at, "2000-01-02T09:01:00Z").waivers.size(), 1u);
  EXPECT_EQ(waived(record, *stale, map.made_at, "2000-01-03T15:00:00Z").waivers.size(), 2u);
}

TEST(Record, AWaiverIsOfOneTableAndOfOneReason) {
  const std::string now = "2000-01-03T09:00:00Z";
  calibration::TableMap map = made_at("2000-01-01T08:00:00Z");
  Record record;
  record.table_made_at = map.made_at;
  record.strokes = 5;
  record.cut = 2;
  record = waived(record, *calibration_block(map, {}, record, now), map.made_at, now);
  EXPECT_FALSE(calibration_block(map, {}, record, now));
  // Another table, as old: neither its age nor that it is another was waived.
  map.made_at = "2000-01-01T10:00:00Z";
  auto block = calibration_block(map, {}, record, now);
  ASSERT_TRUE(block);
  EXPECT_NE(block->find("anew"), std::string::npos) << *block;
  EXPECT_NE(block->find("12 hours"), std::string::npos) << "one hides the other: " << *block;
  const std::string age = block->substr(block->find("The table was calibrated more"));
  const std::string anew = block->substr(0, block->find(" " + age));
  EXPECT_EQ(calibration_block(map, {}, waived(record, anew, map.made_at, now), now), age);
  EXPECT_EQ(calibration_block(map, {}, waived(record, age, map.made_at, now), now), anew);
  EXPECT_FALSE(calibration_block(map, {}, waived(record, *block, map.made_at, now), now)) << "both at once";
  // As written before waivers knew their table.
  record.waivers = {{now, *block, ""}};
  EXPECT_EQ(calibration_block(map, {}, record, now), block);
}

TEST(Record, ADateAheadOfTheClockIsNoMissingDate) {
  const auto ahead = calibration_block(made_at("2000-01-01T10:00:00Z"), {}, {}, "2000-01-01T09:00:00Z");
  ASSERT_TRUE(ahead);
  EXPECT_NE(ahead->find("clock"), std::string::npos) << *ahead;
  const auto none = calibration_block(made_at(""), {}, {}, "2000-01-01T09:00:00Z");
  ASSERT_TRUE(none);
  EXPECT_NE(none->find("does not say when"), std::string::npos) << *none;
}

TEST(Record, ACheckThatDidNotAgreeBlocksUntilOneDoes) {
  const std::string now = "2000-01-01T09:00:00Z";
  const calibration::TableMap map = made_at("2000-01-01T08:00:00Z");
  const auto check = [](char from, char to, double mm) {
    return calibration::CheckedReading{{from, to, mm, 0.5}, 1200.0, 1.5};
  };
  std::vector<calibration::CheckedReading> checks{check('A', 'C', 1200.5), check('A', 'C', 1206.0)};
  const auto block = calibration_block(map, checks, {}, now);
  ASSERT_TRUE(block);
  EXPECT_NE(block->find("from A to C the tape read 1206.0 mm where 1200.0"), std::string::npos) << *block;
  const Record all_the_same = waived({}, *block, map.made_at, now);
  EXPECT_FALSE(calibration_block(map, checks, all_the_same, now));
  checks.push_back(check('B', 'D', 1200.0));
  EXPECT_TRUE(calibration_block(map, checks, {}, now)) << "elsewhere it may well lie right";
  checks.push_back(check('A', 'C', 1207.0));
  EXPECT_TRUE(calibration_block(map, checks, all_the_same, now)) << "another reading than was waived";
  checks.push_back(check('C', 'A', 1199.5));
  EXPECT_FALSE(calibration_block(map, checks, {}, now));
}

}  // namespace
}  // namespace cowlcast::projector
