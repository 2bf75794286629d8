/// Entries that are no values of a utility itself: the trench it was laid in, levels taken before and after the bore.

#include <algorithm>

#include "burrow/clearance/trench.h"
#include "burrow/crossing/find.h"
#include "burrow/document/utility_fields.h"
#include "burrow/language/say.h"
#include "number_field.h"

namespace burrow {

TrenchOffer trench_offer(const Crossing& crossing, const std::string& id) {
  TrenchOffer offer;
  const Utility* utility = find_by_id(crossing.site.utilities, id);
  if (!utility) return offer;
  const TrenchRule rule;
  offer.strip = trench_of(*utility, crossing.site.ground, rule);
  if (!offer.strip) return offer;
  offer.strip->name = say("trench of {}", utility->name.empty() ? translated_word(utility->kind)
                                                                : utility->name);  // entered, in the language
  offer.width_m = utility->outside_diameter->m + rule.wider.m;
  offer.below_m = rule.below.m;
  const auto& strips = crossing.site.strips;
  offer.taken =
      std::any_of(strips.begin(), strips.end(), [&](const Strip& s) { return s.outline == offer.strip->outline; });
  offer.strip->id = free_id(crossing, "t");
  return offer;
}

std::vector<Field> peg_fields(const Crossing& crossing, const std::string& feature, std::size_t at) {
  const auto peg = [feature, at](auto& c) {
    auto* one = find_by_id(c.site.surface, feature);
    return one && at < one->levels.pegs.size() ? &one->levels.pegs[at] : nullptr;
  };
  if (!peg(crossing)) return {};
  const auto field = [&](const char* label, double bound, auto member) {
    return number_field(crossing, label, Dimension::station, {-bound, bound}, peg, member);
  };
  return {field("station of the peg", farthest_m, &LevelPeg::station),
          field("offset of the peg, left positive", farthest_m, &LevelPeg::offset),
          field("level before the bore", highest_m, &LevelPeg::before),
          field("level after the bore", highest_m, &LevelPeg::after),
          field("level when settled, usually 30 days later", highest_m, &LevelPeg::settled)};
}

}  // namespace burrow
