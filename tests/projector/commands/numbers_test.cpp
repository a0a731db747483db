#include "projector/commands/numbers.h"

#include <gtest/gtest.h>

#include <clocale>
#include <numbers>

namespace cowlcast::projector {
namespace {

TEST(Numbers, LengthsInTheUnitsPeopleType) {
  EXPECT_EQ(length_mm("480"), 480.0);
  EXPECT_EQ(length_mm(" 48cm"), 480.0);
  EXPECT_EQ(length_mm("48 cm"), 480.0);
  EXPECT_EQ(length_mm("1.2m"), 1200.0);
  EXPECT_EQ(length_mm("-3.5mm"), -3.5);
  EXPECT_EQ(length_mm("+7"), 7.0);
  EXPECT_DOUBLE_EQ(*length_mm("19in"), 482.6);  // 1 in = 25.4 mm exactly (ISO 31 and the 1959 agreement)
  EXPECT_DOUBLE_EQ(*length_mm("0.5\""), 12.7);
}

TEST(Numbers, NothingIsGuessed) {
  for (const char* text :
       {"", " ", "mm", "4,5", "4.5.6", "480 ft", "nan", "inf", "1e999", "12mm3", "0x10", "--3"})
    EXPECT_FALSE(length_mm(text)) << text;
  EXPECT_FALSE(plain_number("3mm"));
  EXPECT_EQ(plain_number("3e2"), 300.0);
}

TEST(Numbers, TheLocaleDoesNotMatter) {
  const std::string before = std::setlocale(LC_ALL, nullptr);
  std::setlocale(LC_ALL, "de_DE.UTF-8");
  EXPECT_EQ(length_mm("1.5"), 1.5);
  std::setlocale(LC_ALL, before.c_str());
}

TEST(Numbers, AnglesSizesAndColours) {
  EXPECT_DOUBLE_EQ(*angle_radians("180"), std::numbers::pi);
  EXPECT_DOUBLE_EQ(*angle_radians("-90deg"), -std::numbers::pi / 2);
  EXPECT_FALSE(angle_radians("1mm"));
  EXPECT_EQ(picture_size("1920x1080")->height, 1080);
  EXPECT_EQ(picture_size("1920 X 1080")->width, 1920);
  EXPECT_EQ(area_size("90cm x 600")->width, 900.0);
  EXPECT_EQ(area_size("36inX24in")->depth, 24 * 25.4);
  for (const char* text : {"900", "0x600", "900x", "axb"}) EXPECT_FALSE(area_size(text)) << text;
  EXPECT_EQ(colour_value("Navy"), colour_value("navy"));
  for (const char* text : {"1920", "1920x", "x1080", "0x5", "-4x5", "1920x1080x2", "19 20x10"})
    EXPECT_FALSE(picture_size(text)) << text;
  EXPECT_EQ(colour_value("#1b2A4a"), 0xff1b2a4au);
  EXPECT_TRUE(colour_value("navy"));
  EXPECT_FALSE(colour_value("#12345"));
  EXPECT_FALSE(colour_value("mauve"));
}

}  // namespace
}  // namespace cowlcast::projector
