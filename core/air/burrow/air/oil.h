#pragma once
/// How much oil the tool wants, and when to look after it.

#include <optional>

#include "burrow/base/quantity.h"
#include "burrow/crossing/air.h"

namespace burrow {

/// Oil for each volume of free air: a fluid ounce an hour for 100 ft³/min.
inline constexpr double oil_for_free_air = 2.95735295625e-5 / 3600 / (100 * 0.028316846592 / 60);
/// A lubricator is looked after at least once a shift.
inline constexpr double shift_s = 8 * 3600;

struct OilPlan {
  VolumeFlow rate;
  bool rate_entered = false;
  Volume first_fill;
  std::optional<Volume> for_half, for_nine_in_ten;  ///< first fill left out; empty where the bore has no time
  std::optional<Duration> fill_lasts;               ///< empty: nothing is used
  std::optional<Duration> look_every;               ///< half of that, a shift at most
  bool operator==(const OilPlan&) const = default;
};

/// Source: rate, from memory (no rate was read in print; about a drop a minute for 10 to 15 ft³/min is another, half of
/// it); half the fill and once a shift: our default; the user's own rate wins.
/// Range: free air ≥ 0, times ≥ 0.   Evidence: Oil.*
OilPlan oil_plan(const Oil& oil, VolumeFlow free_air, std::optional<double> half_s,
                 std::optional<double> nine_in_ten_s);

}  // namespace burrow
