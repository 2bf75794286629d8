// The pipe under its loads: what is judged, what is told, what is left out because something is not known.

#include <cmath>
#include <functional>
#include <set>

#include "burrow/check/load_profile.h"
#include "burrow/load/highway.h"
#include "burrow/pipe/ring.h"
#include "burrow/pipe/section.h"
#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

const PipeCheck* check(const Assessment& answer, std::string_view code) {
  const auto it = std::find_if(answer.pipe_checks.begin(), answer.pipe_checks.end(),
                               [&](const PipeCheck& c) { return c.code == code; });
  return it == answer.pipe_checks.end() ? nullptr : &*it;
}

std::set<std::string> pipe_findings(const Assessment& answer) {
  std::set<std::string> codes;
  for (const Finding& f : answer.findings)
    if (f.code.starts_with("pipe.") || f.code.starts_with("missing.pipe")) codes.insert(f.code);
  return codes;
}

TEST(PipeChecks, CleanCrossing_AllDoneAndWithin) {
  const Assessment answer = judged(clean_crossing());
  EXPECT_EQ(pipe_findings(answer), std::set<std::string>{}) << listed(answer);
  for (const char* code : {"pipe.hole", "pipe.pull", "pipe.pull-closed", "pipe.bend", "pipe.strain", "pipe.deflection",
                           "pipe.deflection-bare", "pipe.ring", "pipe.buckling", "pipe.buckling-bare"}) {
    const PipeCheck* c = check(answer, code);
    ASSERT_TRUE(c && c->value && c->limit && c->utilisation) << code;
    EXPECT_LE(*c->utilisation, 1) << code;
    EXPECT_FALSE(c->source.text.empty()) << code;
    EXPECT_TRUE(working(answer, code, "pipe")) << code;
  }
  for (const PipeCheck& c : answer.pipe_checks) {
    EXPECT_FALSE(c.name.empty());
    if (c.value) {
      EXPECT_TRUE(working(answer, c.code, "pipe")) << c.code;  // every number shows its working
    } else {
      EXPECT_FALSE(c.text.empty()) << c.code;
    }
  }
}

// By hand at the middle of the lane: hole 65 mm at 1.40 m, crown 1.3675 m below level ground, firm clay 18.5 or so
// kN/m³.
TEST(PipeChecks, Loads_ByHand) {
  const Crossing crossing = clean_crossing();
  const Assessment answer = judged(crossing);
  const SoilClass& clay = *find_soil(tables(), "firm-clay");
  const auto at = [&](double station) {
    return *std::min_element(answer.loads.begin(), answer.loads.end(), [&](const LoadPoint& a, const LoadPoint& b) {
      return std::abs(a.station_m - station) < std::abs(b.station_m - station);
    });
  };
  const LoadPoint middle = at(4);
  EXPECT_NEAR(middle.earth_Pa, clay.unit_weight.N_m3 * middle.depth_m, 1e-6);
  const double b = 0.065, k = 0.110;
  EXPECT_NEAR(middle.earth_arched_Pa, clay.unit_weight.N_m3 * b * (1 - std::exp(-2 * k * middle.depth_m / b)) / (2 * k),
              1e-6);
  EXPECT_NEAR(middle.live_Pa, highway_pressure(Length{middle.depth_m}, Length{b})->pressure_Pa, 1e-6);
  EXPECT_EQ(middle.live, "f1");
  EXPECT_EQ(middle.water_Pa, 0);
  EXPECT_EQ(at(8).live_Pa, 0);
  EXPECT_GT(at(6.5).live_Pa, 0);  // half of the spread beyond the edge it still counts
}

TEST(PipeChecks, Deflection_ByHand) {
  const Assessment answer = judged(clean_crossing());
  const PipeCheck* c = check(answer, "pipe.deflection");
  const Working* w = working(answer, "pipe.deflection");
  // PE 100 at 20 °C, between 60 °F 1.18 and 73.4 °F 1.00; 50 years 29 ksi, short 130 ksi.
  const double warm = 1.18 + (293.15 - 288.7056) / (296.15 - 288.7056) * (1.00 - 1.18);
  EXPECT_NEAR(input(*w, "E_long"), 29 * 6894757.3 * warm, 2e4);
  EXPECT_NEAR(input(*w, "E_short"), 130 * 6894757.3 * warm, 1e5);
  EXPECT_EQ(input(*w, "DR"), 11);
  EXPECT_EQ(*c->limit, 0.075);  // no pressure entered
  Crossing pressed = clean_crossing();
  pressed.pipe->operating_pressure.set(Pressure{4e5});
  const Assessment under = judged(pressed);
  EXPECT_EQ(*check(under, "pipe.deflection")->limit, 0.05);
  EXPECT_NEAR(*check(under, "pipe.pressure")->value, 4e5 * 10 / 2, 1e-6);
}

