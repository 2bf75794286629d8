// What was measured before and after the bore, and the picture of the passing tool.

#include <gtest/gtest.h>

#include <cmath>

#include "burrow/check/rise_while_boring.h"
#include "burrow/soil/movement.h"
#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

LevelPeg peg(double station_m, double before_m, std::optional<double> after_m, std::optional<double> settled_m = {}) {
  LevelPeg p;
  p.station = Length{station_m};
  p.before = Length{before_m};
  if (after_m) p.after = Length{*after_m};
  if (settled_m) p.settled = Length{*settled_m};
  return p;
}

Crossing with_pegs(std::vector<LevelPeg> pegs) {
  Crossing crossing = clean_crossing();
  crossing.site.surface.front().levels.pegs = std::move(pegs);
  return crossing;
}

// Limits of a road: 6 and 10 mm (first values of this program). 3/8 in is 9.5 mm, 7/16 in is 11.1 mm.
TEST(Levels, RoseAndSank_ByTheLimitsOfTheRoad) {
  const std::string road = clean_crossing().site.surface.front().id;
  struct Case {
    double by_m;
    std::optional<Severity> severity;
  };
  for (const Case& c : {Case{0.0005, {}},
                        {0.0059, {}},
                        {0.0061, Severity::caution},
                        {0.0095, Severity::caution},
                        {0.0111, Severity::stop}})
    for (const double sign : {1.0, -1.0})
      for (const bool later : {false, true}) {
        const double then = 100 + sign * c.by_m;
        const Assessment answer = judged(with_pegs(
            {peg(3.5, 100, later ? std::nullopt : std::optional(then), later ? std::optional(then) : std::nullopt),
             peg(4.5, 100, 100)}));
        const Finding* shown_text = find(answer, sign > 0 ? "surface.levels-rose" : "surface.levels-sank", road);
        EXPECT_FALSE(find(answer, sign > 0 ? "surface.levels-sank" : "surface.levels-rose", road));
        ASSERT_EQ(shown_text != nullptr, c.severity.has_value()) << c.by_m << listed(answer);
        if (!shown_text) continue;
        EXPECT_EQ(shown_text->severity, *c.severity) << c.by_m;
        EXPECT_NEAR(*shown_text->measured, c.by_m, 1e-9);
        EXPECT_EQ(shown_text->station_m, 3.5);
      }
}

TEST(Levels, NothingToCompare_NothingSaid) {
  LevelPeg without = peg(4, 100, 100.5);
  without.before.reset();
  const Assessment answer = judged(with_pegs({without, peg(4, 100, {})}));
  for (const Finding& f : answer.findings) EXPECT_FALSE(f.code.starts_with("surface.levels")) << f.code;
}

TEST(Levels, MoreThanTheHighEstimate_IsACaution) {
  const Assessment plain = judged(clean_crossing());
  const double high = *plain.surface.heave_high_m;
  const std::string road = clean_crossing().site.surface.front().id;
  EXPECT_FALSE(find(judged(with_pegs({peg(4, 100, 100 + high * 0.9)})), "surface.levels-above-estimate", road));
  const Assessment answer = judged(with_pegs({peg(4, 100, 100 + high + 0.002)}));
  const Finding* shown_text = find(answer, "surface.levels-above-estimate", road);
  ASSERT_TRUE(shown_text) << listed(answer);
  EXPECT_LE(*shown_text->limit, high + 1e-12);
  EXPECT_LT(*shown_text->margin, 0);
}

TEST(Camera, WhatItFound) {
  const auto shown_text = [](std::optional<CameraResult> before, std::optional<CameraResult> after, bool sewer) {
    Crossing crossing = clean_crossing();
    crossing.site.utility_search.laterals = Laterals::none_here;
    if (sewer) crossing.site.utilities.front().kind = UtilityKind::sewer;
    crossing.site.utility_search.camera_before.result = before;
    crossing.site.utility_search.camera_after.result = after;
    const Assessment answer = judged(crossing);
    std::string codes;
    for (const Finding& f : answer.findings)
      if (f.code.starts_with("site.camera"))
        codes += f.code.substr(12) + (f.severity == Severity::stop ? "!" : f.severity == Severity::note ? "." : "?");
    return codes;
  };
  constexpr auto nothing = CameraResult::nothing_found, something = CameraResult::something_found;
  EXPECT_EQ(shown_text({}, {}, false), "");
  EXPECT_EQ(shown_text({}, {}, true), "before.");
  EXPECT_EQ(shown_text(nothing, {}, true), "after.");
  EXPECT_EQ(shown_text(nothing, nothing, true), "");
  EXPECT_EQ(shown_text(something, {}, true), "before-found?after.");
  EXPECT_EQ(shown_text(nothing, something, true), "after-found!");
  EXPECT_EQ(shown_text({}, something, false), "after-found!") << "wherever it was looked for";
}

// Second route: the field of the passing tool in core/soil, with the share that gives the same endless bore.
TEST(Passing, RiseWithTheTipAt_AsThePassingField) {
  std::vector<HeavePoint> heave;
  for (int i = 0; i <= 60; ++i) {
    const double share = 0.3 + 0.01 * i, depth = 0.8 + 0.02 * i;
    heave.push_back({i * 0.25, 0, depth, share * 0.0325 * 0.0325 / depth, 0});
  }
  for (const double tip : {-3.0, 0.0, 4.1, 15.0, 40.0}) {
    const std::vector<double> rise = rise_with_tip_at(heave, tip);
    for (std::size_t i = 0; i < heave.size(); ++i) {
      OpenedHole hole;
      hole.radius = Length{0.0325};
      hole.axis_depth = Length{heave[i].depth_m};
      hole.share = Ratio{0.3 + 0.01 * static_cast<double>(i)};
      EXPECT_NEAR(rise[i], surface_rise_in_passing(hole, {0}, {heave[i].station_m - tip})->m, 1e-12);
    }
  }
}

}  // namespace
}  // namespace burrow::test
