#include "burrow/words/trials_text.h"
#include "burrow/crossing/calibration.h"
#include "burrow/language/say.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace burrow {

namespace {

/// To the next digit shown: a bound is never told lower than it is.
double rounded_up(double chance) {
  const double digit = chance < 0.01 ? 1e-4 : 1e-3;
  return std::min(1.0, std::ceil(chance / digit - 1e-9) * digit);
}

bool none_seen(const Count& count) {
  return count.n == 0 && count.of > 0;
}

std::string chance_text(const Count& count, UnitSystem units) {
  const auto chance = [&](double value) { return format(value, Dimension::chance, units); };
  if (count.of == 0) return "–";
  if (none_seen(count)) return say("none seen, below {}", chance(rounded_up(count.upper_95())));
  if (count.n == count.of) return say("all {}", count.of);
  return fmt::format("{} ± {}", chance(count.chance()), chance(count.standard_error()));
}

std::string estimate_text(const std::optional<Estimate>& estimate, Dimension dimension, UnitSystem units) {
  if (!estimate) return "–";
  return fmt::format("{} ± {}", format(estimate->value, dimension, units),
                     format(estimate->standard_error, Dimension::small_length, units));
}

std::string closed_text(const std::optional<double>& value, Dimension dimension, UnitSystem units) {
  if (!value) return {};
  constexpr double least_shown_chance = 1e-9;  // of a computed chance nobody can say that it is none: "< 0.01 %"
  return format(dimension == Dimension::chance ? std::max(*value, least_shown_chance) : *value, dimension, units);
}

}  // namespace

std::vector<TrialsLine> trials_lines(const Trials& trials, const Assessment& assessment, UnitSystem units) {
  std::vector<TrialsLine> lines;
  if (trials.count == 0) return lines;
  const bool arrives = assessment.bore.ends == PathEnd::exit;
  const Arrival& arrival = assessment.arrival;
  const auto share = [&](std::string what, const Count& count, std::optional<double> closed = {}) {
    lines.push_back({std::move(what), chance_text(count, units), closed_text(closed, Dimension::chance, units),
                     std::string(), none_seen(count)});
  };
  // The trials count those that the ground stops among all; the closed form speaks of bores that get there.
  std::optional<double> inside;
  if (arrives && arrival.chance_inside_exit_pit)
    inside = *arrival.chance_inside_exit_pit * (1 - assessment.chance_of_refusal.value_or(0));
  share(translated("arrive in the exit pit"), trials.inside_window, inside);
  share(translated("reach the exit face"), trials.arrived);
  share(translated("come out of the ground before"), trials.daylight, assessment.chance_of_daylight);
  share(translated("are stopped by the ground"), trials.refused, assessment.chance_of_refusal);
  if (assessment.refusal_station_m)
    lines.push_back({translated("not counted: a blow no longer moves the tool"),
                     say("from station {}", format(*assessment.refusal_station_m, Dimension::station, units)),
                     {},
                     {}});
  share(translated("end at a utility"), trials.contact);
  if (trials.lost.n > 0) share(translated("neither arrive nor stop"), trials.lost);
  const auto length = [&](std::string what, const std::optional<Estimate>& estimate, Dimension dimension,
                          const std::optional<double>& closed) {
    if (!estimate) return;
    lines.push_back({std::move(what), estimate_text(estimate, dimension, units),
                     arrives ? closed_text(closed, dimension, units) : std::string(), std::string()});
  };
  length(translated("arrival, offset"), trials.mean_offset_m, Dimension::station, arrival.offset_m);
  length(translated("arrival, level"), trials.mean_elevation_m, Dimension::station, arrival.elevation_m);
  length(translated("standard deviation across"), trials.sd_offset_m, Dimension::small_length, arrival.sd_lateral_m);
  length(translated("standard deviation up and down"), trials.sd_elevation_m, Dimension::small_length,
         arrival.sd_vertical_m);
  for (std::size_t i = 0; i < trials.utilities.size(); ++i) {
    const UtilityTrials& counted = trials.utilities[i];
    const UtilityAnswer* answer = nullptr;
    for (const UtilityAnswer& u : assessment.utilities)
      if (u.id == counted.id) answer = &u;
    const std::string name = answer && !answer->name.empty() ? answer->name : counted.id;
    const auto chance = [&](const Count& count) {
      const std::string seen = chance_text(count, units);
      return counted.depth_unknown ? say("{} (at least: its depth is not known everywhere)", seen) : seen;
    };
    lines.push_back({say("touch {}", name), chance(counted.contact),
                     answer ? closed_text(answer->contact_chance, Dimension::chance, units) : std::string(), counted.id,
                     none_seen(counted.contact)});
    lines.push_back({say("come too near to {}", name), chance(counted.encroachment),
                     answer ? closed_text(answer->encroachment_chance, Dimension::chance, units) : std::string(),
                     counted.id, none_seen(counted.encroachment)});
  }
  return lines;
}

std::string model_status(const ModelConstants& model) {
  if (!calibrated(model)) return translated("model not calibrated");
  return say_count("model calibrated from {} bore", "model calibrated from {} bores", model.calibrated_from.value);
}

}  // namespace burrow
