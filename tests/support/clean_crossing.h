#pragma once
/// A crossing within limits, from which the tests take one thing away at a time.

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

#include "burrow/check/assess.h"
#include "burrow/check/mute.h"
#include "burrow/file/tables_file.h"

namespace burrow::test {

/// So many names of records, as constants taken over from a library carry them.
inline std::vector<std::string> named_records(int count) {
  std::vector<std::string> names;
  for (int i = 1; i <= count; ++i) names.push_back("record " + std::to_string(i));
  return names;
}

inline const Tables& tables() {
  static const Tables loaded = load_tables(Date{2026, 3, 2});
  return loaded;
}

inline Utility water_main(double station_m, double elevation_m) {
  Utility u;
  u.id = "u1";
  u.name = "water main";
  u.kind = UtilityKind::water;
  u.status.set(UtilityStatus::live);
  u.material = "pe100";
  u.outside_diameter = Length{0.11};
  u.located.how.set(LocatedHow::traced);
  u.located.lateral_sd = Length{0.05};
  u.located.vertical_sd = Length{0.06};
  u.located.tracer = TracedBy::wire;
  u.located.level = "checked-at-hole";  // a level that says how the height comes to be known so well
  u.path = {{station_m, -8, elevation_m}, {station_m, 8, elevation_m}};
  return u;
}

inline SurfaceFeature lane(double from_m, double to_m) {
  SurfaceFeature road;
  road.id = "f1";
  road.kind = SurfaceKind::road;
  road.name = "Alder Lane";
  road.from = Length{from_m};
  road.to = Length{to_m};
  road.rule = "road-duct-cover-36in";
  road.traffic = "highway";
  road.permission.set(Permission::allowed);
  road.permit = "permit 12";
  road.rescue = {"dig from the verge, lane closed by night", "the owner's inspector", "2026-02-20", ""};
  return road;
}

/// A dwelling from that far to the left of the line, founded a metre deep.
inline SurfaceFeature house(double beside_m) {
  SurfaceFeature building;
  building.id = "f9";
  building.kind = SurfaceKind::building;
  building.name = "the house";
  building.outline = {{1, beside_m}, {7, beside_m}, {7, beside_m + 6}, {1, beside_m + 6}};
  building.founding_elevation = Length{99};
  building.structure = "dwelling";
  return building;
}

/// Ticket, house connections, marks: all that is asked about a search.
inline void answer_search(UtilitySearch& search) {
  search.done = true;
  search.reference = "ticket 4711";
  search.date = "2026-02-23";
  search.valid_from = "2026-02-24";
  search.valid_to = "2026-03-24";
  search.marks_visible = true;
  search.laterals = Laterals::none_here;
}

/// All sides but that of the bore sloped by the rules; what nobody enters the program proposes.
inline void slope_sides(Pit& pit) {
  for (PitSide* side : {&pit.sides.back, &pit.sides.left, &pit.sides.right}) side->kind.set(SideKind::sloped);
}

/// Level ground at 100 m, firm clay seen in the pit, water far below, a 65 mm tool at 98.60 m, 8 m of bore, a lane on
/// top and a water main far below, everything asked for and answered.
inline Crossing clean_crossing() {
  Crossing c;
  c.name = "Alder Lane, house service";
  c.site.ground = {{-8, 100}, {20, 100}};
  c.site.water = LevelLine{{-8, 92}, {20, 92}};
  Stratum clay;
  clay.id = "l1";
  clay.soil = "firm-clay";
  clay.known.set(StratumEvidence::seen);
  c.site.strata = {clay};
  c.site.surface = {lane(2, 6)};
  c.site.utilities = {water_main(4, 97.0)};
  answer_search(c.site.utility_search);
  c.bore.tool.tool_class = "tool-65";
  c.bore.launch.elevation = Length{98.60};
  c.bore.launch.grade = Ratio{0.0};
  c.bore.exit.station = Length{8};
  c.pipe = Pipe{};
  c.pipe->material = "pe100";
  c.pipe->outside_diameter = Length{0.055};
  c.pipe->sdr = Ratio{11};
  c.pipe->service_temperature = Temperature{293.15};
  slope_sides(c.pits.launch);
  slope_sides(c.pits.exit);
  return c;
}

/// A compressor of 2.5 m³/min at 6.9 bar, 20 m of 19 mm hose, two couplings, a lubricator, all rated for 16 bar.
inline void give_air(Crossing& crossing) {
  Air& air = crossing.air;
  air.compressor.free_air = VolumeFlow{0.0417};
  air.compressor.pressure = Pressure{6.9e5};
  AirPart hose, couplings, lubricator;
  hose.length = Length{20};
  hose.bore = Length{0.019};
  couplings.kind = AirPartKind::coupling;
  couplings.count.set(2);
  couplings.equivalent_length = Length{0.6};
  lubricator.kind = AirPartKind::lubricator;
  lubricator.equivalent_length = Length{1.5};
  air.line = {hose, couplings, lubricator};
  for (AirPart& part : air.line) part.rating = Pressure{1.6e6};
}

inline Mute mute(std::string code, std::string subject, std::string reason, std::optional<double> measured = {}) {
  Mute m;
  m.code = std::move(code);
  m.subject = std::move(subject);
  m.reason = std::move(reason);
  m.by = "A. M.";
  m.date = "2026-02-27";
  m.measured = measured;
  return m;
}

inline Assessment judged(const Crossing& crossing) {
  return assess(crossing, tables());
}

inline const Finding* find(const Assessment& answer, std::string_view code, std::string_view subject = {}) {
  const auto it = std::find_if(answer.findings.begin(), answer.findings.end(), [&](const Finding& f) {
    return f.code == code && (subject.empty() || f.subject == subject);
  });
  return it == answer.findings.end() ? nullptr : &*it;
}

/// The crossing with these findings muted as they are now.
inline Crossing with_muted(Crossing crossing, std::string_view code, std::string_view subject, const char* reason) {
  const Assessment answer = assess(crossing, tables());
  const Finding* finding = find(answer, code, subject);
  if (!finding) {
    ADD_FAILURE() << "no " << code << " of " << subject;
    return crossing;
  }
  crossing.muted = with_mute(crossing, *finding, {reason, "A. M.", "2026-02-27"}).value();
  return crossing;
}

inline const Working* working(const Assessment& answer, std::string_view code, std::string_view subject = {}) {
  const auto it = std::find_if(answer.working.begin(), answer.working.end(), [&](const Working& w) {
    return w.code == code && (subject.empty() || w.subject == subject);
  });
  return it == answer.working.end() ? nullptr : &*it;
}

inline double input(const Working& working, std::string_view symbol) {
  for (const WorkingInput& i : working.inputs)
    if (i.symbol == symbol) return i.value;
  ADD_FAILURE() << working.code << " has no input " << symbol;
  return 0;
}

/// "stop bore.cover, caution utility.expose …": for the message of a failed test.
inline std::string listed(const Assessment& answer) {
  std::string all(word_of(answer.verdict));
  for (const Finding& f : answer.findings) {
    all += "\n  ";
    all += word_of(f.severity);
    all += " " + f.code + " " + f.subject + ": " + finding_text(f, UnitSystem::metric);
  }
  return all;
}

}  // namespace burrow::test
