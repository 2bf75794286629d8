#pragma once
/// Crossings with every member filled at random, from a seed. The members are taken by structured bindings, so that a
/// member added to a struct does not compile here until it is filled too.

#include <random>

#include "burrow/crossing/crossing.h"
#include "support/file_samples.h"

namespace burrow::test {

class Filler {
 public:
  explicit Filler(unsigned seed) : random_(seed) {}

  bool coin() { return random_() % 2 == 0; }
  /// Lies in the range of nearly every number of the file.
  double number() {
    const double u = static_cast<double>(random_() + 1u) / 4294967297.0;
    return coin() ? 0.01 + 0.48 * u : static_cast<double>(1 + random_() % 49) / 100.0;
  }
  std::string text() {
    static const char* const pieces[] = {"a", "Ü", "\"", "\\", "\n", " ", "/", "~", "é", "\x01", "漢", "0"};
    std::string t = "t";
    for (auto n = random_() % 6; n > 0; --n) t += pieces[random_() % std::size(pieces)];
    return t;
  }
  std::string unknown_keys() {
    static const char* const texts[] = {R"({"zz":1.10})", R"({"zz":[1,{"b":null,"a":"é"}],"aa":123456789012345678901})",
                                        R"({"a/b~c":{"deep":[[[]]],"empty":{}}})", R"({"zz":true,"":-1e-30})"};
    return texts[random_() % std::size(texts)];
  }

  void one(int& /*version*/) {}
  void one(std::vector<UnknownKey>& /*found on reading alone*/) {}
  void one(double& v) { v = number(); }
  // Of these no range reaches down to a half.
  void one(UnitWeight& v) { v = {1e4 * (1 + number())}; }
  void one(Pressure& v) { v = {1e5 * number()}; }
  void one(Temperature& v) { v = {273.15 + 20 * number()}; }
  void one(bool& v) { v = coin(); }
  void one(std::int64_t& v) { v = 1 + static_cast<std::int64_t>(random_() % 1000u); }
  void one(std::string& v) { v = coin() ? text() : ""; }
  template <class E>
  requires std::is_enum_v<E>
  void one(E& v) { v = EnumNames<E>::list[random_() % std::size(EnumNames<E>::list)].first; }
  template <class Q>
  requires(std::is_aggregate_v<Q> && sizeof(Q) == sizeof(double)) void one(Q& quantity) {
    auto& [v] = quantity;
    v = number();
  }
  template <class T>
  void one(Given<T>& v) {
    if (!coin()) return;
    T value{};
    one(value);
    v.set(value);
  }
  template <class T>
  void one(std::optional<T>& v) {
    if (coin()) one(v.emplace());
  }
  template <class T>
  void one(std::vector<T>& v) {
    v.resize(random_() % 4);
    for (T& item : v) one(item);
  }
  void one(LevelLine& line) {
    line.resize(1 + random_() % 4);
    double station = -20;
    for (LevelPoint& p : line) p = {station += number(), number()};
  }
  void one(std::map<std::string, LimitOverride>& limits) {
    for (const LimitRow& row : tables().limits)
      if (coin()) one(limits[row.id]);
  }
  template <class T>
  requires(std::is_aggregate_v<T> && sizeof(T) != sizeof(double)) void one(T& thing) { fill(*this, thing); }
  template <class... T>
  void all(T&... members) {
    (one(members), ...);
  }

