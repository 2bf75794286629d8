/// Labels of choices follow their enumeration, whatever order they are written in.

#include "panels/choice_words.h"

#include <gtest/gtest.h>

#include "burrow/crossing/utility.h"

namespace burrow {
namespace {

TEST(ChoiceWords, Labels_StandInTheOrderOfTheEnumeration) {
  const QStringList rows = labels_of<UtilityStatus>({{UtilityStatus::unknown, "not known"},
                                                     {UtilityStatus::abandoned, "abandoned"},
                                                     {UtilityStatus::proposed, "proposed"},
                                                     {UtilityStatus::live, "live"}},
                                                    "not said");
  ASSERT_EQ(rows.size(), 5);
  EXPECT_EQ(rows[0], "not said");
  for (const UtilityStatus status :
       {UtilityStatus::live, UtilityStatus::abandoned, UtilityStatus::proposed, UtilityStatus::unknown}) {
    const QString word = rows[row_of_word(std::optional(status))];
    EXPECT_EQ(word_or_none_at<UtilityStatus>(static_cast<int>(rows.indexOf(word))), status);
  }
  EXPECT_EQ(rows[row_of_word(std::optional(UtilityStatus::unknown))], "not known");
}

}  // namespace
}  // namespace burrow
