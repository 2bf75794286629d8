// One digit more, and never a number that is another.

#include "burrow/base/display_precision.h"

#include <gtest/gtest.h>

#include <random>

#include "burrow/base/quantity_text.h"

namespace burrow {
namespace {

struct Fine {
  Fine() { set_display_precision(DisplayPrecision::fine); }
  ~Fine() { set_display_precision(DisplayPrecision::usual); }
};

TEST(DisplayPrecision, Texts_HaveOneDigitMore) {
  EXPECT_EQ(format(1.3754, Dimension::length, UnitSystem::metric), "1.38 m");
  const Fine fine;
  EXPECT_EQ(format(1.3754, Dimension::length, UnitSystem::metric), "1.375 m");
  EXPECT_EQ(format(-0.0123, Dimension::station, UnitSystem::metric), "−0.012 m");
  EXPECT_EQ(format(0.0123456, Dimension::grade, UnitSystem::metric), "1.235 %");
  EXPECT_EQ(format(0.0032, Dimension::small_length, UnitSystem::metric), "3.2 mm");
  // By hand: 1.3754 m = 54.1496 in = 4 ft 6.15 in.
  EXPECT_EQ(format(1.3754, Dimension::length, UnitSystem::us), "4 ft 6.15 in");
  EXPECT_EQ(format(1.3754, Dimension::station, UnitSystem::us), "4.512 ft");
  EXPECT_EQ(format(0.25, Dimension::chance, UnitSystem::metric), "25.0 %") << "chances are no sizes";
}

TEST(DisplayPrecision, CarriedInches_BecomeAFoot) {
  const Fine fine;
  EXPECT_EQ(format(0.3048 - 1e-6, Dimension::length, UnitSystem::us), "1 ft 0.00 in");
}

// What is shown, typed again, is nearer to the value than what the usual shows: never coarser (500 random lengths).
TEST(DisplayPrecision, TypedBack_IsNoFurtherOff) {
  std::mt19937 random(7);
  std::uniform_real_distribution<double> metres(-40, 40);
  for (int i = 0; i < 500; ++i) {
    const double value = metres(random);
    for (const UnitSystem units : {UnitSystem::metric, UnitSystem::us})
      for (const Dimension dimension : {Dimension::length, Dimension::station}) {
        const double finest = units == UnitSystem::metric      ? 0.0005
                              : dimension == Dimension::length ? 0.005 * 0.0254
                                                               : 0.0005 * 0.3048;
        const Fine fine;
        const auto back = parse(format(value, dimension, units), dimension, units);
        ASSERT_TRUE(back) << format(value, dimension, units);
        EXPECT_NEAR(*back, value, finest * (1 + 1e-9));
      }
  }
}

}  // namespace
}  // namespace burrow
