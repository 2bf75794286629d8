// Times by the clock and since the start.
#include "burrow/document/clock_time.h"

#include <gtest/gtest.h>

namespace burrow {
namespace {

constexpr double hour = 3600, minute = 60;

TEST(ClockTime, ByTheClock_BetweenTheLastReadingAndNow) {
  const ClockOfRecord evening{19 * hour + 50 * minute, 5 * minute, 9 * minute};
  EXPECT_EQ(seconds_by_clock("19:58", evening), 8 * minute);
  EXPECT_EQ(seconds_by_clock("7:58 pm", evening), 8 * minute);
  EXPECT_EQ(seconds_by_clock("7:58PM", evening), 8 * minute);
  EXPECT_EQ(seconds_by_clock("7:58", evening), 8 * minute) << "the one that lies between";
  EXPECT_EQ(seconds_by_clock(" 19:58 ", evening), 8 * minute);
}

TEST(ClockTime, SinceTheStart_WhereNoClockFits) {
  const ClockOfRecord morning{8 * hour, 3 * minute, 5 * minute + 30};
  EXPECT_EQ(seconds_by_clock("5:10", morning), 5 * minute + 10);
  const ClockOfRecord afternoon{17 * hour + 2 * minute, 0, 8 * minute + 30};
  EXPECT_EQ(seconds_by_clock("5:10", afternoon), 8 * minute);
}

TEST(ClockTime, OverMidnight) {
  const ClockOfRecord night{23 * hour + 50 * minute, 0, 25 * minute};
  EXPECT_EQ(seconds_by_clock("0:10", night), 20 * minute);
  EXPECT_EQ(seconds_by_clock("12:10 am", night), 20 * minute);
  EXPECT_EQ(clock_text(20 * minute, 23 * hour + 50 * minute), "0:10 +1");
  EXPECT_EQ(clock_text(8 * minute, 19 * hour + 50 * minute), "19:58");
}

TEST(ClockTime, Earlier_WhatWasForgotten) {
  const ClockOfRecord record{8 * hour, 2 * hour, 3 * hour};
  EXPECT_EQ(seconds_by_clock("9:15", record), hour + 15 * minute);
}

TEST(ClockTime, Rejection) {
  const ClockOfRecord record{8 * hour, 0, hour};
  for (const char* text : {"", "5", "5:", ":10", "5:7", "5:60", "13:00 pm", "a:10", "5:100", "-5:10", "5 min"})
    EXPECT_FALSE(seconds_by_clock(text, record)) << text;
}

TEST(ClockTime, OfARecord) {
  EXPECT_EQ(time_of_day_s("2025-05-03T08:12:30+02:00"), 8 * hour + 12 * minute + 30);
  EXPECT_EQ(time_of_day_s("2025-05-03T08:12"), 8 * hour + 12 * minute);
  EXPECT_FALSE(time_of_day_s("2025-05-03"));
  EXPECT_FALSE(time_of_day_s("2025-05-03Tab:cd:ef"));
}

}  // namespace
}  // namespace burrow
