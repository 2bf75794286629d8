// A list that is printed as it is made has the text that the tree of it would have.

#include <gtest/gtest.h>

#include <limits>

#include "json_answers.h"
#include "json_tree.h"

namespace burrow::test {
namespace {

TEST(JsonTree, PrintedList_IsTheTextOfTheTree) {
  const double values[] = {0,
                           -0.0,
                           1,
                           -1,
                           0.1,
                           1.0 / 3,
                           1e21,
                           1e-7,
                           5e-324,
                           1e308,
                           std::numeric_limits<double>::infinity(),
                           std::numeric_limits<double>::quiet_NaN()};
  PrintedList printed;
  Json::Array tree;
  for (const double value : values) {
    const Json inner = object({{"p10", Json(value)}, {"p50", Json()}});
    printed.begin();
    printed.number("x_m", value);
    printed.number("a \"key\"\n", 2 * value);
    printed.member("time_s", inner);
    printed.end();
    tree.push_back(object({{"x_m", Json(value)}, {"a \"key\"\n", Json(2 * value)}, {"time_s", inner}}));
  }
  const std::string text = compact_json(printed.take());
  EXPECT_EQ(text, compact_json(Json(std::move(tree))));
  const Result<Json> read = parse_json(text);
  ASSERT_TRUE(read) << read.error().english();
  EXPECT_EQ(compact_json(*read), text);
  EXPECT_EQ(compact_json(PrintedList().take()), "[]");
}

// A key twice is found among few keys and among many.
TEST(JsonTree, KeyTwice_OfAnyNumber) {
  for (const int count : {1, 2, 23, 24, 25, 26, 60}) {
    std::string text = "{";
    for (int i = 0; i < count; ++i) text += "\"k" + std::to_string(i) + "\":{\"k0\":" + std::to_string(i) + "},";
    EXPECT_TRUE(parse_json(text + "\"other\":1}").has_value()) << count;
    for (const int again : {0, count / 2, count - 1}) {
      const Result<Json> twice = parse_json(text + "\"k" + std::to_string(again) + "\":1}");
      ASSERT_FALSE(twice.has_value()) << count << " " << again;
      EXPECT_EQ(twice.error().place.english(), "/k" + std::to_string(again));
    }
  }
}

}  // namespace
}  // namespace burrow::test
