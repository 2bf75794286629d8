#pragma once
/// A part of a crossing that can be picked or dragged on the drawing, or named where its values are typed.

#include <string>
#include <vector>

#include "burrow/crossing/crossing.h"
#include "burrow/crossing/locks.h"

namespace burrow {

enum class ItemKind {
  none,
  launch,
  exit,
  grade,
  bore,  ///< launch and exit together
  utility,
  test_holes,
  utility_search,
  ground,
  stratum,
  water,
  surface,
  pits,
  pit_edge,
  pipe,
  tool,
  model,
  site,
  air,
  practice,     ///< the practice bore
  around,       ///< a boundary, tree, machine or trench
  limit,        ///< one limit, by its id
  sheet,        ///< what stands on the paper
  head_located  ///< how the head is located while it runs
};

/// An edge of a pit that a drag takes hold of: `ItemRef::index` of a `pit_edge`, whose id is "launch" or "exit".
/// `back` is the end away from the bore.
enum class PitEdge { floor_back, floor_level, floor_left, floor_right, top_bore, top_back, top_left, top_right };
/// From this index on a pit edge is a corner of its floor: this + its number.
inline constexpr int first_floor_corner = 100;

/// An edge of a thing on top: `ItemRef::index` of a `surface`. From this index on it is a corner of its outline.
enum class SurfaceEdge { from, to };
inline constexpr int first_outline_corner = 100;

/// Which part: `id` for elements of lists, `index` for one vertex of a line (−1: the whole).
struct ItemRef {
  ItemKind kind = ItemKind::none;
  std::string id;
  int index = -1;
  bool operator==(const ItemRef&) const = default;
  [[nodiscard]] bool none() const { return kind == ItemKind::none; }
};

/// Whether a lock of the file keeps this part from dragging and searching (never from typing).
/// A lock on a member ("/bore/launch/elevation_m") is answered per member by `member_locked`.
bool part_locked(const Crossing& crossing, const ItemRef& part);

/// Whether the crossing still holds the part.
bool exists_in(const Crossing& crossing, const ItemRef& part);

/// Where a part is locked as a whole, as JSON pointers; empty: it cannot be.
std::vector<std::string> lock_places(const Crossing& crossing, const ItemRef& part);

/// Surveyed facts, which a drag moves only once they are selected.
bool is_surveyed(const ItemRef& part);

/// What a person calls the part: "launch pit", "gas main", "ground line".
std::string part_name(const Crossing& crossing, const ItemRef& part);

/// The subject of findings about this part ("u1", "launch-pit"), empty if there is none.
std::string part_subject(const ItemRef& part);

}  // namespace burrow
