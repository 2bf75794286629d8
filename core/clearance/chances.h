#pragma once
/// Chance of contact of one utility with the bore: at the nearest place, and along a run beside it.

#include <algorithm>
#include <limits>
#include <optional>
#include <vector>

#include "burrow/clearance/clearance.h"
#include "burrow/clearance/test_holes.h"
#include "station.h"

namespace burrow::clearance {

struct LocationError {
  double lateral_m = 0, vertical_m = 0;
  [[nodiscard]] double variance_along(const Vector& n, const Vector& across_line) const {
    const double l = lateral_m * dot(n, across_line), v = vertical_m * n.z;
    return l * l + v * v;
  }
};

struct Pair {
  const std::vector<PathVertex>& line;  ///< of the utility
  const BorePath& path;
  const BoreAxis& axis;
  LocationError error;                      ///< as recorded
  const std::vector<PinnedVertex>& pinned;  ///< of the same vertices; empty: the error is the same everywhere
  double radius_m;
  double encroachment_radius_m;

  [[nodiscard]] LocationError error_at(std::size_t segment, double share) const {
    if (pinned.empty()) return error;
    const PinnedVertex& a = pinned[segment];
    const PinnedVertex& b = pinned[std::min(segment + 1, pinned.size() - 1)];
    return {a.lateral_sd_m + share * (b.lateral_sd_m - a.lateral_sd_m),
            a.vertical_sd_m + share * (b.vertical_sd_m - a.vertical_sd_m)};
  }
};

inline Point3 known_point(const PathVertex& v) {
  return {v.x_m, v.y_m, v.z_m.value_or(0)};
}

struct Chances {
  double contact = 0, worst = 0, encroachment = 0;
};
inline Chances larger(const Chances& a, const Chances& b) {
  return {std::max(a.contact, b.contact), std::max(a.worst, b.worst), std::max(a.encroachment, b.encroachment)};
}

/// How far the utility reaches on both sides of its nearest point, as seen along the bore in the direction of one of
/// its segments, and what the bore finds there.
struct Reach {
  Vector line;  ///< of the segment, not of length 1
  double behind_m = 0, ahead_m = 0;
};
Reach reach_at(const Pair& pair, const Station& station, const Approach& near, std::size_t segment);
/// The other segment that is as near, where the nearest point is a vertex.
std::optional<std::size_t> other_segment(const Pair& pair, const Approach& near);

/// The stadium at the nearest place; at a vertex two segments are equally near and the larger chance counts.
Chances at_nearest(const Pair& pair, const Station& station, const Approach& near);

/// The end section of a run beside the bore that lies fewest standard deviations from it.
struct RunSection {
  bool found = false;
  double gap_low_m = std::numeric_limits<double>::infinity();
  GapLow low_at;
  Station station;
  Vector gap, across_line;
  LocationError error;
};
RunSection worst_section(const Pair& pair);

/// The chance at that section alone: a circle. `known_worst` as in `worst_stadium_chance`.
Chances at_section(const Pair& pair, const RunSection& section, double known_worst);

}  // namespace burrow::clearance
