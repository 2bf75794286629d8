#pragma once
/// A part of a crossing that can be picked, dragged, typed and undone as one, and its value.
/// An edit holds a part and the *other* value of it; undo and redo are the same swap.

#include <cstddef>
#include <optional>
#include <string>
#include <variant>

#include "burrow/crossing/crossing.h"
#include "burrow/crossing/locks.h"

namespace burrow {

enum class PartKind {
  none,
  launch,
  exit,
  grade,
  utility,
  utility_and_holes,
  test_holes,
  utility_search,
  ground,
  strips,
  stratum,
  water,
  surface,
  pits,
  pit_edge,
  pipe,
  tool,
  model,
  trials,
  name,
  site,
  air,
  record,        ///< one day's record, by id
  practice,      ///< the practice bore, as JSON text
  head_located,  ///< how the head is located while it runs
  layouts,       ///< the layout in force with the alternatives
  muted          ///< findings muted with a reason
};

/// An edge of a pit that a drag takes hold of: `PartRef::index` of a `pit_edge`, whose id is "launch" or "exit".
/// `back` is the end away from the bore; its value is all of `Crossing::pits`.
enum class PitEdge { floor_back, floor_level, floor_left, floor_right, top_bore, top_back, top_left, top_right };
/// From this index on a pit edge is a corner of its floor: this + its number.
inline constexpr int first_floor_corner = 100;

/// Which part: `id` for elements of lists, `index` for one vertex of a line (−1: the whole).
struct PartRef {
  PartKind kind = PartKind::none;
  std::string id;
  int index = -1;
  bool operator==(const PartRef&) const = default;
  [[nodiscard]] bool none() const { return kind == PartKind::none; }
};

/// An element of a list: empty where the list does not hold it; `at` is its place in the list.
template <class T>
struct Element {
  std::optional<T> value;
  std::size_t at = 0;
  bool operator==(const Element&) const = default;
};

/// A utility together with all test holes of the file: removing one drops the holes that pin it.
struct UtilityAndHoles {
  Element<Utility> utility;
  std::vector<TestHole> holes;
  bool operator==(const UtilityAndHoles&) const = default;
};

/// All that a layout is made of, with the other layouts of the file.
struct Layouts {
  Bore bore;
  std::optional<Pipe> pipe;
  Pits pits;
  Air air;
  std::vector<std::string> locks;
  std::vector<Alternative> alternatives;
  bool operator==(const Layouts&) const = default;
};

using PartValue =
    std::variant<std::monostate, UtilityAndHoles, Launch, Exit, Element<Utility>, LevelLine, std::optional<LevelLine>,
                 Element<Stratum>, Element<SurfaceFeature>, Pits, std::optional<Pipe>, ToolChoice, ModelConstants,
                 TrialsRequest, std::string, std::vector<TestHole>, UtilitySearch, std::vector<Strip>, Site, Air,
                 Element<DayRecord>, Layouts, std::vector<Mute>, Statement>;

/// The part's value as it stands in the crossing.
PartValue take(const Crossing& crossing, const PartRef& part);

/// The crossing with the part set to `value`, which must be of the kind that `take` gives for it.
void put(Crossing& crossing, const PartRef& part, PartValue value);

/// Whether a lock of the file keeps this part from dragging and searching (never from typing).
/// A lock on a member ("/bore/launch/elevation_m") is answered per member by `member_locked`.
bool part_locked(const Crossing& crossing, const PartRef& part);

/// Whether the crossing still holds the part.
bool holds(const Crossing& crossing, const PartRef& part);

/// What a person calls the part: "launch pit", "gas main", "ground line".
std::string part_name(const Crossing& crossing, const PartRef& part);

/// The subject of findings about this part ("u1", "launch-pit"), empty if there is none.
std::string part_subject(const PartRef& part);

}  // namespace burrow
