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

}  // namespace
}  // namespace burrow
