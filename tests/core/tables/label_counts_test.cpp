// Labels of the numbers that decide verdicts, counted a second time: by walking through rows that a test can see.

#include "burrow/tables/label_counts.h"

#include <gtest/gtest.h>

#include <numeric>

#include "burrow/file/tables_file.h"

namespace burrow {
namespace {

std::size_t at(SourceLabel label) {
  for (std::size_t i = 0; i < all_source_labels.size(); ++i)
    if (all_source_labels[i] == label) return i;
  return all_source_labels.size();
}

TEST(LabelCounts, EachNumberUnderOneLabel) {
  const Tables tables = load_tables();
  const std::vector<LabelCounts> counts = label_counts(tables);
  ASSERT_EQ(counts.size(), 7u);
  EXPECT_EQ(counts[0].table, "limits");
  const auto sum = [](const LabelCounts& one) {
    return std::accumulate(one.by_label.begin(), one.by_label.end(), std::size_t{0});
  };
  EXPECT_EQ(sum(counts[0]), tables.limits.size());
  std::size_t read = 0;
  for (const LimitRow& row : tables.limits) read += row.source.label == SourceLabel::read;
  EXPECT_EQ(counts[0].by_label[at(SourceLabel::read)], read);
  EXPECT_EQ(sum(counts[6]), 9 * tables.tools.size());
  EXPECT_EQ(counts[6].by_label[at(SourceLabel::our_model)], 9 * tables.tools.size());
}

// A row that goes from memory to read goes from one line of the table to the other.
TEST(LabelCounts, FollowTheTables) {
  Tables tables = load_tables();
  const std::vector<LabelCounts> before = label_counts(tables);
  SurfaceRule& rule = tables.surface_rules.front();
  ASSERT_EQ(rule.source.label, SourceLabel::read);
  ASSERT_TRUE(rule.cover && !rule.pit_setback);
  rule.source.label = SourceLabel::from_memory;
  rule.pit_setback = Length{3};
  const std::vector<LabelCounts> after = label_counts(tables);
  EXPECT_EQ(after[1].by_label[at(SourceLabel::read)], before[1].by_label[at(SourceLabel::read)] - 1);
  EXPECT_EQ(after[1].by_label[at(SourceLabel::from_memory)], before[1].by_label[at(SourceLabel::from_memory)] + 2);
}

// What decides a distance to a service and was found in no text is a default of ours, and says so.
TEST(LabelCounts, RowsAsTheSourcesWereFound) {
  const Tables tables = load_tables();
  const auto label_of = [&](const char* id) { return find_limit(tables, id)->source.label; };
  EXPECT_EQ(label_of("cover_diameters"), SourceLabel::read);
  EXPECT_NE(find_limit(tables, "cover_diameters")->source.text.english().find("guided bores"), std::string::npos);
  for (const char* id : {"separation_gas_m", "separation_power_m", "separation_traced_m"})
    EXPECT_EQ(label_of(id), SourceLabel::our_default) << id;
  for (const char* id : {"length_to_55_m", "length_to_95_m", "length_to_145_m", "length_above_m"})
    EXPECT_EQ(label_of(id), SourceLabel::common_practice) << id;
  EXPECT_EQ(label_of("length_any_m"), SourceLabel::read);
  EXPECT_EQ(label_of("track_influence_run"), SourceLabel::read);
  EXPECT_EQ(label_of("separation_exposed_m"), SourceLabel::second_hand);
  EXPECT_EQ(find_rule(tables, "road-gas-service-cover-18in")->source.label, SourceLabel::second_hand);
}

}  // namespace
}  // namespace burrow
