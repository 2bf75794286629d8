#include "burrow/pit/soil_type.h"
#include "burrow/base/phrase.h"

#include <algorithm>

namespace burrow {

namespace {

constexpr double tsf_Pa = 2000 * 4.4482216152605 / (0.3048 * 0.3048);  // tons per square foot are the master value
constexpr double rounding = 1e-9;
constexpr double steep_dip = 4.0;  // run for one of rise
constexpr std::string_view appendix = "29 CFR 1926 Subpart P App. A (b)";

class Order {
 public:
  void set(ExcavationType best, ExcavationType worst, std::string_view why, SourceLabel label = SourceLabel::read) {
    proposal_.best = best;
    proposal_.worst = worst;
    note(why, label);
  }
  void set(ExcavationType type, std::string_view why, SourceLabel label = SourceLabel::read) {
    set(type, type, why, label);
  }
  /// Neither end of the range stays better than `type`.
  void demote(ExcavationType type, std::string_view why) {
    if (proposal_.best >= type) return;
    proposal_.best = std::max(proposal_.best, type);
    proposal_.worst = std::max(proposal_.worst, type);
    note(why, SourceLabel::read);
  }
  /// The worse type stays possible, since nobody looked.
  void leave_open(ExcavationType type, std::string_view why) {
    if (proposal_.worst >= type) return;
    proposal_.worst = type;
    note(why, SourceLabel::our_model);
  }
  [[nodiscard]] const TypeProposal& proposal() const { return proposal_; }

 private:
  void note(std::string_view why, SourceLabel label) {
    proposal_.steps.push_back({why, appendix, label, proposal_.best, proposal_.worst});
  }
  TypeProposal proposal_;
};

void start_cohesive(Order& order, const std::optional<Pressure>& strength) {
  using enum ExcavationType;
  if (!strength) return order.set(a, c, translatable("cohesive, strength not known: any of the three"));
  const double tsf = strength->Pa / tsf_Pa;
  if (tsf >= 1.5 * (1 - rounding))
    return order.set(a, translatable("cohesive, unconfined strength 1.5 tsf (144 kPa) or more"));
  if (tsf > 0.5 * (1 + rounding))
    return order.set(b, translatable("cohesive, unconfined strength between 0.5 and 1.5 tsf (48 to 144 kPa)"));
  order.set(c, translatable("cohesive, unconfined strength 0.5 tsf (48 kPa) or less"));
}

void start(Order& order, const SoilSeen& seen) {
  using enum ExcavationType;
  switch (seen.matter) {
    case ExcavationMatter::rock:
      return order.set(stable_rock, translatable("rock that stays whole while it is laid open"));
    case ExcavationMatter::broken_rock:
      return seen.wet.value_or(false) ? order.set(c, translatable("rock that is not stable, with water"))
                                      : order.set(b, translatable("dry rock that is not stable"));
    case ExcavationMatter::cemented:
      return order.set(a, translatable("cemented soil such as caliche or hardpan"));
    case ExcavationMatter::cohesive:
      return start_cohesive(order, seen.unconfined_strength);
    case ExcavationMatter::silt:
      return order.set(b, translatable("silt, silt or sandy loam, or angular gravel"));
    case ExcavationMatter::granular:
      return order.set(c, translatable("sand, gravel or loamy sand"));
    case ExcavationMatter::fill:
      return seen.unconfined_strength ? start_cohesive(order, seen.unconfined_strength)
                                      : order.set(c, translatable("fill without cohesion"), SourceLabel::our_model);
  }
}

}  // namespace

TypeProposal propose_type(const SoilSeen& seen) {
  using enum ExcavationType;
  Order order;
  start(order, seen);
  if (seen.matter == ExcavationMatter::rock) return order.proposal();
  if (seen.wet.value_or(false)) order.demote(c, translatable("under water, or water seeps out of it freely"));
  if (seen.dip_run_per_rise && seen.dip_run_per_rise->v <= steep_dip)
    order.demote(c, translatable("layers dip into the pit at 4H : 1V or steeper"));
  if (seen.fissured.value_or(false)) order.demote(b, translatable("fissured: no Type A"));
  if (seen.vibrated.value_or(false)) order.demote(b, translatable("shaken by traffic or the like: no Type A"));
  if (seen.disturbed.value_or(false) || seen.matter == ExcavationMatter::fill)
    order.demote(b, translatable("dug before: no Type A"));
  if (!seen.fissured || !seen.vibrated || !seen.disturbed)
    order.leave_open(b, translatable("nobody has said that it is not fissured, shaken or dug before"));
  if (!seen.wet) order.leave_open(c, translatable("nobody has said that no water seeps out of it"));
  return order.proposal();
}

ExcavationMatter matter_of(const SoilClass& soil_class) {
  if (soil_class.matter) return *soil_class.matter;
  if (soil_class.excavation_type == ExcavationType::stable_rock) return ExcavationMatter::rock;
  if (!soil_class.drained) return ExcavationMatter::cohesive;
  return soil_class.excavation_type == ExcavationType::c ? ExcavationMatter::granular : ExcavationMatter::silt;
}

}  // namespace burrow
