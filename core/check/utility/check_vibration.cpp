/// What the blows do to buildings and buried pipes: two published forms side by side, the greater one judged.

#include <algorithm>
#include <cmath>
#include <limits>

#include "burrow/base/phrase.h"
#include "burrow/bore/advance.h"
#include "burrow/soil/vibration.h"
#include "burrow/tables/material_rows.h"
#include "check_run.h"
#include "structure_place.h"

namespace burrow {

namespace {

struct Shaking {
  double distance_m = 0;
  BlowGround ground;
  double percussive_m_s = 0, by_distance_m_s = 0;

  [[nodiscard]] double greater_m_s() const { return std::max(percussive_m_s, by_distance_m_s); }
};

/// Not nearer than the wall of the hole.
Shaking shaking_at(const CheckRun& run, double energy_J, const Point3& on_bore, double distance_m) {
  Shaking s;
  s.distance_m = std::max(distance_m, run.tool.diameter.m / 2);
  s.ground = blow_ground(run.ground.soil_at(on_bore.x_m, on_bore.y_m, on_bore.z_m));
  s.percussive_m_s = percussive_vibration_m_s(energy_J, Length{s.distance_m}, s.ground.scale).value_or(0);
  s.by_distance_m_s = distance_vibration_m_s(energy_J, Length{s.distance_m}, s.ground.exponent).value_or(0);
  return s;
}

void show(CheckRun& run, std::string_view code, const std::string& subject, double energy_J, const Shaking& s,
          const Limit* limit) {
  if (run.wants_working())
    run.add_working(
        {code,
         subject,
         "v = max(0.001 k_p √W/r^1.3, 0.0165 (7.62/r)^n √(W/48 810)), in m, J and m/s",
         {{"k_p", s.ground.scale, ""},
          {"W", energy_J, "J"},
          {"r", s.distance_m, "m"},
          {"n", s.ground.exponent, ""},
          {"v_1", s.percussive_m_s, "m/s"},
          {"v_2", s.by_distance_m_s, "m/s"}},
         "v",
         s.greater_m_s(),
         "m/s",
         limit ? std::optional(limit->value) : std::nullopt,
         {"BS 5228-2 Table E.1, stated for blows of 1.5 to 85 kJ from 1 m on: a piercing tool strikes less hard "
          "and lies "
          "outside it; beside it Caltrans 2013 eq. 9 for pile drivers. No measurement beside a piercing tool is "
          "known to us",
          SourceLabel::our_model},
         limit ? std::optional(limit->source) : std::nullopt});
}

/// Within the blows and distances that the form was made for. Source: BS 5228-2 Table E.1, 1.5 to 85 kJ, from 1 m on.
bool form_holds(double energy_J, const Shaking& s) {
  constexpr double least_J = 1500, most_J = 85e3, nearest_m = 1;
  return energy_J >= least_J && energy_J <= most_J && s.distance_m >= nearest_m;
}

/// By the kind of building entered. One that is not entered or not known is held against the strictest.
Limit building_limit(const CheckRun& run, const SurfaceFeature& feature) {
  if (const StructureRow* row = find_structure(run.tables, feature.structure.value_or(""))) {
    Limit limit = run.limit(row->limit);
    limit.source.text = phrase("{}: {}", row->name, limit.source.text);
    return limit;
  }
  const auto& rows = run.tables.structures;
  BURROW_ENSURE(!rows.empty());
  const auto strictest = std::min_element(rows.begin(), rows.end(), [&](const StructureRow& a, const StructureRow& b) {
    return run.limit(a.limit).value < run.limit(b.limit).value;
  });
  Limit limit = run.limit(strictest->limit);
  limit.source.text = phrase(translatable("kind of building not known, the strictest counts: {}"), limit.source.text);
  return limit;
}

/// Nearest point of the path: in plan to the outline, up to the founding level where that lies above. Where it is not
/// entered the footing may reach down to the bore.
void judge_building(CheckRun& run, double energy_J, const SurfaceFeature& feature) {
  const PathPoint* nearest = nullptr;
  double distance_m = std::numeric_limits<double>::infinity();
  for (const PathPoint& p : run.answer.bore.points) {
    const std::optional<double> beside = plan_distance(feature, p.x_m, p.y_m);
    if (!beside) return;
    const double below = feature.founding_elevation ? std::max(0.0, feature.founding_elevation->m - p.z_m) : 0.0;
    const double distance = std::hypot(*beside, below);
    if (distance < distance_m) {
      distance_m = distance;
      nearest = &p;
    }
  }
  if (!nearest) return;
  const Shaking s = shaking_at(run, energy_J, {nearest->x_m, nearest->y_m, nearest->z_m}, distance_m);
  const Limit limit = building_limit(run, feature);
  StructureAnswer& answer = structure_answer(run.answer, feature);
  answer.distance_m = distance_m;
  answer.station_m = nearest->x_m;
  answer.vibration_m_s = s.greater_m_s();
  answer.vibration_percussive_m_s = s.percussive_m_s;
  answer.vibration_distance_m_s = s.by_distance_m_s;
  answer.vibration_limit_m_s = limit.value;
  Finding finding = finding_at("building.vibration", Severity::caution, feature.id, display_name(feature), nearest->x_m,
                               nearest->y_m, nearest->z_m);
  finding.unit = "m/s";
  run.require(std::move(finding), s.greater_m_s(), limit);
  show(run, "building.vibration", feature.id, energy_J, s, &limit);
}

struct PipeLimits {
  Limit steel, rigid, plastic;

