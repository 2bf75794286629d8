#pragma once
/// Files that are laid into the local frame become things of the site. Private to this room.

#include "placed_plan.h"

namespace burrow {

std::string short_name(const std::string& path);

Result<Imported> import_plan(const PlacedPlan& plan, const ImportBounds& bounds,
                             const std::function<bool(double)>& progress);

}  // namespace burrow