// Without a pipe nothing but that it is missing.
TEST(PipeChecks, NoPipe_OnlyMissing) {
  Crossing crossing = clean_crossing();
  crossing.pipe.reset();
  const Assessment answer = judged(crossing);
  EXPECT_EQ(pipe_findings(answer), std::set<std::string>{"missing.pipe"});
  EXPECT_TRUE(answer.pipe_checks.empty());
  EXPECT_FALSE(answer.loads.empty());  // the chart needs no pipe
}

// With a diameter alone: what can be done is done, the rest is named.
TEST(PipeChecks, DiameterAlone_RestIsNamed) {
  Crossing crossing = clean_crossing();
  crossing.pipe = Pipe{};
  crossing.pipe->outside_diameter = Length{0.055};
  const Assessment answer = judged(crossing);
  EXPECT_EQ(pipe_findings(answer), (std::set<std::string>{"missing.pipe-wall", "missing.pipe-material"}));
  EXPECT_EQ(answer.verdict, Verdict::incomplete);
  EXPECT_TRUE(check(answer, "pipe.hole")->value);
  EXPECT_TRUE(check(answer, "pipe.earth")->value);
  for (const char* code : {"pipe.pull", "pipe.ring", "pipe.bend"}) {
    ASSERT_TRUE(check(answer, code)) << code;
    EXPECT_FALSE(check(answer, code)->value) << code;
    EXPECT_FALSE(check(answer, code)->text.empty()) << code;
  }
  crossing.pipe->outside_diameter.reset();
  EXPECT_EQ(pipe_findings(judged(crossing)), (std::set<std::string>{"missing.pipe-diameter", "missing.pipe-material"}));
}

TEST(PipeChecks, Bundle_StrengthIsNotJudged_AndSaid) {
  Crossing crossing = clean_crossing();
  crossing.pipe->material = "duct-bundle";
  crossing.pipe->outside_diameter = Length{0.025};
  crossing.pipe->count.set(3);
  const Assessment answer = judged(crossing);
  EXPECT_EQ(pipe_findings(answer), (std::set<std::string>{"pipe.no-law"})) << listed(answer);
  EXPECT_NEAR(*check(answer, "pipe.hole")->value, 0.065 / (0.025 * 2.1547), 1e-9);
}

TEST(PipeChecks, Hole_TooNarrowTightAndWide) {
  Crossing crossing = clean_crossing();
  crossing.pipe->outside_diameter = Length{0.063};
  EXPECT_EQ(find(judged(crossing), "pipe.hole")->severity, Severity::caution);
  crossing.pipe->head_diameter = Length{0.07};
  EXPECT_EQ(find(judged(crossing), "pipe.hole")->severity, Severity::stop);
  EXPECT_EQ(judged(crossing).verdict, Verdict::stop);
  crossing.pipe->head_diameter.reset();
  crossing.pipe->outside_diameter = Length{0.04};
  EXPECT_EQ(find(judged(crossing), "pipe.hole"), nullptr);
  EXPECT_EQ(find(judged(crossing), "pipe.hole-wide")->severity, Severity::caution);
}

TEST(PipeChecks, Hose_IsNoTensionMemberUnlessRated) {
  Crossing crossing = clean_crossing();
  crossing.pipe->pull_by.set(PullBy::hose);
  const Assessment unrated = judged(crossing);
  ASSERT_TRUE(find(unrated, "pipe.hose-unrated"));
  EXPECT_EQ(unrated.verdict, Verdict::stop);
  crossing.pipe->hose_rating = Force{1e5};
  EXPECT_FALSE(find(judged(crossing), "pipe.hose-unrated"));
  EXPECT_LT(*check(judged(crossing), "pipe.hose")->utilisation, 1);
  crossing.pipe->hose_rating = Force{1};
  EXPECT_EQ(find(judged(crossing), "pipe.hose")->severity, Severity::stop);
  crossing.pipe->insertion.set(Insertion::towed);  // then the hose carries nothing but air
  EXPECT_FALSE(find(judged(crossing), "pipe.hose"));
}

TEST(PipeChecks, Insertion_PushedIsJudgedByBuckling) {
  Crossing crossing = clean_crossing();
  crossing.pipe->insertion.set(Insertion::pushed);
  const Assessment answer = judged(crossing);
  EXPECT_FALSE(check(answer, "pipe.pull"));
  ASSERT_TRUE(check(answer, "pipe.push"));
  crossing.pipe->insertion.set(Insertion::pulled_after);
  EXPECT_EQ(*check(judged(crossing), "pipe.pull")->value, *check(answer, "pipe.push")->value);
}

