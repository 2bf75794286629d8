#include "burrow/document/measures.h"

#include <algorithm>
#include <cmath>

#include "burrow/check/assess.h"
#include "burrow/crossing/find.h"
#include "burrow/document/pit_fields.h"
#include "burrow/language/say.h"

namespace burrow {

namespace {

constexpr double least_run_m = 0.5;  ///< exit beyond launch
constexpr double least_floor_m = 0.3, greatest_floor_m = 100;
constexpr double highest_m = 1e4, farthest_m = 1e5;  ///< what the file accepts
constexpr double good_m = 0.0005;
constexpr int most_steps = 12;
/// The bore passes so much beside a utility that raising it hardly changes the gap.
constexpr double least_upright_share = 0.2;

const PitShape& shape_of(const Assessment& assessment, const MeasureRef& measure) {
  return measure.id == "launch" ? assessment.launch_pit : assessment.exit_pit;
}

WhichPit pit_named(const MeasureRef& measure) {
  return measure.id == "launch" ? WhichPit::launch : WhichPit::exit;
}

/// All of the bore rises.
Edit raised(const Crossing& crossing, double by_m) {
  const double to = std::clamp(crossing.bore.launch.elevation.m + by_m, -highest_m, highest_m);
  return [to](Crossing& c) { c.bore.launch.elevation.m = to; };
}

}  // namespace

const PathPoint* least_cover_under(const Assessment& assessment, const SurfaceFeature& feature) {
  if (!feature.from || !feature.to) return nullptr;
  const PathPoint* least = nullptr;
  for (const PathPoint& p : assessment.bore.points) {
    if (p.x_m < feature.from->m || p.x_m > feature.to->m) continue;
    if (!least || p.cover_m < least->cover_m) least = &p;
  }
  return least;
}

std::vector<MeasureRef> measures_of(const Crossing& crossing, const Assessment& assessment) {
  std::vector<MeasureRef> all;
  const auto add = [&](MeasureKind kind, const std::string& id) {
    const MeasureRef measure{kind, id};
    if (measure_value(crossing, assessment, measure)) all.push_back(measure);
  };
  add(MeasureKind::bore_length, {});
  add(MeasureKind::launch_depth, {});
  add(MeasureKind::exit_depth, {});
  for (const SurfaceFeature& feature : crossing.site.surface)
    if (feature.kind == SurfaceKind::road || feature.kind == SurfaceKind::track)
      add(MeasureKind::surface_cover, feature.id);
  for (const Utility& utility : crossing.site.utilities) add(MeasureKind::separation, utility.id);
  for (const char* pit : {"launch", "exit"}) {
    add(MeasureKind::floor_length, pit);
    add(MeasureKind::floor_width, pit);
  }
  return all;
}

std::optional<double> measure_value(const Crossing& crossing, const Assessment& assessment, const MeasureRef& measure) {
  const LevelLine& ground = crossing.site.ground;
  const Launch& launch = crossing.bore.launch;
  const double exit = crossing.bore.exit.station.m;
  switch (measure.kind) {
    case MeasureKind::bore_length:
      return exit - launch.station.m;
    case MeasureKind::launch_depth:
      if (ground.empty()) return std::nullopt;
      return elevation_at(ground, launch.station.m) - launch.elevation.m;
    case MeasureKind::exit_depth:
      if (ground.empty() || !assessment.arrival.elevation_m) return std::nullopt;
      return elevation_at(ground, exit) - *assessment.arrival.elevation_m;
    case MeasureKind::surface_cover: {
      const SurfaceFeature* feature = find_by_id(crossing.site.surface, measure.id);
      const PathPoint* least = feature ? least_cover_under(assessment, *feature) : nullptr;
      return least ? std::optional(least->cover_m) : std::nullopt;
    }
    case MeasureKind::separation: {
      const UtilityAnswer* answer = find_by_id(assessment.utilities, measure.id);
      return answer && answer->on_bore && answer->on_utility ? answer->separation_m : std::nullopt;
    }
    case MeasureKind::floor_length:
    case MeasureKind::floor_width: {
      const PitShape& shape = shape_of(assessment, measure);
      if (shape.section.size() < 3) return std::nullopt;
      return measure.kind == MeasureKind::floor_length ? shape.floor_length_m : shape.floor_width_m;
    }
  }
  return std::nullopt;
}

ItemRef measure_part(const MeasureRef& measure) {
  switch (measure.kind) {
    case MeasureKind::bore_length:
      return {ItemKind::exit, {}, -1};
    case MeasureKind::exit_depth:
      return {ItemKind::grade, {}, -1};
    case MeasureKind::floor_length:
    case MeasureKind::floor_width:
      return {ItemKind::pits, {}, -1};
    default:
      return {ItemKind::launch, {}, -1};
  }
}

std::string measure_name(const Crossing& crossing, const MeasureRef& measure) {
  switch (measure.kind) {
    case MeasureKind::bore_length:
      return burrow::translated("length from face to face");
    case MeasureKind::launch_depth:
      return burrow::translated("depth at the launch face");
    case MeasureKind::exit_depth:
      return burrow::translated("depth at the exit face");
    case MeasureKind::surface_cover:
      return say("least cover under {}", part_name(crossing, {ItemKind::surface, measure.id, -1}));
    case MeasureKind::separation:
      return say("clear gap to {}", part_name(crossing, {ItemKind::utility, measure.id, -1}));
    case MeasureKind::floor_length:
      return measure.id == "launch" ? burrow::translated("floor of the launch pit, along the line")
                                    : burrow::translated("floor of the exit pit, along the line");
    case MeasureKind::floor_width:
      return measure.id == "launch" ? burrow::translated("floor of the launch pit, across")
                                    : burrow::translated("floor of the exit pit, across");
  }
  return {};
}

std::string measure_lock(const Crossing& crossing, const MeasureRef& measure) {
  const auto first_locked = [&](std::initializer_list<std::string> pointers) -> std::string {
    for (const std::string& pointer : pointers)
      if (member_locked(crossing, pointer)) return pointer;
    return {};
  };
  switch (measure.kind) {
    case MeasureKind::bore_length:
      return first_locked({"/bore/exit/station_m"});
    case MeasureKind::exit_depth:
      return first_locked({"/bore/launch/grade"});
    case MeasureKind::floor_length:
      return first_locked({"/pits/" + measure.id + "/floor_length_m"});
    case MeasureKind::floor_width:
      return first_locked({"/pits/" + measure.id + "/floor_width_m"});
    default:
      return first_locked({"/bore/launch/elevation_m"});
  }
}

Edit toward_measure(const Crossing& crossing, const Assessment& assessment, const MeasureRef& measure, double wanted) {
  const std::optional<double> now = measure_value(crossing, assessment, measure);
  if (!now) return {};
  const Launch& launch = crossing.bore.launch;
  switch (measure.kind) {
    case MeasureKind::bore_length: {
      const double to = std::min(launch.station.m + std::max(wanted, least_run_m), farthest_m);
      return [to](Crossing& c) { c.bore.exit.station.m = to; };
    }
    case MeasureKind::launch_depth:
    case MeasureKind::surface_cover:
      return raised(crossing, *now - wanted);
    case MeasureKind::exit_depth: {
      const double run = std::max(least_run_m, crossing.bore.exit.station.m - launch.station.m);
      const double grade = std::clamp(launch.grade.v + (*now - wanted) / run, -1.0, 1.0);
      return [grade](Crossing& c) { c.bore.launch.grade.v = grade; };
    }
    case MeasureKind::separation: {
      const UtilityAnswer& answer = *find_by_id(assessment.utilities, measure.id);
      const Point3 &bore = *answer.on_bore, &utility = *answer.on_utility;
      const double up = bore.z_m - utility.z_m;
      const double apart = std::hypot(bore.x_m - utility.x_m, bore.y_m - utility.y_m, up);
      if (!(std::abs(up) > least_upright_share * apart)) return {};
      return raised(crossing, (wanted - *now) * apart / up);
    }
    case MeasureKind::floor_length:
    case MeasureKind::floor_width: {
      const auto member = measure.kind == MeasureKind::floor_length ? &Pit::floor_length : &Pit::floor_width;
      const Length to{std::clamp(wanted, least_floor_m, greatest_floor_m)};
      return [which = pit_named(measure), member, to](Crossing& c) { pit_of(c.pits, which).*member = to; };
    }
  }
  return {};
}

Result<Crossing> with_measure(const Crossing& crossing, const Tables& tables, const MeasureRef& measure, double wanted,
                              GroundSurface surface) {
  const std::string name = measure_name(crossing, measure);
  const auto text = [](double v) { return format(v, Dimension::length, UnitSystem::metric); };
  Crossing draft = crossing;
  double nearest = 1e300, nearest_value = 0;
  for (int step = 0; step < most_steps; ++step) {
    const Assessment answer = assess(draft, tables, surface);
    surface = answer.ground_surface;
    const std::optional<double> now = measure_value(draft, answer, measure);
    if (!now) break;
    const double off = std::abs(*now - wanted);
    if (off < nearest) {
      nearest = off;
      nearest_value = *now;
    }
    if (off < good_m) return draft;
    const Edit next = toward_measure(draft, answer, measure, wanted);
    if (!next)
      return fail(name, text(wanted),
                  "a move of the bore up or down that changes it; it passes beside. Move the line in the plan instead");
    next(draft);
  }
  return fail(name, text(wanted),
              nearest < 1e300
                  ? say("something that can be reached by this alone; the nearest found is {}", text(nearest_value))
                  : "a bore that reaches so far");
}

Field measure_field(const Crossing& crossing, const Assessment& assessment, const Tables& tables,
                    const MeasureRef& measure) {
  Field field;
  field.label = measure_name(crossing, measure);
  field.dimension = Dimension::length;
  field.value = measure_value(crossing, assessment, measure);
  const Pit& pit = pit_of(crossing.pits, pit_named(measure));
  switch (measure.kind) {
    case MeasureKind::bore_length:
      field.low = least_run_m;
      field.high = 1000;
      break;
    case MeasureKind::floor_length:
    case MeasureKind::floor_width:
      field.low = least_floor_m;
      field.high = greatest_floor_m;
      field.entered = (measure.kind == MeasureKind::floor_length ? pit.floor_length : pit.floor_width).has_value();
      break;
    case MeasureKind::separation:
      field.low = -10;
      field.high = 100;
      break;
    default:
      field.low = -10;
      field.high = 30;
  }
  const Tables* known = &tables;
  field.apply = [known, measure](Crossing& c, std::optional<double> wanted) {
    if (Result<Crossing> there = with_measure(c, *known, measure, wanted.value_or(0))) c = std::move(*there);
  };
  field.validate = [known, measure](const Crossing& c, std::optional<double> wanted) -> Result<void> {
    if (const Result<Crossing> there = with_measure(c, *known, measure, wanted.value_or(0)); !there)
      return tl::unexpected(there.error());
    return {};
  };
  return field;
}

}  // namespace burrow
