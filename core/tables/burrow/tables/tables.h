#pragma once
/// The tables: what the program knows before anybody enters anything. Plain values, loaded once from `resources`.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "burrow/base/date.h"
#include "burrow/base/quantity.h"
#include "burrow/base/source.h"
#include "burrow/crossing/pits.h"
#include "burrow/crossing/site.h"
#include "burrow/tables/pipe_table.h"

namespace burrow {

/// What a soil is to the excavation rules.
enum class ExcavationMatter { rock, broken_rock, cemented, cohesive, silt, granular, fill };
template <>
struct EnumNames<ExcavationMatter> {
  static constexpr std::pair<ExcavationMatter, std::string_view> list[] = {
      {ExcavationMatter::rock, "rock"},         {ExcavationMatter::broken_rock, "broken-rock"},
      {ExcavationMatter::cemented, "cemented"}, {ExcavationMatter::cohesive, "cohesive"},
      {ExcavationMatter::silt, "silt"},         {ExcavationMatter::granular, "granular"},
      {ExcavationMatter::fill, "fill"}};
};

/// One soil class of `resources/tables/soils.json`. A class with an undrained strength is undrained, one with a
/// friction angle drained; `drained` decides where both are given.
struct SoilClass {
  std::string id;  ///< "firm-clay"
  Phrase name;     ///< "firm clay"
  /// The one or two classes it stands between, softer first: what a guess of it may be instead. `soil_mistaken_for`
  std::vector<std::string> neighbours;
  UnitWeight unit_weight;
  UnitWeight saturated_unit_weight;
  std::optional<Pressure> undrained_strength;
  std::optional<Angle> friction_angle;
  Pressure cohesion;
  Angle dilation_angle;
  Pressure shear_modulus;
  Ratio poisson_ratio{0.3};
  std::optional<Ratio> earth_pressure_ratio;  ///< empty: 0.7 undrained, 1 − sin φ′ drained (Jaky)
  bool drained = false;
  Ratio adhesion_ratio{0.2};
  Angle interface_angle;
  Wander wander;
  RatePerLength stone_rate;
  Angle stone_kick;
  RatePerLength refusal_rate;
  Ratio heave_share;
  Ratio swell;  ///< bank to loose, "0.25" for a quarter more
  ExcavationType excavation_type = ExcavationType::c;
  std::optional<ExcavationMatter> matter;  ///< empty: by strength and type
  Phrase stands_open;                      ///< how long the hole stands: "days"
  bool closes_soon = false;                ///< in minutes, or at once
  Phrase use;                              ///< first hint: "good", "marginal: sags", "refuse"
  Phrase thumb;                            ///< sign by hand: "thumb goes in with some effort"
  Source source;
  bool operator==(const SoilClass&) const = default;
};

/// One tool class of `resources/tables/tools.json`.
struct ToolClass {
  std::string id;  ///< "tool-65"
  Length diameter;
  Length length;
  Mass mass;
  Length piston_diameter;
  Length stroke;
  Mass striker_mass;
  Frequency blow_rate;
  Pressure pressure;
  VolumeFlow free_air;
  Source source;
  bool operator==(const ToolClass&) const = default;
};

/// A kind of utility: how it is drawn and what it wants by default.
struct UtilityKindRow {
  UtilityKind kind = UtilityKind::unknown;
  Phrase name;               ///< "gas"
  std::string letter_code;   ///< "G"
  std::string colour;        ///< "#rrggbb", uniform colour code of locators (light theme)
  std::string colour_dark;   ///< the same hue on a dark ground
  std::vector<double> dash;  ///< lengths on, off, on … in line widths; empty: unbroken
  bool dangerous = false;    ///< gas, power, steam, oil, or nobody knows: an unexposed one is never better than caution
  bool can_hurt = false;     ///< somebody may come to harm when it is struck: those and pipes under pressure
  /// Ids of the limits whose largest is the clear gap wanted of one that nobody has exposed.
  std::vector<std::string> separations{};
  Source source;
  bool operator==(const UtilityKindRow&) const = default;
};

/// What the wall of a utility is made of, as far as strain and vibration ask. `unknown` has no word: no row says it.
enum class UtilityWall { grey_iron, ductile_iron, steel, copper, plastic, rigid, masonry, cable, unknown };
template <>
struct EnumNames<UtilityWall> {
  static constexpr std::pair<UtilityWall, std::string_view> list[] = {
      {UtilityWall::grey_iron, "grey-iron"}, {UtilityWall::ductile_iron, "ductile-iron"},
      {UtilityWall::steel, "steel"},         {UtilityWall::copper, "copper"},
      {UtilityWall::plastic, "plastic"},     {UtilityWall::rigid, "rigid"},
      {UtilityWall::masonry, "masonry"},     {UtilityWall::cable, "cable"}};
};

/// A material of utilities. `material_rows.h` tells how an entry finds its row.
struct UtilityMaterialRow {
  std::string id;  ///< "grey-iron": what the file holds
  Phrase name;     ///< "grey cast iron"
  UtilityWall wall = UtilityWall::unknown;
  std::vector<UtilityKind> kinds;  ///< that are made of it; empty: any
  std::vector<std::string> words;  ///< of records, any language, lower case: "ci", "*guss*"
  Source source;
  bool operator==(const UtilityMaterialRow&) const = default;
};

/// A kind of building, footing or wall.
struct StructureRow {
  std::string id;                  ///< "dwelling": what the file holds
  Phrase name;                     ///< "dwelling"
  std::string limit;               ///< id of the limit of its vibration
  std::vector<std::string> words;  ///< whole entries that mean the same, any language, lower case: "wohnhaus"
  Source source;
  bool operator==(const StructureRow&) const = default;
};

/// A locating preset: "pas128-b1".
struct LocatingPreset {
  std::string id;
  Phrase name;
  std::optional<Length> lateral;          ///< stated ±, absolute part
  std::optional<Ratio> lateral_of_depth;  ///< stated ±, share of depth; the larger of the two holds
  std::optional<Length> vertical;
  std::optional<Ratio> vertical_of_depth;
  bool exposed = false;  ///< tells of a line that was laid bare: it says nothing where nobody has
  Source source;
  bool operator==(const LocatingPreset&) const = default;
};

/// A limit of `resources/tables/limits.json`.
struct LimitRow {
  std::string id;        ///< "cover_diameters", "separation_gas_m": the key in a crossing's `limits`
  Phrase name;           ///< "cover in tool diameters"
  double value = 0;      ///< SI
  std::string unit;      ///< "m", "m/s", "m3", "" for a ratio
  bool at_least = true;  ///< sense: the value must not be below (true) or above (false) the limit
  Source source;
  bool operator==(const LimitRow&) const = default;
};

/// From where to where an owner measures the distance of a pit.
enum class SetbackSpan {
  face_to_edge,         ///< from the pit's face to the edge of the road or track
  excavation_to_edge,   ///< from the edge of the excavation at the ground, which a slope takes nearer
  excavation_to_centre  ///< from there to the centreline of the nearest track
};
template <>
struct EnumNames<SetbackSpan> {
  static constexpr std::pair<SetbackSpan, std::string_view> list[] = {
      {SetbackSpan::face_to_edge, "face-to-edge"},
      {SetbackSpan::excavation_to_edge, "excavation-to-edge"},
      {SetbackSpan::excavation_to_centre, "excavation-to-centre"}};
};

/// A row of owners' rules for roads, tracks, ditches.
struct SurfaceRule {
  std::string id;
  Phrase name;
  SurfaceKind kind = SurfaceKind::road;
  std::optional<Length> cover;
  bool cover_exceeded = false;  ///< more than the cover is wanted, not as much
  std::optional<Length> heave_caution;
  std::optional<Length> heave_stop;
  std::optional<Angle> least_angle;   ///< between bore and road or track; a right angle is π/2
  std::optional<Length> pit_setback;  ///< of a pit
  SetbackSpan setback_span = SetbackSpan::face_to_edge;
  bool unshored_adds_depth = false;        ///< a pit without shoring keeps away by its depth besides
  std::optional<Length> pipe_end_setback;  ///< of the pipe's end from the edge; its pit lies beyond
  std::optional<Length> clear_of_centre;   ///< no pit, heap or machine nearer to the centreline of the nearest track
  std::optional<Length> largest_driven;    ///< hole opened without taking soil out
  Phrase note;                             ///< what else the owner asks; nothing here judges it
  Source source;
  bool operator==(const SurfaceRule&) const = default;
};

/// Slope rows of an excavation rule set.
struct SlopeRow {
  ExcavationType type = ExcavationType::c;
  Ratio run_per_rise;
  Length depth_limit;  ///< deeper needs an engineer
  Source source;
  bool operator==(const SlopeRow&) const = default;
};

/// How high a lower part of a slope may stand upright without support, and the slope above it.
struct UprightPartRow {
  ExcavationType type = ExcavationType::c;
  Length depth_limit;  ///< of the pit
  Length upright;
  Ratio run_above;
  Source source;
  bool operator==(const UprightPartRow&) const = default;
};

/// A duty with its number: "ladder-travel", "shield-below". SI.
struct DutyRow {
  std::string id;
  double value = 0;
  Source source;
  bool operator==(const DutyRow&) const = default;
};

struct ExcavationRuleSet {
  ExcavationRules rules = ExcavationRules::us_1926;
  Phrase name;
  Length protection_from;  ///< depth from which a protective system is needed
  Length ladder_from;
  Length spoil_setback;
  std::vector<SlopeRow> slopes;
  Source source;
  std::vector<UprightPartRow> upright_parts;  ///< by depth within a type
  std::vector<DutyRow> duties;
  bool operator==(const ExcavationRuleSet&) const = default;
};

enum class ShoringMethod { timber, hydraulic };
template <>
struct EnumNames<ShoringMethod> {
  static constexpr std::pair<ShoringMethod, std::string_view> list[] = {{ShoringMethod::timber, "timber"},
                                                                        {ShoringMethod::hydraulic, "hydraulic"}};
};

/// A published set of members for a trench of this soil type, depth and width. Sizes as printed.
struct ShoringRow {
  std::string id;
  ShoringMethod method = ShoringMethod::timber;
  ExcavationType type = ExcavationType::c;
  Length depth, width;
  std::string brace;
  Length brace_spacing, brace_rise;  ///< along the trench; one above the other
  std::string wale;                  ///< empty: none needed
  std::optional<Length> wale_rise;
  std::string upright;
  std::optional<Length> upright_spacing;  ///< 0: close together
  Source source;
  bool operator==(const ShoringRow&) const = default;
};

/// What a cubic metre of the bank becomes.
struct EarthworkRow {
  std::string id;  ///< "sand", "loam", "clay", "rock"
  Phrase name;
  Ratio loose;
  Ratio compacted;
  Source source;
  bool operator==(const EarthworkRow&) const = default;
};

struct Tables {
  /// The day for which a crossing is judged: tickets run out. Empty: nobody said, and then none of them counts.
  std::optional<Date> judged_on;
  std::vector<SoilClass> soils;
  std::vector<ToolClass> tools;
  std::vector<PipeMaterial> pipes;
  std::vector<PipeSeries> pipe_sizes;
  std::vector<UtilityKindRow> utilities;
  std::vector<UtilityMaterialRow> utility_materials;  ///< the first that is met counts
  std::vector<StructureRow> structures;
  std::vector<LocatingPreset> locating;
  std::vector<LimitRow> limits;
  std::vector<SurfaceRule> surface_rules;
  std::vector<ExcavationRuleSet> excavation;
  std::vector<ShoringRow> shoring;
  std::vector<EarthworkRow> earthwork;
  bool operator==(const Tables&) const = default;
};

const SoilClass* find_soil(const Tables& tables, std::string_view id);
const ToolClass* find_tool(const Tables& tables, std::string_view id);
const PipeMaterial* find_pipe(const Tables& tables, std::string_view id);
const LimitRow* find_limit(const Tables& tables, std::string_view id);
const SurfaceRule* find_rule(const Tables& tables, std::string_view id);
const UtilityKindRow& row_of(const Tables& tables, UtilityKind kind);
const ExcavationRuleSet& row_of(const Tables& tables, ExcavationRules rules);
const EarthworkRow* find_earthwork(const Tables& tables, std::string_view id);
/// Nothing where the rule set has no such number.
const DutyRow* find_duty(const ExcavationRuleSet& rules, std::string_view id);

/// "soft-clay, firm-clay": the known ids of a table, for an error message.
template <class Row>
std::string known_ids(const std::vector<Row>& rows) {
  std::string all;
  for (const Row& row : rows) {
    if (!all.empty()) all += ", ";
    all += row.id;
  }
  return all;
}

}  // namespace burrow