// A wet hole: less friction, the pipe floats, water presses from outside.
TEST(PipeChecks, Water_FloatsAndPresses) {
  Crossing crossing = clean_crossing();
  const Assessment dry = judged(crossing);
  crossing.site.water = LevelLine{{-8, 99.5}, {20, 99.5}};
  const Assessment wet = judged(crossing);
  EXPECT_TRUE(find(wet, "pipe.floats")) << listed(wet);
  EXPECT_FALSE(find(dry, "pipe.floats"));
  EXPECT_GT(*check(wet, "pipe.buckling-bare")->value, *check(dry, "pipe.buckling-bare")->value);
  EXPECT_NEAR(wet.loads.front().water_Pa, 9806.65 * 0.9, 1);  // axis at 98.60 m
  crossing.site.water.reset();
  const Assessment unknown = judged(crossing);
  EXPECT_FALSE(check(unknown, "pipe.buckling")->value);  // never taken as dry
  EXPECT_GE(*check(unknown, "pipe.pull")->value, *check(dry, "pipe.pull")->value);
}

// The longer the pull and the hotter the pipe, the less it bears; beyond what is known it is said.
TEST(PipeChecks, SafePull_TimeAndTemperature) {
  Crossing crossing = clean_crossing();
  const auto safe = [&] { return *check(judged(crossing), "pipe.safe-pull")->value; };
  const double cool = safe();
  crossing.pipe->pull_time.set(Duration{12 * 3600});
  const double slow = safe();
  EXPECT_LT(slow, cool);
  crossing.pipe->temperature.set(Temperature{311});
  EXPECT_LT(safe(), slow);
  crossing.pipe->temperature.set(Temperature{360});
  EXPECT_TRUE(find(judged(crossing), "pipe.beyond"));
  EXPECT_FALSE(check(judged(crossing), "pipe.pull")->value);
  crossing.pipe->temperature = Pipe{}.temperature;
  crossing.pipe->pull_time.set(Duration{1e6});
  EXPECT_TRUE(find(judged(crossing), "pipe.beyond"));
}

TEST(PipeChecks, Traffic_WordsNotEnteredOrNotKnown) {
  Crossing crossing = clean_crossing();
  crossing.site.surface.front().traffic.reset();
  EXPECT_EQ(find(judged(crossing), "pipe.traffic-taken")->severity, Severity::note);
  crossing.site.surface.front().traffic = "ox carts";
  const Assessment odd = judged(crossing);
  EXPECT_EQ(find(odd, "pipe.traffic-unknown")->severity, Severity::caution);
  EXPECT_GT(*check(odd, "pipe.live")->value, 0);
  crossing.site.surface.front().traffic = "none";
  EXPECT_FALSE(check(judged(crossing), "pipe.live"));
}

TEST(PipeChecks, ThinWall_BucklesAndFlattens) {
  Crossing crossing = clean_crossing();
  crossing.pipe->sdr = Ratio{40};
  const Assessment answer = judged(crossing);
  EXPECT_TRUE(find(answer, "pipe.deflection-bare")) << listed(answer);
  EXPECT_TRUE(find(answer, "pipe.buckling-bare"));
  EXPECT_LT(find(answer, "pipe.buckling-bare")->margin.value_or(1), 0);
}

// On its limit to within a tenth: said as a note, and nothing else.
TEST(PipeChecks, NearTheLimit_IsANote) {
  Crossing crossing = clean_crossing();
  crossing.pipe->operating_pressure.set(Pressure{8e6 / 5 * 0.95});  // 8 MPa, (DR − 1)/2 = 5
  const Assessment answer = judged(crossing);
  ASSERT_TRUE(find(answer, "pipe.near")) << listed(answer);
  EXPECT_EQ(find(answer, "pipe.near")->severity, Severity::note);
  EXPECT_NEAR(*find(answer, "pipe.near")->measured, 0.95, 1e-9);
  EXPECT_EQ(answer.verdict, judged(clean_crossing()).verdict);
}

// Pieces with joints want a far wider bend than the pipe.
TEST(PipeChecks, Joints_WidenTheBend) {
  Crossing crossing = clean_crossing();
  EXPECT_NEAR(*check(judged(crossing), "pipe.bend")->limit, 25 * 0.055, 1e-9);
  crossing.pipe->piece_length = Length{3};
  EXPECT_NEAR(*check(judged(crossing), "pipe.bend")->limit, 100 * 0.055, 1e-9);
}

TEST(PipeChecks, DaylightAtOnce_NothingIsMadeUp) {
  Crossing crossing = clean_crossing();
  crossing.bore.launch.elevation = Length{101};
  const Assessment answer = judged(crossing);
  EXPECT_TRUE(answer.loads.empty());
  for (const PipeCheck& c : answer.pipe_checks)
    if (c.code != "pipe.hole" && c.code != "pipe.safe-pull") {
      EXPECT_TRUE(!c.value || std::isfinite(*c.value)) << c.code;
    }
}

