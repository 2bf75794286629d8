#pragma once
/// How far the numbers that decide verdicts can be trusted.

#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "burrow/base/source.h"
#include "burrow/tables/tables.h"

namespace burrow {

/// Of one table: how many of its numbers stand under each label, in the order of `all_source_labels`.
struct LabelCounts {
  std::string_view table;  ///< "limits"
  std::array<std::size_t, all_source_labels.size()> by_label{};
};

/// Numbers that a check goes by: limits, owners' rules, excavation rules, pipes, locating, soils, tools. Left out:
/// members of shoring and swell of earth, which are shown and decide nothing.   Evidence: LabelCounts.*
std::vector<LabelCounts> label_counts(const Tables& tables);

}  // namespace burrow
