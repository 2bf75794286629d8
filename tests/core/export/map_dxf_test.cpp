// The plan on the map: another coordinate in place of the local one, heights kept, depths that nobody knows apart.

#include "burrow/export/map_dxf.h"

#include <gmock/gmock.h>

#include "support/export_for_tests.h"

namespace burrow::test {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

std::string written(Crossing crossing, const Assessment& answer) {
  crossing.site.georeference = Georeference{};
  crossing.site.georeference->crs = "EPSG:25832";
  const auto text = write_map_dxf(crossing, answer, [](std::vector<PlanPoint> local) -> Result<std::vector<PlanPoint>> {
    for (PlanPoint& p : local) p = {500000 + p.x_m, 5400000 + p.y_m};
    return local;
  });
  EXPECT_TRUE(text) << text.error().english();
  return text.value_or("");
}

TEST(MapDxf, BoreAndUtilities_OnTheMap) {
  const Judged& judged = judged_sample("house-service");
  const std::string text = written(judged.crossing, judged.answer);
  for (const char* layer : {"MAP-BORE", "MAP-BAND", "MAP-LAUNCH-PIT", "MAP-EXIT-PIT", "MAP-SYSTEM", "EPSG:25832"})
    EXPECT_THAT(text, HasSubstr(layer));
  const PathPoint& last = judged.answer.bore.points.back();
  for (const double value : {500000 + last.x_m, 5400000 + last.y_m, last.z_m}) {
    char shown[40];
    std::snprintf(shown, sizeof shown, "\r\n%.6f\r\n", value);
    EXPECT_THAT(text, HasSubstr(shown));
  }
}

// What nobody knows is not drawn at height 0.
TEST(MapDxf, DepthNotKnown_OnALayerOfItsOwn) {
  Judged judged = judged_sample("house-service");
  ASSERT_FALSE(judged.crossing.site.utilities.empty());
  judged.crossing.site.utilities.resize(1);
  Utility& utility = judged.crossing.site.utilities[0];
  utility.kind = UtilityKind::gas;
  for (PathVertex& v : utility.path) v.z_m = 98.5;
  EXPECT_THAT(written(judged.crossing, judged.answer), Not(HasSubstr("NO-DEPTH")));
  utility.path.back().z_m.reset();
  EXPECT_THAT(written(judged.crossing, judged.answer), HasSubstr("MAP-GAS-NO-DEPTH"));
}

TEST(MapDxf, WithoutAPlace_OrOffTheMap) {
  const Judged& judged = judged_sample("house-service");
  Crossing crossing = judged.crossing;
  crossing.site.georeference.reset();
  const auto same = [](std::vector<PlanPoint> local) -> Result<std::vector<PlanPoint>> { return local; };
  EXPECT_FALSE(write_map_dxf(crossing, judged.answer, same));
  crossing.site.georeference = Georeference{};
  EXPECT_TRUE(write_map_dxf(crossing, judged.answer, same));
  EXPECT_FALSE(
      write_map_dxf(crossing, judged.answer, [](std::vector<PlanPoint> local) -> Result<std::vector<PlanPoint>> {
        for (PlanPoint& p : local) p.x_m = std::numeric_limits<double>::quiet_NaN();
        return local;
      }));
}

}  // namespace
}  // namespace burrow::test
