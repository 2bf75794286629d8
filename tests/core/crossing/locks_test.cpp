// Locks are JSON pointers: of a member, or of anything it lies in.

#include "burrow/crossing/locks.h"

#include <gtest/gtest.h>

namespace burrow {
namespace {

TEST(Locks, MemberOrWhatItLiesIn) {
  Crossing crossing;
  EXPECT_FALSE(member_locked(crossing, "/bore/launch/grade"));
  crossing.locks = {"/bore/launch/grade"};
  EXPECT_TRUE(member_locked(crossing, "/bore/launch/grade"));
  EXPECT_FALSE(member_locked(crossing, "/bore/launch/grade_sd"));
  EXPECT_FALSE(member_locked(crossing, "/bore/launch"));
  crossing.locks = {"/bore/launch"};
  EXPECT_TRUE(member_locked(crossing, "/bore/launch/elevation_m"));
  EXPECT_FALSE(member_locked(crossing, "/bore/exit/station_m"));
}

TEST(Locks, SetAndOpened_OfAWiderOneTheRestStays) {
  Crossing crossing;
  set_lock(crossing, "/bore/launch/grade", true);
  set_lock(crossing, "/bore/launch", true);
  EXPECT_EQ(crossing.locks, std::vector<std::string>{"/bore/launch"}) << "what it covers needs no lock of its own";
  set_lock(crossing, "/bore/launch/grade", true);
  EXPECT_EQ(crossing.locks.size(), 1u);
  set_lock(crossing, "/bore/launch/grade", false);
  EXPECT_FALSE(lock_stands(crossing, "/bore/launch/grade"));
  for (const char* other : {"station_m", "elevation_m", "heading_rad", "offset_m"})
    EXPECT_TRUE(lock_stands(crossing, std::string("/bore/launch/") + other)) << other;
  set_lock(crossing, "/bore/launch", false);
  EXPECT_TRUE(crossing.locks.empty());
}

// What a lock opens is that place and what lies in it, whatever else is locked.
TEST(Locks, EachPlace_LockedAndOpened_LeavesTheOthers) {
  Crossing crossing;
  crossing.site.utilities.resize(2);
  crossing.site.utilities[0].id = "u1";
  crossing.site.utilities[1].id = "u10";  // begins as the other
  crossing.site.strata.resize(1);
  crossing.site.strata[0].id = "l1";
  const std::vector<std::string> all = lockable(crossing);
  ASSERT_GT(all.size(), 25u);
  for (const std::string& place : all) {
    Crossing locked = crossing;
    for (const std::string& each : all) set_lock(locked, each, true);
    set_lock(locked, place, false);
    for (const std::string& each : all) EXPECT_EQ(lock_stands(locked, each), each != place) << place << " " << each;
  }
}

TEST(Locks, BoreUnderWay_HoldsItsLayout_WithoutALockInTheFile) {
  Crossing crossing;
  DayRecord record;
  record.readings.emplace_back();
  crossing.record.push_back(record);
  EXPECT_TRUE(member_locked(crossing, "/bore/launch/grade"));
  EXPECT_FALSE(lock_stands(crossing, "/bore/launch/grade"));
}

}  // namespace
}  // namespace burrow