 private:
  std::mt19937 random_;
};

#define BURROW_FILL_POINT(Type, ...)              \
  inline void fill(Filler& filler, Type& thing) { \
    auto& [__VA_ARGS__] = thing;                  \
    filler.all(__VA_ARGS__);                      \
  }
#define BURROW_FILL(Type, ...)                          \
  inline void fill(Filler& filler, Type& thing) {       \
    auto& [__VA_ARGS__, unknown] = thing;               \
    filler.all(__VA_ARGS__);                            \
    if (filler.coin()) unknown = filler.unknown_keys(); \
  }
BURROW_FILL_POINT(PlanPoint, x, y)
BURROW_FILL_POINT(Point3, x, y, z)
BURROW_FILL_POINT(PathVertex, x, y, z)
BURROW_FILL(SoilOverrides, a, b, c, d, e, f, g, h, i, j, k, l, m, n, o, p, q, r, s)
BURROW_FILL(Stratum, id, soil, top, known, values)
BURROW_FILL(Strip, id, name, soil, values, outline, top, bottom)
BURROW_FILL(LevelPeg, station, offset, before, after, settled)
BURROW_FILL(LevelRecord, before, after, settled, pegs)
BURROW_FILL(Statement, how, by, date)
BURROW_FILL(StuckPlan, how, agreed_with, date)
BURROW_FILL(SurfaceFeature, id, kind, name, from, to, skew, traffic, rule, cover, heave, permission, permit, outline,
            founding, structure, bearing, rescue, levels)
BURROW_FILL(Boundary, id, kind, name, line)
BURROW_FILL(Tree, id, name, station, offset, radius)
BURROW_FILL(Plant, id, name, station, offset, length, width, load, factor)
BURROW_FILL(Recorded, diameter, level, from, source, date)
BURROW_FILL(Located, how, level, lateral, vertical, tracer, date, moved)
BURROW_FILL(LineEnds, first, last)
BURROW_FILL(AgreedGap, distance, with, date)
BURROW_FILL(Utility, id, name, owner, kind, status, material, diameter, path, ends, abandonment, recorded, located,
            clearance, agreed, precaution)
BURROW_FILL(TestHole, id, utility, station, offset, level, elevation, sd, reach, date, by, photo, agreed)
BURROW_FILL(CameraSurvey, result, reference, date)
BURROW_FILL(UtilitySearch, done, reference, date, valid_from, valid_to, marks, none_found, laterals, rate,
            camera_before, camera_after)
BURROW_FILL(Background, id, name, source, layer, lines, not_a_service)
BURROW_FILL(Georeference, crs, origin, azimuth, vertical)
BURROW_FILL(Site, ground, points, water, strata, strips, surface, nothing_above, boundaries, trees, plant, utilities,
            holes, search, background, georeference)
BURROW_FILL(ToolChoice, tool_class, a, b, c, d, e, f, g, h, i)
BURROW_FILL(Launch, station, offset, elevation, grade, heading, a, b, c, d)
BURROW_FILL(Exit, station, offset)
BURROW_FILL(TrialsRequest, count, seed)
BURROW_FILL(ModelConstants, a, b, c, d, records)
BURROW_FILL(Bore, tool, launch, exit, trials, model, head_located)
BURROW_FILL(Pipe, material, a, b, c, count, insertion, pull_by, d, coupling, rating, time, e, f, service, g)
BURROW_FILL(Bench, rise, tread, run)
BURROW_FILL(PitSide, kind, run, upright, foot, top, benches, walked)
BURROW_FILL(PitSides, bore, back, left, right)
BURROW_FILL(RatedShield, depth, soil_type, source)
BURROW_FILL(PitSigns, a, b, c, d, e, f, g, h, i, j, k, l, m, n, o, none_seen)
BURROW_FILL(Spoil, side, setback, height)
BURROW_FILL(Ladder, side, along)
BURROW_FILL(Pit, a, b, c, d, floor_outline, e, f, g, h, soil_type, confirmed_by, open_time, signs, sides, shield,
            load_design, spoil, ladder, allowance)
BURROW_FILL(Pits, rules, launch, exit)
BURROW_FILL(Compressor, name, free_air, pressure, regulator)
BURROW_FILL(AirPart, kind, length, bore, roughness, count, equivalent, rating)
BURROW_FILL(Oil, first_fill, rate)
BURROW_FILL(Air, compressor, altitude, temperature, humidity, line, oil, spacing, fitting)
BURROW_FILL(Reading, kind, time, a, b, c, d, e, f, g, h, i, j, k, l, m, n, o, p, q, sign, tasks, confirmed, cancelled)
BURROW_FILL(KeptLayout, bore, pipe)
BURROW_FILL(TakenOnFinding, code, subject, margin)
BURROW_FILL(TakenOn, by, why, date, findings)
BURROW_FILL(PullIn, date, by, what, peak, rating, watched_by)
BURROW_FILL(RecordPhoto, path, what)
BURROW_FILL(Aftermath, hole, released, pull_in, grouted, photos)
BURROW_FILL(DayRecord, id, started, crew, alternative, layout, taken_on, readings, aftermath)
BURROW_FILL(OwnerContact, owner, phone, answered, valve)
BURROW_FILL(DailyCheck, date, by, done)
BURROW_FILL(GoSigned, decision, by, date)
BURROW_FILL(Permit, emergency, locating, owners, pits, daily, at_valve, at_exit, supervisor, crew)
BURROW_FILL(LimitOverride, value, why, by)
BURROW_FILL(Mute, code, subject, reason, by, date, measured, fingerprint)
BURROW_FILL(Alternative, id, name, bore, pipe, pits, air, locks)
BURROW_FILL(SheetSettings, a, b, c, d, e, f, g, h, i)
BURROW_FILL(Crossing, version, name, notes, site, bore, pipe, pits, air, permit, record, limits, locks, muted,
            alternatives, practice, sheet, unknown_keys)
#undef BURROW_FILL
#undef BURROW_FILL_POINT

inline void mend(Bore& bore) {
  bore.tool.tool_class = "tool-95";
  if (bore.tool.mass || bore.tool.striker_mass) {  // the striker lighter than its tool
    const double mass = bore.tool.mass.value_or(Mass{1}).kg;
    bore.tool.mass = Mass{mass};
    bore.tool.striker_mass = Mass{0.3 * mass};
  }
  bore.exit.station.m = bore.launch.station.m + 10;
}

/// Valid as a file: names that the tables know, ids once, references that hold.
inline Crossing random_crossing(unsigned seed) {
  Crossing c;
  Filler filler(seed);
  fill(filler, c);
  int n = 0;
  const auto name = [&n](auto& list) {
    for (auto& thing : list) thing.id = "i" + std::to_string(++n);
  };
  Site& site = c.site;
  if (site.strata.empty()) site.strata.emplace_back();
  name(site.strata), name(site.strips), name(site.surface), name(site.boundaries), name(site.trees), name(site.plant);
  name(site.utilities), name(site.test_holes), name(site.background), name(c.record), name(c.alternatives);
  for (Stratum& s : site.strata) s.soil = tables().soils[seed % tables().soils.size()].id;
  for (Strip& s : site.strips) s.soil = tables().soils.front().id;
  for (SurfaceFeature& f : site.surface)
    if (f.rule) f.rule = tables().surface_rules.front().id;
  for (Utility& u : site.utilities)
    if (u.located.level) u.located.level = tables().locating.back().id;
  for (TestHole& h : site.test_holes) h.utility = site.utilities.empty() ? "" : site.utilities.back().id;
  for (DayRecord& d : c.record)
    if (d.alternative) d.alternative = c.alternatives.empty() ? std::nullopt : std::optional(c.alternatives[0].id);
  for (std::string& lock : c.locks) lock = "/bore/launch/grade";
  mend(c.bore);
  const auto simple = [seed](Pit& pit) {
    if (!pit.floor_outline.empty())
      pit.floor_outline = {{0, -0.5}, {3.25 + 0.5 * seed, -0.5}, {3.25 + 0.5 * seed, 0.5}, {1.5, 0.5}, {1.5, 1.4},
                           {0, 1.4}};
  };
  simple(c.pits.launch), simple(c.pits.exit);
  for (Alternative& a : c.alternatives)
    if (a.pits) simple(a.pits->launch), simple(a.pits->exit);
  const auto thick = [](Pipe& pipe) {
    if (pipe.sdr) pipe.sdr->v += 11;
  };
  if (c.pipe) c.pipe->material = seed % 2 ? "pe100" : "";
  if (c.pipe) thick(*c.pipe);
  for (Alternative& a : c.alternatives) {
    if (a.bore) mend(*a.bore);
    if (a.pipe) a.pipe->material = "pe80", thick(*a.pipe);
    for (std::string& lock : a.locks) lock = "/pits";
  }
  for (DayRecord& d : c.record) {
    if (d.layout.bore) mend(*d.layout.bore);
    if (d.layout.pipe) d.layout.pipe->material = "pe80", thick(*d.layout.pipe);
  }
  c.unknown_keys.clear();  // found on reading alone
  c.practice = filler.coin() ? R"({"truth":[0.25,null,"x"]})" : "";
  return c;
}

}  // namespace burrow::test
