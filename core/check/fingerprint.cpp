#include "burrow/check/fingerprint.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <iterator>
#include <optional>
#include <type_traits>

namespace burrow {

namespace {

std::uint64_t fnv_1a(std::string_view text) {
  std::uint64_t hash = 14695981039346656037ULL;
  for (const char c : text) {
    hash ^= static_cast<unsigned char>(c);
    hash *= 1099511628211ULL;
  }
  return hash;
}

/// Members one after the other, each ended by a bar; what is not entered is a bar alone.
class Canon {
 public:
  template <class... Members>
  void all(const Members&... members) {
    (one(members), ...);
  }
  [[nodiscard]] const std::string& text() const { return text_; }

 private:
  void number(double value, double steps) {
    fmt::format_to(std::back_inserter(text_), "{:.0f}|", std::round(value * steps) + 0.0);
  }
  void one(double metres) { number(metres, 1e3); }
  void one(bool value) { text_ += value ? "y|" : "n|"; }
  void one(const std::string& word) { text_ += word + "|"; }
  void one(Length v) { number(v.m, 1e3); }
  void one(const PlanPoint& p) { all(p.x_m, p.y_m); }
  void one(const PathVertex& v) { all(v.x_m, v.y_m, v.z_m); }
  void one(const LevelPoint& p) { all(p.station_m, p.elevation_m); }
  void one(const Bench& b) {
    all(b.rise, b.tread);
    if (b.run_per_rise) one(*b.run_per_rise);  // mutes given before it could be entered still hold
  }
  template <class E>
  requires std::is_enum_v<E>
  void one(E word) { text_ += std::string(word_of(word)) + "|"; }
  template <class Q>
  requires(std::is_aggregate_v<Q> && sizeof(Q) == sizeof(double)) void one(const Q& quantity) {
    const auto& [value] = quantity;
    number(value, 1e5);
  }
  template <class T>
  void one(const Given<T>& given) {
    one(given.value);
  }
  template <class T>
  void one(const std::optional<T>& v) {
    v ? one(*v) : one(std::string());
  }
  template <class T>
  void one(const std::vector<T>& list) {
    for (const T& item : list) one(item);
    text_ += ";";
  }
  std::string text_;
};

void add(Canon& to, const ToolChoice& t) {
  to.all(t.tool_class, t.diameter, t.length, t.mass, t.piston_diameter, t.stroke, t.striker_mass, t.blow_rate,
         t.pressure, t.free_air);
}

void add(Canon& to, const PitSide& s) {
  to.all(s.kind, s.run_per_rise, s.upright, s.support_foot, s.support_top, s.benches);
}

void add(Canon& to, const Pit& p) {
  to.all(p.floor_length, p.floor_width, p.floor_elevation, p.floor_offset, p.floor_outline, p.working_length,
         p.cradle_height, p.slab_thickness, p.sump_depth, p.soil_type, p.spoil.side, p.spoil.setback, p.spoil.height,
         p.ladder.side, p.ladder.along, p.allowance);
  for (const PitSide* side : {&p.sides.bore, &p.sides.back, &p.sides.left, &p.sides.right}) add(to, *side);
}

void add_layout(Canon& to, const Crossing& crossing) {
  const Launch& l = crossing.bore.launch;
  to.all(l.station, l.offset, l.elevation, l.grade, l.heading, l.position_sd, l.level_sd, l.aim_sd, l.sight_base,
         crossing.bore.exit.station, crossing.bore.exit.offset);
  add(to, crossing.bore.tool);
  to.all(crossing.pits.rules);
  add(to, crossing.pits.launch);
  add(to, crossing.pits.exit);
}

void add(Canon& to, const Utility& u, const std::vector<TestHole>& holes) {
  to.all(u.kind, u.status, u.material, u.outside_diameter, u.path, u.ends.first, u.ends.last, u.located.how,
         u.located.level, u.located.lateral_sd, u.located.vertical_sd, u.located.tracer);
  for (const TestHole& h : holes)
    if (h.utility == u.id) to.all(h.station, h.offset, h.level, h.elevation, h.sd, h.reach);
}

void add(Canon& to, const SurfaceFeature& f) {
  to.all(f.kind, f.from, f.to, f.skew, f.outline, f.founding_elevation, f.structure, f.permission);
}

void add_all_on_site(Canon& to, const Site& site) {
  to.all(site.ground, site.water);
  for (const Stratum& s : site.strata) to.all(s.soil, s.top, s.known);
  for (const Strip& s : site.strips) to.all(s.soil, s.outline, s.top_elevation, s.bottom_elevation);
  for (const SurfaceFeature& f : site.surface) add(to, f);
  for (const Utility& u : site.utilities) add(to, u, site.test_holes);
  for (const Boundary& b : site.boundaries) to.all(b.kind, b.line);
  for (const Tree& t : site.trees) to.all(t.station, t.offset, t.protection_radius);
  for (const Plant& p : site.plant) to.all(p.station, p.offset, p.length, p.width, p.load);
}

template <class Item>
const Item* with_id(const std::vector<Item>& items, const std::string& id) {
  const auto at = std::find_if(items.begin(), items.end(), [&](const Item& t) { return t.id == id; });
  return at == items.end() ? nullptr : &*at;
}

}  // namespace

std::string fingerprint_of(const Crossing& crossing, const Finding& finding) {
  Canon canon;
  add_layout(canon, crossing);
  if (const Utility* utility = with_id(crossing.site.utilities, finding.subject))
    add(canon, *utility, crossing.site.test_holes);
  else if (const SurfaceFeature* feature = with_id(crossing.site.surface, finding.subject))
    add(canon, *feature);
  else
    add_all_on_site(canon, crossing.site);
  std::string print = fmt::format("{:016x}", fnv_1a(canon.text()));
  if (!finding.code.starts_with("pit.")) return print;
  Canon place;
  place.all(finding.station_m, finding.offset_m);
  return print + fmt::format("-{:08x}", fnv_1a(place.text()) & 0xffffffffU);
}

bool beside_each_other(std::string_view one, std::string_view other) {
  constexpr std::size_t layout = 16;
  return one.size() > layout && other.size() > layout && one.substr(0, layout) == other.substr(0, layout) &&
         one != other;
}

}  // namespace burrow
