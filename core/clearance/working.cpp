#include "burrow/base/quantity.h"
#include "burrow/clearance/clearance.h"

namespace burrow {

std::vector<Working> working_of(const Clearance& c) {
  if (!c.axis_distance_m) return {};
  const Source derived{"least distance of two lines; normal errors along the common normal", SourceLabel::derived};
  const Source model{"chance over the utility as seen along the bore", SourceLabel::derived};
  const WorkingInput delta{"δ", *c.axis_distance_m, "m"}, R{"R", c.contact_radius_m, "m"}, s{"s", *c.spread_m, "m"};
  const WorkingInput required{"g_req", c.required_fixed_m, "m"}, angle{"α", c.angle_rad.value_or(pi / 2), "rad"};
  const WorkingInput bore{"s_bore", *c.bore_sd_m, "m"}, place{"s_utility", *c.utility_sd_m, "m"};
  const std::string_view chance = c.bound
                                      ? "P = max over the run of ∬ N(Σ_bore + Σ_utility) over the section of radius R"
                                      : "P = Φ((R − δ)/s) − Φ((−R − δ)/s)";
  return {
      {"utility.separation", c.id, "g = δ − R", {delta, R}, "g", *c.separation_m, "m", c.required_m, derived},
      {"utility.gap-low",
       c.id,
       "g_low = δ − R − 1.645 √(s_bore² + s_utility²)",
       {delta, R, bore, place},
       "g_low",
       *c.gap_low_m,
       "m",
       std::nullopt,
       derived},
      {"utility.contact", c.id, chance, {delta, R, s, angle}, "P", *c.contact_chance, "", std::nullopt, model},
      {"utility.contact-worst",
       c.id,
       "P_worst = max of P for every location error from 0 to the stated one",
       {delta, R, bore, place, angle},
       "P_worst",
       *c.contact_chance_worst,
       "",
       std::nullopt,
       {"not knowing must not look safe", SourceLabel::our_model}},
      {"utility.encroachment",
       c.id,
       "P_near = P with R + g_req for R",
       {delta, R, required, s, angle},
       "P_near",
       *c.encroachment_chance,
       "",
       std::nullopt,
       model},
  };
}

}  // namespace burrow
