#include "burrow/document/fields.h"

#include "burrow/crossing/find.h"
#include "burrow/document/lens.h"
#include "burrow/document/pit_fields.h"
#include "burrow/document/plate_and_soil_fields.h"
#include "burrow/document/surroundings.h"
#include "burrow/document/utility_fields.h"
#include "burrow/language/say.h"
#include "number_field.h"

namespace burrow {

namespace {

Field lockable_at(Field field, std::string place) {
  field.lock = std::move(place);
  return field;
}

std::vector<Field> launch_fields(const Crossing& crossing) {
  const auto launch = [](auto& c) { return &c.bore.launch; };
  const auto field = [&](const char* label, Dimension dimension, FieldRange range, auto member) {
    return number_field(crossing, label, dimension, range, launch, member);
  };
  const Launch& now = crossing.bore.launch;
  const double ground = crossing.site.ground.empty() ? 0 : elevation_at(crossing.site.ground, now.station.m);
  std::vector<Field> all{
      field("station of the face", Dimension::station, {-farthest_m, crossing.bore.exit.station.m - 0.01},
            &Launch::station),
      field("axis level at the face", Dimension::station, {-highest_m, highest_m}, &Launch::elevation),
      typed_field("axis depth below ground", Dimension::length, {ground - highest_m, ground + highest_m},
                  ground - now.elevation.m,
                  [ground](Crossing& c, Typed v) { c.bore.launch.elevation.m = ground - *v; }),
      field("grade, up positive", Dimension::grade, {-1, 1}, &Launch::grade),
      field("heading, left positive", Dimension::angle, {-pi / 2, pi / 2}, &Launch::heading),
      field("offset, left positive", Dimension::station, {-farthest_m, farthest_m}, &Launch::offset),
      field("levelling tolerance (1σ)", Dimension::angle, {0, 0.5}, &Launch::level_sd),
      field("sight error (1σ)", Dimension::angle, {0, 0.5}, &Launch::aim_sd),
      field("position error (1σ)", Dimension::small_length, {0, 100}, &Launch::position_sd),
      field("distance to the aiming stake ahead of the launch point", Dimension::length, {0.01, farthest_m},
            &Launch::sight_base),
  };
  const char* const places[] = {"/bore/launch/station_m", "/bore/launch/elevation_m", "/bore/launch/elevation_m",
                                "/bore/launch/grade",     "/bore/launch/heading_rad", "/bore/launch/offset_m"};
  for (std::size_t i = 0; i < std::size(places); ++i) all[i].lock = places[i];
  return all;
}

std::vector<Field> exit_fields(const Crossing& crossing) {
  const auto exit = [](auto& c) { return &c.bore.exit; };
  std::vector<Field> both{number_field(crossing, "station of the face", Dimension::station,
                                       {crossing.bore.launch.station.m + 0.01, farthest_m}, exit, &Exit::station),
                          number_field(crossing, "offset, left positive", Dimension::station, {-farthest_m, farthest_m},
                                       exit, &Exit::offset)};
  both[1].may_be_empty = false;
  both[1].default_value.reset();
  both[0].lock = "/bore/exit/station_m";
  both[1].lock = "/bore/exit/offset_m";
  return both;
}

/// Level and station of a line of utility: of one vertex, or of the first with the line following.
std::vector<Field> utility_place_fields(const std::string& id, std::size_t at, bool whole, const PathVertex& vertex) {
  const auto field = [&](const char* label, double bound, Typed value, auto set) {
    return typed_field(label, Dimension::station, {-bound, bound}, value, [id, set](Crossing& c, Typed v) {
      if (Utility* utility = find_by_id(c.site.utilities, id)) set(utility->path, v);
    });
  };
  std::vector<Field> both{
      field(whole ? "axis level (first point; the line follows)" : "axis level", highest_m, vertex.z_m,
            [at, whole](std::vector<PathVertex>& path, Typed v) {
              const Typed old = path[at].z_m;
              if (!whole || !v || !old) {
                for (std::size_t i = 0; i < path.size(); ++i)
                  if (i == at || whole) path[i].z_m = v;
                return;
              }
              for (PathVertex& p : path)
                if (p.z_m) *p.z_m += *v - *old;
            }),
      field(whole ? "station (first point; the line follows)" : "station", farthest_m, vertex.x_m,
            [at, whole](std::vector<PathVertex>& path, Typed v) {
              const double by = *v - path[at].x_m;
              for (std::size_t i = 0; i < path.size(); ++i)
                if (i == at || whole) path[i].x_m += by;
            })};
  both[0].may_be_empty = true;
  if (!whole)
    both.push_back(field("offset, left positive", farthest_m, vertex.y_m,
                         [at](std::vector<PathVertex>& path, Typed v) { path[at].y_m = *v; }));
  for (Field& one : both) one.lock = "/site/utilities/" + id + "/path";
  return both;
}

std::vector<Field> utility_fields(const Crossing& crossing, const ItemRef& part) {
  const Utility* utility = find_by_id(crossing.site.utilities, part.id);
  if (!utility || utility->path.empty()) return {};
  const bool whole = part.index < 0;
  const std::size_t at =
      !whole && static_cast<std::size_t>(part.index) < utility->path.size() ? static_cast<std::size_t>(part.index) : 0;
  const auto one = [id = part.id](auto& c) { return find_by_id(c.site.utilities, id); };
  const auto located = [one](auto& c) {
    auto* found = one(c);
    return found ? &found->located : nullptr;
  };
  const auto error = [&](const char* label, std::optional<Length> Located::*member) {
    Field field = number_field(crossing, label, Dimension::small_length, {0, 100}, located, member);
    field.validate = [id = part.id](const Crossing& c, Typed v) { return check_location_error(c, id, v); };
    return field;
  };
  std::vector<Field> all = utility_place_fields(part.id, at, whole, utility->path[at]);
  Field diameter =
      number_field(crossing, "outside diameter", Dimension::small_length, {0.001, 5}, one, &Utility::outside_diameter);
  diameter.actual_size = true;
  all.insert(all.begin() + 2, {diameter, error("location error across (1σ)", &Located::lateral_sd),
                               error("location error in height (1σ)", &Located::vertical_sd),
                               number_field(crossing, "clear gap required by its owner", Dimension::length, {0, 100},
                                            one, &Utility::required_clearance)});
  return all;
}

/// Level and station of one vertex; the neighbours bound the station.
std::vector<Field> vertex_fields(const Crossing& crossing, const ItemRef& part, const Lens<LevelLine>& line) {
  const LevelLine* now = line(crossing);
  if (!now || part.index < 0 || static_cast<std::size_t>(part.index) >= now->size()) return {};
  const auto i = static_cast<std::size_t>(part.index);
  const std::string lock = lock_places(crossing, part).front();
  const double low = i > 0 ? (*now)[i - 1].station_m + 0.001 : -farthest_m;
  const double high = i + 1 < now->size() ? (*now)[i + 1].station_m - 0.001 : farthest_m;
  const auto vertex = [line, i](auto& c) {
    auto* found = line(c);
    return found && i < found->size() ? &(*found)[i] : nullptr;
  };
  return {
      lockable_at(number_field(crossing, "level", Dimension::station, {-highest_m, highest_m}, vertex,
                               &LevelPoint::elevation_m),
                  lock),
      lockable_at(number_field(crossing, "station", Dimension::station, {low, high}, vertex, &LevelPoint::station_m),
                  lock)};
}

/// The line that a part of the ground is drawn by.
Lens<LevelLine> line_of(const ItemRef& part) {
  if (part.kind == ItemKind::ground) return [](auto& c) { return &c.site.ground; };
  if (part.kind == ItemKind::water) return [](auto& c) { return c.site.water ? &*c.site.water : nullptr; };
  return [id = part.id](auto& c) {
    auto* stratum = find_by_id(c.site.strata, id);
    return stratum && stratum->top ? &*stratum->top : nullptr;
  };
}

std::vector<Field> surface_fields(const Crossing& crossing, const ItemRef& part) {
  const SurfaceFeature* now = find_by_id(crossing.site.surface, part.id);
  if (!now) return {};
  const auto field = [&](const char* label, Dimension dimension, FieldRange range, auto member) {
    return number_field(
        crossing, label, dimension, range, [id = part.id](auto& c) { return find_by_id(c.site.surface, id); }, member);
  };
  // One end may not pass the other, as far as the other is known.
  const double before = now->to ? now->to->m - 0.01 : farthest_m, after = now->from ? now->from->m + 0.01 : -farthest_m;
  const std::string lock = "/site/surface/" + part.id;
  return {lockable_at(field("from station", Dimension::station, {-farthest_m, before}, &SurfaceFeature::from), lock),
          lockable_at(field("to station", Dimension::station, {after, farthest_m}, &SurfaceFeature::to), lock),
          field("skew, 0 is square to the line", Dimension::angle, {-1.5, 1.5}, &SurfaceFeature::skew),
          field("cover required by its owner", Dimension::length, {0, 100}, &SurfaceFeature::required_cover),
          field("heave allowed", Dimension::small_length, {0.0001, 1}, &SurfaceFeature::heave_limit),
          field("founding level", Dimension::station, {-highest_m, highest_m}, &SurfaceFeature::founding_elevation),
          field("pressure under its footing", Dimension::pressure, {0, 1e7}, &SurfaceFeature::bearing_pressure)};
}

/// Of a boundary, tree, machine or trench, or of one of its corners.
std::vector<Field> fields_around(const Crossing& crossing, const ItemRef& part) {
  for (const Around& one : surroundings(crossing)) {
    if (one.id != part.id) continue;
    if (part.index < 0) return around_fields(crossing, one);
    std::vector<Field> both = corner_fields(crossing, around_line(one), static_cast<std::size_t>(part.index));
    for (Field& field : both) field.lock = lock_places(crossing, part).front();
    return both;
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
    case ItemKind::bore: {
      std::vector<Field> all = launch_fields(crossing);
      return {all[1], all[2], all[5], all[3], all[4]};
    }
    case ItemKind::test_holes:
      return hole_fields(crossing, part.id);
    case ItemKind::around:
      return fields_around(crossing, part);
    case ItemKind::utility:
      return utility_fields(crossing, part);
    case ItemKind::ground:
    case ItemKind::water:
    case ItemKind::stratum:
      return vertex_fields(crossing, part, line_of(part));
    case ItemKind::surface:
      if (part.index >= first_outline_corner)
        return corner_fields(crossing, outline_of(part.id),
                             static_cast<std::size_t>(part.index - first_outline_corner));
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

namespace {
bool begins_with_dn(std::string_view text) {
  const std::size_t from = text.find_first_not_of(" \t");
  return from != std::string_view::npos && text.size() > from + 1 && (text[from] | 0x20) == 'd' &&
         (text[from + 1] | 0x20) == 'n';
}
}  // namespace

Result<std::optional<double>> read_field(const Field& field, std::string_view text, UnitSystem units) {
  const bool blank = text.find_first_not_of(" \t") == std::string_view::npos;
  if (blank && field.may_be_empty) return std::optional<double>();
  if (field.actual_size && begins_with_dn(text))
    return fail(translated_label(field.label), std::string(text),
                translatable("the outside diameter itself: DN only names a size, and the line may be thicker"));
  const Result<double> value = parse(text, field.dimension, units);
  if (!value) return tl::unexpected(value.error());
  if (!(*value >= field.low && *value <= field.high))
    return fail(translated_label(field.label), format(*value, field.dimension, units),
                say("between {} and {}", format(field.low, field.dimension, units),
                    format(field.high, field.dimension, units)));
  return std::optional<double>(*value);
}

}  // namespace burrow
