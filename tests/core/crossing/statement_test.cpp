#include "burrow/crossing/statement.h"

#include <gtest/gtest.h>

namespace burrow {
namespace {

constexpr Date on{2026, 3, 2};

// Our rule: what nobody signs does not count, nor what is signed with a blank or on a day that is none or has not come.
TEST(Statements, OurRule_CountWhenSignedAndDated) {
  Statement statement{"gas shut off and pipe cut, letter of the owner", "M. Example", "2026-03-01", ""};
  EXPECT_TRUE(vouched(statement, on));
  EXPECT_TRUE(declared(statement, on));
  EXPECT_FALSE(vouched(statement, std::nullopt));  // nobody said what day it is
  for (const char* date : {"", "soon", "2026-03-03", "2026-02-30"}) {
    Statement other = statement;
    other.date = date;
    EXPECT_FALSE(declared(other, on)) << date;
  }
  Statement undated = statement;
  undated.date.reset();
  EXPECT_FALSE(declared(undated, on));
  Statement blank = statement;
  blank.by = " - ";
  EXPECT_FALSE(declared(blank, on));
  blank = statement;
  blank.how = " ";
  EXPECT_FALSE(vouched(blank, on));
  EXPECT_TRUE(declared(blank, on));
  EXPECT_FALSE(declared(Statement{}, on));
}

TEST(Statements, OurRule_ATicketHoldsFromItsFirstDayToItsLast) {
  UtilitySearch search;
  search.valid_from = "2026-02-24";
  search.valid_to = "2026-03-02";
  EXPECT_TRUE(in_force(search, on));
  EXPECT_FALSE(in_force(search, Date{2026, 3, 3}));
  EXPECT_FALSE(in_force(search, Date{2026, 2, 23}));
  EXPECT_FALSE(in_force(search, std::nullopt));
  search.valid_to.reset();
  EXPECT_FALSE(in_force(search, on));
  search.valid_to = "when it rains";
  EXPECT_FALSE(in_force(search, on));
}

TEST(Statements, OurRule_ADashSaysNothing) {
  for (const char* nothing : {"", " ", "-", "...", "?!"}) EXPECT_FALSE(says_something(nothing)) << nothing;
  for (const char* something : {"a", "7", "é", "漢"}) EXPECT_TRUE(says_something(something)) << something;
}

}  // namespace
}  // namespace burrow
