// Utilities against closed forms worked out by hand; what is not known never looks safe.

#include <gtest/gtest.h>

#include <cmath>
#include <set>

#include "burrow/clearance/contact.h"
#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

/// A level bore (no steering) over a water main that crosses squarely 0.5 m below at station 4.
Crossing straight_over(double drop_m) {
  Crossing crossing = clean_crossing();
  crossing.bore.model.steer_constant.set(Ratio{0});
  crossing.bore.model.steer_constant_sd.set(Ratio{0});
  crossing.site.utilities.front() = water_main(4, 98.60 - drop_m);
  return crossing;
}

// By hand: δ = 0.5, R = (0.065 + 0.11)/2; s² = s₀² + θ₀² L² + σ² L³/3 + 0.06² with firm clay's σ = 0.0025.
TEST(Utilities, SquareCrossing_ByHand) {
  const Assessment answer = judged(straight_over(0.5));
  ASSERT_EQ(answer.utilities.size(), 1u);
  const UtilityAnswer& u = answer.utilities.front();
  const double R = (0.065 + 0.11) / 2, L = 4;
  const double s = std::sqrt(0.005 * 0.005 + 0.005 * 0.005 * L * L + 0.0025 * 0.0025 * L * L * L / 3 + 0.06 * 0.06);
  EXPECT_NEAR(*u.separation_m, 0.5 - R, 1e-9);
  EXPECT_NEAR(*u.gap_low_m, 0.5 - R - 1.645 * s, 1e-6);
  EXPECT_NEAR(*u.required_m, 0.60, 1e-12);
  EXPECT_NEAR(*u.contact_chance, crossing_chance(0.5, R, s), 1e-6);
  EXPECT_NEAR(*u.encroachment_chance, crossing_chance(0.5, R + 0.6, s), 1e-6);
  EXPECT_NEAR(*u.station_m, 4, 1e-6);
  EXPECT_NEAR(*u.angle_rad, pi / 2, 1e-9);
  EXPECT_GE(*u.contact_chance_worst, *u.contact_chance);
  const Finding* gap = find(answer, "utility.separation", "u1");
  ASSERT_TRUE(gap) << listed(answer);
  EXPECT_EQ(gap->severity, Severity::stop);
  EXPECT_NEAR(*gap->measured, 0.4125, 1e-9);
  EXPECT_NEAR(*gap->margin, (0.4125 - 0.6) / 0.6, 1e-9);
  const Finding* near = find(answer, "utility.encroachment", "u1");
  ASSERT_TRUE(near) << listed(answer);
  EXPECT_EQ(near->severity, Severity::stop);
}

TEST(Utilities, ContactChance_CautionThenStop) {
  const auto severity = [](double drop) {
    const Assessment answer = judged(straight_over(drop));
    const Finding* contact = find(answer, "utility.contact", "u1");
    const double worst = *answer.utilities.front().contact_chance_worst;
    EXPECT_EQ(contact != nullptr, worst > 0.001) << drop;
    if (contact) {
      EXPECT_EQ(contact->severity == Severity::stop, worst > 0.01) << drop;
    }
    return contact ? std::optional(contact->severity) : std::nullopt;
  };
  std::set<std::optional<Severity>> met;
  for (double drop = 0.1; drop < 0.5; drop += 0.01) met.insert(severity(drop));
  EXPECT_EQ(met.size(), 3u);
}

TEST(Utilities, Exposed_AsksForLess) {
  Crossing crossing = straight_over(0.5);
  Utility& utility = crossing.site.utilities.front();
  utility.located.how.set(LocatedHow::exposed);
  TestHole hole;
  hole.id = "h1";
  hole.utility = utility.id;
  hole.station = Length{utility.path.front().x_m};
  hole.level.set(LevelMeant::centre);
  hole.elevation = Length{*utility.path.front().z_m};
  hole.date = "2026-02-26";
  hole.by = "A. Nobody";
  crossing.site.test_holes = {hole};
  const Assessment answer = judged(crossing);
  EXPECT_NEAR(*answer.utilities.front().required_m, 0.30, 1e-12);
  EXPECT_FALSE(find(answer, "utility.separation")) << listed(answer);
  EXPECT_FALSE(answer.utilities.front().expose);
}

// Out of use, proved: near it is a caution; through it a stop.
TEST(Utilities, Abandoned_IsAStopOnlyWhereBodiesOverlap) {
  Crossing crossing = straight_over(0.11);
  crossing.site.utilities.front().status.set(UtilityStatus::abandoned);
  crossing.site.utilities.front().abandonment = {"cut and capped", "A. Nobody", "2026-01-15", ""};
  Crossing through = straight_over(0.05);
  through.site.utilities.front().status.set(UtilityStatus::abandoned);
  through.site.utilities.front().abandonment = crossing.site.utilities.front().abandonment;
  EXPECT_EQ(judged(through).verdict, Verdict::stop);
  const Assessment answer = judged(crossing);
  for (const char* code : {"utility.separation", "utility.contact"}) {
    ASSERT_TRUE(find(answer, code)) << code << listed(answer);
    EXPECT_EQ(find(answer, code)->severity, Severity::caution) << code;
  }
  EXPECT_EQ(answer.verdict, Verdict::caution) << listed(answer);
  crossing.site.utilities.front().status.set(UtilityStatus::unknown);
  EXPECT_EQ(judged(crossing).verdict, Verdict::stop);
}

// An unexposed gas main crossed by the 99 % band is never better than caution, whatever the limits.
TEST(Utilities, UnexposedGasInTheBand_NeverBetterThanCaution) {
  Crossing crossing = straight_over(0.24);
  crossing.site.utilities.front().kind = UtilityKind::gas;
  for (const char* id : {"separation_gas_m", "separation_exposed_m", "separation_traced_m"})
    crossing.limits[id] = {0.0, "none", {}};
  for (const char* id : {"contact_caution", "contact_stop", "encroachment_caution", "encroachment_stop"})
    crossing.limits[id] = {1.0, "none", {}};
  const Assessment answer = judged(crossing);
  ASSERT_TRUE(find(answer, "utility.expose", "u1")) << listed(answer);
  EXPECT_NE(answer.verdict, Verdict::within_limits);
  EXPECT_TRUE(answer.utilities.front().expose);
}

// Not knowing must not look safe: a worse location never gives a better verdict or a smaller worst chance.
TEST(Utilities, WorseLocation_NeverLooksSafer) {
  double before = 0;
  for (const double sd : {0.0, 0.02, 0.05, 0.1, 0.2, 0.5, 1.0, 3.0, 10.0, 100.0}) {
    Crossing crossing = straight_over(0.6);
    crossing.site.utilities.front().located.vertical_sd = Length{sd};
    const Assessment answer = judged(crossing);
    EXPECT_GE(*answer.utilities.front().contact_chance_worst, before * (1 - 1e-6)) << sd;
    before = *answer.utilities.front().contact_chance_worst;
  }
  EXPECT_GT(before, 0.01);
}

}  // namespace
}  // namespace burrow::test
