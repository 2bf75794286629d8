#pragma once
/// A point of a path between those it was integrated at.

#include "burrow/bore/path.h"

namespace burrow {

/// Every number of a point `share` of the way from one to the next; what is no number is that of the first.
/// Evidence: Day.*, Along.*
PathPoint point_between(const PathPoint& from, const PathPoint& to, double share);

/// The point of a path at an arc length, straight between its points, held at its ends.   Range: a path with points.
/// Evidence: Day.*
PathPoint point_at(const BorePath& path, double s_m);

}  // namespace burrow
