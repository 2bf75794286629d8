// What a test hole buys, against random utilities, bores and measurements; limits and the rule that measuring alone
// changes nothing.

#include "burrow/clearance/test_hole_worth.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "burrow/clearance/contact.h"
#include "support/clearance_for_tests.h"

namespace burrow {
namespace {

Clearance passing(double gap_m, double radius_m, double bore_sd_m, double place_sd_m) {
  Clearance c;
  c.id = "u1";
  c.axis_distance_m = gap_m;
  c.contact_radius_m = radius_m;
  c.bore_sd_m = bore_sd_m;
  c.utility_sd_m = place_sd_m;
  c.spread_m = std::hypot(bore_sd_m, place_sd_m);
  c.contact_chance = crossing_chance(gap_m, radius_m, *c.spread_m);
  return c;
}

struct Drawn {
  double goes_on = 0, touches = 0;
};

/// The crew's day, many times: where the utility truly lies, what the hole shows, what they make of it, where the bore
/// goes.
Drawn drawn(const Clearance& c, const HolePlan& plan, int count) {
  std::mt19937_64 random(17);
  std::normal_distribution<double> normal;
  const double u2 = *c.utility_sd_m * *c.utility_sd_m, h2 = plan.hole_sd.m * plan.hole_sd.m;
  Drawn answer;
  for (int i = 0; i < count; ++i) {
    const double truth = *c.axis_distance_m + *c.utility_sd_m * normal(random);
    const double seen = truth + plan.hole_sd.m * normal(random);
    const double believed = (*c.axis_distance_m * h2 + seen * u2) / (h2 + u2);
    const double then = std::sqrt(*c.bore_sd_m * *c.bore_sd_m + u2 * h2 / (u2 + h2));
    if (std::abs(believed) - c.contact_radius_m < plan.required.m) continue;
    if (crossing_chance(believed, c.contact_radius_m, then) > plan.contact_stop) continue;
    answer.goes_on += 1.0 / count;
    if (std::abs(truth + *c.bore_sd_m * normal(random)) < c.contact_radius_m) answer.touches += 1.0 / count;
  }
  return answer;
}

TEST(HoleWorth, RandomDays) {
  const HolePlan plans[] = {{{0.02}, 0.01, {0.30}}, {{0.05}, 0.05, {0.0}}, {{0.10}, 0.2, {0.1}}};
  const Clearance cases[] = {passing(0.4, 0.0875, 0.05, 0.25), passing(0.2, 0.1, 0.08, 0.3),
                             passing(0.0, 0.06, 0.1, 0.5), passing(0.9, 0.1, 0.15, 0.15)};
  const int count = 200000;
  for (const HolePlan& plan : plans)
    for (const Clearance& c : cases) {
      const HoleWorth worth = test_hole_worth(c, plan);
      const Drawn days = drawn(c, plan, count);
      const auto within = [&](double p) { return 4 * std::sqrt(std::max(p * (1 - p), 1.0 / count) / count); };
      EXPECT_NEAR(worth.chance_to_go_on, days.goes_on, within(worth.chance_to_go_on)) << *c.axis_distance_m;
      EXPECT_NEAR(worth.chance_after, days.touches, within(worth.chance_after)) << *c.axis_distance_m;
    }
}

// The tower property: who goes on whatever is found has won nothing.
TEST(HoleWorth, GoingOnAnyway_ChanceAsBefore) {
  for (const double gap : {0.0, 0.1, 0.3, 0.8}) {
    const Clearance c = passing(gap, 0.1, 0.07, 0.2);
    const HoleWorth worth = test_hole_worth(c, {{0.02}, 1.0, {-0.1}});
    EXPECT_NEAR(worth.chance_to_go_on, 1, 1e-12);
    EXPECT_NEAR(worth.chance_after, *c.contact_chance, 1e-9);
    const HoleWorth nearly = test_hole_worth(c, {{0.02}, 1.0, {-0.0999}});
    EXPECT_NEAR(nearly.chance_after, *c.contact_chance, 2e-3);
  }
}

TEST(HoleWorth, Limits) {
  const HolePlan plan{{0.02}, 0.01, {0.30}};
  // Known already: nothing to be won, the answer is yes or no.
  const HoleWorth known_far = test_hole_worth(passing(0.8, 0.1, 0.05, 0), plan);
  EXPECT_EQ(known_far.chance_to_go_on, 1);
  EXPECT_EQ(known_far.chance_after, *passing(0.8, 0.1, 0.05, 0).contact_chance);
  EXPECT_EQ(test_hole_worth(passing(0.2, 0.1, 0.05, 0), plan).chance_to_go_on, 0);
  // Where they go on, each bore has at most the chance they accept.
  for (const double gap : {0.0, 0.2, 0.5, 1.0})
    for (const double sd : {0.05, 0.2, 1.0}) {
      const Clearance c = passing(gap, 0.1, 0.1, sd);
      const HoleWorth worth = test_hole_worth(c, plan);
      EXPECT_LE(worth.chance_after, plan.contact_stop * worth.chance_to_go_on + 1e-12);
      EXPECT_LE(worth.chance_after, *c.contact_chance);
      EXPECT_LE(test_hole_worth(c, {{0.02}, 0.01, {0.60}}).chance_to_go_on, worth.chance_to_go_on);
    }
}

TEST(HoleWorth, ContactChanceOfAny_ByHand) {
  std::vector<Clearance> all(3);
  all[0].contact_chance = 0.1;
  all[1].contact_chance = 0.0;
  all[2].contact_chance = 0.02;
  EXPECT_NEAR(*contact_chance_of_any(all), 1 - 0.9 * 0.98, 1e-15);
  EXPECT_EQ(working_of_any(all, 0.118).inputs.size(), 2u);
  all[1].contact_chance.reset();
  EXPECT_FALSE(contact_chance_of_any(all));
  EXPECT_EQ(contact_chance_of_any({}), 0.0);
  for (Clearance& c : all) c.contact_chance = 1.0;
  EXPECT_EQ(contact_chance_of_any(all), 1.0);
  for (Clearance& c : all) c.contact_chance = 1e-17;
  EXPECT_NEAR(*contact_chance_of_any(all), 3e-17, 1e-25) << "small chances keep their digits";
}

}  // namespace
}  // namespace burrow
