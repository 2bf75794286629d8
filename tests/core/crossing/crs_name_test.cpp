// What a coordinate system is called on paper.

#include <gtest/gtest.h>

#include "burrow/crossing/crossing.h"

namespace burrow {
namespace {

// OGC 18-010r7 (WKT 2), 7.3: the name is the first quoted text of a definition.
TEST(NameOfCrs, OgcWkt_NameIsTheFirstText) {
  EXPECT_EQ(name_of_crs("EPSG:25832"), "EPSG:25832");
  EXPECT_EQ(name_of_crs(R"(PROJCRS["Site grid",BASEGEOGCRS["WGS 84",DATUM["World Geodetic System 1984"]]])"),
            "Site grid");
  EXPECT_EQ(name_of_crs(R"(PROJCS["Old grid",GEOGCS["GCS"]])"), "Old grid");
  EXPECT_EQ(name_of_crs(R"({"type":"ProjectedCRS","name":"Site grid","base_crs":{"name":"WGS 84"}})"), "Site grid");
}

// A definition cut short is shown as it stands.
TEST(NameOfCrs, Broken_StaysAsItIs) {
  for (const char* broken : {"", "PROJCRS[", "PROJCRS[\"Site", "{", "{\"name\"", "{\"name\":\"Site", "grid"})
    EXPECT_EQ(name_of_crs(broken), broken);
}

}  // namespace
}  // namespace burrow
