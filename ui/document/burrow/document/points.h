#pragma once
/// Points of lines: one more, one less.

#include <optional>
#include <string>

#include "burrow/base/result.h"
#include "burrow/crossing/crossing.h"
#include "burrow/document/item.h"

namespace burrow {

/// The crossing without that point, bend or corner. What was declared of an end that goes is gone with it. Error: why
/// it stays, to be told.   Evidence: Points.Removed_*
Result<Crossing> without_point(const Crossing& crossing, const ItemRef& point);

struct WithPoint {
  Crossing crossing;
  ItemRef point;  ///< the new one
};

/// One more point on a line of the ground at that station, where the line is: its course stays. `line.index` is not
/// asked. Empty: no such line, or a point is there already.   Evidence: Points.Added_*
std::optional<WithPoint> with_level_point(const Crossing& crossing, const ItemRef& line, double station_m);

/// One more bend of a utility, or corner of an outline or boundary, at the nearest place of the line. The depth of a
/// bend between two known ones lies between theirs, else it is not known.   Evidence: Points.Added_*
std::optional<WithPoint> with_plan_point(const Crossing& crossing, const ItemRef& line, const PlanPoint& near);

}  // namespace burrow
