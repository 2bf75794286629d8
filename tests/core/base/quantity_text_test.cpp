#include "burrow/base/quantity_text.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <locale>
#include <random>

namespace burrow {
namespace {

constexpr UnitSystem metric = UnitSystem::metric;
constexpr UnitSystem us = UnitSystem::us;
constexpr double degree = pi / 180;

struct Typed {
  const char* text;
  Dimension dimension;
  UnitSystem units;
  double si;
};

void expect_read(const Typed& typed) {
  const auto value = parse(typed.text, typed.dimension, typed.units);
  ASSERT_TRUE(value) << typed.text << ": " << value.error().english();
  EXPECT_NEAR(*value, typed.si, 1e-12 * std::max(1.0, std::abs(typed.si))) << typed.text;
}

struct Refused {
  const char* text;
  Dimension dimension;
  UnitSystem units;
};

void expect_refused(const Refused& typed) {
  const auto value = parse(typed.text, typed.dimension, typed.units);
  ASSERT_FALSE(value) << typed.text << " was read as " << *value;
  EXPECT_FALSE(value.error().found.empty());
  EXPECT_FALSE(value.error().expected.empty());
}

// The forms named by the product description, and those of the trade. 1 ft = 0.3048 m and 1 in = 0.0254 m by
// definition.
TEST(Parse, Definition_Lengths) {
  for (const Typed& typed : std::initializer_list<Typed>{{"1.37 m", Dimension::length, us, 1.37},
                                                         {"1.37", Dimension::length, metric, 1.37},
                                                         {"1.37", Dimension::length, us, 1.37 * 0.3048},
                                                         {"450mm", Dimension::length, metric, 0.45},
                                                         {"450 MM", Dimension::length, us, 0.45},
                                                         {"4' 6\"", Dimension::length, metric, 1.3716},
                                                         {"4'6 1/2\"", Dimension::length, us, 1.3843},
                                                         {"4'6 1/2", Dimension::length, us, 1.3843},
                                                         {"4 ft 6 in", Dimension::station, metric, 1.3716},
                                                         {"4ft6in", Dimension::length, us, 1.3716},
                                                         {"4′ 6″", Dimension::length, us, 1.3716},
                                                         {"4’ 6”", Dimension::length, us, 1.3716},
                                                         {"4' 6''", Dimension::length, us, 1.3716},
                                                         {"4'-6\"", Dimension::length, us, 1.3716},
                                                         {"4-6 1/2\"", Dimension::length, us, 1.3843},
                                                         {"6-1/2\"", Dimension::small_length, us, 0.1651},
                                                         {"6 1/2 in", Dimension::small_length, metric, 0.1651},
                                                         {"6½\"", Dimension::small_length, us, 0.1651},
                                                         {"½ in", Dimension::small_length, us, 0.0127},
                                                         {"-4' 6\"", Dimension::length, us, -1.3716},
                                                         {"−0,35 m", Dimension::length, metric, -0.35},
                                                         {"3937 us-ft", Dimension::station, metric, 1200},
                                                         {"1,37", Dimension::length, metric, 1.37},
                                                         {"0,370 m", Dimension::length, metric, 0.370},
                                                         {"1234,567 m", Dimension::length, metric, 1234.567},
                                                         {" 1.37\u00a0m ", Dimension::length, metric, 1.37},
                                                         {"63", Dimension::small_length, metric, 0.063},
                                                         {"1e-3 m", Dimension::length, metric, 0.001},
                                                         {".5 m", Dimension::length, metric, 0.5}})
    expect_read(typed);
}

// Sizes as they are spoken: DN in millimetres whatever is shown, a fraction in inches, a ratio with its name (common
// practice, no source).
TEST(Parse, Definition_SizesByName) {
  for (const Typed& typed : std::initializer_list<Typed>{{"SDR 9", Dimension::ratio, metric, 9},
                                                         {"sdr11", Dimension::ratio, us, 11},
                                                         {"DR 13.5", Dimension::ratio, us, 13.5},
                                                         {"SDR 17,6", Dimension::ratio, metric, 17.6},
                                                         {"DN 63", Dimension::small_length, metric, 0.063},
                                                         {"dn63", Dimension::small_length, us, 0.063},
                                                         {"2 in", Dimension::small_length, metric, 0.0508},
                                                         {"1 1/4", Dimension::small_length, metric, 0.03175},
                                                         {"1 1/4", Dimension::small_length, us, 0.03175},
                                                         {"3/4", Dimension::small_length, metric, 0.01905},
                                                         {"1 1/4 m", Dimension::length, metric, 1.25},
                                                         {"1 1/4", Dimension::length, metric, 1.25}})
    expect_read(typed);
  for (const char* wrong : {"DN", "DN x", "DN 6.3", "DN 63 mm", "DN 1 1/4", "SDR", "SDR SDR 9", "DNS 63"})
    EXPECT_FALSE(parse(wrong, Dimension::small_length, metric)) << wrong;
  EXPECT_FALSE(parse("SDR", Dimension::ratio, metric));
  EXPECT_FALSE(parse("SDR 11", Dimension::length, metric)) << "a ratio is no length";
  EXPECT_FALSE(parse("DN 63", Dimension::length, metric)) << "a size is no depth";
}

TEST(Parse, Arithmetic_SumsAndDifferences) {
  for (const Typed& typed : std::initializer_list<Typed>{{"1.2 + 0.35", Dimension::length, metric, 1.55},
                                                         {"1.2-0.35", Dimension::length, metric, 0.85},
                                                         {"1.2 m - 35 cm", Dimension::length, metric, 0.85},
                                                         {"10 + 4' 6\"", Dimension::station, us, 14.5 * 0.3048},
                                                         {"4' 6\" - 2' 3\"", Dimension::length, us, 2.25 * 0.3048},
                                                         {"4 ft - 0.5 ft", Dimension::length, us, 3.5 * 0.3048},
                                                         {"1 m 20 cm", Dimension::length, metric, 1.2},
                                                         {"2 % - 1:100", Dimension::grade, metric, 0.01}})
    expect_read(typed);
}

TEST(Parse, Definition_GradesAndAngles) {
  for (const Typed& typed :
       std::initializer_list<Typed>{{"2 %", Dimension::grade, metric, 0.02},
                                    {"2", Dimension::grade, us, 0.02},
                                    {"1.15 deg", Dimension::grade, metric, std::tan(1.15 * degree)},
                                    {"-1.15°", Dimension::grade, metric, -std::tan(1.15 * degree)},
                                    {"1:50", Dimension::grade, metric, 0.02},
                                    {"1 in 50", Dimension::grade, us, 0.02},
                                    {"1/50", Dimension::grade, us, 0.02},
                                    {"1/2 %", Dimension::grade, us, 0.005},
                                    {"12 mm/m", Dimension::grade, metric, 0.012},
                                    {"0.5 in/ft", Dimension::grade, us, 0.5 / 12},
                                    {"1/4 \"/ft", Dimension::grade, us, 0.25 / 12},
                                    {"20 ‰", Dimension::grade, metric, 0.02},
                                    {"1.15", Dimension::angle, metric, 1.15 * degree},
                                    {"5 mrad", Dimension::angle, metric, 0.005},
                                    {"0.2 rad", Dimension::angle, metric, 0.2},
                                    {"100 %", Dimension::angle, metric, pi / 4}})
    expect_read(typed);
}

// 1 lbf = 0.45359237 × 9.80665 N by definition, so 65 psi = 448159.2 Pa and 115 lb/ft³ = 18065.06 N/m³.
TEST(Parse, Definition_OtherQuantities) {
  for (const Typed& typed :
       std::initializer_list<Typed>{{"6.9 bar", Dimension::air_pressure, us, 690000},
                                    {"100", Dimension::air_pressure, metric, 1e7},
                                    {"45 kPa", Dimension::pressure, us, 45000},
                                    {"45 kN/m²", Dimension::pressure, us, 45000},
                                    {"8 N/mm2", Dimension::big_pressure, us, 8e6},
                                    {"18 kN/m³", Dimension::unit_weight, us, 18000},
                                    {"4 kN", Dimension::force, metric, 4000},
                                    {"18 kg", Dimension::mass, us, 18},
                                    {"1 h 12 min", Dimension::duration, metric, 4320},
                                    {"8", Dimension::duration, us, 480},
                                    {"90 s", Dimension::duration, us, 90},
                                    {"27 ft3", Dimension::volume, metric, 0.764554857984},
                                    {"2.5 m³/min", Dimension::flow, us, 2.5 / 60},
                                    {"120 mL", Dimension::small_volume, us, 120e-6},
                                    {"4 fl oz", Dimension::small_volume, metric, 118.29411825e-6},
                                    {"15", Dimension::small_flow, metric, 15e-6 / 3600},
                                    {"1 fl oz/h", Dimension::small_flow, metric, 2.95735295625e-5 / 3600},
                                    {"15 °C", Dimension::temperature, us, 288.15},
                                    {"-40", Dimension::temperature, metric, 233.15},
                                    {"−40 °F", Dimension::temperature, metric, 233.15},
                                    {"59", Dimension::temperature, us, 288.15},
                                    {"59F", Dimension::temperature, metric, 288.15},
                                    {"288.15 K", Dimension::temperature, us, 288.15},
                                    {"480", Dimension::blow_rate, metric, 8},
                                    {"480 /min", Dimension::blow_rate, us, 8},
                                    {"480/min", Dimension::blow_rate, metric, 8},
                                    {"480 1/min", Dimension::blow_rate, metric, 8},
                                    {"480 blows per minute", Dimension::blow_rate, us, 8},
                                    {"480 blows/min", Dimension::blow_rate, us, 8},
                                    {"8 Hz", Dimension::blow_rate, us, 8},
                                    {"8/s", Dimension::blow_rate, metric, 8},
                                    {"0.1 %", Dimension::chance, metric, 0.001},
                                    {"0,1", Dimension::chance, metric, 0.001},
                                    {"0.25", Dimension::ratio, us, 0.25},
                                    {"25 %", Dimension::ratio, us, 0.25},
                                    {"1:1.5", Dimension::ratio, us, 1 / 1.5},
                                    {"3", Dimension::count, us, 3}})
    expect_read(typed);
  EXPECT_NEAR(*parse("65 psi", Dimension::air_pressure, metric), 448159.2, 0.05);
  EXPECT_NEAR(*parse("115 lb/ft³", Dimension::unit_weight, metric), 18065.06, 0.005);
}

TEST(Parse, Refused_WhatIsNoQuantity) {
  for (const Refused& typed : std::initializer_list<Refused>{{"", Dimension::length, metric},
                                                             {"   ", Dimension::length, metric},
                                                             {"deep", Dimension::length, metric},
                                                             {"nan", Dimension::length, metric},
                                                             {"inf", Dimension::length, metric},
                                                             {"1e400 m", Dimension::length, metric},
                                                             {"1 zork", Dimension::length, metric},
                                                             {"5 kg", Dimension::length, metric},
                                                             {"2 %", Dimension::length, metric},
                                                             {"5 m", Dimension::pressure, metric},
                                                             {"0.5 in", Dimension::grade, us},
                                                             {"90 deg", Dimension::grade, us},
                                                             {"1:0", Dimension::grade, us},
                                                             {"1/0", Dimension::length, us},
                                                             {"1.2 +", Dimension::length, metric},
                                                             {"--1", Dimension::length, metric},
                                                             {"1 2", Dimension::length, metric},
                                                             {"4 in 6 ft", Dimension::length, us},
                                                             {"1'234", Dimension::length, us},
                                                             {"1.5", Dimension::count, us},
                                                             {"3 m", Dimension::count, us},
                                                             {"10 °C + 5 °C", Dimension::temperature, us},
                                                             {"10 °C 5 °F", Dimension::temperature, us},
                                                             {"10 °", Dimension::temperature, us}})
    expect_refused(typed);
}

// What could be read in two ways is refused, never guessed.
TEST(Parse, Refused_WhatIsAmbiguous) {
  for (const Refused& typed : std::initializer_list<Refused>{{"1,370", Dimension::length, metric},
                                                             {"12,500 m", Dimension::station, metric},
                                                             {"1,234.5", Dimension::length, metric},
                                                             {"1.234,5", Dimension::length, metric},
                                                             {"1.234.5", Dimension::length, metric},
                                                             {"4' - 6\"", Dimension::length, us},
                                                             {"4' -6\"", Dimension::length, us},
                                                             {"4'-6", Dimension::length, us},
                                                             {"4-6", Dimension::length, us},
                                                             {"6-1/2", Dimension::length, metric}})
    expect_refused(typed);
}

TEST(Parse, Error_SaysWhatWasMeantAndGivesAnExample) {
  const auto mass = parse("5 kg", Dimension::length, us);
  ASSERT_FALSE(mass);
  EXPECT_EQ(mass.error().english(),
            "length: found \"5 kg\" (kg: that is a mass), expected a length, for example 4' 6\"");
  const auto comma = parse("1,370", Dimension::length, metric);
  ASSERT_FALSE(comma);
  EXPECT_EQ(comma.error().expected, "1370 or 1.370");
  const auto unit = parse("3 zork", Dimension::small_length, metric);
  ASSERT_FALSE(unit);
  EXPECT_EQ(unit.error().english(),
            "length: found \"3 zork\" (unknown unit \"zork\"), expected a length, for example 63 mm");
}

TEST(Format, Definition_MetricAndUs) {
  const struct {
    double si;
    Dimension dimension;
    const char* in_metric;
    const char* in_us;
  } shown[] = {
      {3.42, Dimension::length, "3.42 m", "11 ft 2.6 in"},
      {0.16, Dimension::length, "0.16 m", "6.3 in"},
      {3.6575, Dimension::length, "3.66 m", "12 ft 0.0 in"},
      {-3.42, Dimension::length, "−3.42 m", "−11 ft 2.6 in"},
      {12.30, Dimension::station, "12.30 m", "40.35 ft"},
      {1234567.0, Dimension::station, "1234567.00 m", "4050416.67 ft"},
      {0.063, Dimension::small_length, "63 mm", "2.48 in"},
      {0.0034, Dimension::small_length, "3.4 mm", "0.13 in"},
      {-0.0125, Dimension::grade, "−1.25 %", "−1.25 %"},
      {1.15 * degree, Dimension::angle, "1.15°", "1.15°"},
      {45000, Dimension::pressure, "45.0 kPa", "6.5 psi"},
      {8e6, Dimension::big_pressure, "8.00 MPa", "1.16 ksi"},
      {690000, Dimension::air_pressure, "6.9 bar", "100 psi"},
      {18000, Dimension::unit_weight, "18.0 kN/m³", "114.6 lb/ft³"},
      {4000, Dimension::force, "4.00 kN", "899 lbf"},
      {18, Dimension::mass, "18.0 kg", "39.7 lb"},
      {4320, Dimension::duration, "1 h 12 min", "1 h 12 min"},
      {480, Dimension::duration, "8 min", "8 min"},
      {35, Dimension::duration, "35 s", "35 s"},
      {150, Dimension::duration, "2 min 30 s", "2 min 30 s"},
      {7200, Dimension::duration, "2 h", "2 h"},
      {3599, Dimension::duration, "1 h", "1 h"},
      {2.7, Dimension::volume, "2.70 m³", "3.53 yd³"},
      {0.0417, Dimension::flow, "2.50 m³/min", "88 ft³/min"},
      {120e-6, Dimension::small_volume, "120 mL", "4.06 fl oz"},
      {15e-6 / 3600, Dimension::small_flow, "15 mL/h", "0.51 fl oz/h"},
      {288.15, Dimension::temperature, "15 °C", "59 °F"},
      {233.15, Dimension::temperature, "−40 °C", "−40 °F"},
      {285.65, Dimension::temperature, "12.5 °C", "54.5 °F"},
      {273.15, Dimension::temperature, "0 °C", "32 °F"},
      {273.14, Dimension::temperature, "0 °C", "32 °F"},
      {8, Dimension::blow_rate, "480 /min", "480 /min"},
      {4.5, Dimension::blow_rate, "270 /min", "270 /min"},
      {0.0003, Dimension::chance, "0.03 %", "0.03 %"},
      {0.00004, Dimension::chance, "< 0.01 %", "< 0.01 %"},
      {0.99999, Dimension::chance, "> 99.9 %", "> 99.9 %"},
      {0.0, Dimension::chance, "0 %", "0 %"},
      {1.0, Dimension::chance, "100 %", "100 %"},
      {0.25, Dimension::ratio, "0.25", "0.25"},
      {11, Dimension::ratio, "11", "11"},
      {0.0025, Dimension::ratio, "0.0025", "0.0025"},
      {2, Dimension::count, "2", "2"},
  };
  for (const auto& each : shown) {
    EXPECT_EQ(format(each.si, each.dimension, metric), each.in_metric);
    EXPECT_EQ(format(each.si, each.dimension, us), each.in_us);
  }
}

TEST(Format, Limit_ZeroHasNoSign) {
  EXPECT_EQ(format(-0.0, Dimension::length, metric), "0.00 m");
  EXPECT_EQ(format(-0.004, Dimension::length, metric), "0.00 m");
  EXPECT_EQ(format(-0.001, Dimension::length, us), "0.0 in");
  EXPECT_EQ(format(-0.0, Dimension::ratio, metric), "0");
}

TEST(Format, Limit_NotANumberAndVeryLarge) {
  const double infinite = std::numeric_limits<double>::infinity();
  EXPECT_EQ(format(std::nan(""), Dimension::length, metric), "–");
  EXPECT_EQ(format(infinite, Dimension::chance, us), "–");
  EXPECT_EQ(format(1e308, Dimension::small_length, us), "–");  // more inches than a double holds
  EXPECT_EQ(format(1.5e15, Dimension::length, metric), "1.5e+15 m");
}

/// Half the last digit shown, in SI.
double half_digit(double v, Dimension dimension, UnitSystem units) {
  const bool in_us = units == us;
  switch (dimension) {
    case Dimension::length:
      return in_us ? 0.05 * 0.0254 : 0.005;
    case Dimension::station:
      return 0.005 * (in_us ? 0.3048 : 1);
    case Dimension::small_length:
      return in_us ? 0.005 * 0.0254 : 0.05e-3;
    case Dimension::grade:
      return 0.005e-2;
    case Dimension::angle:
      return 0.005 * degree;
    case Dimension::pressure:
      return in_us ? 0.5 * 6894.757 : 500;
    case Dimension::big_pressure:
      return in_us ? 0.005 * 6894757 : 0.05e6;
    case Dimension::air_pressure:
      return in_us ? 0.5 * 6894.757 : 0.05e5;
    case Dimension::unit_weight:
      return 0.05 * (in_us ? 157.0875 : 1e3);
    case Dimension::force:
      return in_us ? 0.5 * 4.448222 : 50;
    case Dimension::mass:
      return in_us ? 0.5 * 0.45359237 : 0.5;
    case Dimension::duration:
      return std::abs(v) < 600 ? 0.5 : 30;
    case Dimension::volume:
      return 0.05 * (in_us ? 0.764554858 : 1);
    case Dimension::flow:
      return in_us ? 0.5 * 0.0283168466 / 60 : 0.005 / 60;
    case Dimension::small_volume:
      return in_us ? 0.005 * 29.57353e-6 : 0.5e-6;
    case Dimension::small_flow:
      return (in_us ? 0.005 * 29.57353e-6 : 0.5e-6) / 3600;
    case Dimension::temperature:
      return in_us ? 0.05 / 1.8 : 0.05;
    case Dimension::blow_rate:
      return 0.5 / 60;
    case Dimension::chance:
      return 0.05e-2;
    case Dimension::ratio:
      return 0.0005 * std::abs(v) + 0.5e-8;
    case Dimension::count:
      return 0.5;
  }
  return 0;
}

TEST(RoundTrip, Property_WithinHalfTheShownDigit) {
  constexpr Dimension all[] = {Dimension::length,       Dimension::station,      Dimension::small_length,
                               Dimension::grade,        Dimension::angle,        Dimension::pressure,
                               Dimension::big_pressure, Dimension::air_pressure, Dimension::unit_weight,
                               Dimension::force,        Dimension::mass,         Dimension::duration,
                               Dimension::volume,       Dimension::flow,         Dimension::chance,
                               Dimension::ratio,        Dimension::count,        Dimension::blow_rate,
                               Dimension::small_volume, Dimension::small_flow,   Dimension::temperature};
  std::mt19937_64 random(7);
  std::uniform_real_distribution<double> exponent(-4, 5);
  std::uniform_real_distribution<double> unit(0, 1);
  for (const Dimension dimension : all)
    for (const UnitSystem units : {metric, us})
      for (int i = 0; i < 2000; ++i) {
        double value = std::pow(10.0, exponent(random)) * (i % 2 == 0 ? 1 : -1);
        if (dimension == Dimension::chance) value = unit(random);
        if (dimension == Dimension::angle) value = unit(random);
        if (dimension == Dimension::small_volume || dimension == Dimension::small_flow) value *= 1e-6;
        const std::string text = format(value, dimension, units);
        const auto back = parse(text, dimension, units);
        ASSERT_TRUE(back) << text << ": " << back.error().english();
        EXPECT_NEAR(*back, value, half_digit(value, dimension, units) * (1 + 1e-6) + 1e-9 * std::abs(value)) << text;
      }
}

TEST(RoundTrip, Property_ExactTextGivesTheSameDouble) {
  std::mt19937_64 random(11);
  for (int i = 0; i < 10000; ++i) {
    const double value = std::ldexp(static_cast<double>(random()), static_cast<int>(random() % 200) - 100);
    const std::string text = exact_text(value);
    const auto back = parse(text, Dimension::ratio, metric);
    ASSERT_TRUE(back) << text;
    EXPECT_EQ(*back, value) << text;
  }
  EXPECT_EQ(exact_text(0.1), "0.1");
}

// A program under a locale with a decimal comma: its numbers must not change.
struct CommaMark : std::numpunct<char> {
  char do_decimal_point() const override { return ','; }
  char do_thousands_sep() const override { return '.'; }
  std::string do_grouping() const override { return "\3"; }
};

TEST(RoundTrip, Property_LocaleChangesNothing) {
  const std::locale before = std::locale::global(std::locale(std::locale::classic(), new CommaMark));
  EXPECT_EQ(format(1234.5, Dimension::length, metric), "1234.50 m");
  EXPECT_EQ(exact_text(1234.5), "1234.5");
  EXPECT_EQ(*parse("1234.5 m", Dimension::length, metric), 1234.5);
  std::locale::global(before);
}

// Whatever is typed gives a value or an error, never a crash or something that is not finite.
TEST(Parse, Property_NoTextBreaksIt) {
  const std::string_view pieces[] = {"1",  "2.5", ",", ".", "-", "+", " ", "'",    "\"",    "/",    ":",
                                     "ft", "in",  "m", "%", "°", "e", "½", "\xff", "1e308", "mm/m", "9,999"};
  std::mt19937 random(3);
  int read = 0;
  for (int i = 0; i < 20000; ++i) {
    std::string text;
    for (std::size_t n = random() % 7; n > 0; --n) text += pieces[random() % std::size(pieces)];
    for (const Dimension dimension : {Dimension::length, Dimension::grade, Dimension::pressure}) {
      const auto value = parse(text, dimension, i % 2 == 0 ? metric : us);
      if (!value) continue;
      ++read;
      EXPECT_TRUE(std::isfinite(*value)) << text;
    }
  }
  EXPECT_GT(read, 1000);
}

}  // namespace
}  // namespace burrow
