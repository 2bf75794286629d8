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

enum class ItemKind {
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

/// An edge of a pit that a drag takes hold of: `ItemRef::index` of a `pit_edge`, whose id is "launch" or "exit".
/// `back` is the end away from the bore; its value is all of `Crossing::pits`.
enum class PitEdge { floor_back, floor_level, floor_left, floor_right, top_bore, top_back, top_left, top_right };
/// From this index on a pit edge is a corner of its floor: this + its number.
inline constexpr int first_floor_corner = 100;

/// Which part: `id` for elements of lists, `index` for one vertex of a line (−1: the whole).
struct ItemRef {
  ItemKind kind = ItemKind::none;
  std::string id;
  int index = -1;
  bool operator==(const ItemRef&) const = default;
  [[nodiscard]] bool none() const { return kind == ItemKind::none; }
};

/// An element of a list: empty where the list does not hold it; `at` is its place in the list.
template <class T>
struct ListSlot {
  std::optional<T> value;
  std::size_t at = 0;
  bool operator==(const ListSlot&) const = default;
};

/// A utility together with all test holes of the file: removing one drops the holes that pin it.
struct UtilityAndHoles {
  ListSlot<Utility> utility;
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

using ItemValue =
    std::variant<std::monostate, UtilityAndHoles, Launch, Exit, ListSlot<Utility>, LevelLine, std::optional<LevelLine>,
                 ListSlot<Stratum>, ListSlot<SurfaceFeature>, Pits, std::optional<Pipe>, ToolChoice, ModelConstants,
                 TrialsRequest, std::string, std::vector<TestHole>, UtilitySearch, std::vector<Strip>, Site, Air,
                 ListSlot<DayRecord>, Layouts, std::vector<Mute>, Statement>;

/// The part's value as it stands in the crossing.
ItemValue value_of(const Crossing& crossing, const ItemRef& part);

/// The crossing with the part set to `value`, which must be of the kind that `value_of` gives for it.
void set_value(Crossing& crossing, const ItemRef& part, ItemValue value);

/// Whether a lock of the file keeps this part from dragging and searching (never from typing).
/// A lock on a member ("/bore/launch/elevation_m") is answered per member by `member_locked`.
bool part_locked(const Crossing& crossing, const ItemRef& part);

/// Whether the crossing still holds the part.
bool exists_in(const Crossing& crossing, const ItemRef& part);

/// What a person calls the part: "launch pit", "gas main", "ground line".
std::string part_name(const Crossing& crossing, const ItemRef& part);

/// The subject of findings about this part ("u1", "launch-pit"), empty if there is none.
std::string part_subject(const ItemRef& part);

}  // namespace burrow
