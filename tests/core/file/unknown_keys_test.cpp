/// A key that nobody knows is kept; one that looks like a known one is named, since what stands under it is not judged.

#include <gtest/gtest.h>

#include <algorithm>

#include "burrow/file/crossing_file.h"
#include "support/file_samples.h"

namespace burrow::test {
namespace {

std::vector<UnknownKey> unknown_of(std::string_view from, std::string_view to) {
  std::string text = write_crossing(*read_crossing(R"({"format":"burrowline-crossing","version":1,
    "site":{"ground":[[0,100],[20,100]],"strata":[{"soil":"firm-clay"}],"utilities":[{"kind":"gas","outside_diameter_m":0.1,
      "path":[[5,-5,99],[5,5,99]]}]},
    "bore":{"tool":{"class":"tool-65"},"launch":{"station_m":0,"elevation_m":98.6,"grade":0},"exit":{"station_m":10}}})",
                                                   tables()));
  const std::size_t at = text.find(from);
  EXPECT_NE(at, std::string::npos);
  text.replace(at, from.size(), to);
  const auto crossing = read_crossing(text, tables());
  EXPECT_TRUE(crossing) << crossing.error().english();
  EXPECT_EQ(read_crossing(write_crossing(*crossing), tables()), crossing);  // kept, and named again
  return crossing->unknown_keys;
}

// The case of the issue: "utilitys" and a gas main is gone.
TEST(UnknownKeys, OurRule_MisspeltKeyIsNamed) {
  const auto found = unknown_of("\"utilities\"", "\"utilitys\"");
  ASSERT_EQ(found.size(), 1U);
  EXPECT_EQ(found[0], (UnknownKey{"/site", "utilitys", "utilities"}));
  for (const auto& [wrong, place] :
       std::vector<std::pair<std::string, std::string>>{{"outsidediameter_m", "/site/utilities/0"},
                                                        {"Outside_Diameter_m", "/site/utilities/0"},
                                                        {"outside_diameter", "/site/utilities/0"},
                                                        {"outside_diamter_m", "/site/utilities/0"}}) {
    const auto one = unknown_of("\"outside_diameter_m\"", "\"" + wrong + "\"");
    ASSERT_EQ(one.size(), 1U) << wrong;
    EXPECT_EQ(one[0], (UnknownKey{place, wrong, "outside_diameter_m"}));
  }
}

// A foreign key stays silent.
TEST(UnknownKeys, OurRule_ForeignKeyIsSilent) {
  for (const char* foreign : {"\"zz\"", "\"remarks_of_the_office\"", "\"x\"", "\"\"", "\"colour\""})
    EXPECT_TRUE(unknown_of("\"kind\":", foreign + std::string(":\"gas\",\"kind\":")).empty()) << foreign;
}

}  // namespace
}  // namespace burrow::test
