// Chance of contact against sources outside.
#include <gtest/gtest.h>

#include <boost/math/distributions/non_central_chi_squared.hpp>
#include <cmath>

#include "burrow/clearance/contact.h"

namespace burrow {
namespace {

double end_section(double d, double sd, double R) {
  return stadium_chance({{d, 0}, {d, 0}, R}, {sd * sd, sd * sd, 0});
}

// Rice distribution by two routes, derived; digits as printed.
TEST(PublishedContact, Rice_EndSection) {
  EXPECT_NEAR(end_section(0, 0.1, 0.1), 0.3934693, 5e-8);  // Rayleigh, 1 − e^(−1/2)
  EXPECT_NEAR(end_section(0.3, 0.1, 0.1), 0.0108294498, 5e-11);
  EXPECT_NEAR(end_section(0.3, 0.1, 0.15), 0.0407799600, 5e-11);
  EXPECT_NEAR(end_section(0.5, 0.2, 0.2), 0.0331828796, 5e-11);
}

// Derived: P = F(R²/s²; 2, d²/s²) of the non-central chi-square distribution, by an independent library.
TEST(PublishedContact, NonCentralChiSquare_EndSection) {
  for (const double d : {0.0, 0.05, 0.2, 0.4, 0.8})
    for (const double sd : {0.02, 0.1, 0.3, 1.0})
      for (const double R : {0.05, 0.15, 0.7}) {
        const boost::math::non_central_chi_squared chi(2, d * d / (sd * sd));
        EXPECT_NEAR(end_section(d, sd, R), cdf(chi, R * R / (sd * sd)), 1e-9) << d << ' ' << sd << ' ' << R;
      }
}

// Derived: one dimension.
TEST(PublishedContact, Derived_CrossingNormal) {
  EXPECT_NEAR(crossing_chance(0.3, 0.1, 0.1), 0.0227184607, 5e-11);
  // Bore 6 m along: start 10 mm, 0.005 rad, wander 0.005 rad/√m; utility 50 mm; printed sd .0728, P .0610969.
  const double s = std::sqrt(0.01 * 0.01 + 36 * 25e-6 + 25e-6 * 216 / 3 + 0.05 * 0.05);
  EXPECT_NEAR(s, 0.0728, 5e-5);
  EXPECT_NEAR(crossing_chance(0.2, 0.0875, s), 0.0610969, 5e-8);
}

// Derived: spreads 0.1 and 0.15, offset (0.3, 0.1), R 0.15. A list of check values prints .0248140113; quadrature with
// 25 digits gives .02481401116929, so that its last digit is wrong.
TEST(PublishedContact, Derived_Ellipse) {
  EXPECT_NEAR(stadium_chance({{0.3, 0.1}, {0.3, 0.1}, 0.15}, {0.01, 0.0225, 0}), 0.02481401117, 5e-12);
}

// Rayleigh: 95 % of an isotropic normal lies within 2.44775 sd.
TEST(PublishedContact, Rayleigh_NinetyFivePercentRadius) {
  EXPECT_LT(end_section(0, 0.2, 2.447745 * 0.2), 0.95);
  EXPECT_GT(end_section(0, 0.2, 2.447755 * 0.2), 0.95);
}

}  // namespace
}  // namespace burrow
