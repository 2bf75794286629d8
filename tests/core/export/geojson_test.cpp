#include "burrow/export/geojson.h"

#include <cmath>
#include <nlohmann/json.hpp>

#include "support/export_for_tests.h"

namespace burrow::test {
namespace {

using Json = nlohmann::json;

Judged placed(const std::string& name) {
  Judged j = judged_sample(name);
  j.crossing.site.georeference = Georeference{"EPSG:25832", {500000, 5400000}, {}, "", ""};
  return j;
}

/// A plan in degrees at the equator of a small sphere: metres over a fixed number.
Result<std::vector<PlanPoint>> in_degrees(std::vector<PlanPoint> local) {
  for (PlanPoint& p : local) p = {9 + p.x_m * 1e-5, 48 + p.y_m * 1e-5};
  return local;
}

double signed_area(const Json& ring) {
  double twice = 0;
  for (std::size_t i = 0; i + 1 < ring.size(); ++i)
    twice += ring[i][0].get<double>() * ring[i + 1][1].get<double>() -
             ring[i + 1][0].get<double>() * ring[i][1].get<double>();
  return twice / 2;
}

TEST(GeoJson, NotGeoreferenced_SaysWhatToDo) {
  const Judged& j = judged_sample("house-service");
  const auto text = write_geojson(j.crossing, j.answer, in_degrees);
  ASSERT_FALSE(text);
  EXPECT_EQ(text.error().place, "/site/georeference");
  EXPECT_NE(text.error().expected.english().find("import"), std::string::npos);
}

TEST(GeoJson, AllFeatures_WithRingsTheRightWayRound) {
  for (const std::string& name : sample_names()) {
    const Judged j = placed(name);
    const auto text = write_geojson(j.crossing, j.answer, in_degrees);
    ASSERT_TRUE(text) << name << text.error().english();
    const Json all = Json::parse(*text);
    EXPECT_EQ(all["type"], "FeatureCollection");
    std::map<std::string, int> count;
    for (const Json& f : all["features"]) {
      ++count[f["properties"]["what"].get<std::string>()];
      const Json& geometry = f["geometry"];
      if (geometry["type"] == "Polygon") {
        EXPECT_EQ(geometry["coordinates"][0].front(), geometry["coordinates"][0].back());
        EXPECT_GT(signed_area(geometry["coordinates"][0]), 0) << name << f["properties"]["what"];
      } else {
        EXPECT_EQ(geometry["coordinates"].size(), f["properties"]["elevation_m"].size());
      }
    }
    EXPECT_EQ(count["bore"], 1);
    EXPECT_EQ(count["band"], 1);
    EXPECT_EQ(count["launch-pit"], 1);
    EXPECT_EQ(count["exit-pit"], 1);
    EXPECT_EQ(count["utility"], static_cast<int>(j.crossing.site.utilities.size()));
  }
}

TEST(GeoJson, DepthNotKnown_IsNullNotZero) {
  Judged j = placed("house-service");
  j.crossing.site.utilities[0].path[0].z_m.reset();
  const Json all = Json::parse(*write_geojson(j.crossing, j.answer, in_degrees));
  for (const Json& f : all["features"])
    if (f["properties"].contains("id") && f["properties"]["id"] == j.crossing.site.utilities[0].id) {
      EXPECT_TRUE(f["properties"]["elevation_m"][0].is_null());
    }
}

TEST(GeoJson, PlaceFails_IsTold) {
  const Judged j = placed("house-service");
  const auto off =
      write_geojson(j.crossing, j.answer, [](std::vector<PlanPoint> local) -> Result<std::vector<PlanPoint>> {
        for (PlanPoint& p : local) p.x_m = NAN;
        return local;
      });
  EXPECT_FALSE(off);
  const auto failed = write_geojson(j.crossing, j.answer, [](std::vector<PlanPoint>) -> Result<std::vector<PlanPoint>> {
    return fail("coordinate system", "x", "y");
  });
  ASSERT_FALSE(failed);
  EXPECT_EQ(failed.error().place, "coordinate system");
}

}  // namespace
}  // namespace burrow::test
