// Where two versions of a file differ, as a person reads it.

#include "burrow/file/differences.h"

#include <gtest/gtest.h>

#include "burrow/file/crossing_file.h"
#include "burrow/file/disk.h"
#include "burrow/file/tables_file.h"

namespace burrow::test {
namespace {

TEST(Differences, SayWhereAndWhat) {
  const auto found =
      differences(R"({"bore": {"launch": {"elevation_m": 101.25, "pit": 1}}, "list": [1, 2], "gone": true})",
                  R"({"list": [1,  2], "bore": {"launch": {"elevation_m": 101.30, "pit": 1}}, "new": {"a": 1}})");
  ASSERT_TRUE(found);
  ASSERT_EQ(found->size(), 3u);
  EXPECT_EQ((*found)[0].where, "bore/launch/elevation_m");
  EXPECT_EQ((*found)[0].one, "101.25");
  EXPECT_EQ((*found)[0].other, "101.3");
  EXPECT_EQ((*found)[1].where, "gone");
  EXPECT_EQ((*found)[1].other, "");
  EXPECT_EQ((*found)[2].where, "new");
  EXPECT_EQ((*found)[2].one, "");
}

TEST(Differences, BinaryFractions_AreShortUnlessTheyAreTheDifference) {
  const auto far = differences(R"({"a": 9.209999999999999})", R"({"a": 9.1})");
  ASSERT_EQ(far->size(), 1u);
  EXPECT_EQ(far->front().one, "9.21");
  const auto near = differences(R"({"a": 9.209999999999999})", R"({"a": 9.21})");
  ASSERT_EQ(near->size(), 1u);
  EXPECT_EQ(near->front().one, "9.209999999999999");
}

TEST(Differences, ThingsAreToldApartByTheirId) {
  const auto found = differences(R"({"u": [{"id": "gas", "d": 1}, {"id": "water", "d": 2}]})",
                                 R"({"u": [{"id": "duct", "d": 5}, {"id": "gas", "d": 1}, {"id": "water", "d": 3}]})");
  ASSERT_TRUE(found);
  ASSERT_EQ(found->size(), 2u);
  EXPECT_EQ((*found)[0].where, "u/water/d");
  EXPECT_EQ((*found)[1].where, "u/duct");
}

// Of a real file with itself: none; whatever one member is changed: exactly that one.
TEST(Differences, OfARealFile) {
  const auto text = read_text_file(BURROW_SOURCE_DIR "/samples/house-service.crossing");
  ASSERT_TRUE(text);
  const Tables tables = load_tables();
  Result<Crossing> crossing = read_crossing(*text, tables);
  ASSERT_TRUE(crossing);
  EXPECT_TRUE(differences(*text, write_crossing(*crossing))->empty());
  crossing->bore.launch.elevation.m += 0.05;
  const auto found = differences(*text, write_crossing(*crossing));
  ASSERT_EQ(found->size(), 1u);
  EXPECT_EQ(found->front().where, "bore/launch/elevation_m");
}

TEST(Differences, WhatIsNoJson_IsSaid) {
  EXPECT_FALSE(differences("{}", "{\"a\": "));
  EXPECT_FALSE(differences("", "{}"));
}

}  // namespace
}  // namespace burrow::test
