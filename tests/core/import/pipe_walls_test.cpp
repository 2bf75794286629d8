// The outside of a pipe from its inside or nominal size: never less than it is, else nothing.

#include "pipe_walls.h"

#include <gtest/gtest.h>

namespace burrow::test {
namespace {

double outside(double inside, DiameterMeant meant, const char* material) {
  const auto length = outside_of(Length{inside}, meant, material);
  return length ? length->m : -1;
}

TEST(PipeWalls, FromMemory_KnownSizes) {
  // EN 545: 100 → 118, 200 → 222 mm; AWWA C151: 4 in → 4.80 in, 8 in → 9.05 in (all from memory).
  EXPECT_GE(outside(0.100, DiameterMeant::nominal, "ductile iron"), 0.118);
  EXPECT_GE(outside(0.2032, DiameterMeant::nominal, "DIP"), 9.05 * 0.0254);
  // ASTM C76, wall C of 12 in: 2.75 in (from memory).
  EXPECT_GE(outside(0.3048, DiameterMeant::inside, "RCP"), (12 + 2 * 2.75) * 0.0254);
  // EN 10220: 100 → 114.3 mm (from memory).
  EXPECT_GE(outside(0.100, DiameterMeant::nominal, "Stahl"), 0.1143);
  EXPECT_GE(outside(0.125, DiameterMeant::nominal, "PE 100"), 0.125);
  EXPECT_GE(outside(0.1016, DiameterMeant::nominal, "HDPE"), 0.1143);
}

TEST(PipeWalls, Property_NeverThinnerThanItsInside) {
  for (const char* material :
       {"ductile iron", "cast iron", "steel", "PVC", "PE", "concrete", "Steinzeug", "AC", "copper"})
    for (const DiameterMeant meant : {DiameterMeant::inside, DiameterMeant::nominal}) {
      double last = 0;
      for (double d = 0.01; d < 0.6; d += 0.0007) {
        const double out = outside(d, meant, material);
        if (out < 0) continue;
        EXPECT_GE(out, d) << material << " " << d;
        EXPECT_GE(out, last) << material << " " << d << ": it goes up";
        if (meant == DiameterMeant::inside) {
          EXPECT_GT(out, d) << material << " has a wall";
        }
        last = out;
      }
      EXPECT_GT(last, 0) << material;
    }
}

TEST(PipeWalls, WhatIsNotKnownStaysMissing) {
  EXPECT_EQ(outside(0.1, DiameterMeant::inside, ""), -1);
  EXPECT_EQ(outside(0.1, DiameterMeant::nominal, "unobtainium"), -1);
  EXPECT_EQ(outside(9, DiameterMeant::inside, "concrete"), -1);
  EXPECT_EQ(outside(0, DiameterMeant::outside, "PE"), -1);
  EXPECT_EQ(outside(0.1, DiameterMeant::outside, ""), 0.1);
  EXPECT_EQ(outside(0.1, DiameterMeant::inside, "SPECIAL"), -1) << "no word of it";
}

}  // namespace
}  // namespace burrow::test
