#pragma once
/// Which of two launches is better, and which limits give way together.

#include <optional>
#include <string>

#include "burrow/search/launch_map.h"

namespace burrow::launch {

/// The least chance of a clean bore that a launch must have to be recommended; empty: any.
using LeastClean = std::optional<double>;

/// By what the map recommends: arrival, that chance, verdict, margin.   Evidence: LaunchMap.*
bool better(const LaunchCell& a, const LaunchCell& b, const LeastClean& least);

/// What gives way together: the limits about one utility, else the limit alone.   Evidence: LaunchMap.*
std::string unit_of(const Finding& limit);

}  // namespace burrow::launch
