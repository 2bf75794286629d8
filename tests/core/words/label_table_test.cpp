#include "burrow/words/label_table.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "burrow/file/tables_file.h"
#include "burrow/language/label_text.h"

namespace burrow {
namespace {

TEST(LabelTable, TableHasALineForEachLabel) {
  const std::string text = label_table(load_tables());
  for (const SourceLabel label : all_source_labels)
    EXPECT_NE(text.find("| " + label_text(label)), std::string::npos) << text;
  EXPECT_EQ(std::count(text.begin(), text.end(), '\n'), 2 + 8);
}

}  // namespace
}  // namespace burrow
