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
  record = waived(record, "because", "2000-01-01T09:00:00Z");
  const Record back = record_from_json(record_to_json(record));
  EXPECT_EQ(record_to_json(back), record_to_json(record));
  EXPECT_EQ(back.waivers.front().reason, "because");
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

TEST(Record, OldOrChangedCalibrationBlocksUntilWaivedOnce) {
  calibration::TableMap map;
  map.made_at = "2000-01-01T08:00:00Z";
  Record record{.piece = "front",
                .table_made_at = map.made_at,
                .laying = {},
                .strokes = 5,
                .cut = 0,
                .seconds = 0,
                .cautions_read_at = "",
                .waivers = {}};
  EXPECT_FALSE(calibration_block(map, record, "2000-01-01T09:00:00Z"));
  const auto stale = calibration_block(map, record, "2000-01-02T09:00:00Z");
  ASSERT_TRUE(stale);
  EXPECT_FALSE(
      calibration_block(map, waived(record, *stale, "2000-01-02T09:00:00Z"), "2000-01-02T15:00:00Z"));
  record.cut = 2;
  map.made_at = "2000-01-01T10:00:00Z";
  const auto anew = calibration_block(map, record, "2000-01-01T11:00:00Z");
  ASSERT_TRUE(anew);
  EXPECT_NE(anew->find("anew"), std::string::npos);
  map.made_at = "";
  record.table_made_at = "";
  EXPECT_TRUE(calibration_block(map, record, "2000-01-01T11:00:00Z"));
}

}  // namespace
}  // namespace cowlcast::projector