  [[nodiscard]] const Limit& of(UtilityWall wall) const {
    switch (wall) {
      case UtilityWall::steel:
        return steel;
      case UtilityWall::grey_iron:
      case UtilityWall::ductile_iron:
      case UtilityWall::copper:
      case UtilityWall::rigid:
        return rigid;
      case UtilityWall::masonry:
      case UtilityWall::plastic:
      case UtilityWall::cable:
      case UtilityWall::unknown:
        break;
    }
    return plastic;
  }
};

void judge_utility(CheckRun& run, double energy_J, const PipeLimits& limits, const Utility& utility,
                   UtilityAnswer& answer, WorstOfMany& shaken) {
  if (!answer.on_bore || !answer.on_utility) return;
  const Point3 &bore = *answer.on_bore, &pipe = *answer.on_utility;
  const double axes = std::hypot(pipe.x_m - bore.x_m, pipe.y_m - bore.y_m, pipe.z_m - bore.z_m);
  const double wall = axes - utility.outside_diameter.value_or(Length{0}).m / 2;
  if (!(wall > run.tool.diameter.m / 2)) return;  // struck: that is a matter of the clear gap
  const Shaking s = shaking_at(run, energy_J, bore, wall);
  const Limit& limit = limits.of(wall_of(run.tables, utility));
  answer.vibration_m_s = s.greater_m_s();
  const bool judged = form_holds(energy_J, s);
  if (judged) {
    Finding finding = finding_at("utility.vibration", Severity::caution, utility.id, display_name(utility), pipe.x_m,
                                 pipe.y_m, pipe.z_m);
    finding.unit = "m/s";
    run.require(std::move(finding), s.greater_m_s(), limit);
  } else {
    shaken.take(utility, pipe, s.greater_m_s(), limit);
  }
  show(run, "utility.vibration", utility.id, energy_J, s, judged ? &limit : nullptr);
}

}  // namespace

void check_vibration(CheckRun& run) {
  if (run.answer.bore.points.empty() || !(run.tool.pressure.Pa > 0)) return;
  const double energy_J = blow_of(run.tool, run.tool.pressure).energy_J;
  for (const SurfaceFeature& feature : run.crossing.site.surface)
    if (stands(feature)) judge_building(run, energy_J, feature);
  const PipeLimits limits{run.limit("vibration_steel_pipe_m_s"), run.limit("vibration_rigid_pipe_m_s"),
                          run.limit("vibration_plastic_pipe_m_s")};
  WorstOfMany shaken;
  const std::vector<Utility>& utilities = run.crossing.site.utilities;
  for (std::size_t i = 0; i < utilities.size() && i < run.answer.utilities.size(); ++i)
    judge_utility(run, energy_J, limits, utilities[i], run.answer.utilities[i], shaken);
  shaken.add_not_judged(run, "utility.vibration", "m/s");
}

}  // namespace burrow
