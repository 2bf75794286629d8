#include "burrow/language/label_text.h"

#include <gtest/gtest.h>

namespace burrow {
namespace {

// A reader is told of every number that nobody looked up; JSON keeps the eight words.
TEST(LabelText, FromMemory_SaysThatNobodyLookedItUp) {
  for (const SourceLabel label : all_source_labels) {
    const std::string text = label_text(label);
    EXPECT_FALSE(text.empty());
    EXPECT_EQ(text.find("nobody has looked this up") != std::string::npos, label == SourceLabel::from_memory) << text;
  }
  EXPECT_EQ(word_of(SourceLabel::from_memory), "from memory") << "files keep it";
  EXPECT_EQ(label_text(SourceLabel::our_default), "program default");
  EXPECT_EQ(label_text(SourceLabel::owners_setting), "set by owner");
}

}  // namespace
}  // namespace burrow
