#include "burrow/base/date.h"

#include <gtest/gtest.h>

namespace burrow {
namespace {

// ISO 8601: year-month-day, with zeros in front; 2000 was a leap year, 1900 was not.
TEST(Dates, Iso8601_DaysThatAreAndAreNot) {
  EXPECT_EQ(date_of("2025-05-03"), (Date{2025, 5, 3}));
  EXPECT_EQ(date_of("2025-05-03T08:12:00+02:00"), (Date{2025, 5, 3}));
  EXPECT_EQ(date_of("2000-02-29"), (Date{2000, 2, 29}));
  for (const char* none : {"", "soon", "3.5.2025", "2025-5-3", "1900-02-29", "2025-13-01", "2025-00-10", "2025-04-31",
                           "0000-01-01", "2025-05-031", "2025/05/03", "20250503", "+025-05-03", "2025-05-0x"})
    EXPECT_FALSE(date_of(none)) << none;
  EXPECT_EQ(text_of({987, 6, 5}), "0987-06-05");
}

// From 1 January to 1 March: 59 days, 60 in a leap year (calendar).
TEST(Dates, Calendar_DaysBetween) {
  EXPECT_EQ(days_between({2025, 1, 1}, {2025, 3, 1}), 59);
  EXPECT_EQ(days_between({2024, 1, 1}, {2024, 3, 1}), 60);
  EXPECT_EQ(days_between({2025, 3, 1}, {2025, 1, 1}), -59);
  EXPECT_LT((Date{2024, 12, 31}), (Date{2025, 1, 1}));
}

}  // namespace
}  // namespace burrow
