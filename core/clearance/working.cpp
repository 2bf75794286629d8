#include "burrow/base/phrase.h"
#include "burrow/base/quantity.h"
#include "burrow/clearance/clearance.h"

namespace burrow {

namespace {

void add_grounds(std::vector<WorkingInput>& inputs, const Mixture& mixture, double MixedGround::*chance) {
  for (const MixedGround& ground : mixture.grounds) {
    inputs.push_back({"p", ground.share, ""});
    inputs.push_back({"P_ground", ground.*chance, ""});
  }
}

/// Where each ground is told alone, its chance summed like that of contact with another number in it.
std::vector<WorkingInput> with_grounds(std::vector<WorkingInput> inputs, const std::optional<Mixture>& mixture,
                                       double MixedGround::*chance) {
  if (mixture) add_grounds(inputs, *mixture, chance);
  return inputs;
}

/// What a mixed chance is summed from: each ground with its share and its chance, and for the ground as entered gap and
/// spread of the bore of each steering constant that was followed.
std::vector<WorkingInput> inputs_of(const Mixture& mixture, double radius_m) {
  std::vector<WorkingInput> inputs;
  inputs.reserve(2 + 2 * mixture.grounds.size() + 4 * mixture.rows.size());
  inputs.push_back({"R", radius_m, "m"});
  inputs.push_back({"s_utility", mixture.utility_sd_m, "m"});
  add_grounds(inputs, mixture, &MixedGround::contact);
  for (const MixedRow& row : mixture.rows) {
    inputs.push_back({"c", row.constant, ""});
    inputs.push_back({"δ(c)", row.gap_m, "m"});
    inputs.push_back({"s_bore(c)", row.spread_m, "m"});
    if (mixture.ends_matter) inputs.push_back({"e(c)", row.between_ends, ""});
  }
  return inputs;
}

Working working_of_distance(const Clearance& c, const Point3& bore, const Point3& utility, const Source& source) {
  return {"utility.distance",
          c.id,
          "δ = √((x_bore − x_utility)² + (y_bore − y_utility)² + (z_bore − z_utility)²)",
          {{"x_bore", bore.x_m, "m"},
           {"y_bore", bore.y_m, "m"},
           {"z_bore", bore.z_m, "m"},
           {"x_utility", utility.x_m, "m"},
           {"y_utility", utility.y_m, "m"},
           {"z_utility", utility.z_m, "m"}},
          "δ",
          *c.axis_distance_m,
          "m",
          std::nullopt,
          source};
}

/// Distance, gap wanted, gap, gap less the band.
std::vector<Working> gaps_of(const Clearance& c) {
  const Source derived{"least distance of two lines; normal errors along the common normal", SourceLabel::derived};
  const WorkingInput delta{"δ", *c.axis_distance_m, "m"}, R{"R", c.contact_radius_m, "m"}, s{"s", *c.spread_m, "m"};
  const WorkingInput required{"g_req", c.required_fixed_m, "m"};
  const GapLow low = c.low_at.value_or(GapLow{*c.axis_distance_m, *c.bore_sd_m, *c.utility_sd_m});
  std::vector<Working> all;
  all.reserve(7);  // each is moved in: a list in braces would copy them, with all their words
  if (c.on_bore && c.on_utility) all.push_back(working_of_distance(c, *c.on_bore, *c.on_utility, derived));
  if (c.required_m && *c.required_m > c.required_fixed_m + 1e-9)
    all.push_back({"utility.required",
                   c.id,
                   "g_all = g_req + 1.645 s",
                   {required, s},
                   "g_all",
                   *c.required_m,
                   "m",
                   std::nullopt,
                   {"a dangerous line that nobody exposed: the band of its place besides", SourceLabel::our_default}});
  all.push_back(
      {"utility.separation", c.id, "g = δ − R", {delta, R}, "g", *c.separation_m, "m", c.required_m, derived});
  all.push_back({"utility.gap-low",
                 c.id,
                 "g_low = δ − R − 1.645 √(s_bore² + s_utility²)",
                 {{"δ", low.distance_m, "m"}, R, {"s_bore", low.bore_sd_m, "m"}, {"s_utility", low.utility_sd_m, "m"}},
                 "g_low",
                 *c.gap_low_m,
                 "m",
                 std::nullopt,
                 derived});
  return all;
}

}  // namespace

std::vector<Working> working_of(const Clearance& c) {
  if (!c.axis_distance_m) return {};
  const Source model = c.mixture ? Source{"lognormal steering constant; given it, normal errors across the utility",
                                          SourceLabel::our_model}
                                 : Source{"chance over the utility as seen along the bore", SourceLabel::derived};
  const WorkingInput delta{"δ", *c.axis_distance_m, "m"}, R{"R", c.contact_radius_m, "m"}, s{"s", *c.spread_m, "m"};
  const WorkingInput required{"g_req", c.required_fixed_m, "m"}, angle{"α", c.angle_rad.value_or(pi / 2), "rad"};
  const WorkingInput bore{"s_bore", *c.bore_sd_m, "m"}, place{"s_utility", *c.utility_sd_m, "m"};
  const bool mixed = c.mixture.has_value();
  const std::string_view chance =
      mixed ? translatable(
                  "P = Σ p P_ground; P_ground = ∫ (Φ((R − δ)/s) − Φ((−R − δ)/s)) f(c) dc, "
                  "s² = s_bore² + s_utility²; times e(c), the share that passes between its ends")
      : c.bound ? "P = max over the run of ∬ N(Σ_bore + Σ_utility) over the section of radius R"
                : "P = Φ((R − δ)/s) − Φ((−R − δ)/s)";
  std::vector<Working> all = gaps_of(c);
  all.push_back({"utility.contact", c.id, chance,
                 mixed ? inputs_of(*c.mixture, c.contact_radius_m) : std::vector<WorkingInput>{delta, R, s, angle}, "P",
                 *c.contact_chance, "", std::nullopt, model});
  all.push_back(
      {"utility.contact-worst",
       c.id,
       mixed ? translatable(
                   "P_worst = Σ p P_ground, as contact, with s_worst for s_utility: the error from 0 to the stated "
                   "one at "
                   "which it is largest")
             : "P_worst = max of P for every location error from 0 to the stated one",
       mixed ? with_grounds({R, place, {"s_worst", c.mixture->worst_sd_m, "m"}}, c.mixture, &MixedGround::worst)
             : std::vector<WorkingInput>{delta, R, bore, place, angle},
       "P_worst",
       *c.contact_chance_worst,
       "",
       std::nullopt,
       {"not knowing must not look safe", SourceLabel::our_model}});
  all.push_back({"utility.encroachment", c.id,
                 mixed ? translatable("P_near = Σ p P_ground, as contact, with R + g_req for R")
                       : "P_near = P with R + g_req for R",
                 mixed ? with_grounds({R, required, place}, c.mixture, &MixedGround::encroachment)
                       : std::vector<WorkingInput>{delta, R, required, s, angle},
                 "P_near", *c.encroachment_chance, "", std::nullopt, model});
  return all;
}

}  // namespace burrow
