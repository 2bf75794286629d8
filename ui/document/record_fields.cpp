#include "burrow/document/record_fields.h"

#include "burrow/crossing/find.h"
#include "number_field.h"

namespace burrow {

std::vector<Field> pull_in_fields(const Crossing& crossing, const std::string& record) {
  if (!find_by_id(crossing.record, record)) return {};
  const auto pull_in = [record](auto& c) {
    auto* found = find_by_id(c.record, record);
    return found ? &found->aftermath.pull_in : nullptr;
  };
  constexpr double most_N = 1e9;
  return {number_field(crossing, "most pull that was read", Dimension::force, {0, most_N}, pull_in, &PullIn::peak),
          number_field(crossing, "rating of the link that breaks first", Dimension::force, {0, most_N}, pull_in,
                       &PullIn::link_rating)};
}

}  // namespace burrow
