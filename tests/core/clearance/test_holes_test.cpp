// Test holes against the conditional normal worked out by hand, a second route by drawing whole lines, and what they
// must never do.

#include "burrow/clearance/test_holes.h"

#include <gtest/gtest.h>

#include <Eigen/Cholesky>
#include <algorithm>
#include <cmath>
#include <optional>
#include <random>

#include "burrow/clearance/clearance.h"
#include "support/clearance_for_tests.h"

namespace burrow {
namespace {

using test::bore;
using test::water_main;

TestHole hole(double station_m, double offset_m, double elevation_m, double reach_m = 3) {
  TestHole h;
  h.id = "h1";
  h.utility = "u1";
  h.station = Length{station_m};
  h.offset = Length{offset_m};
  h.level.set(LevelMeant::centre);
  h.elevation = Length{elevation_m};
  h.reach.set(Length{reach_m});
  h.date = "2026-02-26";
  h.by = "A. Nobody";
  return h;
}

Utility across_at_ten() {
  return water_main({{10, -8, 101.6}, {10, 8, 101.6}});
}

const LocationSd stated{0.10, 0.12};

PinnedVertex at_offset(const PinnedLine& pinned, double y_m) {
  return *std::min_element(pinned.line.begin(), pinned.line.end(), [&](const PinnedVertex& a, const PinnedVertex& b) {
    return std::abs(a.at.y_m - y_m) < std::abs(b.at.y_m - y_m);
  });
}

// By hand: one hole, 60 mm ahead and 50 mm lower. With σ and s known, the mean moves by σ²/(σ² + s²) of what was found
// and the error falls to σ s/√(σ² + s²); at 3 m, the reach, all of it counts e⁻¹ times.
TEST(TestHoles, OneHole_ByHand) {
  const PinnedLine pinned = pinned_line(across_at_ten(), stated, {hole(10.06, 0, 101.55)});
  ASSERT_FALSE(pinned.line.empty());
  const auto expect_at = [&](double y, double rho) {
    const PinnedVertex v = at_offset(pinned, y);
    const double s2 = 0.02 * 0.02;
    EXPECT_NEAR(v.at.y_m, y, 1e-9);
    EXPECT_NEAR(v.at.x_m, 10 + rho * 0.06 * 0.01 / (0.01 + s2), 1e-12) << y;
    EXPECT_NEAR(*v.at.z_m, 101.6 - rho * 0.05 * 0.0144 / (0.0144 + s2), 1e-12) << y;
    EXPECT_NEAR(v.lateral_sd_m, std::sqrt(0.01 - rho * rho * 0.0001 / (0.01 + s2)), 1e-12) << y;
    EXPECT_NEAR(v.vertical_sd_m, std::sqrt(0.0144 - rho * rho * 0.0144 * 0.0144 / (0.0144 + s2)), 1e-12) << y;
  };
  expect_at(0, 1);
  expect_at(3, std::exp(-1.0));
  expect_at(-1.5, std::exp(-0.25));
  EXPECT_NEAR(at_offset(pinned, 0).lateral_sd_m, 0.02, 0.0004) << "the error of the hole, nearly";
  EXPECT_NEAR(at_offset(pinned, 8).lateral_sd_m, 0.10, 1e-6) << "far off nothing is known better";
}

// Second route: draw whole lines of the process as a sum of waves, weigh each by how well it passes where three holes
// found it, and look at them where no hole is.
TEST(TestHoles, ThreeHoles_DrawnLines) {
  std::vector<TestHole> holes{hole(10.05, -1, 101.6), hole(10.02, 1.2, 101.6), hole(10.00, 2.2, 101.6)};
  for (TestHole& h : holes) h.sd.set(Length{0.05});
  const PinnedLine pinned = pinned_line(across_at_ten(), stated, holes);
  std::mt19937_64 random(5);
  std::normal_distribution<double> normal;
  // exp(−(d/l)²) is the mean of cos(ω d) for ω normal with variance 2/l²: waves at even steps of ω up to 5 sd.
  const double l = 3, found[3] = {-0.05, -0.02, 0.0}, places[4] = {-1, 1.2, 2.2, 0.125};
  constexpr int waves = 21;
  double cosines[waves][4], sines[waves][4], total = 0;
  for (int w = 0; w < waves; ++w) total += std::exp(-0.125 * w * w) * (w == 0 ? 0.5 : 1);
  for (int w = 0; w < waves; ++w) {
    const double share = 0.1 * std::sqrt(std::exp(-0.125 * w * w) * (w == 0 ? 0.5 : 1) / total);
    for (int i = 0; i < 4; ++i) {
      const double phase = 0.5 * w * std::sqrt(2.0) / l * places[i];
      cosines[w][i] = share * std::cos(phase);
      sines[w][i] = share * std::sin(phase);
    }
  }
  double weight = 0, sum = 0, sum2 = 0;
  for (int k = 0; k < 400000; ++k) {
    double e[4] = {0, 0, 0, 0};
    for (int w = 0; w < waves; ++w) {
      const double a = normal(random), b = normal(random);
      for (int i = 0; i < 4; ++i) e[i] += a * cosines[w][i] + b * sines[w][i];
    }
    double misfit = 0;
    for (int i = 0; i < 3; ++i) misfit += std::pow((found[i] - e[i]) / 0.05, 2);
    const double likely = std::exp(-misfit / 2);
    weight += likely;
    sum += likely * e[3];
    sum2 += likely * e[3] * e[3];
  }
  const double mean = sum / weight, sd = std::sqrt(sum2 / weight - mean * mean);
  const PinnedVertex v = at_offset(pinned, 0.125);
  EXPECT_NEAR(v.at.y_m, 0.125, 1e-9);
  EXPECT_NEAR(v.at.x_m, 10 - mean, 5e-4);  // left of a line that runs towards +y is −x
  EXPECT_NEAR(v.lateral_sd_m, sd, 5e-4);
}

TEST(TestHoles, NeverMakeAnErrorLarger) {
  std::mt19937_64 random(3);
  std::uniform_real_distribution<double> place(-9, 9), off(-0.3, 0.3), reach(0, 6), sd(0, 0.5);
  Utility bent = water_main({{9, -8, 101.6}, {10, -2, 101.5}, {10.5, 1, 101.5}, {8, 6, 101.7}});
  for (int trial = 0; trial < 200; ++trial) {
    std::vector<TestHole> holes;
    for (int i = 0; i < 1 + trial % 5; ++i) {
      holes.push_back(hole(10 + off(random), place(random), 101.6 + off(random), reach(random)));
      holes.back().sd.set(Length{trial % 7 == 0 ? 0.0 : sd(random)});
    }
    holes.push_back(holes.front());  // the same hole twice must not upset anything
    const PinnedLine pinned = pinned_line(bent, stated, holes);
    double along = -1;
    for (const PinnedVertex& v : pinned.line) {
      EXPECT_LE(v.lateral_sd_m, 0.10);
      EXPECT_LE(v.vertical_sd_m, 0.12);
      EXPECT_TRUE(std::isfinite(v.at.x_m) && std::isfinite(v.at.y_m) && std::isfinite(*v.at.z_m));
    }
    for (std::size_t i = 1; i < pinned.line.size(); ++i) {
      const double gap = std::hypot(pinned.line[i].at.x_m - pinned.line[i - 1].at.x_m,
                                    pinned.line[i].at.y_m - pinned.line[i - 1].at.y_m);
      along = std::max(along, gap);
    }
    EXPECT_LT(along, 8);
  }
}

TEST(TestHoles, ThoseOfOthers_ChangeNothing) {
  TestHole other = hole(10.3, 0, 101.2);
  other.utility = "u2";
  const std::vector<Utility> one{across_at_ten()};
  const auto with = clearances(bore(), Length{0.065}, one, test::ground, test::rules, test::tables(), {other});
  const auto without = clearances(bore(), Length{0.065}, one, test::ground, test::rules, test::tables());
  EXPECT_EQ(with, without);
  EXPECT_TRUE(pinned_line(across_at_ten(), stated, {other}).line.empty());
  // A utility that is known exactly stays where it is.
  const PinnedLine exact = pinned_line(across_at_ten(), {0.0, 0.0}, {hole(10.001, 0, 101.6)});
  for (const PinnedVertex& v : exact.line) EXPECT_EQ(v.at.x_m, 10);
}

// By hand: halfway along the second stretch, 3 m from its lower end.
TEST(TestHoles, ElevationOnALine) {
  const std::vector<PathVertex> line{{0, 0, 100.0}, {4, 0, 101.0}, {4, 6, 104.0}, {4, 8, std::nullopt}};
  EXPECT_NEAR(*elevation_on(line, {9, 3, std::nullopt}), 102.5, 1e-12);
  EXPECT_NEAR(*elevation_on(line, {1, -2, std::nullopt}), 100.25, 1e-12);
  EXPECT_NEAR(*elevation_on(line, {-3, 0, std::nullopt}), 100.0, 1e-12);
  EXPECT_FALSE(elevation_on(line, {4, 7, std::nullopt}));
  EXPECT_FALSE(elevation_on({}, {4, 7, std::nullopt}));
  EXPECT_EQ(elevation_on({{1, 1, 99.0}, {1, 1, 97.0}}, {4, 7, std::nullopt}), 99.0)
      << "an upright one: its first point";
}

TEST(TestHoles, LevelOfCrownAndInvert_ByTheDiameter) {
  TestHole h = hole(10, 0, 101.6);
  EXPECT_EQ(centre_of(h, across_at_ten()), 101.6);
  h.level.set(LevelMeant::crown);
  EXPECT_NEAR(*centre_of(h, across_at_ten()), 101.545, 1e-12);
  h.level.set(LevelMeant::invert);
  EXPECT_NEAR(*centre_of(h, across_at_ten()), 101.655, 1e-12);
  Utility bare = across_at_ten();
  bare.outside_diameter.reset();
  EXPECT_FALSE(centre_of(h, bare));
  const auto trouble = [&](const Utility& u, const LocationSd& sd, const TestHole& one) {
    const PinnedLine pinned = pinned_line(u, sd, {one});
    EXPECT_TRUE(pinned.line.empty());
    EXPECT_EQ(pinned.remarks.size(), 1u);
    return pinned.remarks.at(0).trouble;
  };
  EXPECT_EQ(trouble(bare, stated, h), HoleTrouble::no_diameter);
  EXPECT_EQ(trouble(across_at_ten(), {0.1, std::nullopt}, h), HoleTrouble::no_location_error);
  h.elevation.reset();
  EXPECT_EQ(trouble(across_at_ten(), stated, h), HoleTrouble::no_level);
}

// Beside the record: √(0.10² + 0.02²) and 0.12 likewise. Two holes 1 m apart differ by σ √(2(1 − e^(−1/9))) and their
// own errors.
TEST(TestHoles, Contradictions_BeyondThreeSd) {
  const auto remarks = [](double ahead, double second) {
    std::vector<TestHole> holes{hole(10 + ahead, 0, 101.6)};
    if (second != 0) {
      holes.push_back(hole(10 + ahead + second, 1, 101.6));
      holes.back().id = "h2";
    }
    return pinned_line(across_at_ten(), stated, holes).remarks;
  };
  const double record = 3 * std::hypot(0.10, 0.02);
  EXPECT_TRUE(remarks(record - 1e-6, 0).empty());
  ASSERT_EQ(remarks(record + 1e-6, 0).size(), 1u);
  EXPECT_EQ(remarks(record + 1e-6, 0)[0].trouble, HoleTrouble::off_record);
  EXPECT_NEAR(remarks(record + 1e-6, 0)[0].likely_m, record, 1e-12);
  const double pair = 3 * std::sqrt(2 * 0.01 * (1 - std::exp(-1.0 / 9)) + 2 * 0.0004);
  EXPECT_TRUE(remarks(0, pair - 1e-6).empty());
  ASSERT_EQ(remarks(0, pair + 1e-6).size(), 1u);
  EXPECT_EQ(remarks(0, pair + 1e-6)[0].trouble, HoleTrouble::holes_disagree);
  EXPECT_EQ(remarks(0, pair + 1e-6)[0].hole, "h2");
}

// The bore crosses where the hole is: the gap is that to what was found, the error that of the hole, and it counts as
// exposed there; a hole further off does not expose it.
TEST(TestHoles, AtTheCrossing_GapErrorExposed) {
  const std::vector<Utility> one{across_at_ten()};
  const auto with = [&](double y) {
    return clearances(bore(), Length{0.065}, one, test::ground, test::rules, test::tables(), {hole(10.05, y, 101.5)})
        .front();
  };
  const Clearance before = test::only(one.front()), there = with(0), beside = with(1.5);
  EXPECT_NEAR(*there.separation_m, 0.5 + 0.1 * 0.0004 / 0.0148 - 0.0875, 1e-9);
  EXPECT_NEAR(*there.utility_sd_m, 0.12 * 0.02 / std::hypot(0.12, 0.02), 1e-9);
  EXPECT_NEAR(*there.station_m, 10.05 - 0.05 * 0.0004 / 0.0104, 1e-6);
  EXPECT_TRUE(there.hole_at_bore);
  EXPECT_FALSE(there.unexposed);
  EXPECT_NEAR(*there.required_m, 0.30, 1e-12);
  EXPECT_FALSE(beside.hole_at_bore);
  EXPECT_TRUE(beside.unexposed);
  EXPECT_LT(*beside.utility_sd_m, *before.utility_sd_m);
  EXPECT_GT(*beside.utility_sd_m, *there.utility_sd_m);
}

// A run beside the bore with one hole: the error is that of the record where the hole says nothing.
TEST(TestHoles, BesideARun_OneHoleDoesNotPinAll) {
  const Utility beside = water_main({{0, 0.5, 101}, {20, 0.5, 101}});
  const Clearance c =
      clearances(bore(), Length{0.065}, {beside}, test::ground, test::rules, test::tables(), {hole(2, 0.5, 101)})
          .front();
  EXPECT_NEAR(*c.gap_low_m, *test::only(beside).gap_low_m, 1e-6) << "the far end decides, as without a hole";
  EXPECT_TRUE(c.unexposed);
}

// Only marked in plan: the hole tells how deep it lies where the bore passes.
TEST(TestHoles, DepthUnknown_TheHoleTellsIt) {
  const Utility marked = water_main({{10, -8, std::nullopt}, {10, 8, std::nullopt}});
  EXPECT_TRUE(test::only(marked).depth_unknown_at_bore);
  const auto with = [&](double y) {
    return clearances(bore(), Length{0.065}, {marked}, test::ground, test::rules, test::tables(), {hole(10, y, 101.6)})
        .front();
  };
  EXPECT_FALSE(with(0).depth_unknown_at_bore);
  EXPECT_NEAR(*with(0).separation_m, 0.6 - 0.0875, 1e-9);
  EXPECT_NEAR(*with(0).vertical_sd_m, 0.02, 1e-9);
  EXPECT_NEAR(*with(1.5).vertical_sd_m, std::sqrt(2 * 0.0144 * (1 - std::exp(-0.25)) + 0.0004), 1e-4);
  EXPECT_TRUE(with(5).depth_unknown_at_bore);
}

/// Holes evenly along the main, by what a smooth error would be and a reading error of each.
std::vector<TestHole> many_holes(int count, double from_y_m, double to_y_m, double reach_m = 3) {
  std::mt19937 random(3);
  std::normal_distribution<double> reading(0, 0.01);
  std::vector<TestHole> holes;
  for (int i = 0; i < count; ++i) {
    const double y = from_y_m + (to_y_m - from_y_m) * (i + 0.5) / count;
    holes.push_back(hole(10 + 0.08 * std::sin(0.6 * y) + reading(random), y,
                         101.6 + 0.05 * std::cos(0.4 * y) + reading(random), reach_m));
    holes.back().id = "h" + std::to_string(i + 1);
  }
  return holes;
}

/// Second route: all holes in one system of equations, as it is done for few.
class WholeMatrix {
 public:
  WholeMatrix(const std::vector<TestHole>& holes, double sd_m, double reach_m)
      : holes_(holes), sd_m_(sd_m), reach_m_(reach_m) {
    const auto n = static_cast<Eigen::Index>(holes.size());
    Eigen::MatrixXd covariance(n, n);
    Eigen::VectorXd found(n);
    for (Eigen::Index i = 0; i < n; ++i) {
      covariance.col(i) = like(holes[static_cast<std::size_t>(i)].offset.m);
      covariance(i, i) += holes[static_cast<std::size_t>(i)].sd->m * holes[static_cast<std::size_t>(i)].sd->m;
      found(i) = holes[static_cast<std::size_t>(i)].station.m - 10;
    }
    solver_.compute(covariance);
    weights_ = solver_.solve(found);
  }
  [[nodiscard]] double mean_m(double y_m) const { return like(y_m).dot(weights_); }
  [[nodiscard]] double sd_m(double y_m) const {
    const Eigen::VectorXd here = like(y_m);
    return std::sqrt(sd_m_ * sd_m_ - here.dot(solver_.solve(here)));
  }

