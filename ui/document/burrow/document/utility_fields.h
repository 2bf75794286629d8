#pragma once
/// What a person types about a utility in the terms of its record: its level at the bore as crown, centre or invert,
/// above datum or below ground; how well it is located, typed or by a preset; its test holes; the utility search.
/// The line of a utility is always its centre; crown and invert lie half the outside diameter above and below it.

#include "burrow/check/assessment.h"
#include "burrow/document/fields.h"
#include "burrow/tables/tables.h"

namespace burrow {

/// Where the bore passes a utility.
struct PassingPlace {
  double station_m = 0, offset_m = 0;
  std::optional<double> axis_m;                         ///< level of its centre by the record; empty: not known
  std::optional<double> ground_m;                       ///< level of the ground; empty: no ground line
  [[nodiscard]] std::optional<double> depth_m() const;  ///< of the centre, 0 or more
};
/// Station and offset of the answer, the level that the record has there; without an answer, the first point of the
/// line.
PassingPlace passing_place(const Crossing& crossing, const Utility& utility, const UtilityAnswer* answer);

/// What a level of the record is taken to mean: the crown, below ground, where nobody said otherwise.
LevelMeant level_meant(const Utility& utility);
DepthFrom depth_from(const Utility& utility);

/// Rise of what the record meant over the centre. Empty: the diameter is not known.
std::optional<double> above_centre_m(const Utility& utility, LevelMeant level);

/// One field: level (or depth) of the whole line, told at the bore, in the terms of its record; the line follows.
/// None where crown or invert is meant and the diameter is not known. What is typed where the record says neither
/// counts as a depth of the crown below ground, and the record says so from then on.   Evidence: UtilityFields.*
std::vector<Field> utility_level_fields(const Crossing& crossing, const std::string& id, const PassingPlace& place);
std::vector<Field> utility_size_fields(const Crossing& crossing, const std::string& id);
/// Why a location error cannot stand: one of nought, unless the line was exposed.   Evidence: UtilitiesEntry.NoError_*
Result<void> check_location_error(const Crossing& crossing, const std::string& id, std::optional<double> error_m);
/// Across and in height; what is left empty stands by the preset at the depth of the utility.
std::vector<Field> utility_location_fields(const Crossing& crossing, const std::string& id, const PassingPlace& place,
                                           const Tables& tables);
std::vector<Field> utility_gap_fields(const Crossing& crossing, const std::string& id);
/// Station, offset, measured level, its error and the reach of one test hole.
std::vector<Field> hole_fields(const Crossing& crossing, const std::string& hole);
/// What was measured in a new hole, in the terms of the record: level of the crown, or its depth below ground. Setting
/// it adds the hole.
Field new_hole_field(const Crossing& crossing, const std::string& utility, const PassingPlace& place);
/// Services nobody knows of, in 100 m².
std::vector<Field> search_fields(const Crossing& crossing);

/// The trench of a utility as a strip of softer ground, with an id of its own; none where nothing follows.
struct TrenchOffer {
  std::optional<Strip> strip;
  double width_m = 0, below_m = 0;
  bool taken = false;  ///< the crossing holds a strip of that outline
};
TrenchOffer trench_offer(const Crossing& crossing, const std::string& utility);

/// Levels of one peg of a road or track: station, offset, before, after, and when settled; of the surface feature.
std::vector<Field> peg_fields(const Crossing& crossing, const std::string& feature, std::size_t peg);

/// How the ± of a locating preset is read.
enum class PresetReading { one_sd, of_95_percent, typed };
/// Half width of 95 % in standard deviations.
inline constexpr double sd_in_95_percent = 1.96;

/// The utility with a preset (empty: none). Read as one standard deviation what was typed gives way to the preset,
/// which then follows the depth; read as 95 % its numbers at this depth are typed in. What the preset does not state
/// stays as it was.
Utility with_preset(Utility utility, const std::string& preset, PresetReading reading, const PassingPlace& place,
                    const Tables& tables);
PresetReading preset_reading(const Utility& utility, const PassingPlace& place, const Tables& tables);

}  // namespace burrow
