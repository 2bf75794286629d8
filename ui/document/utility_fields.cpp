#include "burrow/document/utility_fields.h"

#include <algorithm>
#include <cmath>

#include "burrow/clearance/clearance.h"
#include "burrow/crossing/find.h"
#include "burrow/document/utility_entry.h"
#include "burrow/language/say.h"
#include "number_field.h"

namespace burrow {

namespace {

constexpr double highest_line_m = 9.9e3;  // a hand's breadth inside the file's: a whole line is moved, sums are rounded

/// Finds the utility, in a crossing that may be changed too.
auto utility_by(const std::string& id) {
  return [id](auto& c) { return find_by_id(c.site.utilities, id); };
}

/// A length of something in a utility; `owner` finds it in the utility.
template <class Find, class Owner>
Field length_field(const Crossing& crossing, const std::string& id, std::string label, Dimension dimension,
                   FieldRange range, Find owner, std::optional<Length> Owner::*member) {
  const auto whose = [one = utility_by(id), owner](auto& c) {
    auto* utility = one(c);
    return utility ? owner(*utility) : nullptr;
  };
  return number_field(crossing, std::move(label), dimension, range, whose, member);
}
const auto itself = [](auto& utility) { return &utility; };

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
  double low = -highest_line_m, high = highest_line_m;
  if (axis_m)
    for (const PathVertex& p : utility.path) {
      if (!p.z_m) continue;
      low = std::max(low, -highest_line_m + *axis_m - *p.z_m);
      high = std::min(high, highest_line_m + *axis_m - *p.z_m);
    }
  return {low, high};
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
  const Utility* utility = find_by_id(crossing.site.utilities, id);
  if (!utility || utility->path.empty()) return {};
  const LevelMeant level = level_meant(*utility);
  const std::optional<double> above = above_centre_m(*utility, level);
  if (!above) return {};
  const bool down = from_ground(*utility, place);
  const std::string what(translated_word(level));
  const double ground = place.ground_m.value_or(0);
  const auto [low, high] = centre_range(*utility, place.axis_m);
  Typed value;
  if (place.axis_m) value = down ? ground - *place.axis_m - *above : *place.axis_m + *above;
  const FieldRange range =
      down ? FieldRange{ground - high - *above, ground - low - *above} : FieldRange{low + *above, high + *above};
  Field field = typed_field(
      down ? say("depth of its {} below ground at the bore", what) : say("level of its {} at the bore", what),
      down ? Dimension::length : Dimension::station, range, value,
      [one = utility_by(id), axis = place.axis_m, above, down, ground, level](Crossing& c, Typed v) {
        Utility* changed = one(c);
        if (!changed) return;
        Typed centre;
        if (v) centre = (down ? ground - *v : *v) - *above;
        lay_at(changed->path, axis, centre);
        // From now on the record says what the number was taken to mean.
        Recorded& recorded = changed->recorded;
        if (v && !recorded.level) recorded.level = level;
        if (v && !recorded.from) recorded.from = down ? DepthFrom::ground : DepthFrom::datum;
      });
  field.may_be_empty = true;
  return {std::move(field)};
}

std::vector<Field> utility_size_fields(const Crossing& crossing, const std::string& id) {
  if (!find_by_id(crossing.site.utilities, id)) return {};
  Field diameter = length_field(crossing, id, "outside diameter", Dimension::small_length, {0.001, 5}, itself,
                                &Utility::outside_diameter);
  diameter.actual_size = true;
  return {diameter};
}

Result<void> check_location_error(const Crossing& crossing, const std::string& id, Typed error_m) {
  const Utility* utility = find_by_id(crossing.site.utilities, id);
  if (!utility || !error_m || *error_m > 0 || may_be_without_error(*utility)) return {};
  return fail(translated("location error"), translated("0: only of a line that lay open, exposed, is it known so well"),
              translated("more than 0, or empty where it is not known"));
}

std::vector<Field> utility_location_fields(const Crossing& crossing, const std::string& id, const PassingPlace& place,
                                           const Tables& tables) {
  const Utility* utility = find_by_id(crossing.site.utilities, id);
  if (!utility) return {};
  const auto error = [&](const char* label, std::optional<Length> Located::*member) {
    return length_field(
        crossing, id, label, Dimension::small_length, {0, 100}, [](auto& u) { return &u.located; }, member);
  };
  std::vector<Field> both{error("location error across (1σ)", &Located::lateral_sd),
                          error("location error in height (1σ)", &Located::vertical_sd)};
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
  if (!find_by_id(crossing.site.utilities, id)) return {};
  return {length_field(crossing, id, "clear gap required by its owner", Dimension::length, {0, 100}, itself,
                       &Utility::required_clearance),
          length_field(
              crossing, id, "clear gap agreed with its owner", Dimension::length, {0, 100},
              [](auto& u) { return &u.agreed; }, &AgreedGap::distance)};
}

std::vector<Field> hole_fields(const Crossing& crossing, const std::string& id) {
  const TestHole* hole = find_by_id(crossing.site.test_holes, id);
  if (!hole) return {};
  const auto field = [&](std::string label, Dimension dimension, FieldRange range, auto member) {
    return number_field(
        crossing, std::move(label), dimension, range, [id](auto& c) { return find_by_id(c.site.test_holes, id); },
        member);
  };
  std::vector<Field> all{
      field(say("measured level of its {}", translated_word(*hole->level)), Dimension::station,
            {-highest_line_m, highest_line_m}, &TestHole::elevation),
      field("station of the hole", Dimension::station, {-farthest_m, farthest_m}, &TestHole::station),
      field("offset of the hole, left positive", Dimension::station, {-farthest_m, farthest_m}, &TestHole::offset),
      field("error of that measurement (1σ)", Dimension::small_length, {0, 10}, &TestHole::sd),
      field("what it tells reaches", Dimension::length, {0, 1000}, &TestHole::reach)};
  for (std::size_t i = 0; i < 3; ++i) all[i].lock = "/site/test_holes/" + id;
  return all;
}

Field new_hole_field(const Crossing& crossing, const std::string& id, const PassingPlace& place) {
  const Utility* utility = find_by_id(crossing.site.utilities, id);
  const bool down = utility && from_ground(*utility, place);
  const double ground = place.ground_m.value_or(0);
  const FieldRange range =
      down ? FieldRange{ground - highest_line_m, ground + highest_line_m} : FieldRange{-highest_line_m, highest_line_m};
  return typed_field(down ? "depth of its crown below ground, measured" : "level of its crown, measured",
                     down ? Dimension::length : Dimension::station, range, std::nullopt,
                     [id, place, down, ground](Crossing& c, Typed v) {
                       TestHole hole;
                       hole.id = free_id(c, "h");
                       hole.utility = id;
                       hole.station.m = place.station_m;
                       hole.offset.m = place.offset_m;
                       hole.level.set(LevelMeant::crown);
                       if (v) hole.elevation = Length{down ? ground - *v : *v};
                       c.site.test_holes.push_back(std::move(hole));
                     });
}

std::vector<Field> search_fields(const Crossing& crossing) {
  return {times(number_field(
                    crossing, "services nobody knows of, in 100 m² (1076 ft²)", Dimension::ratio, {0, 1000},
                    [](auto& c) { return &c.site.utility_search; }, &UtilitySearch::unknown_rate),
                100)};
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
