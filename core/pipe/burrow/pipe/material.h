#pragma once
/// How a pipe material bears with time and temperature, read off its rows.

#include "burrow/base/quantity.h"
#include "burrow/base/result.h"
#include "burrow/tables/tables.h"

namespace burrow {

/// How long the ground rests on a pipe: 50 years of 365.25 days.
inline constexpr Duration design_life{50 * 365.25 * 86400};
/// A wheel passing: short term.
inline constexpr Duration short_term{180};

/// Multiplier of the modulus, straight between the rows. Colder than the first row: that row, which is safe.
/// Errors: hotter than the last row.   Evidence: Material.Derating_*
Result<Ratio> derating(const PipeStrength& strength, Temperature temperature);
/// Of a strength: the same, but cold never adds.
Result<Ratio> strength_derating(const PipeStrength& strength, Temperature temperature);

/// Apparent modulus, straight in the logarithms of time and modulus between the rows, held beyond them, times
/// `derating`.   Source: rows of `resources/tables/pipes.json`.   Range: time > 0.   Errors: out_of_range.
/// Evidence: Material.PPI_*
Result<Pressure> modulus(const PipeStrength& strength, Duration time, Temperature temperature);

struct PullStress {
  double stress_Pa = 0;    ///< the lesser of the two, temperature in it
  double by_yield_Pa = 0;  ///< 0.40 f_t T_y, 0 where no yield is known
  double by_table_Pa = 0;  ///< least of the rows to that for at least that long, 0 where there is none
  double time_factor = 1;  ///< f_t
  double temperature_factor = 1;
  Source source;
};
/// Stress in the wall that a pull of this duration may reach: the lesser of the form of ASTM F1804, 0.40 f_t T_y with
/// f_t 1.0 to 1 h, 0.95 to 12 h, 0.91 to 24 h (from memory), and the row of the table. It never rises with time.
/// Range: time > 0; polyethylene to 24 h, without a yield no longer than its last row.   Errors: out_of_range; a
/// material without either.   Evidence: Material.F1962_SafePullStress, Material.SafePull_*
Result<PullStress> pull_stress(const PipeStrength& strength, Duration time, Temperature temperature);

/// Least radius of a bend in outside diameters; nothing where the rows end.
const BendRow* bend_row(const PipeStrength& strength, double ratio);
const DeflectionRow* deflection_row(const PipeStrength& strength, double ratio);

}  // namespace burrow
