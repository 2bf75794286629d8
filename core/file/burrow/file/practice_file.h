#pragma once
/// The member `practice` of a `.crossing` file: a practice bore with its hidden truth and the class table.

#include <string>
#include <string_view>

#include "burrow/base/result.h"
#include "burrow/practice/practice.h"
#include "burrow/tables/tables.h"

namespace burrow {

/// `{"title":…,"aim":…,"question":…,"sonde":true,"truth":{"seed":1,"level_error_rad":…,"aim_error_rad":…,
///   "start_up_m":…,"start_left_m":…,"steer_constant":0.04,"field_factor":0.3,"wander":true,"soil_stones":true,
///   "soils":[{"stratum":"l1","soil":"soft-clay"}],"trenches":[as strips of the site],
///   "stones":[{"nose_m":…,"up_rad":…,"left_rad":…}],"services":[{"utility":"u1","across_m":0.3,"up_m":0}]},
///  "results":[{"name":…,"end":"arrived","miss_left_m":…,"miss_up_m":…,"right":5,"decisions":6}]}`
/// Errors: as `read_crossing`; the place is a pointer within it.   Evidence: PracticeFile.*
Result<Practice> read_practice(std::string_view json_text, const Tables& tables);
/// On one line; the same practice gives the same bytes.
std::string write_practice(const Practice& practice);

}  // namespace burrow
