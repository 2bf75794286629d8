/// Entries that are no values of a utility itself: the trench it was laid in, levels taken before and after the bore.

#include <algorithm>

#include "burrow/clearance/trench.h"
#include "burrow/document/utility_fields.h"
#include "burrow/language/say.h"

namespace burrow {

TrenchOffer trench_offer(const Crossing& crossing, const std::string& id) {
  TrenchOffer offer;
  const auto& all = crossing.site.utilities;
  const auto utility = std::find_if(all.begin(), all.end(), [&](const Utility& u) { return u.id == id; });
  if (utility == all.end()) return offer;
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
  const ItemRef part{ItemKind::surface, feature, -1};
  const auto& all = crossing.site.surface;
  const auto one = std::find_if(all.begin(), all.end(), [&](const SurfaceFeature& f) { return f.id == feature; });
  if (one == all.end() || at >= one->levels.pegs.size()) return {};
  const LevelPeg& peg = one->levels.pegs[at];
  const auto make = [&](std::string label, std::optional<double> value, double bound, bool may_be_empty,
                        std::function<void(LevelPeg&, std::optional<double>)> set) {
    Field field;
    field.label = std::move(label);
    field.dimension = Dimension::station;
    field.value = value;
    field.may_be_empty = may_be_empty;
    field.low = -bound;
    field.high = bound;
    field.apply = [part, at, set = std::move(set)](const Crossing& c, std::optional<double> v) {
      ItemValue value_now = value_of(c, part);
      auto& element = std::get<ListSlot<SurfaceFeature>>(value_now);
      if (element.value && at < element.value->levels.pegs.size()) set(element.value->levels.pegs[at], v);
      return value_now;
    };
    return field;
  };
  constexpr double farthest_m = 1e5, highest_m = 1e4;  // what the file format accepts
  const auto level = [&](std::string label, std::optional<Length> LevelPeg::*member) {
    const std::optional<Length>& now = peg.*member;
    return make(std::move(label), now ? std::optional<double>(now->m) : std::nullopt, highest_m, true,
                [member](LevelPeg& p, std::optional<double> v) {
                  (p.*member).reset();
                  if (v) p.*member = Length{*v};
                });
  };
  return {make("station of the peg", peg.station.m, farthest_m, false,
               [](LevelPeg& p, std::optional<double> v) { p.station.m = *v; }),
          make("offset of the peg, left positive", peg.offset.m, farthest_m, false,
               [](LevelPeg& p, std::optional<double> v) { p.offset.m = *v; }),
          level("level before the bore", &LevelPeg::before), level("level after the bore", &LevelPeg::after),
          level("level when settled, usually 30 days later", &LevelPeg::settled)};
}

}  // namespace burrow
