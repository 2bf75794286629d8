// The decimal mark people write: shown, typed, and never in what is a file's.

#include "burrow/base/decimal_mark.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <random>

#include "burrow/base/display_precision.h"
#include "burrow/base/quantity_apart.h"
#include "burrow/base/quantity_text.h"

namespace burrow {
namespace {

struct Comma {
  Comma() { set_decimal_mark(DecimalMark::comma); }
  ~Comma() { set_decimal_mark(DecimalMark::point); }
};

constexpr UnitSystem metric = UnitSystem::metric;

// DIN 1333 and ISO 80000-1, 7.3.2: a comma on the line (from memory).
TEST(DecimalMark, Texts_HaveTheComma) {
  EXPECT_EQ(format(1.3754, Dimension::length, metric), "1.38 m");
  const Comma comma;
  EXPECT_EQ(format(1.3754, Dimension::length, metric), "1,38 m");
  EXPECT_EQ(format(-0.314, Dimension::station, metric), "−0,31 m");
  EXPECT_EQ(format(288.65, Dimension::temperature, metric), "15,5 °C");
  EXPECT_EQ(format(0.00001, Dimension::chance, metric), "< 0,01 %");
  EXPECT_EQ(format(1.3754, Dimension::length, UnitSystem::us), "4 ft 6,1 in");
  EXPECT_EQ(format(480.0 / 60, Dimension::blow_rate, metric), "480 /min") << "no mark where none stood";
  EXPECT_EQ(format(4320, Dimension::duration, metric), "1 h 12 min");
  EXPECT_EQ(format_apart(0.3001, 0.3, Dimension::length, metric), "0,3001 m");
  EXPECT_EQ(fixed_text(2.5, 2), "2,50");
  EXPECT_EQ(significant_text(0.03125, 3), "0,0312");
  EXPECT_EQ(fixed_text(std::numeric_limits<double>::quiet_NaN(), 2), "–");
}

TEST(DecimalMark, WhatIsOfAFile_KeepsThePoint) {
  const Comma comma;
  EXPECT_EQ(exact_text(1.25), "1.25");
}

// Read wrong by a factor of a thousand it would be a depth of 1,250 m or of 1.25 mm.
TEST(DecimalMark, TypedThousandths_AreNoThousands) {
  EXPECT_FALSE(parse("1,250", Dimension::length, metric)) << "with the point it may mean thousands";
  const Comma comma;
  EXPECT_DOUBLE_EQ(parse("1,250", Dimension::length, metric).value_or(0), 1.25);
  EXPECT_DOUBLE_EQ(parse("1.250 m", Dimension::length, metric).value_or(0), 1.25);
  EXPECT_DOUBLE_EQ(parse("12,5 mm", Dimension::length, metric).value_or(0), 0.0125);
  EXPECT_DOUBLE_EQ(parse("1,5 + 0,35", Dimension::length, metric).value_or(0), 1.85);
  for (const char* both : {"1.250,5", "1,250.5", "1,250,000", "1,"})
    EXPECT_FALSE(parse(both, Dimension::length, metric)) << both;
}

// What is shown is understood, with either mark and either fineness (2,000 random values of nine kinds).
TEST(DecimalMark, ShownAndTypedBack_IsTheSame) {
  std::mt19937 random(11);
  std::uniform_real_distribution<double> values(-40, 40);
  for (int i = 0; i < 2000; ++i) {
    const double value = values(random);
    for (const Dimension dimension :
         {Dimension::length, Dimension::station, Dimension::small_length, Dimension::grade, Dimension::angle,
          Dimension::pressure, Dimension::force, Dimension::mass, Dimension::ratio})
      for (const UnitSystem units : {UnitSystem::metric, UnitSystem::us})
        for (const DisplayPrecision fine : {DisplayPrecision::usual, DisplayPrecision::fine}) {
          set_display_precision(fine);
          const auto with_point = parse(format(value, dimension, units), dimension, units);
          const Comma comma;
          const auto with_comma = parse(format(value, dimension, units), dimension, units);
          ASSERT_TRUE(with_point && with_comma) << format(value, dimension, units);
          EXPECT_EQ(*with_point, *with_comma) << format(value, dimension, units);
        }
  }
  set_display_precision(DisplayPrecision::usual);
}

}  // namespace
}  // namespace burrow
