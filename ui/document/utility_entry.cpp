#include "burrow/document/utility_entry.h"

#include <algorithm>

#include "burrow/tables/quality_level.h"

namespace burrow {

namespace {
constexpr double half_line_m = 4.0;
}

Utility new_utility(const Crossing& crossing, std::string name) {
  Utility utility;
  utility.id = free_id(crossing, "u");
  utility.name = std::move(name);
  const double middle = (crossing.bore.launch.station.m + crossing.bore.exit.station.m) / 2;
  utility.path = {{middle, -half_line_m, std::nullopt}, {middle, half_line_m, std::nullopt}};
  return utility;
}

Utility located_by(Utility utility, LocatedHow how, const Tables& tables) {
  utility.located.how.set(how);
  utility.located.level.reset();
  utility.located.lateral_sd.reset();
  utility.located.vertical_sd.reset();
  const std::string_view level = quality_level_of(how);
  const bool known = std::any_of(tables.locating.begin(), tables.locating.end(),
                                 [&](const LocatingPreset& preset) { return preset.id == level; });
  if (known) utility.located.level = std::string(level);
  return utility;
}

bool may_be_without_error(const Utility& utility) {
  return utility.located.how.entered && *utility.located.how == LocatedHow::exposed;
}

}  // namespace burrow
