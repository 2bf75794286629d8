#include "burrow/crossing/display_name.h"

#include <gtest/gtest.h>

namespace burrow::test {
namespace {

TEST(DisplayName, IsWhatWasEntered_ElseKindAndId) {
  Utility utility;
  utility.id = "u7";
  utility.kind = UtilityKind::gas;
  EXPECT_EQ(display_name(utility), "gas u7");
  utility.name = "gas";
  EXPECT_EQ(display_name(utility), "gas");
  SurfaceFeature feature;
  feature.kind = SurfaceKind::road;
  EXPECT_EQ(display_name(feature), "road");
  feature.name = "Alder Lane";
  EXPECT_EQ(display_name(feature), "Alder Lane");
}

}  // namespace
}  // namespace burrow::test
