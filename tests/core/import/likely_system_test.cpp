// The system of files that state none, guessed from one that does.

#include "burrow/import/likely_system.h"

#include <gmock/gmock.h>

namespace burrow::test {
namespace {

using ::testing::ElementsAre;

ImportFile at(double east, double north, const std::string& crs = {}, std::optional<FileUnit> unit = FileUnit::metre) {
  Found found;
  found.layers = {"GAS"};
  found.vertices = {{east, north, std::nullopt}, {east + 20, north + 10, std::nullopt}};
  found.features = {{Shape::line, 0, 0, 2, 1, {}, {}, {}, {}, false}};
  found.frame.crs = crs;
  found.frame.unit = unit;
  ImportFile file;
  file.found = std::make_shared<const Found>(std::move(found));
  return file;
}

TEST(LikelySystem, NumbersBesideEachOther) {
  const auto likely = likely_system({at(500000, 5540000), at(500100, 5540100, "EPSG:25832"), at(500020, 5540000)});
  ASSERT_TRUE(likely);
  EXPECT_EQ(likely->crs, "EPSG:25832");
  EXPECT_EQ(likely->stated_by, 1u);
  EXPECT_THAT(likely->files, ElementsAre(0, 2));
}

// A drawing in millimetres on the same grid.
TEST(LikelySystem, AnotherUnit) {
  const auto likely =
      likely_system({at(500000, 5540000, "EPSG:25832"), at(500010e3, 5540010e3, "", FileUnit::millimetre)});
  ASSERT_TRUE(likely);
  EXPECT_THAT(likely->files, ElementsAre(1));
}

TEST(LikelySystem, NothingIsGuessed) {
  EXPECT_FALSE(likely_system({}));
  EXPECT_FALSE(likely_system({at(500000, 5540000), at(500000, 5540000)})) << "nobody states any";
  EXPECT_FALSE(likely_system({at(500000, 5540000, "EPSG:25832"), at(510000, 5540000)})) << "ten kilometres away";
  EXPECT_FALSE(likely_system({at(500000, 5540000, "EPSG:25832"), at(500000, 5540000, "EPSG:25833")})) << "each its own";
  EXPECT_FALSE(likely_system({at(100, 100, "EPSG:25832"), at(100, 100)})) << "as plans of no system lie";
  ImportFile degrees = at(9, 50, "EPSG:4326");
  Found found = *degrees.found;
  found.frame.geographic = true;
  degrees.found = std::make_shared<const Found>(found);
  EXPECT_FALSE(likely_system({degrees, at(9, 50)}));
}

// What a person said counts as stated.
TEST(LikelySystem, Said) {
  ImportFile first = at(500000, 5540000);
  first.said_frame = FoundFrame{"EPSG:25832", false, FileUnit::metre, {}, {}, false, false};
  const auto likely = likely_system({first, at(500020, 5540000)});
  ASSERT_TRUE(likely);
  EXPECT_THAT(likely->files, ElementsAre(1));
}

}  // namespace
}  // namespace burrow::test
