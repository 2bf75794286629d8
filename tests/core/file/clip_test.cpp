// Things as text for the clipboard: what comes back, what does not go along, what is refused.

#include "burrow/file/clip_file.h"

#include <gtest/gtest.h>

#include "burrow/crossing/blank.h"
#include "burrow/file/tables_file.h"
#include "support/random_crossing.h"

namespace burrow {
namespace {

const Tables& tables() {
  static const Tables loaded = load_tables(Date{2026, 3, 2});
  return loaded;
}

Site some_clip() {
  Site clip;
  Utility u;
  u.id = "u7";
  u.name = "gas main";
  u.kind = UtilityKind::gas;
  u.outside_diameter = Length{0.125};
  u.path = {{4, -5, 100.0}, {5, 5, std::nullopt}};
  u.located.how.set(LocatedHow::exposed);
  u.located.lateral_sd = Length{0.0};
  u.abandonment = {"cut and capped", "A. Reader", "2026-01-02", {}};
  u.ends.first = LineEnd::cap;
  clip.utilities = {u};
  TestHole hole;
  hole.id = "h1";
  hole.utility = "u7";
  hole.station = Length{4.5};
  hole.elevation = Length{100};
  hole.by = "A. Reader";
  clip.test_holes = {hole};
  SurfaceFeature road;
  road.id = "f1";
  road.name = "lane";
  road.from = Length{2};
  road.to = Length{6};
  road.permission.set(Permission::allowed);
  road.permit = "114";
  clip.surface = {road};
  return clip;
}

TEST(Clip, WrittenAndRead_WithoutWhatWasEstablishedThere) {
  const Result<Site> read = read_clip(write_clip(some_clip()), tables());
  ASSERT_TRUE(read) << read.error().english();
  ASSERT_EQ(read->utilities.size(), 1u);
  const Utility& u = read->utilities.front();
  EXPECT_EQ(u.name, "gas main");
  EXPECT_EQ(u.path, some_clip().utilities.front().path);
  EXPECT_EQ(u.outside_diameter->m, 0.125);
  // Not knowing never looks safe: nobody located it, exposed it or proved it dead here.
  EXPECT_EQ(u.located, Located());
  EXPECT_EQ(u.abandonment, Statement());
  EXPECT_EQ(u.ends, LineEnds());
  ASSERT_EQ(read->test_holes.size(), 1u);
  EXPECT_EQ(read->test_holes.front().utility, "u7");
  EXPECT_FALSE(read->test_holes.front().elevation) << "still to be dug";
  ASSERT_EQ(read->surface.size(), 1u);
  EXPECT_FALSE(read->surface.front().permission.entered);
  EXPECT_EQ(read->surface.front().permit, "");
  EXPECT_TRUE(read->strata.empty());
  EXPECT_TRUE(read->ground.empty());
}

TEST(Clip, HoleWithoutItsUtility_BelongsToNone) {
  Site alone = some_clip();
  alone.utilities.clear();
  const Result<Site> read = read_clip(write_clip(alone), tables());
  ASSERT_TRUE(read) << read.error().english();
  EXPECT_EQ(read->test_holes.front().utility, "");
}

TEST(Clip, EverythingOfRandomCrossings_ComesBack) {
  std::size_t strata = 0, around = 0;
  for (unsigned seed = 1; seed <= 40; ++seed) {
    const Crossing c = test::random_crossing(seed);
    const Result<Site> read = read_clip(write_clip(c.site), tables());
    ASSERT_TRUE(read) << seed << " " << read.error().english();
    EXPECT_EQ(read->utilities.size(), c.site.utilities.size());
    EXPECT_EQ(read->strata.size(), c.site.strata.size());
    EXPECT_EQ(read->boundaries, c.site.boundaries);
    EXPECT_EQ(read->trees, c.site.trees);
    EXPECT_EQ(read->plant, c.site.plant);
    EXPECT_EQ(read->strips, c.site.strips);
    strata += read->strata.size();
    around += read->trees.size() + read->plant.size();
  }
  EXPECT_GT(strata, 40u);
  EXPECT_GT(around, 10u);
}

TEST(Clip, AnythingElse_IsRefused) {
  for (const char* text : {"", "gas main", "{}", "[1,2]", R"({"format":"burrowline-crossing","version":1})",
                           R"({"format":"burrowline-clip","version":99,"site":{}})",
                           R"({"format":"burrowline-clip","version":1,"site":{"utilities":[{"kind":"gold"}]}})",
                           R"({"format":"burrowline-clip","version":1,"site":{"utilities":7}})"})
    EXPECT_FALSE(read_clip(text, tables())) << text;
  const std::string whole = write_clip(some_clip());
  for (std::size_t cut = 1; cut < whole.size(); cut += 7) EXPECT_FALSE(read_clip(whole.substr(0, cut), tables()));
  EXPECT_TRUE(read_clip(R"({"format":"burrowline-clip","version":1,"site":{}})", tables())) << "nothing was copied";
}

}  // namespace
}  // namespace burrow
