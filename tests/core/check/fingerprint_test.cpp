// What a mute was given for: another layout, location or tool gives another fingerprint, another name does not.

#include "burrow/check/fingerprint.h"

#include <functional>
#include <set>

#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

Finding about(const char* code, const char* subject) {
  Finding finding;
  finding.code = code;
  finding.severity = Severity::caution;
  finding.subject = subject;
  return finding;
}

Crossing with_hole() {
  Crossing c = clean_crossing();
  TestHole hole;
  hole.id = "h1";
  hole.utility = "u1";
  hole.station = Length{4};
  hole.elevation = Length{97};
  c.site.test_holes = {hole};
  return c;
}

TEST(Fingerprint, Renaming_ChangesNothing) {
  const Crossing was = with_hole();
  Crossing renamed = was;
  renamed.name = "another name";
  renamed.notes = "seen again";
  renamed.site.utilities.front().name = "old main";
  renamed.site.utilities.front().owner = "its owner";
  renamed.site.surface.front().name = "Birch Lane";
  renamed.site.test_holes.front().by = "J. K.";
  renamed.sheet.revision = "C";
  for (const char* subject : {"u1", "f1", "bore", "launch-pit", "site"})
    EXPECT_EQ(fingerprint_of(was, about("utility.expose", subject)),
              fingerprint_of(renamed, about("utility.expose", subject)))
        << subject;
}

TEST(Fingerprint, LayoutLocationAndTool_EachChangeIt) {
  const std::vector<std::function<void(Crossing&)>> changes{
      [](Crossing& c) { c.bore.launch.station.m += 0.002; },
      [](Crossing& c) { c.bore.launch.elevation.m -= 0.002; },
      [](Crossing& c) { c.bore.launch.grade = Ratio{0.001}; },
      [](Crossing& c) { c.bore.launch.offset.set(Length{0.01}); },
      [](Crossing& c) { c.bore.launch.heading.set(Angle{0.001}); },
      [](Crossing& c) { c.bore.exit.station.m += 0.002; },
      [](Crossing& c) { c.bore.exit.offset.set(Length{0.01}); },
      [](Crossing& c) { c.bore.tool.tool_class = "tool-95"; },
      [](Crossing& c) { c.bore.tool.diameter = Length{0.07}; },
      [](Crossing& c) { c.bore.tool.pressure = Pressure{5e5}; },
      [](Crossing& c) { c.pits.launch.floor_width = Length{1.2}; },
      [](Crossing& c) { c.pits.exit.sides.back.kind.set(SideKind::upright); },
      [](Crossing& c) { c.site.utilities.front().path[1].z_m = 97.002; },
      [](Crossing& c) { c.site.utilities.front().path[1].z_m.reset(); },
      [](Crossing& c) { c.site.utilities.front().outside_diameter = Length{0.16}; },
      [](Crossing& c) { c.site.utilities.front().kind = UtilityKind::gas; },
      [](Crossing& c) { c.site.utilities.front().status.set(UtilityStatus::unknown); },
      [](Crossing& c) { c.site.utilities.front().located.how.set(LocatedHow::records); },
      [](Crossing& c) { c.site.utilities.front().located.lateral_sd = Length{0.1}; },
      [](Crossing& c) { c.site.test_holes.front().elevation = Length{96.9}; },
      [](Crossing& c) { c.site.test_holes.clear(); }};
  std::set<std::string> prints{fingerprint_of(with_hole(), about("utility.expose", "u1"))};
  for (std::size_t i = 0; i < changes.size(); ++i) {
    Crossing changed = with_hole();
    changes[i](changed);
    EXPECT_TRUE(prints.insert(fingerprint_of(changed, about("utility.expose", "u1"))).second) << "change " << i;
  }
}

TEST(Fingerprint, ThingOnTop_ByItsPlace) {
  Crossing moved = clean_crossing();
  const Finding finding = about("missing.permission", "f1");
  const std::string was = fingerprint_of(moved, finding);
  moved.site.surface.front().to = Length{6.5};
  EXPECT_NE(fingerprint_of(moved, finding), was);
  Crossing other = clean_crossing();
  other.site.utilities.front().path[0].x_m += 1;
  EXPECT_EQ(fingerprint_of(other, finding), was) << "another thing was moved";
  EXPECT_NE(fingerprint_of(other, about("site.unknown", "site")),
            fingerprint_of(clean_crossing(), about("site.unknown", "site")))
      << "of the site all counts";
}

// FNV-1a of the same text is the same on every machine: 16 digits, and 8 more of the place in a pit's finding.
TEST(Fingerprint, PitsFinding_HasItsPlace) {
  const Crossing crossing = clean_crossing();
  Finding launch = about("pit.on-road", "f1"), exit = launch;
  launch.station_m = -1;
  exit.station_m = 9;
  const std::string one = fingerprint_of(crossing, launch), other = fingerprint_of(crossing, exit);
  EXPECT_EQ(one.size(), 25u);
  EXPECT_TRUE(beside_each_other(one, other));
  EXPECT_FALSE(beside_each_other(one, one));
  Crossing moved = crossing;
  moved.bore.launch.station.m -= 1;
  EXPECT_FALSE(beside_each_other(one, fingerprint_of(moved, exit))) << "another layout";
  EXPECT_EQ(fingerprint_of(crossing, about("utility.expose", "u1")).size(), 16u);
}

}  // namespace
}  // namespace burrow::test
