#pragma once
/// What has to be on site, drawn from the crossing and its assessment: for sheet, card and panel alike.

#include <string>
#include <string_view>
#include <vector>

#include "burrow/base/enum_names.h"
#include "burrow/base/phrase.h"
#include "burrow/base/quantity_text.h"
#include "burrow/check/assessment.h"
#include "burrow/crossing/crossing.h"
#include "burrow/tables/tables.h"

namespace burrow {

enum class EquipmentGroup { boring, air, setting_out, pits, watching, people };
template <>
struct EnumNames<EquipmentGroup> {
  static constexpr std::pair<EquipmentGroup, std::string_view> list[] = {
      {EquipmentGroup::boring, "boring"},           {EquipmentGroup::air, "air"},
      {EquipmentGroup::setting_out, "setting-out"}, {EquipmentGroup::pits, "pits"},
      {EquipmentGroup::watching, "watching"},       {EquipmentGroup::people, "people"}};
};

/// "Boring and pipe", "Compressor and air line" …
Phrase title_of(EquipmentGroup group);

struct EquipmentItem {
  EquipmentGroup group = EquipmentGroup::boring;
  Phrase what;    ///< "compressor, 2.50 m³/min at 6.9 bar"
  Phrase detail;  ///< what follows from this crossing: "the tool takes 1.04 m³/min"; may be empty
  bool operator==(const EquipmentItem&) const = default;
};

/// In the order of the groups. Plain English, numbers in the units asked for.
/// Source: common practice (no source); numbers of the assessment.   Evidence: Equipment.*
std::vector<EquipmentItem> equipment_list(const Crossing& crossing, const Tables& tables, const Assessment& assessment,
                                          UnitSystem units);

}  // namespace burrow