 private:
  [[nodiscard]] Eigen::VectorXd like(double y_m) const {
    Eigen::VectorXd all(static_cast<Eigen::Index>(holes_.size()));
    for (Eigen::Index i = 0; i < all.size(); ++i) {
      const double apart = (holes_[static_cast<std::size_t>(i)].offset.m - y_m) / reach_m_;
      all(i) = sd_m_ * sd_m_ * std::exp(-apart * apart);
    }
    return all;
  }
  const std::vector<TestHole>& holes_;
  double sd_m_, reach_m_;
  Eigen::LDLT<Eigen::MatrixXd> solver_;
  Eigen::VectorXd weights_;
};

// Dense ones by waves, sparse ones by stretches: at the vertices the errors of the whole matrix to 1e-9.
TEST(TestHoles, FourHundred_SameErrorsAsTheWholeMatrix) {
  struct Case {
    int count;
    double half_length_m, reach_m;
  };
  for (const Case& c : {Case{400, 8, 3}, Case{120, 8, 0.5}, Case{120, 100, 3}, Case{150, 75, 3}}) {
    SCOPED_TRACE(std::to_string(c.count) + " on " + std::to_string(2 * c.half_length_m) + " m");
    const Utility main = water_main({{10, -c.half_length_m, 101.6}, {10, c.half_length_m, 101.6}});
    const auto holes = many_holes(c.count, -c.half_length_m, c.half_length_m, c.reach_m);
    const PinnedLine pinned = pinned_line(main, stated, holes);
    const WholeMatrix whole(holes, 0.10, c.reach_m);
    ASSERT_GT(pinned.line.size(), 40u);
    for (std::size_t i = 0; i < pinned.line.size(); i += pinned.line.size() / 9) {
      const PinnedVertex& v = pinned.line[i];
      EXPECT_NEAR(v.at.x_m - 10, whole.mean_m(v.at.y_m), 1e-9) << v.at.y_m;
      EXPECT_NEAR(v.lateral_sd_m, whole.sd_m(v.at.y_m), 1e-9) << v.at.y_m;
    }
  }
}

// No more work than the line needs: vertices no closer than a fortieth of the reach, and far from the bore one a hole.
TEST(TestHoles, FourHundred_AFewVerticesEach) {
  const Utility main = water_main({{10, -2000, 101.6}, {10, 2000, 101.6}});
  const PinnedLine close = pinned_line(across_at_ten(), stated, many_holes(400, -8, 8));
  EXPECT_LT(close.line.size(), 16 / (3.0 / 40) + 10);
  const NearBore bore{0, 20, 0, 0, 15};
  const auto holes = many_holes(400, -2000, 2000);
  const PinnedLine far = pinned_line(main, stated, holes, &bore);
  EXPECT_LT(far.line.size(), 400 + 41 * 8);
  const PinnedLine all = pinned_line(main, stated, holes);
  for (const PinnedVertex& v : far.line) {  // where it matters, the same
    if (std::abs(v.at.y_m) > 10) continue;
    const PinnedVertex same = at_offset(all, v.at.y_m);
    EXPECT_NEAR(same.at.x_m, v.at.x_m, 1e-12);
    EXPECT_NEAR(same.lateral_sd_m, v.lateral_sd_m, 1e-12);
  }
}

// The answers of a bore across: as with the same holes in the old way, all vertices and one matrix, to what a chord
// between vertices a fortieth of the reach apart leaves.
TEST(TestHoles, FourHundred_SameClearanceAsTwentyFour) {
  const auto with_holes = [](const std::vector<TestHole>& holes) {
    return clearances(bore(), Length{0.065}, {across_at_ten()}, test::ground, test::rules, test::tables(), holes)
        .front();
  };
  // Twenty-four places with one hole each, or with sixteen holes of four times the error: they tell the same.
  std::vector<TestHole> few = many_holes(24, -8, 8), many;
  for (TestHole& h : few) h.sd.set(Length{0.02});
  for (const TestHole& h : few)
    for (int i = 0; i < 16; ++i) {
      many.push_back(h);
      many.back().id += "-" + std::to_string(i);
      many.back().sd.set(Length{0.08});
    }
  const Clearance one = with_holes(few), sixteen = with_holes(many);
  EXPECT_NEAR(*one.separation_m, *sixteen.separation_m, 1e-5);
  EXPECT_NEAR(*one.gap_low_m, *sixteen.gap_low_m, 1e-5);
  EXPECT_NEAR(*one.utility_sd_m, *sixteen.utility_sd_m, 1e-5);
  EXPECT_NEAR(*one.contact_chance, *sixteen.contact_chance, 1e-6);
}

// Four hundred that contradict one another: each says its worst, not all eighty thousand pairs.
TEST(TestHoles, FourHundredThatDisagree_OneRemarkEach) {
  auto holes = many_holes(400, -8, 8);
  for (std::size_t i = 0; i < holes.size(); i += 2) holes[i].station.m += 0.8;
  const PinnedLine pinned = pinned_line(across_at_ten(), stated, holes);
  EXPECT_GT(pinned.remarks.size(), 300u);
  EXPECT_LE(pinned.remarks.size(), 800u);
}

/// Holes anywhere along the main in any order, each with an error of its own, some of them far off.
std::vector<TestHole> uneven_holes(unsigned seed, int count) {
  std::mt19937 random(seed);
  std::uniform_real_distribution<double> along(-8, 8), off(-0.05, 0.05), sd(0.005, 0.06);
  std::vector<TestHole> holes;
  for (int i = 0; i < count; ++i) {
    const double far = random() % 12 == 0 ? 8 : 1;
    holes.push_back(hole(10 + far * off(random), along(random), 101.6 + far * off(random)));
    holes.back().id = "h" + std::to_string(i + 1);
    holes.back().sd.set(Length{sd(random)});
  }
  return holes;
}

// Second route, and what is found in height is reckoned as what is found across: by one matrix of all holes.
TEST(TestHoles, ManyUneven_SameErrorsAsTheWholeMatrix) {
  for (unsigned seed = 1; seed < 5; ++seed) {
    const auto holes = uneven_holes(seed, 150);
    auto upright = holes;
    for (TestHole& h : upright) h.station = Length{10 + h.elevation->m - 101.6};
    const WholeMatrix across(holes, 0.10, 3), up(upright, 0.12, 3);
    const PinnedLine pinned = pinned_line(across_at_ten(), stated, holes);
    ASSERT_GT(pinned.line.size(), 100u);
    for (const PinnedVertex& v : pinned.line) {
      EXPECT_NEAR(10 - v.at.x_m, -across.mean_m(v.at.y_m), 1e-9) << v.at.y_m;
      EXPECT_NEAR(v.lateral_sd_m, across.sd_m(v.at.y_m), 1e-9) << v.at.y_m;
      EXPECT_NEAR(*v.at.z_m - 101.6, up.mean_m(v.at.y_m), 1e-9) << v.at.y_m;
      EXPECT_NEAR(v.vertical_sd_m, up.sd_m(v.at.y_m), 1e-9) << v.at.y_m;
    }
  }
}

// Second route: all places around all holes in order, and of these each that lies far enough from the one before.
TEST(TestHoles, ManyPlaces_AsSortedAndThinned) {
  std::mt19937 random(8);
  std::uniform_real_distribution<double> share(0, 1);
  for (int trial = 0; trial < 20; ++trial) {
    const double length = 5 + 60 * share(random), reach = 0.2 + 5 * share(random);
    const Utility main = water_main({{0, 0, 101.6}, {length, 0, 101.6}});
    std::vector<TestHole> holes;
    const int count = 25 + static_cast<int>(random() % 60);
    for (int i = 0; i < count; ++i) holes.push_back(hole(length * share(random), 0.05 * share(random), 101.6, reach));
    holes[3].station = holes[4].station;  // at one place
    holes[5].station = Length{0};
    holes[6].station = Length{length};
    const double end = length * share(random);
    const NearBore near{0, end, -1, 1, 0.5};
    const PinnedLine pinned = pinned_line(main, stated, holes, trial % 2 ? &near : nullptr);

    double aside = 0;
    for (const TestHole& h : holes) aside = std::max(aside, h.offset.m);
    std::vector<double> all, expected{0};
    for (const TestHole& h : holes) {
      const bool alone = trial % 2 && near.apart_m(h.station.m, h.offset.m) > 0.5 + 2.5 * reach + 3 * aside;
      for (int k = alone ? 0 : -20; k <= (alone ? 0 : 20); ++k) all.push_back(h.station.m + reach * k / 8);
    }
    std::sort(all.begin(), all.end());
    std::optional<double> before;
    for (const double place : all)
      if (place > 0 && place < length && (!before || place - *before >= reach / 40)) {
        before = place;
        if (place - expected.back() > 1e-6) expected.push_back(place);
      }
    expected.push_back(length);
    ASSERT_EQ(pinned.line.size(), expected.size()) << trial;
    for (std::size_t i = 0; i < expected.size(); ++i) EXPECT_NEAR(pinned.line[i].at.x_m, expected[i], 1e-9) << trial;
  }
}

// Second route: every hole against every one before it, without passing any over.
TEST(TestHoles, ManyDisagree_AsEachPair) {
  int shown_text = 0;
  for (unsigned seed = 1; seed < 9; ++seed) {
    auto holes = uneven_holes(seed, 120);
    Utility main = across_at_ten();
    const bool bare = seed % 2 == 0;  // the record has no heights
    if (bare)
      for (PathVertex& v : main.path) v.z_m.reset();
    std::vector<HoleRemark> expected;
    for (std::size_t i = 0; i < holes.size(); ++i) {
      double worst = 1;
      HoleRemark remark{holes[i].id, HoleTrouble::holes_disagree, holes[i].station.m, holes[i].offset.m, 0, 0};
      for (std::size_t k = 0; k < i; ++k) {
        const TestHole &a = holes[i], &b = holes[k];
        const double noise2 = a.sd->m * a.sd->m + b.sd->m * b.sd->m, d = (a.offset.m - b.offset.m) / 3;
        const double differ = 2 * (1 - std::exp(-d * d));
        const double apart[] = {std::abs(a.station.m - b.station.m), std::abs(a.elevation->m - b.elevation->m)};
        const double likely[] = {std::min(3 * std::sqrt(differ * 0.01 + noise2), 1.0),
                                 std::min(3 * std::sqrt(differ * 0.0144 + noise2), 1.0)};
        const std::size_t more = apart[0] / likely[0] > apart[1] / likely[1] ? 0 : 1;
        if (!(apart[more] / likely[more] > worst)) continue;
        worst = apart[more] / likely[more];
        remark.apart_m = apart[more];
        remark.likely_m = likely[more];
      }
      if (worst > 1) expected.push_back(remark);
    }
    std::vector<HoleRemark> found;
    for (const HoleRemark& remark : pinned_line(main, stated, holes).remarks)
      if (remark.trouble == HoleTrouble::holes_disagree) found.push_back(remark);
    ASSERT_EQ(found.size(), expected.size()) << seed;
    for (std::size_t i = 0; i < found.size(); ++i) {
      EXPECT_EQ(found[i].hole, expected[i].hole) << seed;
      EXPECT_NEAR(found[i].apart_m, expected[i].apart_m, 1e-12) << seed;
      EXPECT_NEAR(found[i].likely_m, expected[i].likely_m, 1e-12) << seed;
    }
    shown_text += static_cast<int>(found.size());
  }
  EXPECT_GT(shown_text, 100);
}

}  // namespace
}  // namespace burrow
