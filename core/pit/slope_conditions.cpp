#include "burrow/pit/slope_conditions.h"

#include <algorithm>

#include "burrow/crossing/statement.h"
#include "burrow/pit/slope.h"
#include "burrow/pit/soil_facts.h"
#include "burrow/soil/soil.h"
#include "layers.h"

namespace burrow {

namespace {

constexpr double paste_Pa = 15e3;
constexpr double rise_in_loose = 0.1, rise_in_stiff = 0.5;

/// What else is entered, layer by layer.
struct Elsewhere {
  bool fill = false, paste = false, all_cohesive = true;
};

Elsewhere elsewhere(const Site& site, const Tables& tables, const PitPlace& place) {
  Elsewhere found;
  const double floor = place.floor.elevation_m;
  for (const PitLayer& layer : layers_at(site, place.middle_m(), floor + place.depth_m, floor)) {
    const SoilClass* soil_class =
        layer.stratum < site.strata.size() ? find_soil(tables, site.strata[layer.stratum].soil) : nullptr;
    const ExcavationMatter matter = soil_class ? matter_of(*soil_class) : ExcavationMatter::granular;
    found.fill = found.fill || matter == ExcavationMatter::fill;
    found.all_cohesive = found.all_cohesive && matter == ExcavationMatter::cohesive;
    if (!soil_class) continue;
    const Soil soil = resolve_soil(*soil_class, site.strata[layer.stratum].values);
    found.paste = found.paste || (!soil.drained && soil.undrained_strength.Pa < paste_Pa);
  }
  return found;
}

bool has_upright_part(const PitSide& side) {
  return *side.kind == SideKind::upright || (*side.kind == SideKind::sloped && side.upright && side.upright->m > 0);
}

}  // namespace

SlopeConditions slope_conditions(const Crossing& crossing, const Pit& pit, const Tables& tables,
                                 const PitPlace& place) {
  using enum SlopeCondition;
  const Site& site = crossing.site;
  const PitSigns& signs = pit.signs;
  const bool none_seen = declared(signs.none_seen, tables.judged_on);
  SlopeConditions conditions;
  const auto take = [&](SlopeCondition condition, const std::optional<bool>& answered, bool entered_elsewhere = false) {
    if (answered.value_or(false) || entered_elsewhere)
      conditions.present.push_back(condition);
    else if (!answered && !none_seen)
      conditions.open.push_back(condition);
  };
  const Elsewhere other = elsewhere(site, tables, place);
  const double floor = place.floor.elevation_m;
  const bool fill = other.fill || dug_before(crossing, pit, place, floor + place.depth_m, floor);
  const bool water = site.water && !site.water->empty() && elevation_at(*site.water, place.middle_m()) > floor + 1e-9;
  const PitSides& s = pit.sides;
  const bool deep = protection_needed(row_of(tables, *crossing.pits.rules), Length{place.depth_m});
  const bool upright = deep && (has_upright_part(s.bore) || has_upright_part(s.back) || has_upright_part(s.left) ||
                                has_upright_part(s.right));
  const bool stiff = other.all_cohesive && pit.soil_type == ExcavationType::a && soil_confirmed(pit);
  const double rise_allowed = stiff && !upright ? rise_in_stiff : rise_in_loose;

  take(joints, signs.joints);
  take(dips_inward, signs.dips_inward, signs.dip_run_per_rise.has_value());
  take(loose_fill, signs.loose_fill, fill && signs.loose_fill.value_or(true));
  take(soft_deposit, signs.soft_deposit, other.paste);
  take(open_drainage, signs.open_drainage);
  take(seeping, signs.seeping, water);
  take(flowing, signs.flowing);
  take(vibrated, signs.vibrated);
  take(steep_heap, signs.steep_heap);
  take(steep_ground, signs.steep_ground, steepest_rise_beside(site, pit, place) > rise_allowed + 1e-9);
  take(distress, signs.distress);
  return conditions;
}

}  // namespace burrow
