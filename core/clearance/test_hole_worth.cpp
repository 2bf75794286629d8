#include "burrow/clearance/test_hole_worth.h"

#include <algorithm>
#include <boost/math/quadrature/gauss.hpp>
#include <boost/math/special_functions/erf.hpp>
#include <cmath>

#include "burrow/base/quantity.h"
#include "burrow/clearance/contact.h"

namespace burrow {

namespace {

constexpr double least_after_m = 1e-6;

/// What is found (normal about `mean_m` with `spread_m`), and how unsure the gap is after that.
struct Found {
  double mean_m, spread_m, after_m;
};

Found found_by(const Clearance& c, double hole_sd_m) {
  const double place2 = *c.utility_sd_m * *c.utility_sd_m, hole2 = hole_sd_m * hole_sd_m;
  const double sum = place2 + hole2;
  const double left2 = sum > 0 ? place2 * hole2 / sum : 0;
  return {*c.axis_distance_m, sum > 0 ? place2 / std::sqrt(sum) : 0, std::sqrt(*c.bore_sd_m * *c.bore_sd_m + left2)};
}

/// The least distance found with which the crew goes on. Newton's rule from where the near side alone would give the
/// limit; the chance falls and is convex there.
double goes_on_from(double radius_m, double after_m, const HolePlan& plan) {
  const double low = radius_m + plan.required.m;
  if (crossing_chance(low, radius_m, after_m) <= plan.contact_stop) return low;
  const double s = std::max(after_m, least_after_m);
  double m = radius_m + s * std::sqrt(2.0) * boost::math::erfc_inv(2 * std::clamp(plan.contact_stop, 1e-16, 0.5));
  for (int i = 0; i < 8; ++i) {
    const double near = (radius_m - m) / s, far = (radius_m + m) / s;
    const double falls = (std::exp(-near * near / 2) - std::exp(-far * far / 2)) / (s * std::sqrt(2 * pi));
    if (!(falls > 0)) break;
    const double step = (crossing_chance(m, radius_m, after_m) - plan.contact_stop) / falls;
    m += step;
    if (std::abs(step) < 1e-10) break;
  }
  return std::max(m, low);
}

double above(double z) {
  return 0.5 * std::erfc(z * std::sqrt(0.5));
}

/// E[p(m); m ≥ from] for m normal about `mean`.
double remaining(const Found& found, double mean_m, double radius_m, double from_m) {
  const double low = std::max(from_m, mean_m - no_chance_beyond_sd * found.spread_m);
  const double high =
      std::min(mean_m + no_chance_beyond_sd * found.spread_m, radius_m + no_chance_beyond_sd * found.after_m);
  if (!(high > low)) return 0;
  const auto density = [&](double m) {
    const double k = (m - mean_m) / found.spread_m;
    return std::exp(-0.5 * k * k) / (found.spread_m * std::sqrt(2 * pi)) * crossing_chance(m, radius_m, found.after_m);
  };
  const double sharpest = 2 * std::min(found.spread_m, std::max(found.after_m, 1e-4));
  const int panels = static_cast<int>(std::clamp(std::ceil((high - low) / sharpest), 1.0, 200.0));
  double sum = 0;
  for (int i = 0; i < panels; ++i)
    sum += boost::math::quadrature::gauss<double, 7>::integrate(density, low + (high - low) * i / panels,
                                                                low + (high - low) * (i + 1) / panels);
  return sum;
}

}  // namespace

HoleWorth test_hole_worth(const Clearance& c, const HolePlan& plan) {
  const double radius = c.contact_radius_m;
  const Found found = found_by(c, plan.hole_sd.m);
  const double from = goes_on_from(radius, found.after_m, plan);
  HoleWorth worth;
  if (!(found.spread_m > 1e-9)) {  // known already: the hole tells nothing
    worth.chance_to_go_on = found.mean_m >= from ? 1 : 0;
    worth.chance_after = worth.chance_to_go_on * *c.contact_chance;
    return worth;
  }
  if (from > 0) {
    worth.chance_to_go_on =
        above((from - found.mean_m) / found.spread_m) + above((from + found.mean_m) / found.spread_m);
    worth.chance_after = remaining(found, found.mean_m, radius, from) + remaining(found, -found.mean_m, radius, from);
  } else {
    worth.chance_after = crossing_chance(found.mean_m, radius, *c.spread_m);
  }
  worth.chance_to_go_on = std::clamp(worth.chance_to_go_on, 0.0, 1.0);
  worth.chance_after = std::clamp(worth.chance_after, 0.0, *c.contact_chance);
  return worth;
}

Working working_of(const Clearance& c, const HolePlan& plan, const HoleWorth& worth) {
  return {"utility.after-hole",
          c.id,
          "P_after = E[p(m); p(m) ≤ P_stop and |m| − R ≥ g], m normal about δ with s_u²/√(s_u² + s_h²)",
          {{"δ", *c.axis_distance_m, "m"},
           {"R", c.contact_radius_m, "m"},
           {"s_bore", *c.bore_sd_m, "m"},
           {"s_u", *c.utility_sd_m, "m"},
           {"s_h", plan.hole_sd.m, "m"},
           {"P_stop", plan.contact_stop, ""},
           {"g", plan.required.m, "m"}},
          "P_after",
          worth.chance_after,
          "",
          std::nullopt,
          {"normal errors along the common normal; the layout is changed where what was found is not good enough",
           SourceLabel::our_model}};
}

std::optional<double> contact_chance_of_any(const std::vector<Clearance>& all) {
  double none_log = 0;
  for (const Clearance& c : all) {
    if (!c.contact_chance) return std::nullopt;
    none_log += std::log1p(-std::min(*c.contact_chance, 1.0));
  }
  return 0.0 - std::expm1(none_log);
}

Working working_of_any(const std::vector<Clearance>& all, double chance) {
  Working working{"utility.contact-any",
                  "bore",
                  "P_any = 1 − ∏(1 − P)",
                  {},
                  "P_any",
                  chance,
                  "",
                  std::nullopt,
                  {"as if the contacts were independent", SourceLabel::derived}};
  for (const Clearance& c : all)
    if (*c.contact_chance > 0) working.inputs.push_back({"P", *c.contact_chance, ""});
  return working;
}

}  // namespace burrow
