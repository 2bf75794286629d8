#pragma once
/// How fast the tool gets on against what was expected, and what an odd rate may mean.

#include "burrow/bore/path.h"
#include "burrow/check/assessment.h"
#include "burrow/day/day.h"
#include "burrow/soil/ground.h"
#include "timeline.h"

namespace burrow {

/// The constants of the rate, all in one place.   Source: our model, not calibrated.
struct RateConstants {
  double factor_ln_sd = 0.628;  ///< of this bore's factor: ln √5 / 1.2816, the range 0.1 to 0.5
  double piece_ln_sd = 0.25;    ///< of a piece of 1.5 m; of a shorter one more, as 1/√length
  double piece_m = 1.5;
  /// ln of the time over the expected, with sd: a stone is pushed or broken, soft ground and a void let the tool
  /// through, without grip it hammers on the spot.
  double stone_ln = 1.10, stone_ln_sd = 0.50, soft_ln = -0.69, soft_ln_sd = 0.35;
  double hollow_ln = -1.79, hollow_ln_sd = 0.50, grip_ln = 1.61, grip_ln_sd = 0.60;
  double stone_least_1_m = 0.005, soft_1_m = 0.02, hollow_1_m = 0.003;  ///< how many a metre
  double grip_poor = 0.30, grip_scant = 0.05, grip_good = 0.01;  ///< chance of losing it at grip < 1, < 1.5, above
};

/// The factor of this bore is normal about 0 in ln; each piece sharpens it by as much as it is likely to be one like
/// those before it. A piece is weighed against stone, soft pocket, void and lost grip by Bayes' rule.
/// Evidence: DayRate.*
RateAnswer rate_answer(const Ground& ground, const Tool& tool, const BorePath& path, const Advance& advance,
                       const AdvanceAsk& ask, const Timeline& timeline, const RateConstants& constants = {});

}  // namespace burrow
