#include "burrow/document/utility_fields.h"

#include <algorithm>
#include <cmath>

#include "burrow/clearance/clearance.h"
#include "burrow/document/utility_entry.h"
#include "burrow/language/say.h"

namespace burrow {

namespace {

using Typed = std::optional<double>;

constexpr double farthest_m = 1e5;   // what the file format accepts
constexpr double highest_m = 9.9e3;  // a hand's breadth inside it: a whole line is moved, and sums are rounded

const Utility* find_utility(const Crossing& crossing, const std::string& id) {
  for (const Utility& utility : crossing.site.utilities)
    if (utility.id == id) return &utility;
  return nullptr;
}

std::optional<Length> as_length(Typed v) {
  return v ? std::optional<Length>(Length{*v}) : std::nullopt;
}

/// A length of a utility, empty where it is not known; `member` finds it.
template <class Member>
Field length_field(const Utility& utility, std::string label, Dimension dimension, double low, double high,
                   Member member) {
  Field field;
  field.label = std::move(label);
  field.dimension = dimension;
  Utility copy = utility;
  const std::optional<Length>& now = member(copy);
  if (now) field.value = now->m;
  field.entered = now.has_value();
  field.may_be_empty = true;
  field.low = low;
  field.high = high;
  field.apply = [part = ItemRef{ItemKind::utility, utility.id, -1}, member](const Crossing& c, Typed v) {
    ItemValue all = value_of(c, part);
    if (auto& element = std::get<ListSlot<Utility>>(all); element.value) member(*element.value) = as_length(v);
    return all;
  };
  return field;
}

bool from_ground(const Utility& utility, const PassingPlace& place) {
  return depth_from(utility) == DepthFrom::ground && place.ground_m;
}

/// The line moved so that its centre lies at `centre_m` where it was at `axis_m`; a line of unknown depth is laid
/// level.
void lay_at(std::vector<PathVertex>& path, Typed axis_m, Typed centre_m) {
  for (PathVertex& p : path) {
    if (!centre_m || !axis_m)
      p.z_m = centre_m;
    else if (p.z_m)
      *p.z_m += *centre_m - *axis_m;
  }
}

/// Levels of the centre at the bore for which all of the line stays where a file may put it.
std::pair<double, double> centre_range(const Utility& utility, Typed axis_m) {
  double low = -highest_m, high = highest_m;
  if (axis_m)
    for (const PathVertex& p : utility.path) {
      if (!p.z_m) continue;
      low = std::max(low, -highest_m + *axis_m - *p.z_m);
      high = std::min(high, highest_m + *axis_m - *p.z_m);
    }
  return {low, high};
}

/// A number of a test hole; `set` writes it.
template <class Set>
Field hole_field(const std::string& id, std::string label, Dimension dimension, Typed value, double low, double high,
                 Set set) {
  Field field;
  field.label = std::move(label);
  field.dimension = dimension;
  field.value = value;
  field.low = low;
  field.high = high;
  field.apply = [id, set](const Crossing& c, Typed v) -> ItemValue {
    std::vector<TestHole> holes = c.site.test_holes;
    for (TestHole& hole : holes)
      if (hole.id == id) set(hole, v);
    return holes;
  };
  return field;
}

/// What a preset states at this depth; a share of an unknown depth is not known.
LocationSd stated(const std::string& preset, const PassingPlace& place, const Tables& tables) {
  Located bare;
  bare.level = preset;
  LocationSd sd = location_sd(bare, tables, place.depth_m().value_or(0));
  const auto row = std::find_if(tables.locating.begin(), tables.locating.end(),
                                [&](const LocatingPreset& p) { return p.id == preset; });
  if (row != tables.locating.end() && !place.depth_m()) {
    if (row->lateral_of_depth) sd.lateral_m.reset();
    if (row->vertical_of_depth) sd.vertical_m.reset();
  }
  return sd;
}

}  // namespace

LevelMeant level_meant(const Utility& utility) {
  return utility.recorded.level.value_or(LevelMeant::crown);
}

DepthFrom depth_from(const Utility& utility) {
  return utility.recorded.from.value_or(DepthFrom::ground);
}

std::optional<double> PassingPlace::depth_m() const {
  return axis_m && ground_m ? Typed(std::max(*ground_m - *axis_m, 0.0)) : std::nullopt;
}

PassingPlace passing_place(const Crossing& crossing, const Utility& utility, const UtilityAnswer* answer) {
  PassingPlace place;
  if (answer && answer->station_m) {
    place.station_m = *answer->station_m;
    place.offset_m = answer->offset_m.value_or(0);
    // That of the record: test holes may have shown it elsewhere, but what is typed moves the record.
    place.axis_m = elevation_on(utility.path, {place.station_m, place.offset_m, std::nullopt});
  } else if (!utility.path.empty()) {
    place.station_m = utility.path.front().x_m;
    place.offset_m = utility.path.front().y_m;
    place.axis_m = utility.path.front().z_m;
  }
  if (!crossing.site.ground.empty()) place.ground_m = elevation_at(crossing.site.ground, place.station_m);
  return place;
}

std::optional<double> above_centre_m(const Utility& utility, LevelMeant level) {
  if (level == LevelMeant::centre) return 0;
  if (!utility.outside_diameter) return std::nullopt;
  return (level == LevelMeant::crown ? 0.5 : -0.5) * utility.outside_diameter->m;
}

std::vector<Field> utility_level_fields(const Crossing& crossing, const std::string& id, const PassingPlace& place) {
  const Utility* utility = find_utility(crossing, id);
  if (!utility || utility->path.empty()) return {};
  const LevelMeant level = level_meant(*utility);
  const std::optional<double> above = above_centre_m(*utility, level);
  if (!above) return {};
  const bool down = from_ground(*utility, place);
  const std::string what(translated_word(level));
  Field field;
  field.label = down ? say("depth of its {} below ground at the bore", what) : say("level of its {} at the bore", what);
  field.dimension = down ? Dimension::length : Dimension::station;
  const double ground = place.ground_m.value_or(0);
  if (place.axis_m) field.value = down ? ground - *place.axis_m - *above : *place.axis_m + *above;
  field.may_be_empty = true;
  const auto [low, high] = centre_range(*utility, place.axis_m);
  field.low = down ? ground - high - *above : low + *above;
  field.high = down ? ground - low - *above : high + *above;
  field.apply = [part = ItemRef{ItemKind::utility, id, -1}, axis = place.axis_m, above, down, ground, level](
                    const Crossing& c, Typed v) {
    ItemValue all = value_of(c, part);
    Typed centre;
    if (v) centre = (down ? ground - *v : *v) - *above;
    auto& element = std::get<ListSlot<Utility>>(all);
    if (!element.value) return all;
    lay_at(element.value->path, axis, centre);
    // From now on the record says what the number was taken to mean.
    Recorded& recorded = element.value->recorded;
    if (v && !recorded.level) recorded.level = level;
    if (v && !recorded.from) recorded.from = down ? DepthFrom::ground : DepthFrom::datum;
    return all;
  };
  return {std::move(field)};
}

std::vector<Field> utility_size_fields(const Crossing& crossing, const std::string& id) {
  const Utility* utility = find_utility(crossing, id);
  if (!utility) return {};
  return {length_field(*utility, "outside diameter", Dimension::small_length, 0.001, 5,
                       [](Utility& u) -> std::optional<Length>& { return u.outside_diameter; })};
}

Result<void> check_location_error(const Crossing& crossing, const std::string& id, Typed error_m) {
  const Utility* utility = find_utility(crossing, id);
  if (!utility || !error_m || *error_m > 0 || may_be_without_error(*utility)) return {};
  return fail(translated("location error"), translated("0: only of a line that lay open, exposed, is it known so well"),
              translated("more than 0, or empty where it is not known"));
}

std::vector<Field> utility_location_fields(const Crossing& crossing, const std::string& id, const PassingPlace& place,
                                           const Tables& tables) {
  const Utility* utility = find_utility(crossing, id);
  if (!utility) return {};
  std::vector<Field> both{length_field(*utility, "location error across, one sd", Dimension::small_length, 0, 100,
                                       [](Utility& u) -> std::optional<Length>& { return u.located.lateral_sd; }),
                          length_field(*utility, "location error in height, one sd", Dimension::small_length, 0, 100,
                                       [](Utility& u) -> std::optional<Length>& { return u.located.vertical_sd; })};
  for (Field& field : both)
    field.validate = [id](const Crossing& c, Typed v) { return check_location_error(c, id, v); };
  if (utility->located.level) {
    const LocationSd sd = stated(*utility->located.level, place, tables);
    both[0].default_value = sd.lateral_m;
    both[1].default_value = sd.vertical_m;
  }
  return both;
}

std::vector<Field> utility_gap_fields(const Crossing& crossing, const std::string& id) {
  const Utility* utility = find_utility(crossing, id);
  if (!utility) return {};
  return {length_field(*utility, "clear gap wanted by its owner", Dimension::length, 0, 100,
                       [](Utility& u) -> std::optional<Length>& { return u.required_clearance; }),
          length_field(*utility, "clear gap agreed with its owner", Dimension::length, 0, 100,
                       [](Utility& u) -> std::optional<Length>& { return u.agreed.distance; })};
}

std::vector<Field> hole_fields(const Crossing& crossing, const std::string& hole_id) {
  const auto& all = crossing.site.test_holes;
  const auto hole = std::find_if(all.begin(), all.end(), [&](const TestHole& h) { return h.id == hole_id; });
  if (hole == all.end()) return {};
  std::vector<Field> fields{
      hole_field(hole_id, say("measured level of its {}", translated_word(*hole->level)), Dimension::station,
                 hole->elevation ? Typed(hole->elevation->m) : std::nullopt, -highest_m, highest_m,
                 [](TestHole& h, Typed v) { h.elevation = as_length(v); }),
      hole_field(hole_id, "station of the hole", Dimension::station, hole->station.m, -farthest_m, farthest_m,
                 [](TestHole& h, Typed v) { h.station.m = *v; }),
      hole_field(hole_id, "offset of the hole, left positive", Dimension::station, hole->offset.m, -farthest_m,
                 farthest_m, [](TestHole& h, Typed v) { h.offset.m = *v; }),
      hole_field(hole_id, "error of that measurement, one sd", Dimension::small_length, hole->sd->m, 0, 10,
                 [](TestHole& h, Typed v) {
                   h.sd = TestHole{}.sd;
                   if (v) h.sd.set(Length{*v});
                 }),
      hole_field(hole_id, "what it tells reaches", Dimension::length, hole->reach->m, 0, 1000,
                 [](TestHole& h, Typed v) {
                   h.reach = TestHole{}.reach;
                   if (v) h.reach.set(Length{*v});
                 })};
  fields[0].may_be_empty = true;
  fields[3].may_be_empty = fields[4].may_be_empty = true;
  fields[3].entered = hole->sd.entered;
  fields[4].entered = hole->reach.entered;
  fields[3].default_value = TestHole{}.sd->m;
  fields[4].default_value = TestHole{}.reach->m;
  return fields;
}

Field new_hole_field(const Crossing& crossing, const std::string& id, const PassingPlace& place) {
  const Utility* utility = find_utility(crossing, id);
  const bool down = utility && from_ground(*utility, place);
  const double ground = place.ground_m.value_or(0);
  Field field;
  field.label = down ? "depth of its crown below ground, measured" : "level of its crown, measured";
  field.dimension = down ? Dimension::length : Dimension::station;
  field.low = down ? ground - highest_m : -highest_m;
  field.high = down ? ground + highest_m : highest_m;
  field.apply = [id, place, down, ground](const Crossing& c, Typed v) -> ItemValue {
    std::vector<TestHole> holes = c.site.test_holes;
    TestHole hole;
    hole.id = free_id(c, "h");
    hole.utility = id;
    hole.station.m = place.station_m;
    hole.offset.m = place.offset_m;
    hole.level.set(LevelMeant::crown);
    if (v) hole.elevation = Length{down ? ground - *v : *v};
    holes.push_back(std::move(hole));
    return holes;
  };
  return field;
}

std::vector<Field> search_fields(const Crossing& crossing) {
  constexpr double per_m2 = 100;
  const Given<RatePerArea>& rate = crossing.site.utility_search.unknown_rate;
  Field field;
  field.label = "services nobody knows of, in 100 m² (1076 ft²)";
  field.dimension = Dimension::ratio;
  field.value = per_m2 * rate->per_m2;
  field.entered = rate.entered;
  field.may_be_empty = true;
  field.low = 0;
  field.high = 1000;
  field.default_value = 0;
  field.apply = [](const Crossing& c, Typed v) -> ItemValue {
    UtilitySearch search = c.site.utility_search;
    search.unknown_rate = UtilitySearch{}.unknown_rate;
    if (v) search.unknown_rate.set(RatePerArea{*v / per_m2});
    return search;
  };
  return {std::move(field)};
}

Utility with_preset(Utility utility, const std::string& preset, PresetReading reading, const PassingPlace& place,
                    const Tables& tables) {
  Located& located = utility.located;
  if (preset.empty()) {
    located.level.reset();
    return utility;
  }
  located.level = preset;
  if (reading == PresetReading::typed) return utility;
  const LocationSd sd = stated(preset, place, tables);
  const auto take_over = [&](std::optional<Length>& typed, std::optional<double> states) {
    if (!states) return;
    typed.reset();
    if (reading == PresetReading::of_95_percent) typed = Length{*states / sd_in_95_percent};
  };
  take_over(located.lateral_sd, sd.lateral_m);
  take_over(located.vertical_sd, sd.vertical_m);
  return utility;
}

PresetReading preset_reading(const Utility& utility, const PassingPlace& place, const Tables& tables) {
  if (!utility.located.level) return PresetReading::typed;
  const LocationSd sd = stated(*utility.located.level, place, tables);
  bool one = true, of_95 = sd.lateral_m || sd.vertical_m;
  const auto compare = [&](const std::optional<Length>& typed, std::optional<double> states) {
    if (!states) return;
    const double share = typed ? typed->m * sd_in_95_percent / std::max(*states, 1e-9) : 0;
    one = one && !typed;
    of_95 = of_95 && typed && std::abs(share - 1) < 1e-6;
  };
  compare(utility.located.lateral_sd, sd.lateral_m);
  compare(utility.located.vertical_sd, sd.vertical_m);
  return one ? PresetReading::one_sd : of_95 ? PresetReading::of_95_percent : PresetReading::typed;
}

}  // namespace burrow
