#pragma once
/// The answer the other way round: at which launches of a crossing does everything hold?

#include <cstdint>
#include <functional>
#include <optional>
#include <stop_token>
#include <vector>

#include "burrow/check/assessment.h"
#include "burrow/crossing/crossing.h"
#include "burrow/tables/tables.h"

namespace burrow {

/// What a map is drawn over. Level and grade stay as they are where station and offset change.
enum class MapOver { depth_and_grade, station_and_offset };
template <>
struct EnumNames<MapOver> {
  static constexpr std::pair<MapOver, std::string_view> list[] = {{MapOver::depth_and_grade, "depth-and-grade"},
                                                                  {MapOver::station_and_offset, "station-and-offset"}};
};

/// Values along one side of a map, both ends among them. A locked one has its value alone.
struct MapAxis {
  double from = 0, to = 0;
  int count = 1;
  bool locked = false;
  [[nodiscard]] double at(int i) const;
  [[nodiscard]] double step() const { return count > 1 ? (to - from) / (count - 1) : 0; }
  bool operator==(const MapAxis&) const = default;
};

/// A launch of the map: `across` is the grade or the station, `down` the depth of the axis below the ground at the
/// launch face or the offset.
struct MapPlace {
  double across = 0, down = 0;
  bool operator==(const MapPlace&) const = default;
};

/// How a launch does. What is missing and what is the same at every launch of the map count in `assessed` alone.
struct LaunchCell {
  MapPlace place;
  /// `stop`, `caution` or `within_limits`; never `incomplete`.
  Verdict verdict = Verdict::within_limits;
  /// What `assess()` says of the crossing with this launch: the one verdict that is shown.
  Verdict assessed = Verdict::incomplete;
  int missing = 0;      ///< data that were not entered, of those asked for at this launch
  bool arrives = true;  ///< the mean path ends at the exit face
  /// Least margin: of the limits whose breach is a stop where one of them is broken, else of all of them. What holds or
  /// does not hold, without a measure, counts as −1 where it is a stop. Bounded to ±1; −1 where the path does not
  /// arrive.
  double margin = 0;
  int binds = -1;  ///< number in `LaunchMap::limits` of the limit with that margin; −1: none was judged
  std::optional<double> measured, limit, limit_base;  ///< of that limit here
  int also = -1;  ///< number of a caution broken here that has no measure ("not exposed"); −1: none
  /// Chance to arrive in the exit pit and to touch nothing: the two taken as independent.
  std::optional<double> chance_clean;
  double earth_m3 = 0;     ///< dug for both pits, in the bank
  double pit_depth_m = 0;  ///< of the deeper pit
  double length_m = 0;     ///< of the path
  bool operator==(const LaunchCell&) const = default;
};

enum class MapSide { across_from, across_to, down_from, down_to };
template <>
struct EnumNames<MapSide> {
  static constexpr std::pair<MapSide, std::string_view> list[] = {{MapSide::across_from, "across-from"},
                                                                  {MapSide::across_to, "across-to"},
                                                                  {MapSide::down_from, "down-from"},
                                                                  {MapSide::down_to, "down-to"}};
};

/// A side of the map on which the best launch lies: a better one may lie beyond.
struct MapEdge {
  MapSide side = MapSide::across_from;
  bool last = false;  ///< the search goes no further on that side
  bool operator==(const MapEdge&) const = default;
};

/// A launch that would do if these limits gave way and all others are kept.
struct Relaxation {
  std::vector<Finding> limits;  ///< each with measured value and limit there
  double worst_margin = 0;      ///< least of theirs, bounded to −1
  MapPlace place;
  bool operator==(const Relaxation&) const = default;
};

struct LaunchMap {
  MapOver over = MapOver::depth_and_grade;
  MapAxis across, down;
  std::vector<LaunchCell> cells;    ///< row by row from `down.from`; empty where the search was cancelled
  std::vector<Finding> limits;      ///< those that bind somewhere: code, subject, name, severity, unit, sense
  std::vector<Finding> everywhere;  ///< broken alike at every launch, stops first
  std::vector<Finding> missing;     ///< data that were not entered, once each
  LaunchCell here;                  ///< the launch as it stands
  std::optional<LaunchCell> best;   ///< the best of all, whether it works or not
  /// The best by the limits alone, where it differs: with less chance of a clean bore than the launch as it stands.
  std::optional<LaunchCell> best_by_limits;
  std::vector<MapEdge> edges;  ///< of the map that the best launch lies on
  int widened = 0;             ///< how often the map was made wider, since the best launch lay on its edge
  /// Whether any launch breaks no limit that is a stop.
  bool works = false;
  std::vector<Relaxation> relaxations;  ///< where none works, the smallest first
  std::int64_t judged = 0;              ///< launches
  bool cancelled = false;
  [[nodiscard]] const LaunchCell& cell(int across_i, int down_i) const;
  bool operator==(const LaunchMap&) const = default;
};

struct LaunchMapOptions {
  MapOver over = MapOver::depth_and_grade;
  int cells = 64;        ///< along each side
  bool refine = true;    ///< follow best launch and relaxations between the cells
  unsigned threads = 0;  ///< 0: as many as there are cores
};

/// The sides of the map: grades of ±10 % or to 2 % beyond the present one; depths from cover of two diameters to the
/// deepest of 3 m, a metre below the present launch and a metre below the deepest utility under the bore, at most to
/// where a pit needs an engineer; stations and offsets 3 m either way, a metre short of the exit.
/// Source: our default.   Evidence: MapAxes.*
std::pair<MapAxis, MapAxis> map_axes(const Crossing& crossing, const Tables& tables, const LaunchMapOptions& options);

/// How far the sides may be moved out: grades of ±30 %, cover of two diameters, the depth at which a pit needs an
/// engineer, the longest bore of all and the end of the ground line, 12 m to either side; not nearer to the exit than
/// the map is at first, since the shorter bore always looks better. The launch as it stands is always within.
/// Source: our default.   Evidence: MapEdges.*
std::pair<MapAxis, MapAxis> map_bounds(const Crossing& crossing, const Tables& tables, MapOver over);

/// Chances are shown to a tenth of a per cent.
constexpr double half_shown_chance = 0.0005;

/// The launch of a place, all else as it is.
Launch launch_at(const Crossing& crossing, MapOver over, const MapPlace& place);
/// Where a launch lies on the map.
MapPlace place_of(const Crossing& crossing, MapOver over);

/// A limit's margin is (limit − value)/limit with the sign of its sense, as everywhere; only the chance to arrive in
/// the exit pit counts by its complement, (P − limit)/(1 − limit), since by itself it never gets further than a ninth
/// above 90 %. Judges a launch for each cell, finds the best one, and where none works the smallest relaxations. The
/// same answer at any number of threads. Best: what arrives; then no less chance of a clean bore than the launch as it
/// stands, where that arrives (a difference too small to be shown gives way to a better verdict); then the verdict of
/// `assess()`, within limits before caution before incomplete before stop; then no stop before no caution; then the
/// greater least margin. Of those within 0.001 of it the least earth dug for both pits, then the shallower pits, then
/// the shorter bore. Where a stop is missed by all of it the greater chance of a clean bore takes the margin's place.
/// The best launch and the one as it stands are judged as `assess()` does, without tables. Where the best lies on the
/// edge of the map, the map is made wider on that side, at most three times and not beyond `map_bounds`; then
/// `progress` starts again. Source: help page Method.   Range: as `assess`, the exit at least a metre beyond the
/// launch. Evidence: LaunchMap.*, BestLaunch.*, Relaxations.*, LaunchStory.*, MapEdges.*
LaunchMap search_launches(const Crossing& crossing, const Tables& tables, const LaunchMapOptions& options = {},
                          const std::stop_token& stop = {}, const std::function<void(double)>& progress = {});

}  // namespace burrow
