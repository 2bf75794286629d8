#pragma once
/// Sums over the steering constant at the followed bores alone, where a lower bound is all that is asked for.

#include "burrow/bore/path_fans.h"

namespace burrow {

/// As `fan_chance_between`, with straight pieces from node to node; `from` and `to` are multiples of `fan_finer`, only
/// nodes need to be filled in.   Source: our model (numerical).   Evidence: PathFans.Nodes_NearTheFineSum
double fan_chance_at_nodes(const FanPoints& low, const FanPoints& high, const FanPoints* share, std::size_t from,
                           std::size_t to);

}  // namespace burrow
