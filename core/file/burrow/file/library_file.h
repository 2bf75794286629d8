#pragma once
/// The user's own library of what was learnt from records: JSON, UTF-8, keys that carry their unit.

#include <string>
#include <string_view>

#include "burrow/base/result.h"
#include "burrow/day/learn.h"
#include "burrow/tables/tables.h"

namespace burrow {

/// `{"format":"burrowline-library","version":1,"soils":[{"soil":"firm-clay","bores":12,"timed_bores":9,
///   "steer_constant":{"likeliest":…,"low":…,"high":…,"ln_mean":…,"ln_sd":…},"wander_rad_sqrt_m":{…},
///   "field_factor":{…},"refusals":1,"bored_m":230,
///   "refusal_rate":{"mean_1_m":…,"low_1_m":…,"high_1_m":…,"shape":…,"length_m":…}}]}`; low and high hold nine in ten.
/// Beside it "records":[…], the names of the bores whose path was read. These four may be absent: nothing is known of
/// the rate then, and without names the constants do not pass for calibrated. Unknown keys of the whole are kept.
/// Errors: as `read_crossing`; another format, a newer version, a soil twice, an interval the wrong way round, more
/// metres bored than the rate is from.
/// Evidence: LibraryFile.*
Result<LearnLibrary> read_library(std::string_view json_text, const Tables& tables);
std::string write_library(const LearnLibrary& library);

}  // namespace burrow