// Whatever a person sets as a limit, or a table of their own says, is answered.
TEST(PipeChecks, OddLimitsAndTables_AreAnswered) {
  for (const char* id : {"pipe_hole_low", "pipe_hole_high", "pipe_pull_caution", "pipe_pull_stop",
                         "pipe_buckling_safety", "pipe_near", "strain_plastic"})
    for (const double value : {0.0, -1.0, 1e300}) {
      Crossing crossing = clean_crossing();
      crossing.limits[id] = {value, "odd", {}};
      for (const PipeCheck& c : judged(crossing).pipe_checks) {
        EXPECT_TRUE(!c.value || std::isfinite(*c.value)) << id << value << c.code;
        EXPECT_TRUE(!c.limit || std::isfinite(*c.limit)) << id << value << c.code;
      }
    }
  Tables own = tables();
  for (PipeMaterial& material : own.pipes)
    if (material.strength) material.strength->strain_limit = "nobody_knows";
  const Assessment answer = assess(clean_crossing(), own);
  EXPECT_FALSE(check(answer, "pipe.strain")->value);
}

// Odd pipes that a file may hold.
TEST(PipeChecks, OddPipes_AreAnswered) {
  const std::vector<std::function<void(Pipe&)>> odd{[](Pipe& p) { p.count.set(9000000000000000); },
                                                    [](Pipe& p) { p.wall = Length{0}; },
                                                    [](Pipe& p) { p.wall = Length{1e5}; },
                                                    [](Pipe& p) { p.sdr = Ratio{1e-300}; },
                                                    [](Pipe& p) { p.sdr = Ratio{1e5}; },
                                                    [](Pipe& p) { p.outside_diameter = Length{5}; },
                                                    [](Pipe& p) { p.outside_diameter = Length{1e-300}; },
                                                    [](Pipe& p) { p.operating_pressure.set(Pressure{1e308}); },
                                                    [](Pipe& p) { p.temperature.set(Temperature{1e-300}); },
                                                    [](Pipe& p) { p.temperature.set(Temperature{1e308}); },
                                                    [](Pipe& p) { p.pull_time.set(Duration{1e-300}); },
                                                    [](Pipe& p) { p.piece_length = Length{0}; },
                                                    [](Pipe& p) { p.head_diameter = Length{5}; },
                                                    [](Pipe& p) { p.insertion.set(Insertion::pushed); }};
  for (std::size_t i = 0; i < odd.size(); ++i)
    for (const char* material : {"pe100", "copper-k", "steel-sch40", "pvc-40", "duct-bundle", ""}) {
      Crossing crossing = clean_crossing();
      crossing.pipe->material = material;
      odd[i](*crossing.pipe);
      const Assessment answer = judged(crossing);
      for (const PipeCheck& c : answer.pipe_checks)
        EXPECT_TRUE((!c.value || std::isfinite(*c.value)) && (!c.limit || std::isfinite(*c.limit)) &&
                    (!c.utilisation || std::isfinite(*c.utilisation)))
            << i << material << c.code;
      for (const Working& w : answer.working)
        for (const WorkingInput& input : w.inputs)
          EXPECT_TRUE(std::isfinite(input.value)) << i << w.code << input.symbol;
    }
}

// The chart's curve passes through the load on the bore itself.
TEST(LoadProfile, AgreesWithTheLoadAlongTheBore) {
  const Crossing crossing = clean_crossing();
  const Assessment answer = judged(crossing);
  for (const LoadPoint& load : answer.loads) {
    const LoadProfile profile = load_profile(crossing, tables(), answer, load.station_m);
    ASSERT_TRUE(profile.pipe_depth_m);
    EXPECT_NEAR(*profile.pipe_depth_m, load.depth_m, 1e-9);
    const auto deeper = std::find_if(profile.by_depth.begin(), profile.by_depth.end(),
                                     [&](const LoadPoint& p) { return p.depth_m >= *profile.pipe_depth_m; });
    ASSERT_TRUE(deeper != profile.by_depth.begin() && deeper != profile.by_depth.end());
    EXPECT_GE(deeper->earth_Pa, load.earth_Pa - 1e-6);
    EXPECT_LE(std::prev(deeper)->earth_Pa, load.earth_Pa + 1e-6);
  }
  const LoadProfile beyond = load_profile(crossing, tables(), answer, 15);
  EXPECT_FALSE(beyond.pipe_depth_m);
  EXPECT_FALSE(beyond.by_depth.empty());
  EXPECT_TRUE(load_profile(crossing, tables(), answer, std::nan("")).by_depth.empty());
}

}  // namespace
}  // namespace burrow::test
