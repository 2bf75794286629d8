/// Another soil near the bore: chances that lie not far below a limit may then be above it.

#include <algorithm>
#include <cmath>

#include "burrow/base/phrase.h"
#include "burrow/clearance/contact.h"
#include "check_run.h"

namespace burrow {

namespace {

constexpr double near_m = 0.8;  // from the axis; closer than the boundaries of the crossings at which the forms hold
constexpr double step_m = 0.2;  // thinner layers turn no tool
constexpr double far_m = 8;     // a band that wide has the other soil in it somewhere
constexpr double may_be_times = 4;

/// Whether two places hold ground that was entered as the same.
bool same_soil(const Ground& ground, const Soil& here, double x_m, double y_m, double z_m) {
  return &ground.soil_at(x_m, y_m, z_m) == &here;
}

/// Within the band, or within `near_m` of the axis where that is more.
bool other_soil_near(const CheckRun& run) {
  const Site& site = run.crossing.site;
  if (site.strata.size() < 2 && site.strips.empty()) return false;
  const auto& points = run.answer.bore.points;
  return std::any_of(points.begin(), points.end(), [&](const PathPoint& p) {
    const Soil& here = run.ground.soil_at(p.x_m, p.y_m, p.z_m);
    const double surface = run.ground.surface_m(p.x_m, p.y_m);
    const double up = std::max(near_m, band_99_sd * p.sd_vertical_m);
    const double aside = std::max(near_m, band_99_sd * p.sd_lateral_m);
    if (!(up < far_m) || !(aside < far_m)) return true;
    for (double d = step_m; d < up + step_m; d += step_m) {
      const double reach = std::min(d, up), above = std::min(p.z_m + reach, surface);
      if (!same_soil(run.ground, here, p.x_m, p.y_m, above) ||
          !same_soil(run.ground, here, p.x_m, p.y_m, p.z_m - reach))
        return true;
    }
    if (site.strips.empty()) return false;
    for (double d = step_m; d < aside + step_m; d += step_m)
      for (const double y : {p.y_m - std::min(d, aside), p.y_m + std::min(d, aside)})
        if (!same_soil(run.ground, here, p.x_m, y, p.z_m)) return true;
    return false;
  });
}

class ChancesNearBoundary {
 public:
  explicit ChancesNearBoundary(CheckRun& run) : run_(run) {}

  void judge_all() {
    const Assessment& answer = run_.answer;
    for (std::size_t i = 0; i < answer.utilities.size(); ++i) {
      const UtilityAnswer& u = answer.utilities[i];
      const Utility& utility = run_.crossing.site.utilities[i];
      if (u.contact_chance_worst)
        require(
            u.id, [&] { return phrase(translatable("touching {}"), display_name(utility)); }, *u.contact_chance_worst,
            run_.limit("contact_caution"));
      if (u.encroachment_chance)
        require(
            u.id, [&] { return phrase(translatable("coming too near to {}"), display_name(utility)); },
            *u.encroachment_chance, run_.limit("encroachment_caution"));
    }
    if (answer.chance_of_daylight)
      require(
          "bore", [] { return Phrase(translatable("coming out early")); }, *answer.chance_of_daylight,
          run_.limit("daylight_caution"));
    if (answer.arrival.chance_inside_exit_pit) {
      Limit outside = run_.limit("exit_window_chance");
      outside.value = 1 - outside.value;
      outside.at_least = false;
      require(
          "exit-pit", [] { return Phrase(translatable("missing the exit window")); },
          1 - *answer.arrival.chance_inside_exit_pit, outside);
    }
  }

 private:
  /// What breaks the limit by itself is said elsewhere. Most of many utilities have nothing to say, and no name is
  /// made.
  template <class Name>
  void require(const std::string& subject, const Name& name, double chance, const Limit& limit) {
    if (chance > limit.value) return;
    const double may_be = std::min(may_be_times * chance, 1.0);
    if (run_.wants_working() && margin_of(may_be, limit) >= 0) return;
    Finding finding;
    finding.code = "bore.boundary-near";
    finding.severity = Severity::caution;
    finding.subject = subject;
    finding.name = name();
    run_.require(std::move(finding), may_be, limit);
  }

  CheckRun& run_;
};

}  // namespace

void check_boundary(CheckRun& run) {
  if (other_soil_near(run)) ChancesNearBoundary(run).judge_all();
}

}  // namespace burrow
