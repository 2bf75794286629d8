#pragma once
/// What is there: ground, strata, water, what stands on top, what lies below. Everything as entered; nothing derived.

#include <string>
#include <string_view>
#include <vector>

#include "burrow/base/geometry.h"
#include "burrow/base/given.h"
#include "burrow/base/quantity.h"
#include "burrow/base/words.h"

namespace burrow {

/// What somebody vouches for: how he knows it, who, when. It counts when all of it is entered, see `vouched`.
struct Statement {
  std::string how;
  std::string by;
  std::optional<std::string> date;
  std::string extra;
  bool operator==(const Statement&) const = default;
};

/// How well a stratum is known.
enum class Known { seen, borehole, guess };
template <>
struct Words<Known> {
  static constexpr std::pair<Known, std::string_view> list[] = {
      {Known::seen, "seen"}, {Known::borehole, "borehole"}, {Known::guess, "guess"}};
};

enum class ExcavationType { stable_rock, a, b, c };
template <>
struct Words<ExcavationType> {
  static constexpr std::pair<ExcavationType, std::string_view> list[] = {{ExcavationType::stable_rock, "stable-rock"},
                                                                         {ExcavationType::a, "A"},
                                                                         {ExcavationType::b, "B"},
                                                                         {ExcavationType::c, "C"}};
};

/// What the user knows better than the soil class; an empty member keeps the class value.
struct SoilOverrides {
  std::optional<UnitWeight> unit_weight;
  std::optional<UnitWeight> saturated_unit_weight;
  std::optional<Pressure> undrained_strength;
  std::optional<Angle> friction_angle;
  std::optional<Pressure> cohesion;
  std::optional<Angle> dilation_angle;
  std::optional<Pressure> shear_modulus;
  std::optional<Ratio> poisson_ratio;
  std::optional<Ratio> earth_pressure_ratio;  ///< K0
  std::optional<bool> drained;
  std::optional<Ratio> adhesion_ratio;
  std::optional<Angle> interface_angle;
  std::optional<Wander> wander;
  std::optional<RatePerLength> stone_rate;
  std::optional<Angle> stone_kick;
  std::optional<RatePerLength> refusal_rate;
  std::optional<Ratio> heave_share;  ///< f_v, share of the hole's volume reaching the surface
  std::optional<Ratio> swell;
  std::optional<ExcavationType> excavation_type;
  std::string extra;
  bool operator==(const SoilOverrides&) const = default;
};

struct Stratum {
  std::string id;
  std::string soil;              ///< name of a soil class
  std::optional<LevelLine> top;  ///< empty: the ground line
  Given<Known> known{Known::guess};
  SoilOverrides values;
  std::string extra;
  bool operator==(const Stratum&) const = default;
};

/// A body of other soil seen from above: an old trench.
struct Strip {
  std::string id;
  std::string name;
  std::string soil;
  SoilOverrides values;
  PlanLine outline;
  std::optional<Length> top_elevation;  ///< empty: the ground line
  Length bottom_elevation;
  std::string extra;
  bool operator==(const Strip&) const = default;
};

enum class SurfaceKind { road, track, ditch, drive, footway, footing, building, wall };
template <>
struct Words<SurfaceKind> {
  static constexpr std::pair<SurfaceKind, std::string_view> list[] = {
      {SurfaceKind::road, "road"},         {SurfaceKind::track, "track"},     {SurfaceKind::ditch, "ditch"},
      {SurfaceKind::drive, "drive"},       {SurfaceKind::footway, "footway"}, {SurfaceKind::footing, "footing"},
      {SurfaceKind::building, "building"}, {SurfaceKind::wall, "wall"}};
};

/// Whether the owner of a road or track allows unsteered work under it.
enum class Permission { allowed, refused, not_asked };
template <>
struct Words<Permission> {
  static constexpr std::pair<Permission, std::string_view> list[] = {
      {Permission::allowed, "allowed"}, {Permission::refused, "refused"}, {Permission::not_asked, "not-asked"}};
};

/// Where the level of a road or track is watched: before the bore, right after it, and when the ground has settled.
struct LevelPeg {
  Length station;
  Length offset;
  std::optional<Length> before;
  std::optional<Length> after;
  std::optional<Length> settled;
  std::string extra;
  bool operator==(const LevelPeg&) const = default;
};

struct LevelRecord {
  std::optional<std::string> before_date;
  std::optional<std::string> after_date;
  std::optional<std::string> settled_date;  ///< usually 30 days after the bore
  std::vector<LevelPeg> pegs;
  std::string extra;
  bool operator==(const LevelRecord&) const = default;
};

/// How a tool that is stuck under it would be got out, as agreed with its owner.
struct StuckPlan {
  std::string how;
  std::string agreed_with;
  std::optional<std::string> date;
  std::string extra;
  bool operator==(const StuckPlan&) const = default;
};

/// A road, track or ditch stretches from `from` to `to` where the crossing line meets it; a footing, building or wall
/// has an outline in plan instead (either may be given for any kind).
struct SurfaceFeature {
  std::string id;
  SurfaceKind kind = SurfaceKind::road;
  std::string name;
  std::optional<Length> from;
  std::optional<Length> to;
  Given<Angle> skew;  ///< 0 = square to the line
  std::optional<std::string> traffic;
  std::optional<std::string> rule;       ///< name of a row of the owners' rules
  std::optional<Length> required_cover;  ///< typed limit
  std::optional<Length> heave_limit;     ///< typed limit
  Given<Permission> permission{Permission::not_asked};
  std::string permit;
  PlanLine outline;
  std::optional<Length> founding_elevation;
  std::optional<std::string> structure;
  std::optional<Pressure> bearing_pressure;
  StuckPlan rescue;
  LevelRecord levels;
  std::string extra;
  bool operator==(const SurfaceFeature&) const = default;
};

enum class BoundaryKind { property, easement };
template <>
struct Words<BoundaryKind> {
  static constexpr std::pair<BoundaryKind, std::string_view> list[] = {{BoundaryKind::property, "property"},
                                                                       {BoundaryKind::easement, "easement"}};
};

struct Boundary {
  std::string id;
  BoundaryKind kind = BoundaryKind::property;
  std::string name;
  PlanLine line;
  std::string extra;
  bool operator==(const Boundary&) const = default;
};

struct Tree {
  std::string id;
  std::string name;
  Length station;
  Length offset;
  Length protection_radius;
  std::string extra;
  bool operator==(const Tree&) const = default;
};

/// A machine standing at the surface.
struct Plant {
  std::string id;
  std::string name;
  Length station;
  Length offset;
  Length length;
  Length width;
  Force load;
  Given<Ratio> dynamic_factor{Ratio{1.0}};
  std::string extra;
  bool operator==(const Plant&) const = default;
};

enum class UtilityKind { gas, power, water, sewer, telecom, reclaimed, steam, unknown, oil };
template <>
struct Words<UtilityKind> {
  static constexpr std::pair<UtilityKind, std::string_view> list[] = {
      {UtilityKind::gas, "gas"},     {UtilityKind::power, "power"},     {UtilityKind::water, "water"},
      {UtilityKind::sewer, "sewer"}, {UtilityKind::telecom, "telecom"}, {UtilityKind::reclaimed, "reclaimed"},
      {UtilityKind::steam, "steam"}, {UtilityKind::unknown, "unknown"}, {UtilityKind::oil, "oil"}};
};

enum class UtilityStatus { live, abandoned, proposed, unknown };
template <>
struct Words<UtilityStatus> {
  static constexpr std::pair<UtilityStatus, std::string_view> list[] = {{UtilityStatus::live, "live"},
                                                                        {UtilityStatus::abandoned, "abandoned"},
                                                                        {UtilityStatus::proposed, "proposed"},
                                                                        {UtilityStatus::unknown, "unknown"}};
};

enum class LocatedHow { exposed, traced_twice, traced, records, unknown };
template <>
struct Words<LocatedHow> {
  static constexpr std::pair<LocatedHow, std::string_view> list[] = {{LocatedHow::exposed, "exposed"},
                                                                     {LocatedHow::traced_twice, "traced-twice"},
                                                                     {LocatedHow::traced, "traced"},
                                                                     {LocatedHow::records, "records"},
                                                                     {LocatedHow::unknown, "unknown"}};
};

enum class DiameterMeant { outside, inside, nominal };
template <>
struct Words<DiameterMeant> {
  static constexpr std::pair<DiameterMeant, std::string_view> list[] = {
      {DiameterMeant::outside, "outside"}, {DiameterMeant::inside, "inside"}, {DiameterMeant::nominal, "nominal"}};
};

enum class LevelMeant { crown, centre, invert };
template <>
struct Words<LevelMeant> {
  static constexpr std::pair<LevelMeant, std::string_view> list[] = {
      {LevelMeant::crown, "crown"}, {LevelMeant::centre, "centre"}, {LevelMeant::invert, "invert"}};
};

enum class DepthFrom { ground, datum };
template <>
struct Words<DepthFrom> {
  static constexpr std::pair<DepthFrom, std::string_view> list[] = {{DepthFrom::ground, "ground"},
                                                                    {DepthFrom::datum, "datum"}};
};

/// What the record said, before it was turned into a centre line.
struct Recorded {
  std::optional<DiameterMeant> diameter;
  std::optional<LevelMeant> level;
  std::optional<DepthFrom> from;
  std::string source;
  std::optional<std::string> date;
  std::string extra;
  bool operator==(const Recorded&) const = default;
};

/// What a tracing of a line that does not conduct followed.
enum class TracedBy { wire, sonde, none };
template <>
struct Words<TracedBy> {
  static constexpr std::pair<TracedBy, std::string_view> list[] = {
      {TracedBy::wire, "wire"}, {TracedBy::sonde, "sonde"}, {TracedBy::none, "none"}};
};

struct Located {
  Given<LocatedHow> how{LocatedHow::unknown};
  std::optional<std::string> level;  ///< name of a locating preset
  std::optional<Length> lateral_sd;
  std::optional<Length> vertical_sd;
  std::optional<TracedBy> tracer;  ///< asked where the line itself does not conduct
  std::optional<std::string> date;
  std::string extra;
  bool operator==(const Located&) const = default;
};

/// Why a line that is drawn to here ends here; `edge_of_record`: the record ends, the line goes on.
enum class LineEnd { house_connection, cap, pole, pit, chamber, edge_of_record };
template <>
struct Words<LineEnd> {
  static constexpr std::pair<LineEnd, std::string_view> list[] = {{LineEnd::house_connection, "house-connection"},
                                                                  {LineEnd::cap, "cap"},
                                                                  {LineEnd::pole, "pole"},
                                                                  {LineEnd::pit, "pit"},
                                                                  {LineEnd::chamber, "chamber"},
                                                                  {LineEnd::edge_of_record, "edge-of-record"}};
};

/// What was declared of the first and the last vertex of a line; empty: nobody said why it ends there.
struct LineEnds {
  std::optional<LineEnd> first, last;
  std::string extra;
  bool operator==(const LineEnds&) const = default;
};

struct Utility {
  std::string id;
  std::string name;
  std::string owner;
  UtilityKind kind = UtilityKind::unknown;
  Given<UtilityStatus> status{UtilityStatus::unknown};
  std::string material;
  std::optional<Length> outside_diameter;
  std::vector<PathVertex> path;  ///< always the centre line
  LineEnds ends;
  Statement abandonment;  ///< how it was proved to be out of use
  Recorded recorded;
  Located located;
  std::optional<Length> required_clearance;
  std::string precaution;
  std::string extra;
  bool operator==(const Utility&) const = default;
};

struct TestHole {
  std::string id;
  std::string utility;
  Length station;
  Length offset;
  Given<LevelMeant> level{LevelMeant::crown};
  std::optional<Length> elevation;
  Given<Length> sd{Length{0.02}};
  Given<Length> reach{Length{3.0}};
  std::optional<std::string> date;
  std::string by;    ///< who measured
  Statement agreed;  ///< it counts though it contradicts the record
  std::string extra;
  bool operator==(const TestHole&) const = default;
};

enum class Laterals { entered, none_here, not_checked };
template <>
struct Words<Laterals> {
  static constexpr std::pair<Laterals, std::string_view> list[] = {
      {Laterals::entered, "entered"}, {Laterals::none_here, "none-here"}, {Laterals::not_checked, "not-checked"}};
};

enum class CameraResult { nothing_found, something_found };
template <>
struct Words<CameraResult> {
  static constexpr std::pair<CameraResult, std::string_view> list[] = {
      {CameraResult::nothing_found, "nothing-found"}, {CameraResult::something_found, "something-found"}};
};

/// Sewers and drains near the bore looked through by camera; without a result it was not done, or not yet seen.
struct CameraSurvey {
  std::optional<CameraResult> result;
  std::string reference;
  std::optional<std::string> date;
  std::string extra;
  bool operator==(const CameraSurvey&) const = default;
};

/// Whether the utilities were asked for and searched.
struct UtilitySearch {
  std::optional<bool> done;
  std::string reference;
  std::optional<std::string> date;
  std::optional<std::string> valid_from, valid_to;  ///< as the ticket says
  std::optional<bool> marks_visible;                ///< the marks on the ground can still be seen
  Given<bool> none_found{false};
  std::optional<Laterals> laterals;
  Given<RatePerArea> unknown_rate;
  CameraSurvey camera_before;  ///< the bore
  CameraSurvey camera_after;
  std::string extra;
  bool operator==(const UtilitySearch&) const = default;
};

/// Lines that are drawn only.
struct Background {
  std::string id;
  std::string name;
  std::string source;
  std::string layer;
  std::vector<PlanLine> lines;
  Statement not_a_service;
  std::string extra;
  bool operator==(const Background&) const = default;
};

struct Georeference {
  std::string crs;  ///< "EPSG:25832", or its definition
  PlanPoint origin;
  Given<Angle> azimuth;
  std::string vertical;
  std::string extra;
  bool operator==(const Georeference&) const = default;
};

/// What a coordinate system is called on paper: a short code as it stands, of a long definition the name within.
std::string name_of_crs(std::string_view crs);

struct Site {
  LevelLine ground;
  std::vector<Point3> ground_points;
  std::optional<LevelLine> water;  ///< empty: not known
  std::vector<Stratum> strata;     ///< from the top down
  std::vector<Strip> strips;
  std::vector<SurfaceFeature> surface;
  Statement nothing_above;  ///< declared where `surface` is empty
  std::vector<Boundary> boundaries;
  std::vector<Tree> trees;
  std::vector<Plant> plant;
  std::vector<Utility> utilities;
  std::vector<TestHole> test_holes;
  UtilitySearch utility_search;
  std::vector<Background> background;
  std::optional<Georeference> georeference;
  std::string extra;
  bool operator==(const Site&) const = default;
};

}  // namespace burrow
