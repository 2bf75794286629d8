// Compressor, line and tool together; what to change.

#include "burrow/air/supply.h"

#include <gtest/gtest.h>

#include <boost/math/tools/roots.hpp>
#include <cmath>

#include "burrow/air/changes.h"

namespace burrow::test {
namespace {

/// About a 95 mm tool: 1.67 m³/min at 6.9 bar.
Tool tool_95() {
  Tool tool;
  tool.pressure = {6.9e5};
  tool.free_air = {0.0279};
  return tool;
}

AirPart hose(double length_m, double bore_m) {
  AirPart part;
  part.length = Length{length_m};
  part.bore = Length{bore_m};
  return part;
}

AirPart couplings(std::int64_t count) {
  AirPart part;
  part.kind = AirPartKind::coupling;
  part.count.set(count);
  part.equivalent_length = Length{0.6};
  return part;
}

Air usual(double hose_m = 20, double bore_m = 0.019) {
  Air air;
  air.compressor.free_air = VolumeFlow{0.0417};
  air.compressor.pressure = Pressure{6.9e5};
  air.line = {hose(hose_m, bore_m), couplings(2)};
  return air;
}

AirSupply supplied(const Air& air, const Tool& tool = tool_95()) {
  const Result<AirSupply> supply = supply_tool(air, tool);
  EXPECT_TRUE(supply) << (supply ? "" : supply.error().english());
  return supply.value_or(AirSupply{});
}

// Second route: the same balance from the other end by Boost's root finder. The flow is the unknown; each part of the
// line is solved forward for its outlet.
TEST(AirSupply, Balance_BoostForward) {
  for (const double hose_m : {5.0, 20.0, 60.0}) {
    const Air air = usual(hose_m);
    const AirSupply supply = supplied(air);
    const SiteAir site = site_air({0}, *air.air_temperature).value();
    const auto parts = line_parts(air.line).value();
    const auto outlet = [&](double inlet, double mass, const LinePart& part) {
      const double G = mass / (pi * part.bore.m * part.bore.m / 4), K = G * G * 287.05 * 288.15;
      const double f = friction_factor(G * part.bore.m / site.viscosity_Pa_s, part.roughness.m / part.bore.m);
      const auto equation = [&](double p2) {
        return inlet * inlet - p2 * p2 - K * (f * part.length.m / part.bore.m + 2 * std::log(inlet / p2));
      };
      boost::uintmax_t most = 200;
      const auto root = boost::math::tools::toms748_solve(equation, std::sqrt(K), inlet,
                                                          boost::math::tools::eps_tolerance<double>(50), most);
      return 0.5 * (root.first + root.second);
    };
    const auto balance = [&](double flow) {
      double p = 6.9e5 + sea_level_Pa;
      for (const LinePart& part : parts) p = outlet(p, flow * site.density_kg_m3, part);
      return 0.0279 * p / (6.9e5 + sea_level_Pa) - flow;
    };
    boost::uintmax_t most = 200;
    const auto root =
        boost::math::tools::toms748_solve(balance, 0.001, 0.0279, boost::math::tools::eps_tolerance<double>(48), most);
    EXPECT_NEAR(supply.free_air.m3_s, root.first, 1e-9 * root.first) << hose_m;
    EXPECT_EQ(supply.held_by, AirHeldBy::line);
    EXPECT_NE(supply.iteration.ended, IterationEnd::out_of_steps);
    EXPECT_GT(supply.iteration.steps, 0);
    EXPECT_LT(supply.iteration.residual, 1e-9);
  }
}

// The answer holds together: what the tool takes is what flows, the line begins at the compressor's pressure and ends
// at the tool's.
TEST(AirSupply, Balance_HoldsTogether) {
  const AirSupply supply = supplied(usual());
  EXPECT_NEAR(supply.at_compressor.Pa, 6.9e5, 1);
  EXPECT_LT(supply.at_tool.Pa, 6.9e5);
  EXPECT_NEAR(supply.free_air.m3_s, tool_demand(tool_95(), supply.at_tool, supply.ambient).m3_s, 1e-12);
  ASSERT_EQ(supply.along.size(), 2u);
  EXPECT_NEAR(supply.along.back().outlet_Pa, supply.at_tool.Pa + supply.ambient.Pa, 1e-6);
  EXPECT_NEAR(supply.along.front().inlet_Pa, supply.at_compressor.Pa + supply.ambient.Pa, 1);
}

// Limit: a line without resistance gives the compressor's own pressure.
TEST(AirSupply, Limit_NoResistance) {
  Air air = usual(0);
  air.line = {hose(0, 0.05)};
  EXPECT_DOUBLE_EQ(supplied(air).at_tool.Pa, 6.9e5);
  Tool idle = tool_95();
  idle.free_air = {0};
  EXPECT_DOUBLE_EQ(supplied(usual(), idle).at_tool.Pa, 6.9e5);
}

// Too small a compressor: the tool takes just what it gives, at the pressure that follows by hand from the demand:
// p = Q (p_n + p_0)/Q_n − p_0 at sea level.
TEST(AirSupply, SmallCompressor_ByHand) {
  Air air = usual();
  air.compressor.free_air = VolumeFlow{0.02};
  const AirSupply supply = supplied(air);
  EXPECT_EQ(supply.held_by, AirHeldBy::compressor);
  EXPECT_NEAR(supply.at_tool.Pa, 0.02 / 0.0279 * (6.9e5 + 101325) - 101325, 1);
  EXPECT_DOUBLE_EQ(supply.free_air.m3_s, 0.02);
  EXPECT_LT(supply.at_compressor.Pa, 6.9e5);
  EXPECT_GT(supply.at_compressor.Pa, supply.at_tool.Pa);
  air.compressor.free_air = VolumeFlow{0.001};  // less than the tool takes without any pressure
  EXPECT_EQ(supplied(air).at_tool.Pa, 0);
}

// A hose as thin as a straw chokes at its end; the answer stays finite, and a choked line is no better when the
// compressor gives more pressure than when it is not choked.
TEST(AirSupply, ChokedLine_IsTold) {
  Air air = usual();
  air.line = {hose(0.05, 0.004)};
  Tool big = tool_95();
  big.free_air = {0.2};
  air.compressor.free_air = VolumeFlow{1};
  const AirSupply supply = supplied(air, big);
  EXPECT_EQ(supply.held_by, AirHeldBy::choked);
  EXPECT_TRUE(supply.along.front().choked);
  EXPECT_GE(supply.at_tool.Pa, 0);
  EXPECT_LT(supply.at_tool.Pa + supply.ambient.Pa, supply.along.front().outlet_Pa);
}

// At 1500 m the compressor holds its ratio of pressures, and the tool wants more free air for the same pressure.
TEST(AirSupply, Height_LessPressureMoreAir) {
  Air air = usual();
  air.altitude.set(Length{1500});
  const AirSupply high = supplied(air), low = supplied(usual());
  const double share = standard_pressure(Length{1500})->Pa / 101325;
  EXPECT_NEAR(high.compressor_most.Pa, 6.9e5 * share, 1e-6);
  EXPECT_LT(high.at_tool.Pa, low.at_tool.Pa);
  EXPECT_GT(high.wanted.m3_s, low.wanted.m3_s);
}

TEST(AirSupply, Refused_WithWhatIsMissing) {
  const auto place = [](const Air& air, const Tool& tool = tool_95()) {
    const auto supply = supply_tool(air, tool);
    return supply ? std::string("none") : supply.error().place.english();
  };
  EXPECT_EQ(place(Air{}), "compressor");
  Air air = usual();
  air.line.clear();
  EXPECT_EQ(place(air), "hose");
  air = usual();
  air.compressor.pressure = Pressure{1e300};
  EXPECT_EQ(place(air), "pressure of the compressor");
  air = usual();
  air.compressor.free_air = VolumeFlow{1e300};
  EXPECT_EQ(place(air), "free air of the compressor");
  air = usual();
  air.compressor.free_air = VolumeFlow{std::nan("")};
  EXPECT_EQ(place(air), "compressor");
  air = usual();
  air.altitude.set(Length{12000});
  EXPECT_EQ(place(air), "altitude");
  air = usual();
  air.air_temperature.set(Temperature{1});
  EXPECT_EQ(place(air), "air temperature");
  Tool odd = tool_95();
  odd.free_air = {1e300};
  EXPECT_EQ(place(usual(), odd), "tool");
}

// Each change is solved anew: putting it in gives the pressure it promises. The most first.
TEST(AirChanges, EachGivesWhatItPromises) {
  Air air = usual(40);
  air.line.push_back(couplings(3));
  const auto changes = air_changes(air, tool_95());
  ASSERT_TRUE(changes);
  ASSERT_EQ(changes->size(), 4u);  // wider, shorter, fewer, more pressure
  const double now = supplied(air).at_tool.Pa;
  double before = 1e9;
  for (const AirChange& change : *changes) {
    const AirSupply then = supplied(change.air);
    EXPECT_DOUBLE_EQ(then.at_tool.Pa, change.at_tool.Pa) << word_of(change.kind);
    EXPECT_NEAR(change.gain.Pa, then.at_tool.Pa - now, 1e-6);
    EXPECT_GE(change.gain.Pa, 100);
    EXPECT_LE(change.gain.Pa, before);
    before = change.gain.Pa;
    if (change.kind == AirChangeKind::wider_hose) {
      EXPECT_DOUBLE_EQ(change.to, 0.025);
    }
    if (change.kind == AirChangeKind::shorter_hose) {
      EXPECT_DOUBLE_EQ(change.to, 20);
    }
    if (change.kind == AirChangeKind::fewer_couplings) {
      EXPECT_DOUBLE_EQ(change.from, 5);
      EXPECT_DOUBLE_EQ(change.to, 2);
    }
  }
}

TEST(AirChanges, SmallCompressor_LargerComesFirst) {
  Air air = usual();
  air.compressor.free_air = VolumeFlow{0.015};
  const auto changes = air_changes(air, tool_95());
  ASSERT_TRUE(changes);
  ASSERT_FALSE(changes->empty());
  EXPECT_EQ(changes->front().kind, AirChangeKind::larger_compressor);
  EXPECT_NEAR(changes->front().at_tool.Pa, supplied(usual()).at_tool.Pa, 1);
  EXPECT_FALSE(air_changes(Air{}, tool_95()));
}

// No remedy stands higher in the line than the tool or a part of it bears; a regulator is what is turned up.
TEST(AirChanges, MorePressure_RespectsLimitRatingAndRegulator) {
  Air air = usual(40);
  const auto more = [&](Pressure most = {1e9}) -> std::optional<AirChange> {
    for (const AirChange& change : air_changes(air, tool_95(), most).value_or(std::vector<AirChange>{}))
      if (change.kind == AirChangeKind::more_pressure) return change;
    return std::nullopt;
  };
  const double set = air.compressor.pressure->Pa;
  ASSERT_TRUE(more());
  const double wanted = more()->to;
  EXPECT_GT(wanted, set);
  EXPECT_FALSE(more({set}));
  EXPECT_DOUBLE_EQ(more({set + 3000})->to, set + 3000);
  air.line.front().rating = Pressure{set + 2000};
  EXPECT_DOUBLE_EQ(more()->to, set + 2000);
  EXPECT_DOUBLE_EQ(more({set + 1000})->to, set + 1000);
  air.line.front().rating = Pressure{set - 1};
  EXPECT_FALSE(more());
  air.line.front().rating.reset();
  air.compressor.regulator = Pressure{set - 20000};
  ASSERT_TRUE(more());
  EXPECT_DOUBLE_EQ(more()->from, set - 20000);
  EXPECT_LE(more()->to, set);
  EXPECT_DOUBLE_EQ(more()->air.compressor.pressure->Pa, set);
  EXPECT_DOUBLE_EQ(more()->air.compressor.regulator->Pa, more()->to);
  EXPECT_LE(standing_pressure(more({set - 15000})->air.compressor)->Pa, set - 15000);
}

TEST(AirStanding, CompressorOrRegulator) {
  Compressor compressor;
  EXPECT_FALSE(standing_pressure(compressor));
  compressor.regulator = Pressure{7e5};
  EXPECT_EQ(standing_pressure(compressor)->Pa, 7e5);
  compressor.pressure = Pressure{8e5};
  EXPECT_EQ(standing_pressure(compressor)->Pa, 7e5);
  compressor.regulator = Pressure{9e5};
  EXPECT_EQ(standing_pressure(compressor)->Pa, 8e5);
  compressor.regulator.reset();
  EXPECT_EQ(standing_pressure(compressor)->Pa, 8e5);
  EXPECT_FALSE(least_rating({}));
}

// Half inch typed as 12.7 mm is a trade size; the next is 16 mm. The widest of the list has none.
TEST(AirChanges, TradeSizes) {
  const auto wider = [](double bore_m) -> double {
    const auto changes = air_changes(usual(20, bore_m), tool_95());
    for (const AirChange& change : changes.value_or(std::vector<AirChange>{}))
      if (change.kind == AirChangeKind::wider_hose) return change.to;
    return 0;
  };
  EXPECT_DOUBLE_EQ(wider(0.0127), 0.016);
  EXPECT_DOUBLE_EQ(wider(0.015), 0.016);
  EXPECT_DOUBLE_EQ(wider(0.01905), 0.025);
  EXPECT_DOUBLE_EQ(wider(0.08), 0);
}

}  // namespace
}  // namespace burrow::test
