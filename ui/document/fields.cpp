#include "burrow/document/fields.h"

#include <algorithm>
#include <cmath>

#include "burrow/document/pit_fields.h"
#include "burrow/document/plate_and_soil_fields.h"
#include "burrow/document/utility_fields.h"
#include "burrow/language/say.h"

namespace burrow {

namespace {

constexpr double farthest_m = 1e5;  // what the file format accepts
constexpr double highest_m = 1e4;

using Typed = std::optional<double>;

/// A field of the launch: `set` writes the number into a copy.
template <class Set>
Field launch_field(std::string label, Dimension dimension, double value, double low, double high, Set set) {
  return {std::move(label), dimension, value, true, false, low, high, [set](const Crossing& c, Typed v) -> ItemValue {
            Launch launch = c.bore.launch;
            set(launch, *v);
            return launch;
          }};
}

/// A field of the launch that has a default, to which empty input goes back.
template <class Q>
Field launch_field(std::string label, Dimension dimension, const Launch& launch, Given<Q> Launch::*member,
                   double Q::*number, double low, double high) {
  const Given<Q>& now = launch.*member;
  Field field{std::move(label),
              dimension,
              (*now).*number,
              now.entered,
              true,
              low,
              high,
              [member, number](const Crossing& c, Typed v) -> ItemValue {
                Launch changed = c.bore.launch;
                changed.*member = Launch{}.*member;
                if (v) {
                  Q typed;
                  typed.*number = *v;
                  (changed.*member).set(typed);
                }
                return changed;
              }};
  field.default_value = (*(Launch{}.*member)).*number;
  return field;
}

Field sight_base_field(const Launch& launch) {
  return {"sight base: stake ahead of the launch point",
          Dimension::length,
          launch.sight_base ? Typed(launch.sight_base->m) : std::nullopt,
          true,
          true,
          0.01,
          farthest_m,
          [](const Crossing& c, Typed v) -> ItemValue {
            Launch changed = c.bore.launch;
            changed.sight_base = v ? std::optional<Length>(Length{*v}) : std::nullopt;
            return changed;
          }};
}

std::vector<Field> launch_fields(const Crossing& crossing) {
  const Launch& launch = crossing.bore.launch;
  const double ground = crossing.site.ground.empty() ? 0 : elevation_at(crossing.site.ground, launch.station.m);
  return {
      launch_field("station of the face", Dimension::station, launch.station.m, -farthest_m,
                   crossing.bore.exit.station.m - 0.01, [](Launch& l, double v) { l.station.m = v; }),
      launch_field("axis level at the face", Dimension::station, launch.elevation.m, -highest_m, highest_m,
                   [](Launch& l, double v) { l.elevation.m = v; }),
      launch_field("axis depth below ground", Dimension::length, ground - launch.elevation.m, ground - highest_m,
                   ground + highest_m, [ground](Launch& l, double v) { l.elevation.m = ground - v; }),
      launch_field("grade, up positive", Dimension::grade, launch.grade.v, -1, 1,
                   [](Launch& l, double v) { l.grade.v = v; }),
      launch_field("heading, left positive", Dimension::angle, launch, &Launch::heading, &Angle::rad, -pi / 2, pi / 2),
      launch_field("offset, left positive", Dimension::station, launch, &Launch::offset, &Length::m, -farthest_m,
                   farthest_m),
      launch_field("level error, one sd", Dimension::angle, launch, &Launch::level_sd, &Angle::rad, 0, 0.5),
      launch_field("sight error, one sd", Dimension::angle, launch, &Launch::aim_sd, &Angle::rad, 0, 0.5),
      launch_field("position error, one sd", Dimension::small_length, launch, &Launch::position_sd, &Length::m, 0, 100),
      sight_base_field(launch),
  };
}

std::vector<Field> exit_fields(const Crossing& crossing) {
  const Exit& exit = crossing.bore.exit;
  return {{"station of the face", Dimension::station, exit.station.m, true, false,
           crossing.bore.launch.station.m + 0.01, farthest_m,
           [](const Crossing& c, Typed v) -> ItemValue {
             Exit e = c.bore.exit;
             e.station.m = *v;
             return e;
           }},
          {"offset, left positive", Dimension::station, exit.offset->m, exit.offset.entered, false, -farthest_m,
           farthest_m, [](const Crossing& c, Typed v) -> ItemValue {
             Exit e = c.bore.exit;
             e.offset.set(Length{*v});
             return e;
           }}};
}

template <class Set>
Field utility_field(const ItemRef& part, std::string label, Dimension dimension, Typed value, bool may_be_empty,
                    double low, double high, Set set) {
  const ItemRef whole{ItemKind::utility, part.id, -1};
  return {std::move(label),
          dimension,
          value,
          true,
          may_be_empty,
          low,
          high,
          [whole, set](const Crossing& c, Typed v) -> ItemValue {
            ItemValue all = value_of(c, whole);
            if (auto& element = std::get<ListSlot<Utility>>(all); element.value) set(*element.value, v);
            return all;
          }};
}

std::optional<Length> as_length(Typed v) {
  return v ? std::optional<Length>(Length{*v}) : std::nullopt;
}

std::vector<Field> utility_fields(const Crossing& crossing, const ItemRef& part) {
  const auto it = std::find_if(crossing.site.utilities.begin(), crossing.site.utilities.end(),
                               [&](const Utility& u) { return u.id == part.id; });
  if (it == crossing.site.utilities.end() || it->path.empty()) return {};
  const Utility& u = *it;
  const std::size_t at = part.index >= 0 && static_cast<std::size_t>(part.index) < u.path.size()
                             ? static_cast<std::size_t>(part.index)
                             : 0;
  const bool whole = part.index < 0;
  const PathVertex vertex = u.path[at];
  const auto value = [](const std::optional<Length>& l) -> Typed { return l ? Typed(l->m) : std::nullopt; };
  std::vector<Field> all{
      utility_field(part, whole ? "axis level (first point; the line follows)" : "axis level", Dimension::station,
                    vertex.z_m, true, -highest_m, highest_m,
                    [at, whole](Utility& x, Typed v) {
                      const Typed old = x.path[at].z_m;
                      if (!whole || !v || !old) {
                        for (std::size_t i = 0; i < x.path.size(); ++i)
                          if (i == at || whole) x.path[i].z_m = v;
                        return;
                      }
                      for (PathVertex& p : x.path)
                        if (p.z_m) *p.z_m += *v - *old;
                    }),
      utility_field(part, whole ? "station (first point; the line follows)" : "station", Dimension::station, vertex.x_m,
                    false, -farthest_m, farthest_m,
                    [at, whole](Utility& x, Typed v) {
                      const double by = *v - x.path[at].x_m;
                      for (std::size_t i = 0; i < x.path.size(); ++i)
                        if (i == at || whole) x.path[i].x_m += by;
                    }),
      utility_field(part, "outside diameter", Dimension::small_length, value(u.outside_diameter), true, 0.001, 5,
                    [](Utility& x, Typed v) { x.outside_diameter = as_length(v); }),
      utility_field(part, "location error across, one sd", Dimension::small_length, value(u.located.lateral_sd), true,
                    0, 100, [](Utility& x, Typed v) { x.located.lateral_sd = as_length(v); }),
      utility_field(part, "location error in height, one sd", Dimension::small_length, value(u.located.vertical_sd),
                    true, 0, 100, [](Utility& x, Typed v) { x.located.vertical_sd = as_length(v); }),
      utility_field(part, "clear gap wanted by its owner", Dimension::length, value(u.required_clearance), true, 0, 100,
                    [](Utility& x, Typed v) { x.required_clearance = as_length(v); })};
  for (Field& field : all)
    if (field.label.starts_with("location error"))
      field.validate = [id = part.id](const Crossing& c, Typed v) { return check_location_error(c, id, v); };
  if (!whole)
    all.push_back(utility_field(part, "offset, left positive", Dimension::station, vertex.y_m, false, -farthest_m,
                                farthest_m, [at](Utility& x, Typed v) { x.path[at].y_m = *v; }));
  return all;
}

/// Station and level of one vertex; the neighbours bound the station.
template <class Wrap>
std::vector<Field> vertex_fields(const LevelLine& line, int index, Wrap wrap) {
  if (index < 0 || static_cast<std::size_t>(index) >= line.size()) return {};
  const auto i = static_cast<std::size_t>(index);
  const double low = i > 0 ? line[i - 1].station_m + 0.001 : -farthest_m;
  const double high = i + 1 < line.size() ? line[i + 1].station_m - 0.001 : farthest_m;
  return {{"level", Dimension::station, line[i].elevation_m, true, false, -highest_m, highest_m,
           [line, i, wrap](const Crossing& c, Typed v) {
             LevelLine moved = line;
             moved[i].elevation_m = *v;
             return wrap(c, moved);
           }},
          {"station", Dimension::station, line[i].station_m, true, false, low, high,
           [line, i, wrap](const Crossing& c, Typed v) {
             LevelLine moved = line;
             moved[i].station_m = *v;
             return wrap(c, moved);
           }}};
}

std::vector<Field> surface_fields(const Crossing& crossing, const ItemRef& part) {
  for (const SurfaceFeature& s : crossing.site.surface) {
    if (s.id != part.id) continue;
    const auto field = [&](std::string label, Dimension d, const std::optional<Length>& now, double low, double high,
                           std::optional<Length> SurfaceFeature::*member) {
      return Field{std::move(label),
                   d,
                   now ? Typed(now->m) : std::nullopt,
                   true,
                   true,
                   low,
                   high,
                   [part, member](const Crossing& c, Typed v) {
                     ItemValue all = value_of(c, part);
                     if (auto& element = std::get<ListSlot<SurfaceFeature>>(all); element.value)
                       (*element.value).*member = as_length(v);
                     return all;
                   }};
    };
    // One end may not pass the other, as far as the other is known.
    const double before = s.to ? s.to->m - 0.01 : farthest_m, after = s.from ? s.from->m + 0.01 : -farthest_m;
    Field skew{"skew, 0 is square to the line",
               Dimension::angle,
               s.skew->rad,
               s.skew.entered,
               true,
               -1.5,
               1.5,
               [part](const Crossing& c, Typed v) {
                 ItemValue all = value_of(c, part);
                 if (auto& element = std::get<ListSlot<SurfaceFeature>>(all); element.value) {
                   element.value->skew = SurfaceFeature{}.skew;
                   if (v) element.value->skew.set(Angle{*v});
                 }
                 return all;
               }};
    skew.default_value = 0;
    return {field("from station", Dimension::station, s.from, -farthest_m, before, &SurfaceFeature::from),
            field("to station", Dimension::station, s.to, after, farthest_m, &SurfaceFeature::to), std::move(skew),
            field("cover wanted by its owner", Dimension::length, s.required_cover, 0, 100,
                  &SurfaceFeature::required_cover),
            field("heave allowed", Dimension::small_length, s.heave_limit, 0.0001, 1, &SurfaceFeature::heave_limit)};
  }
  return {};
}

}  // namespace

std::vector<Field> fields_of(const Crossing& crossing, const ItemRef& part) {
  switch (part.kind) {
    case ItemKind::launch:
      return launch_fields(crossing);
    case ItemKind::grade: {
      std::vector<Field> all = launch_fields(crossing);
      return {all[3], all[4]};
    }
    case ItemKind::exit:
      return exit_fields(crossing);
    case ItemKind::utility:
      return utility_fields(crossing, part);
    case ItemKind::ground:
      return vertex_fields(crossing.site.ground, part.index,
                           [](const Crossing&, const LevelLine& l) -> ItemValue { return l; });
    case ItemKind::water:
      if (!crossing.site.water) return {};
      return vertex_fields(*crossing.site.water, part.index, [](const Crossing&, const LevelLine& l) -> ItemValue {
        return std::optional<LevelLine>(l);
      });
    case ItemKind::stratum:
      for (const Stratum& s : crossing.site.strata)
        if (s.id == part.id && s.top)
          return vertex_fields(*s.top, part.index, [part](const Crossing& c, const LevelLine& l) -> ItemValue {
            ItemValue all = value_of(c, {ItemKind::stratum, part.id, -1});
            if (auto& element = std::get<ListSlot<Stratum>>(all); element.value) element.value->top = l;
            return all;
          });
      return {};
    case ItemKind::surface:
      return surface_fields(crossing, part);
    case ItemKind::model:
      return model_fields(crossing);
    case ItemKind::pit_edge:
      return pit_edge_fields(crossing, part);
    default:
      return {};
  }
}

std::vector<Field> setting_fields(const Crossing& crossing) {
  const std::vector<Field> all = launch_fields(crossing);
  return {all[3], all[4], all[9], all[6], all[7], all[8]};
}

Result<std::optional<double>> read_field(const Field& field, std::string_view text, UnitSystem units) {
  const bool blank = text.find_first_not_of(" \t") == std::string_view::npos;
  if (blank && field.may_be_empty) return std::optional<double>();
  const Result<double> value = parse(text, field.dimension, units);
  if (!value) return tl::unexpected(value.error());
  if (!(*value >= field.low && *value <= field.high))
    return fail(translated_label(field.label), format(*value, field.dimension, units),
                say("between {} and {}", format(field.low, field.dimension, units),
                    format(field.high, field.dimension, units)));
  return std::optional<double>(*value);
}

}  // namespace burrow
