#include "burrow/pipe/material.h"

#include <algorithm>
#include <cmath>

namespace burrow {

namespace {

template <class Row>
const Row* first_that_reaches(const std::vector<Row>& rows, double ratio) {
  constexpr double hair = 1e-6;
  for (const Row& row : rows)
    if (ratio <= row.to_ratio.v * (1 + hair)) return &row;
  return nullptr;
}

/// Steps of ASTM F1804.
double time_factor(double time_s) {
  constexpr double hour_s = 3600;
  if (time_s <= hour_s) return 1.0;
  return time_s <= 12 * hour_s ? 0.95 : 0.91;
}

/// The row for at least that long; beyond the last one that one, which only `by_yield` can bring down further. A row
/// never bears more than one before it.
const PullStressRow* row_for(const PipeStrength& strength, double time_s) {
  const PullStressRow* least = nullptr;
  for (const PullStressRow& row : strength.pull_stress) {
    if (!least || row.stress.Pa <= least->stress.Pa) least = &row;
    if (time_s <= row.time.s) break;
  }
  return least;
}

}  // namespace

Result<Ratio> derating(const PipeStrength& strength, Temperature temperature) {
  if (!(temperature.K > 0)) return out_of_range("temperature", temperature.K, "> 0 K");
  const std::vector<DeratingRow>& rows = strength.derating;
  if (rows.empty()) return Ratio{1};
  if (!(temperature.K <= rows.back().temperature.K + 1e-9))
    return out_of_range("temperature", temperature.K, "no hotter than the last row of the material");
  if (temperature.K <= rows.front().temperature.K) return rows.front().ratio;
  for (std::size_t i = 1; i < rows.size(); ++i) {
    const DeratingRow &low = rows[i - 1], &high = rows[i];
    if (temperature.K > high.temperature.K) continue;
    const double part = (temperature.K - low.temperature.K) / (high.temperature.K - low.temperature.K);
    return Ratio{low.ratio.v + part * (high.ratio.v - low.ratio.v)};
  }
  return rows.back().ratio;
}

Result<Ratio> strength_derating(const PipeStrength& strength, Temperature temperature) {
  Result<Ratio> ratio = derating(strength, temperature);
  if (ratio) ratio->v = std::min(ratio->v, 1.0);
  return ratio;
}

Result<Pressure> modulus(const PipeStrength& strength, Duration time, Temperature temperature) {
  if (!(time.s > 0)) return out_of_range("time", time.s, "> 0 s");
  const Result<Ratio> by_temperature = derating(strength, temperature);
  if (!by_temperature) return tl::unexpected(by_temperature.error());
  const std::vector<ModulusRow>& rows = strength.modulus;
  if (rows.empty()) return fail("modulus", "no row", "at least one");
  double modulus_Pa = time.s <= rows.front().time.s ? rows.front().modulus.Pa : rows.back().modulus.Pa;
  for (std::size_t i = 1; i < rows.size(); ++i) {
    const ModulusRow &low = rows[i - 1], &high = rows[i];
    if (!(time.s > low.time.s && time.s <= high.time.s)) continue;
    const double part = std::log(time.s / low.time.s) / std::log(high.time.s / low.time.s);
    modulus_Pa = low.modulus.Pa * std::pow(high.modulus.Pa / low.modulus.Pa, part);
  }
  return Pressure{modulus_Pa * by_temperature->v};
}

Result<PullStress> pull_stress(const PipeStrength& strength, Duration time, Temperature temperature) {
  if (!(time.s > 0)) return out_of_range("time of the pull", time.s, "> 0 s");
  constexpr double longest_s = 24 * 3600;
  if (strength.law == PipeLaw::polyethylene && !(time.s <= longest_s))
    return out_of_range("time of the pull", time.s, "to 86400 s (24 h)");
  const Result<Ratio> warm = strength_derating(strength, temperature);
  if (!warm) return tl::unexpected(warm.error());
  PullStress pull;
  pull.temperature_factor = warm->v;
  const PullStressRow* row = row_for(strength, time.s);
  if (row && strength.law == PipeLaw::polyethylene && !strength.yield && time.s > strength.pull_stress.back().time.s)
    return out_of_range("time of the pull", time.s, "no longer than the last row of the material");
  pull.by_table_Pa = row ? row->stress.Pa : 0;
  if (strength.yield) {
    pull.time_factor = time_factor(time.s);
    pull.by_yield_Pa = 0.40 * pull.time_factor * strength.yield->Pa;
  }
  const bool table = pull.by_table_Pa > 0, yield = pull.by_yield_Pa > 0;
  if (!table && !yield) return fail("safe pull", "neither a stress nor a yield", "one of them in the material's row");
  const bool table_governs = table && (!yield || pull.by_table_Pa <= pull.by_yield_Pa);
  pull.stress_Pa = warm->v * (table_governs ? pull.by_table_Pa : pull.by_yield_Pa);
  pull.source = table_governs ? row->source : strength.yield_source;
  return pull;
}

const BendRow* bend_row(const PipeStrength& strength, double ratio) {
  return first_that_reaches(strength.bend, ratio);
}

const DeflectionRow* deflection_row(const PipeStrength& strength, double ratio) {
  return first_that_reaches(strength.deflection, ratio);
}

}  // namespace burrow
