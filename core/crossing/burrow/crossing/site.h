#pragma once
/// What is there: ground, strata, water, what stands on top, what lies below. Everything as entered; nothing derived.

#include <string>
#include <string_view>
#include <vector>

#include "burrow/base/enum_names.h"
#include "burrow/base/geometry.h"
#include "burrow/base/given.h"
#include "burrow/base/quantity.h"
#include "burrow/crossing/utility.h"

namespace burrow {

/// How well a stratum is known.
enum class StratumEvidence { seen, borehole, guess };
template <>
struct EnumNames<StratumEvidence> {
  static constexpr std::pair<StratumEvidence, std::string_view> list[] = {
      {StratumEvidence::seen, "seen"}, {StratumEvidence::borehole, "borehole"}, {StratumEvidence::guess, "guess"}};
};

enum class ExcavationType { stable_rock, a, b, c };
template <>
struct EnumNames<ExcavationType> {
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
  Given<StratumEvidence> known{StratumEvidence::guess};
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
struct EnumNames<SurfaceKind> {
  static constexpr std::pair<SurfaceKind, std::string_view> list[] = {
      {SurfaceKind::road, "road"},         {SurfaceKind::track, "track"},     {SurfaceKind::ditch, "ditch"},
      {SurfaceKind::drive, "drive"},       {SurfaceKind::footway, "footway"}, {SurfaceKind::footing, "footing"},
      {SurfaceKind::building, "building"}, {SurfaceKind::wall, "wall"}};
};

/// Whether the owner of a road or track allows unsteered work under it.
enum class Permission { allowed, refused, not_asked };
template <>
struct EnumNames<Permission> {
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

/// How a tool that stops under it would be got out, as agreed with whom it belongs to.
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
struct EnumNames<BoundaryKind> {
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
