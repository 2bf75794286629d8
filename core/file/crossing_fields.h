#pragma once
/// The description of the file: one `fields(io, item)` for each thing of the crossing, in file order, that serves the
/// reader, the writer and the JSON Schema alike. Bodies stand in fields_<subject>.cpp, each instantiated there for all
/// three.
///
/// What an `io` offers:
///   field(key, value, range)   a number with its unit, a whole number, a yes/no, a word of a list, a text.
///                              Plain: absent keeps the default. Given: absent or entered. optional: absent or null.
///   required(key, value, …)    the same, but it must stand there
///   name(key, text, table)     a name that a table must know
///   object(key, thing)         a nested thing; an empty one is not written
///   list(key, things)          a list of things
///   line(key, points)          lists of points: level lines, outlines, paths, points in space
///   unknown_keys(list)         what `extra` met that looks like a known key; last of all
///   texts(key, list) · raw(key, json text) · limits(key, map) · id(text, prefix) · extra(text, last of all)

#include <concepts>
#include <string_view>
#include <type_traits>

#include "burrow/crossing/crossing.h"
#include "field_ranges.h"

namespace burrow {

/// `V` is T to a reader and const T to a writer.
template <class V, class T>
concept Is = std::same_as<std::remove_const_t<V>, T>;

/// Which table knows a name.
enum class NameOf { soil, tool, pipe, rule, locating };

/// A choice with its words.
template <class T>
concept Worded = std::is_enum_v<T>;

/// A one-field SI struct.
template <class T>
concept Quantity = std::is_aggregate_v<T> && sizeof(T) == sizeof(double) && requires(T t) {
  { t <=> t } -> std::same_as<std::partial_ordering>;
};

template <Quantity Q>
double& number_in(Q& quantity) {
  auto& [number] = quantity;
  return number;
}
template <Quantity Q>
double number_in(const Q& quantity) {
  const auto& [number] = quantity;
  return number;
}

// A point is a tuple of numbers: coordinates(io, point) names them with their ranges.
template <class Io, Is<LevelPoint> P>
void coordinates(Io& io, P& p) {
  io.coordinate(p.station_m, range::station);
  io.coordinate(p.elevation_m, range::elevation);
}
template <class Io, Is<PlanPoint> P>
void coordinates(Io& io, P& p) {
  io.coordinate(p.x_m, range::station);
  io.coordinate(p.y_m, range::offset);
}
template <class Io, Is<Point3> P>
void coordinates(Io& io, P& p) {
  io.coordinate(p.x_m, range::station);
  io.coordinate(p.y_m, range::offset);
  io.coordinate(p.z_m, range::elevation);
}
template <class Io, Is<PathVertex> P>
void coordinates(Io& io, P& p) {
  io.coordinate(p.x_m, range::station);
  io.coordinate(p.y_m, range::offset);
  io.coordinate(p.z_m, range::elevation);
}

// NOLINTBEGIN(bugprone-macro-parentheses): a type cannot stand in parentheses
#define BURROW_FIELDS_OF(Item)                                  \
  template <class Io, Is<Item> V>                               \
  void fields(Io& io, V& item);                                 \
  constexpr std::string_view thing_name(const Item& /*item*/) { \
    return #Item;                                               \
  }
BURROW_FIELDS_OF(Crossing)
BURROW_FIELDS_OF(Mute)
BURROW_FIELDS_OF(Alternative)
BURROW_FIELDS_OF(SheetSettings)
BURROW_FIELDS_OF(Site)
BURROW_FIELDS_OF(SoilOverrides)
BURROW_FIELDS_OF(Stratum)
BURROW_FIELDS_OF(Strip)
BURROW_FIELDS_OF(LevelPeg)
BURROW_FIELDS_OF(LevelRecord)
BURROW_FIELDS_OF(Statement)
BURROW_FIELDS_OF(StuckPlan)
BURROW_FIELDS_OF(SurfaceFeature)
BURROW_FIELDS_OF(Boundary)
BURROW_FIELDS_OF(Tree)
BURROW_FIELDS_OF(Plant)
BURROW_FIELDS_OF(Background)
BURROW_FIELDS_OF(Georeference)
BURROW_FIELDS_OF(LineEnds)
BURROW_FIELDS_OF(Utility)
BURROW_FIELDS_OF(AgreedGap)
BURROW_FIELDS_OF(Recorded)
BURROW_FIELDS_OF(Located)
BURROW_FIELDS_OF(TestHole)
BURROW_FIELDS_OF(CameraSurvey)
BURROW_FIELDS_OF(UtilitySearch)
BURROW_FIELDS_OF(Bore)
BURROW_FIELDS_OF(ToolChoice)
BURROW_FIELDS_OF(Launch)
BURROW_FIELDS_OF(Exit)
BURROW_FIELDS_OF(TrialsRequest)
BURROW_FIELDS_OF(ModelConstants)
BURROW_FIELDS_OF(Pipe)
BURROW_FIELDS_OF(Pits)
BURROW_FIELDS_OF(Pit)
BURROW_FIELDS_OF(PitSigns)
BURROW_FIELDS_OF(RatedShield)
BURROW_FIELDS_OF(PitSides)
BURROW_FIELDS_OF(PitSide)
BURROW_FIELDS_OF(Bench)
BURROW_FIELDS_OF(Spoil)
BURROW_FIELDS_OF(Ladder)
BURROW_FIELDS_OF(Air)
BURROW_FIELDS_OF(Compressor)
BURROW_FIELDS_OF(AirPart)
BURROW_FIELDS_OF(Oil)
BURROW_FIELDS_OF(Permit)
BURROW_FIELDS_OF(OwnerContact)
BURROW_FIELDS_OF(DailyCheck)
BURROW_FIELDS_OF(GoSigned)
BURROW_FIELDS_OF(DayRecord)
BURROW_FIELDS_OF(KeptLayout)
BURROW_FIELDS_OF(TakenOnFinding)
BURROW_FIELDS_OF(TakenOn)
BURROW_FIELDS_OF(PullIn)
BURROW_FIELDS_OF(RecordPhoto)
BURROW_FIELDS_OF(Aftermath)
BURROW_FIELDS_OF(Reading)
#undef BURROW_FIELDS_OF

/// Instantiates the description of one thing for reader, writer and schema; stands at the end of a
/// fields_<subject>.cpp.
#define BURROW_FIELDS_BOTH_WAYS(Item)                                      \
  template void fields<Reader, Item>(Reader & io, Item & item);            \
  template void fields<Writer, const Item>(Writer & io, const Item& item); \
  template void fields<Describer, const Item>(Describer & io, const Item& item);
// NOLINTEND(bugprone-macro-parentheses)

}  // namespace burrow
