#pragma once
/// What `assess()` answers: a plain value; the JSON of `check --json` follows it member by member.
/// SI throughout; an empty optional is "unknown" (null in JSON), never 0.

#include <optional>
#include <string>
#include <vector>

#include "burrow/air/moisture.h"
#include "burrow/air/oil.h"
#include "burrow/air/supply.h"
#include "burrow/base/date.h"
#include "burrow/base/enum_names.h"
#include "burrow/base/finding.h"
#include "burrow/base/geometry.h"
#include "burrow/base/quantity_text.h"
#include "burrow/base/working.h"
#include "burrow/bore/advance.h"
#include "burrow/bore/guessed_ground.h"
#include "burrow/bore/neutral_cover.h"
#include "burrow/bore/path.h"
#include "burrow/check/pit_answer.h"
#include "burrow/clearance/test_holes.h"
#include "burrow/pit/ground_surface.h"
#include "burrow/pit/shape.h"

namespace burrow {

enum class Verdict { within_limits, caution, stop, incomplete };
template <>
struct EnumNames<Verdict> {
  static constexpr std::pair<Verdict, std::string_view> list[] = {{Verdict::within_limits, "within-limits"},
                                                                  {Verdict::caution, "caution"},
                                                                  {Verdict::stop, "stop"},
                                                                  {Verdict::incomplete, "incomplete"}};
};

struct Arrival {
  std::optional<double> offset_m, elevation_m, sd_lateral_m, sd_vertical_m, chance_inside_exit_pit;
  bool operator==(const Arrival&) const = default;
};

struct Quantiles {
  std::optional<double> p10, p50, p90;
  bool operator==(const Quantiles&) const = default;
};

struct CoverAnswer {
  std::optional<double> least_m;      ///< on the mean path
  std::optional<double> least_low_m;  ///< on path + 1.645 sd
  std::optional<double> station_m;
  std::optional<double> required_m;
  std::optional<double> chance_below;  ///< that it falls below `required_m` somewhere
  bool operator==(const CoverAnswer&) const = default;
};

/// `mixed`: summed over the steering constant; `bound`: a lower bound.
enum class ContactBy { normal, bound, mixed };
template <>
struct EnumNames<ContactBy> {
  static constexpr std::pair<ContactBy, std::string_view> list[] = {
      {ContactBy::normal, "normal"}, {ContactBy::bound, "bound"}, {ContactBy::mixed, "mixed"}};
};

struct UtilityAnswer {
  std::string id, name;
  std::optional<double> separation_m, gap_low_m, station_m, offset_m, elevation_m, angle_rad, required_m;
  std::optional<double> contact_chance, contact_chance_worst, encroachment_chance;
  std::optional<double> lateral_sd_m, vertical_sd_m;  ///< of its place where the bore passes; test holes count
  ContactBy by = ContactBy::normal;
  std::optional<double> ground_movement_m;  ///< of the ground at its axis
  std::optional<double> strain;             ///< if it follows the ground; bending alone where joints take the stretch
  std::optional<double> vibration_m_s;      ///< the greater of the two forms
  bool near = false;                        ///< within 5 m of bore or pits in plan: questions are asked about it
  bool expose = false;
  /// Of those worth exposing: 1 is the first. What a test hole where the bore passes would buy: the chance that the
  /// crew goes on with this layout after it, and that they go on and yet touch it.
  std::optional<double> expose_rank, chance_to_go_on, chance_after_hole;
  std::optional<double> required_after_hole_m;                ///< clear gap wanted once it is exposed there
  std::optional<double> hole_station_m, hole_offset_m;        ///< where to dig
  std::optional<double> hole_depth_low_m, hole_depth_high_m;  ///< of its crown below ground, nine in ten between
  std::vector<PinnedVertex> believed;  ///< its line by its test holes, for the drawing; empty: as recorded
  /// Nearest points on the two axes, for the drawing.
  std::optional<Point3> on_bore, on_utility;
  bool operator==(const UtilityAnswer&) const = default;
};

struct SurfaceAnswer {
  std::optional<double> heave_m, heave_high_m, station_m, limit_m;
  std::optional<double> settlement_m;            ///< later, beside the pipe; unknown without its diameter
  std::optional<double> settlement_abandoned_m;  ///< later, if the hole is given up without filling it
  std::optional<double> grout_annulus_m3, grout_hole_m3;
  bool operator==(const SurfaceAnswer&) const = default;
};

/// Rise of the surface above the bore at one station.
struct HeavePoint {
  double station_m = 0;
  double offset_m = 0;
  double depth_m = 0;  ///< of the axis
  double low_m = 0;
  double high_m = 0;
  bool operator==(const HeavePoint&) const = default;
};

/// A building, footing or wall: what the blows and the hole do to it.
struct StructureAnswer {
  std::string id, name;
  std::optional<double> distance_m, station_m;  ///< nearest to the bore's axis, on the slope
  std::optional<double> vibration_m_s;          ///< the greater of the two that follow
  std::optional<double> vibration_percussive_m_s, vibration_distance_m_s;
  std::optional<double> vibration_limit_m_s;
  std::optional<double> spread_gap_m;         ///< wall of the hole to the spread of its load, negative within
  std::optional<double> spread_gap_wanted_m;  ///< three standard deviations there
  bool operator==(const StructureAnswer&) const = default;
};

/// What lies above a stretch of the bore, and so whether a stuck tool could be dug out there.
enum class AboveBore { diggable, carriageway, track, building };
template <>
struct EnumNames<AboveBore> {
  static constexpr std::pair<AboveBore, std::string_view> list[] = {{AboveBore::diggable, "diggable"},
                                                                    {AboveBore::carriageway, "carriageway"},
                                                                    {AboveBore::track, "track"},
                                                                    {AboveBore::building, "building"}};
};

struct StopStretch {
  double from_m = 0, to_m = 0;  ///< stations
  AboveBore above = AboveBore::diggable;
  std::string id;     ///< of the thing on top, empty where one may dig
  double chance = 0;  ///< that the ground stops the tool within it, out of all bores
  bool operator==(const StopStretch&) const = default;
};

/// Where an owner's rule lets neither bore nor pit be.
struct RuleZone {
  std::string id;                       ///< of the road, track or ditch
  double from_m = 0, to_m = 0;          ///< its stations
  std::optional<double> cover_m;        ///< wanted over the crown of the hole
  std::optional<double> pit_setback_m;  ///< wanted from its edges to the face of a pit
  bool operator==(const RuleZone&) const = default;
};

/// One check of the pipe. A value without a limit is told, not judged; a check without a value could not be done, and
/// `text` says what is not known. `name` is English, as marked in the source.
struct PipeCheck {
  std::string name;
  std::optional<double> value, limit;
  std::string unit;
  std::optional<double> station_m;
  std::string code{};                   ///< of its finding and its working, "pipe.deflection"
  std::optional<double> utilisation{};  ///< 1: on the limit
  bool at_least = false;                ///< sense of the limit
  Source source{};                      ///< of the limit, else of the value
  Phrase text{};                        ///< what goes with it, or what is not known
  bool operator==(const PipeCheck&) const = default;
};

/// What presses on the crown of the pipe at a station. Unknown live load: nobody said what stands there.
struct LoadPoint {
  double station_m = 0, depth_m = 0;  ///< of the crown of the hole
  double earth_Pa = 0;                ///< the whole weight above
  double earth_arched_Pa = 0;         ///< as the hole lets it arch
  double live_Pa = 0;                 ///< traffic, track or machines, dynamic part included
  double water_Pa = 0;                ///< at the axis
  std::string live;                   ///< id of what stands above, empty: nothing
  bool operator==(const LoadPoint&) const = default;
};

struct AirAnswer {
  std::optional<double> pressure_at_tool_Pa, free_air_m3_s;
  std::optional<double> standing_Pa;  ///< at the tool when it stalls and no air flows
  std::optional<AirSupply> supply;    ///< empty: see `not_judged`
  std::string_view not_entered;       ///< "no-compressor", "no-hose"
  Phrase not_judged;  ///< what is not entered or outside the method: "compressor", "hose", "roughness" …
  std::optional<double> loss_harris_Pa;           ///< of the line at the same flow, by the older formula
  std::optional<double> pressure_worked_with_Pa;  ///< at the tool: what advance and vibration are computed with
  bool pressure_typed = false;                    ///< it stands on the tool's plate as entered, and wins
  std::optional<AirWater> water;                  ///< without a known humidity the air is taken as saturated
  OilPlan oil;                                    ///< for the time that half of all bores and nine in ten take
  bool operator==(const AirAnswer&) const = default;
};

struct MarkNear {
  std::string id;
  std::optional<double>
      above_m;  ///< axis of the utility over that of the bore; negative: below; empty: depth not known
  std::string name;
  std::optional<double> gap_m;  ///< least clear gap, 95 % one-sided
  double ahead_m = 0;           ///< of the nose along the bore, where it comes nearest; negative: passed
  bool expose = false;          ///< not exposed, and the band may meet it
  /// Clear of the hole on the mean path, outside to outside, as the verdict says it; empty: not known.
  std::optional<double> clear_m{};
  bool operator==(const MarkNear&) const = default;
};

/// What the crew does with the nose between this mark and the next.
enum class MarkTask { check_alignment, stop_until_exposed, slow_down, look, listen, check_heave, prepare_arrival };
template <>
struct EnumNames<MarkTask> {
  static constexpr std::pair<MarkTask, std::string_view> list[] = {{MarkTask::check_alignment, "check-alignment"},
                                                                   {MarkTask::stop_until_exposed, "stop-until-exposed"},
                                                                   {MarkTask::slow_down, "slow-down"},
                                                                   {MarkTask::look, "look"},
                                                                   {MarkTask::listen, "listen"},
                                                                   {MarkTask::check_heave, "check-heave"},
                                                                   {MarkTask::prepare_arrival, "prepare-arrival"}};
};

/// A line of the run sheet. `hose_m` is empty where no mark of the hose stands at the face: the tool just in the
/// ground, or an arrival before the hose follows.
struct Mark {
  std::optional<double> hose_m, nose_m, station_m, depth_m, depth_low_m, depth_high_m;
  Quantiles time_s;
  std::vector<MarkNear> near;
  std::optional<double> offset_m, elevation_m;  ///< of the nose
  std::vector<MarkTask> tasks;                  ///< in the order of the words above
  std::vector<std::string> under;  ///< ids of roads, tracks, drives, footways above the nose until the next mark
  bool operator==(const Mark&) const = default;
};

/// A limit in force that is less strict than the table's or the owner's rule.
struct LoosenedLimit {
  std::string id;       ///< of the table, or "required_cover_m", "heave_limit_m" where it was typed on a thing on top
  std::string subject;  ///< that thing's id, else empty
  Phrase name;          ///< what a person calls it: "cover in tool diameters"
  double value = 0, table_value = 0;
  std::string unit;  ///< SI unit of both
  Phrase why;
  bool operator==(const LoosenedLimit&) const = default;
};

struct Assessment {
  Verdict verdict = Verdict::incomplete;
  std::optional<Date> judged_on;  ///< the day for which it holds
  BorePath bore;
  Arrival arrival;
  std::optional<double> neutral_cover_m, neutral_station_m;  ///< where the bore is nearest to it, or furthest above it
  std::optional<double> chance_of_refusal, refusal_station_m;
  std::optional<double> chance_of_daylight;  ///< of coming out of the ground before the exit face, nothing stopping it
  bool refusal_calibrated = false;           ///< the rates behind that chance are from records, not from the table
  Quantiles advance_time_s;
  Advance advance;                         ///< without points where there is no path
  std::vector<StopStretch> stops;          ///< from launch to the end of the path, in order
  std::vector<GuessEffect> guesses;        ///< what strata that nobody has seen do to the band
  double chance_to_reach = 1;              ///< that no such stratum ends the path before the exit
  std::vector<NeutralPoint> neutral_line;  ///< along the bore, for the drawing
  CoverAnswer cover;
  std::vector<UtilityAnswer> utilities;
  std::optional<double> contact_chance_any;      ///< of touching any of them; empty: one is not known
  std::optional<double> chance_unknown_service;  ///< of meeting one that nobody drew, apart from it
  SurfaceAnswer surface;
  std::vector<HeavePoint> heave;  ///< along the bore, for the drawing
  std::vector<RuleZone> zones;    ///< of the owners' rules, for the drawing
  std::vector<StructureAnswer> structures;
  PitShape launch_pit, exit_pit;
  GroundSurface ground_surface;              ///< through the ground line and the surveyed points; none without any
  PitAnswer launch_pit_work, exit_pit_work;  ///< what follows from them
  std::vector<PipeCheck> pipe_checks;
  std::vector<LoadPoint> loads;  ///< along the bore, for the chart
  AirAnswer air;
  std::vector<LoosenedLimit> loosened;  ///< by id; what was typed on things on top comes after
  std::vector<Mark> marks;
  std::vector<Finding> findings;  ///< worst first
  std::vector<Working> working;
  bool operator==(const Assessment&) const = default;
};

/// The words of a finding, with number, limit and unit, in plain English: "0.31 m clear of gas main, 0.60 m wanted".
std::string finding_text(const Finding& finding, UnitSystem units);

}  // namespace burrow
