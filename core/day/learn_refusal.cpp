#include "learn_refusal.h"

#include <algorithm>
#include <boost/math/distributions/gamma.hpp>
#include <map>

namespace burrow {

namespace {

/// How the bore ended; an arrival that was read is an end as well.
std::optional<EndHow> how_it_ended(const DayRecord& record, const Timeline& timeline) {
  if (timeline.how) return timeline.how;
  const auto arrived = [](const Reading& reading) { return reading.kind == ReadingKind::arrival && counts(reading); };
  if (std::any_of(record.readings.begin(), record.readings.end(), arrived)) return EndHow::arrived;
  return std::nullopt;
}

}  // namespace

std::vector<StopEvidence> stops_of(const DayRecord& record, const Crossing& crossing, const Tables& tables,
                                   const Ground& ground, const BorePath& path, const Timeline& timeline) {
  const std::optional<EndHow> how = how_it_ended(record, timeline);
  if (!how || path.points.size() < 2) return {};
  const double to = *how == EndHow::arrived ? path.length_m : std::min(timeline.furthest_m, path.length_m);
  std::map<std::string, double> lengths;
  std::string last;
  for (std::size_t i = 1; i < path.points.size() && path.points[i - 1].s_m < to; ++i) {
    const PathPoint &a = path.points[i - 1], &b = path.points[i];
    const double x = 0.5 * (a.x_m + b.x_m), y = 0.5 * (a.y_m + b.y_m), z = 0.5 * (a.z_m + b.z_m);
    const std::optional<std::size_t> strip = ground.strip_at(x, y, z);
    last = strip ? crossing.site.strips[*strip].soil : crossing.site.strata[ground.stratum_at(x, y, z)].soil;
    lengths[last] += std::min(b.s_m, to) - a.s_m;
  }
  const bool stopped = *how == EndHow::stuck || *how == EndHow::lost;
  std::vector<StopEvidence> all;
  for (const auto& [soil, length] : lengths)
    if (const SoilClass* row = find_soil(tables, soil))
      all.push_back({soil, row->refusal_rate.per_m, row->wander.rad_sqrt_m, length, stopped && soil == last});
  return all;
}

void learn_refusal(const std::vector<const StopEvidence*>& stops, const LearnPrior& prior, LearnedSoil& learned) {
  if (stops.empty()) return;
  const double before = std::max(stops.front()->rate_class, prior.least_refusal_rate_1_m);
  for (const StopEvidence* stop : stops) {
    learned.bored_m += stop->bored_m;
    learned.refusals += stop->stopped ? 1 : 0;
  }
  LearnedRate rate;
  rate.shape = prior.refusal_shape + static_cast<double>(learned.refusals);
  rate.length_m = prior.refusal_shape / before + learned.bored_m;
  const boost::math::gamma_distribution<double> posterior(rate.shape, 1 / rate.length_m);
  rate.mean_1_m = rate.shape / rate.length_m;
  rate.low_1_m = boost::math::quantile(posterior, 0.05);
  rate.high_1_m = boost::math::quantile(posterior, 0.95);
  learned.refusal_rate = rate;
}

bool outweighs_table(const std::optional<LearnedRate>& rate, double bored_m) {
  return rate && bored_m > 0 && bored_m >= 0.5 * rate->length_m;
}

}  // namespace burrow
