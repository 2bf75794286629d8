#pragma once
/// What DIN 4124 wants a calculation for, before a side without support may stand.

#include <string_view>
#include <utility>
#include <vector>

#include "burrow/base/enum_names.h"
#include "burrow/crossing/crossing.h"
#include "burrow/pit/pit_place.h"
#include "burrow/tables/tables.h"

namespace burrow {

enum class SlopeCondition {
  joints,
  dips_inward,
  loose_fill,
  soft_deposit,
  open_drainage,
  seeping,
  flowing,
  vibrated,
  steep_heap,
  steep_ground,
  distress
};
/// As a person reads them; no file holds them.
template <>
struct EnumNames<SlopeCondition> {
  static constexpr std::pair<SlopeCondition, std::string_view> list[] = {
      {SlopeCondition::joints, "faults or joints"},
      {SlopeCondition::dips_inward, "layers dip into it"},
      {SlopeCondition::loose_fill, "loose fill"},
      {SlopeCondition::soft_deposit, "soft organic soil or lake clay"},
      {SlopeCondition::open_drainage, "open dewatering in fine sand or silt"},
      {SlopeCondition::seeping, "water"},
      {SlopeCondition::flowing, "soil that flows"},
      {SlopeCondition::vibrated, "strong vibration"},
      {SlopeCondition::steep_heap, "a steep heap or a stack beside it"},
      {SlopeCondition::steep_ground, "steep ground beside it"},
      {SlopeCondition::distress, "signs of distress"}};
};

/// What is there, by an answer or by something else that is entered, and what nobody has answered.
struct SlopeConditions {
  std::vector<SlopeCondition> present, open;
  bool operator==(const SlopeConditions&) const = default;
};

/// One answer counts for one condition; `none_seen`, with name and day, for each that has none. Neither speaks against
/// what else is entered: water above the floor, fill in the pit (that, unless somebody said it is not loose), undrained
/// soil below 15 kPa, layers with a dip, ground that rises from the edge on steeper than 1 : 10 (in cohesive soil
/// confirmed as Type A 1 : 2, unless the pit is deeper than 1.25 m and part of a side stands upright).
/// Source: DIN 4124 as restated in DGUV Information 201-052 s. 4.2 and BG BAU C 469 (read); 15 kPa and how
/// the rise is measured: our default.   Evidence: SlopeConditions.*
SlopeConditions slope_conditions(const Crossing& crossing, const Pit& pit, const Tables& tables, const PitPlace& place);

}  // namespace burrow
