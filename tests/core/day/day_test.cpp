// The day: what readings do to the prediction, and what the numbers ask the crew to do.
#include "burrow/day/day.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

#include "burrow/bore/point_on_path.h"
#include "burrow/words/day_text.h"
#include "support/day_for_tests.h"

namespace burrow::test {
namespace {

// Limit: with nothing read the day says what the plan said.
TEST(Day, Limit_NothingReadIsThePlan) {
  const Day day;
  const DayAnswer answer = day.answer();
  const Assessment plan = judged(day.crossing);
  EXPECT_EQ(answer.nose_m, 0);
  EXPECT_NEAR(*answer.arrival.elevation_m, *plan.arrival.elevation_m, 1e-12);
  EXPECT_NEAR(*answer.arrival.sd_vertical_m / *plan.arrival.sd_vertical_m, 1, 2e-3);
  EXPECT_NEAR(*answer.arrival.chance_inside_exit_pit, *plan.arrival.chance_inside_exit_pit, 2e-3);
  EXPECT_EQ(answer.utilities.size(), 1u);
  EXPECT_NEAR(*answer.utilities[0].separation_m, *plan.utilities[0].separation_m, 1e-9);
  EXPECT_EQ(answer.advice, Advice::go_on);
  EXPECT_NEAR(*answer.rate.left_p50_s, *plan.advance_time_s.p50, 1e-6 * *plan.advance_time_s.p50);
}

// Derived: with c = 0 and known the covariance of two places is closed, s0² + θ0² s t + σ² s² (3t − s)/6; one fix moves
// the arrival by Cov/(Var + r²) times its own surprise and takes Cov²/(Var + r²) off the variance.
TEST(Day, Derived_OneFixByHand) {
  Day day;
  day.crossing.bore.model.steer_constant.set(Ratio{0});
  day.crossing.bore.model.steer_constant_sd.set(Ratio{0});
  day.mark(4).add(fix(1e4, 4, 0.05, 1.46, 0.04));
  const DayAnswer answer = day.answer();
  const double sigma = tables().soils[2].wander.rad_sqrt_m, s0 = 0.005, t0 = 0.005;
  ASSERT_EQ(tables().soils[2].id, "firm-clay");
  const auto cov = [&](double s, double t) {
    return s0 * s0 + t0 * t0 * s * t + sigma * sigma * s * s * (3 * t - s) / 6;
  };
  const double gain = cov(4, 8) / (cov(4, 4) + 0.04 * 0.04);
  EXPECT_NEAR(*answer.arrival.offset_m, gain * 0.05, 1e-9);
  EXPECT_NEAR(*answer.arrival.elevation_m, 98.60 + gain * (100 - 1.46 - 98.60), 1e-9);
  EXPECT_NEAR(*answer.arrival.sd_vertical_m, std::sqrt(cov(8, 8) - gain * cov(4, 8)), 1e-9);
  EXPECT_NEAR(answer.nose.sd_lateral_m, 0.04 * std::sqrt(cov(4, 4) / (cov(4, 4) + 0.04 * 0.04)), 1e-9);
}

TEST(Day, Level_TurnsTheArrivalItsWay) {
  for (const double grade : {-0.01, 0.01}) {
    Day day;
    Reading level = reading(ReadingKind::grade, 300, 1.5);
    level.grade = Ratio{grade};
    level.angle_sd = Angle{0.002};
    const double before = *day.answer().arrival.elevation_m, sd = *day.answer().arrival.sd_vertical_m;
    day.mark(1.5).add(level);
    const DayAnswer after = day.answer();
    EXPECT_GT((*after.arrival.elevation_m - before) * grade, 0);
    EXPECT_LT(*after.arrival.sd_vertical_m, 0.95 * sd);
  }
}

// Separations are those ahead: a main passed two metres ago is no more in the list; one beside the bore stays.
TEST(Day, Ahead_OnlyWhatLiesAhead) {
  Day day;
  EXPECT_EQ(day.mark(2).answer().utilities.size(), 1u);
  EXPECT_EQ(day.mark(6).answer().utilities.size(), 0u);
  Utility along = water_main(0, 97.0);
  along.path = {{-5, 1, 98.6}, {15, 1, 98.6}};
  day.crossing.site.utilities = {along};
  EXPECT_EQ(day.answer().utilities.size(), 1u);
}

// An arrival read at the exit face is where the bore came out; the line behind it is smoothed.
TEST(Day, Arrival_EndsTheUncertainty) {
  Day day;
  Reading arrival = reading(ReadingKind::arrival, 2000);
  arrival.offset = Length{0.10};
  arrival.elevation = Length{98.5};
  arrival.sd = Length{0.001};
  day.mark(6).add(arrival);
  const DayAnswer answer = day.answer();
  EXPECT_NEAR(*answer.arrival.offset_m, 0.10, 1e-3);
  EXPECT_LT(*answer.arrival.sd_lateral_m, 0.0011);
  const PathPoint middle = point_at(answer.smoothed, 4), plain = point_at(answer.filtered, 4);
  EXPECT_GT(middle.y_m, 0.02);
  EXPECT_NEAR(plain.y_m, 0, 1e-9);  // before the arrival nothing was read
  EXPECT_LT(middle.sd_lateral_m, plain.sd_lateral_m);
}

// A peg tells a little about the depth, and never more than the model of the heave is worth.
TEST(Day, Peg_NarrowsLittle) {
  Day day;
  day.mark(6);
  const double before = *day.answer().arrival.sd_vertical_m;
  Reading peg = reading(ReadingKind::peg, 2000);
  peg.station = Length{3};
  peg.rise = Length{0.003};
  const double after = *day.add(peg).answer().arrival.sd_vertical_m;
  EXPECT_LE(after, before);
  EXPECT_GT(after, 0.97 * before);
}

TEST(DayAdvice, Clean_GoOn) {
  Day day;
  const DayAnswer answer = day.mark(1.5).done().mark(3).done().answer();
  EXPECT_EQ(answer.advice, Advice::go_on);
  // Nothing but the permit, of which nobody has entered anything.
  EXPECT_TRUE(std::none_of(answer.reasons.begin(), answer.reasons.end(),
                           [](const DayReason& r) { return r.broken && r.code != "day.permit"; }));
}

// Method: an odd reading near an unexposed service: stop, do not reverse, expose. The same far from any: look.
TEST(DayAdvice, Method_OddReadingNearAnUnexposedService) {
  for (const bool near : {true, false}) {
    Day day;
    day.crossing.site.utilities = {gas_beside(4, near ? 97.9 : 96.0)};
    day.mark(3).mark(4).add(fix(1e5, 4, 0.4, 1.4, 0.02));
    const DayAnswer answer = day.answer();
    ASSERT_FALSE(answer.odd.empty());
    EXPECT_EQ(answer.near.size(), near ? 1u : 0u);
    if (near) {
      EXPECT_EQ(answer.advice, Advice::leave_and_expose);
      EXPECT_NE(advice_text(answer, UnitSystem::metric).find("Do not drive back"), std::string::npos);
    } else {
      EXPECT_NE(answer.advice, Advice::leave_and_expose);
      EXPECT_NE(answer.advice, Advice::go_on);
    }
  }
}

// An exposed service near the nose does not forbid to go back.
TEST(DayAdvice, Exposed_IsNotNear) {
  Day day;
  day.crossing.site.utilities = {gas_beside(4, 97.9, LocatedHow::exposed)};
  EXPECT_FALSE(day.mark(4).answer().near.empty());  // said, not shown
  day.crossing.site.test_holes = {hole_at(day.crossing.site.utilities[0], 4, 97.9)};
  EXPECT_TRUE(day.mark(4).answer().near.empty());
}

// Nobody knows how deep it is: within a metre in plan counts as near.
TEST(DayAdvice, UnknownDepth_CountsAsNear) {
  Day day;
  Utility gas = gas_beside(4, 97.9);
  for (PathVertex& v : gas.path) v.z_m.reset();
  day.crossing.site.utilities = {gas};
  const DayAnswer answer = day.mark(3.5).answer();
  ASSERT_EQ(answer.near.size(), 1u);
  EXPECT_TRUE(answer.near[0].depth_unknown);
  EXPECT_EQ(answer.advice, Advice::leave_and_expose);
}

// Out of reach of the exit: back out where the hole stands; in ground that closes within minutes look instead.
TEST(DayAdvice, OutOfReach_BackOutOnlyWhereTheHoleStands) {
  for (const char* soil : {"firm-clay", "loose-sand"}) {
    Day day;
    day.crossing.site.strata[0].soil = soil;
    Reading far = fix(1e5, 5, 1.6, 1.4, 0.02);
    far.confirmed = true;
    day.mark(3).done().mark(5).done().add(far);
    const DayAnswer answer = day.answer();
    ASSERT_TRUE(reason(answer, "day.out-of-reach")->broken) << soil;
    EXPECT_EQ(answer.advice, std::string(soil) == "firm-clay" ? Advice::back_out : Advice::stop_and_look) << soil;
    EXPECT_NEAR(answer.restart_aside_m, 5 * 0.065, 1e-12);
  }
}

// Method, over all kinds of days: near an unexposed live service the advice is never to back out.
TEST(DayAdvice, Property_NeverBackOutNearAnUnexposedService) {
  std::mt19937 engine(3);
  std::uniform_real_distribution<double> unit(0, 1);
  int near = 0;
  for (int i = 0; i < 300; ++i) {
    Day day;
    day.crossing.site.strata[0].soil = unit(engine) < 0.5 ? "firm-clay" : "stiff-clay";
    day.crossing.site.utilities = {gas_beside(1 + 6 * unit(engine), 97.2 + 1.0 * unit(engine))};
    const double nose = 0.5 + 7 * unit(engine);
    day.mark(nose).add(fix(1e5 * unit(engine), nose, 3 * unit(engine) - 1.5, 0.4 + 2 * unit(engine), 0.02));
    const DayAnswer answer = day.answer();
    if (answer.near.empty()) continue;
    ++near;
    EXPECT_NE(answer.advice, Advice::back_out);
    EXPECT_FALSE(answer.may_back_out);
  }
  EXPECT_GT(near, 30);
}

// A chance of contact over its stop ahead is no leave to bore; within a metre it asks to leave the tool and expose.
TEST(DayAdvice, Contact_NoAdviceFarExposeNear) {
  for (const double nose : {1.0, 5.5}) {
    Day day;
    day.crossing.site.utilities = {gas_beside(6, 98.55)};
    day.mark(nose);
    const DayAnswer answer = day.answer();
    ASSERT_TRUE(reason(answer, "day.contact") && reason(answer, "day.contact")->broken);
    EXPECT_EQ(answer.advice, nose < 2 ? Advice::record_only : Advice::leave_and_expose) << nose;
  }
}

TEST(DayAdvice, Ended_NoAdviceButWhereSomethingIsLeftToDo) {
  Day day;
  Reading end = reading(ReadingKind::end, 2000);
  end.how = EndHow::arrived;
  day.mark(6).add(end);
  EXPECT_FALSE(day.answer().advice);
  day.record.readings.back().how = EndHow::struck;
  EXPECT_EQ(day.answer().advice, Advice::get_out);
  for (const EndHow how : {EndHow::stuck, EndHow::lost, EndHow::daylight}) {
    day.record.readings.back().how = how;
    EXPECT_EQ(day.answer().advice, Advice::stop_and_look) << word_of(how);
  }
}

// As expected: nothing odd, and the factor of this bore is known better. Three times as slow everywhere: the time left
// grows with it.
TEST(DayRate, Expected_SharpensTheFactor) {
  Day day;
  const DayAnswer answer = day.mark(1.5).mark(3).mark(4.5).answer();
  ASSERT_EQ(answer.rate.pieces.size(), 3u);
  for (std::size_t i = 0; i < 3; ++i) {
    EXPECT_NEAR(answer.rate.pieces[i].taken_s / answer.rate.pieces[i].expected_s, 1, 1e-6);
    EXPECT_EQ(answer.rate.odds[i].front().what, OddRate::as_before);
  }
  EXPECT_NEAR(answer.rate.factor_ln, 0, 1e-6);
  EXPECT_LT(answer.rate.factor_ln_sd, 0.2);
}

// Second route: the chances of one odd piece by Bayes' rule written out.
TEST(DayRate, Bayes_WrittenOut) {
  Day day;
  day.mark(1.5).mark(3);
  const Reading last = day.mark(4.5).record.readings.back();
  const double expected = last.time.s - day.record.readings[2].time.s;
  day.record.readings.back().time.s += 5 * expected;  // six times as long
  const DayAnswer answer = day.answer();
  // Factor after two pieces that were surely (0.9 and more) as before.
  double mean = 0, variance = 0.628 * 0.628;
  const auto density = [](double y, double m, double v) {
    return std::exp(-(y - m) * (y - m) / (2 * v)) / std::sqrt(v);
  };
  const double stone = -std::expm1(-0.005 * 1.5), soft = -std::expm1(-0.02 * 1.5), hollow = -std::expm1(-0.003 * 1.5);
  double first_chance = 0;
  for (int piece = 0; piece < 3; ++piece) {
    const double y = piece == 2 ? std::log(6.0) : 0.0, noise = 0.25 * 0.25, v = variance + noise;
    const AdvancePoint at = [&] {
      const Assessment a = judged(day.crossing);
      for (const AdvancePoint& p : a.advance.points)
        if (p.s_m >= 0.75 + 1.5 * piece) return p;
      return a.advance.points.back();
    }();
    const double lost = at.grip >= 1.5 || judged(day.crossing).advance.held_until_m.value_or(0) > 0.75 + 1.5 * piece
                            ? 0.01
                        : at.grip >= 1 ? 0.05
                                       : 0.30;
    const double rest = std::max(0.05, 1 - stone - soft - hollow - lost);
    const double w[] = {rest * density(y, mean, v), stone * density(y, mean + 1.10, v + 0.25),
                        soft * density(y, mean - 0.69, v + 0.35 * 0.35), hollow * density(y, mean - 1.79, v + 0.25),
                        lost * density(y, mean + 1.61, v + 0.36)};
    double sum = 0;
    for (const double x : w) sum += x;
    for (const OddRateChance& odd : answer.rate.odds[static_cast<std::size_t>(piece)])
      EXPECT_NEAR(odd.chance, w[static_cast<int>(odd.what)] / sum, 1e-9) << piece << word_of(odd.what);
    first_chance = w[0] / sum;
    const double gain = first_chance * variance / v;
    mean += gain * (y - mean);
    variance *= 1 - gain;
  }
  EXPECT_LT(first_chance, 0.2);
  EXPECT_NE(answer.advice, Advice::go_on);
  ASSERT_TRUE(reason(answer, "day.rate"));
  EXPECT_TRUE(reason(answer, "day.rate")->broken);
}

TEST(DayRate, Fast_SoftPocketOrVoid) {
  Day day;
  day.mark(1.5).mark(3).mark(4.5);
  Reading& last = day.record.readings.back();
  const double before = day.record.readings[2].time.s;
  last.time.s = before + (last.time.s - before) / 8;
  const auto odds = day.answer().rate.odds.back();
  EXPECT_TRUE(odds.front().what == OddRate::hollow || odds.front().what == OddRate::soft_pocket);
}

// The time of a stop does not count; a tap too soon after another goes into the next piece; after a reversal the old
// hole tells nothing.
TEST(DayRate, Timeline_StopsShortRunsReversals) {
  Day day;
  day.add(reading(ReadingKind::mark, 100, 1.5))
      .add(reading(ReadingKind::stop, 150, 2.0))
      .add(reading(ReadingKind::go, 950))
      .add(reading(ReadingKind::mark, 960, 2.05))
      .add(reading(ReadingKind::mark, 1050, 3.0))
      .add(reading(ReadingKind::back, 1100, 2.2))
      .add(reading(ReadingKind::mark, 1200, 3.0))
      .add(reading(ReadingKind::mark, 1300, 4.5))
      .add(reading(ReadingKind::mark, 1400, 4.0));
  const DayAnswer answer = day.answer();
  ASSERT_EQ(answer.rate.pieces.size(), 4u);
  const double taken[] = {100, 50, 100, 100}, to[] = {1.5, 2.0, 3.0, 4.5};
  for (std::size_t i = 0; i < 4; ++i) {
    EXPECT_NEAR(answer.rate.pieces[i].taken_s, taken[i], 1e-9) << i;
    EXPECT_NEAR(answer.rate.pieces[i].to_m, to[i], 1e-9) << i;
  }
  EXPECT_EQ(answer.nose_m, 4.5);
  ASSERT_EQ(answer.left_out.size(), 1u);
  EXPECT_EQ(answer.left_out[0].trouble, ReadingTrouble::runs_back);
}

// One reading more: what it leaves uncertain is what is left once it is taken, and exposing what decides is worth most
// where the bore is known and the main is not.
TEST(DayNext, Fix_LeavesWhatItLeavesOnceTaken) {
  Day day;
  day.mark(4);
  const DayAnswer before = day.answer();
  const auto next = std::find_if(before.next.begin(), before.next.end(),
                                 [](const NextReading& n) { return n.kind == NextReadingKind::fix; });
  ASSERT_NE(next, before.next.end());
  Reading taken = fix(1e4, 4, before.nose.y_m, 100 - before.nose.z_m, 0.05);
  taken.vertical_sd = Length{0.06};
  const DayAnswer after = day.add(taken).answer();
  EXPECT_NEAR(*after.arrival.sd_lateral_m, next->sd_lateral_m, 1e-7);
  EXPECT_NEAR(*after.arrival.sd_vertical_m, next->sd_vertical_m, 1e-7);
}

TEST(DayNext, Expose_TurnsAContactThatOnlyNotKnowingMakes) {
  Day day;
  Utility gas = gas_beside(6, 98.0);
  gas.located.vertical_sd = gas.located.lateral_sd = Length{0.25};
  day.crossing.site.utilities = {gas};
  const DayAnswer answer = day.mark(3).answer();
  ASSERT_FALSE(answer.next.empty());
  ASSERT_EQ(answer.next.front().kind, NextReadingKind::expose);
  EXPECT_GT(answer.next.front().chance_to_turn, 0.5);
  EXPECT_EQ(answer.next.front().subject, "u1");
}

// The working of the chance to arrive comes out again from its inputs.
TEST(Day, Working_ComesOutAgain) {
  Day day;
  const DayAnswer answer = day.mark(4).answer();
  const auto w = std::find_if(answer.working.begin(), answer.working.end(),
                              [](const Working& one) { return one.code == "day.window"; });
  ASSERT_NE(w, answer.working.end());
  EXPECT_NEAR(w->value, input(*w, "P_window") * input(*w, "P_arrives"), 1e-12);
  EXPECT_EQ(w->value, *answer.arrival.chance_inside_exit_pit);
}

// Rejection: anything may stand in a record; nothing of it stops the answer or gives what is no number.
TEST(Day, Rejection_OddRecords) {
  std::mt19937 engine(5);
  std::uniform_real_distribution<double> unit(0, 1);
  for (int i = 0; i < 200; ++i) {
    Day day;
    if (i % 3 == 0) day.record.readings.clear();
    for (int k = 0; k < 12; ++k) {
      Reading r = reading(static_cast<ReadingKind>(engine() % 13), unit(engine) < 0.1 ? 1e9 : 3000 * unit(engine));
      const auto maybe = [&](double v) { return unit(engine) < 0.7 ? std::optional<double>(v) : std::nullopt; };
      if (const auto v = maybe(unit(engine) < 0.1 ? 1e6 : 9 * unit(engine))) r.nose = Length{*v};
      if (const auto v = maybe(2 * unit(engine) - 1)) r.grade = Ratio{*v};
      if (const auto v = maybe(3 * unit(engine) - 1.5)) r.heading = Angle{*v};
      if (const auto v = maybe(unit(engine) < 0.3 ? 0 : unit(engine))) r.angle_sd = Angle{*v};
      if (const auto v = maybe(1e3 * unit(engine) - 500)) r.offset = Length{*v};
      if (const auto v = maybe(50 * unit(engine))) r.depth = Length{*v};
      if (const auto v = maybe(9 * unit(engine))) r.station = Length{*v};
      if (const auto v = maybe(unit(engine) - 0.5)) r.rise = Length{*v};
      if (const auto v = maybe(1e4 * unit(engine))) r.elevation = Length{*v};
      if (const auto v = maybe(unit(engine) < 0.3 ? 0 : 1e7 * unit(engine))) r.pressure = Pressure{*v};
      day.add(r);
    }
    const DayAnswer answer = day.answer();
    for (const PathPoint& p : answer.smoothed.points) {
      ASSERT_TRUE(std::isfinite(p.z_m) && std::isfinite(p.y_m)) << i;
      ASSERT_TRUE(p.sd_vertical_m >= 0 && p.sd_lateral_m >= 0) << i;
    }
    for (const DayReason& r : answer.reasons) ASSERT_TRUE(std::isfinite(r.measured)) << i << r.code;
    for (const DayLine& line : day_lines(answer, day.crossing, UnitSystem::us))
      ASSERT_EQ(line.value.find("nan"), std::string::npos);
  }
}

TEST(Day, OpenRecord_TheNewestWithoutAnEnd) {
  Crossing crossing = clean_crossing();
  EXPECT_EQ(open_record(crossing), nullptr);
  DayRecord a, b, c;
  a.id = "d1";
  b.id = "d2";
  c.id = "d3";
  c.readings = {reading(ReadingKind::end, 1)};
  crossing.record = {a, b, c};
  EXPECT_EQ(open_record(crossing)->id, "d2");
}

TEST(DayText, Lines_SayAdviceNumbersAndUnits) {
  Day day;
  day.crossing.site.utilities = {gas_beside(6, 98.55)};
  day.mark(1.5);
  for (const UnitSystem units : {UnitSystem::metric, UnitSystem::us}) {
    const auto lines = day_lines(day.answer(), day.crossing, units);
    EXPECT_EQ(lines.front().what, "advice");
    EXPECT_EQ(lines.front().value.rfind("Do not bore: record only", 0), 0u);
    const bool contact = std::any_of(lines.begin(), lines.end(), [](const DayLine& l) {
      return l.what == "against" && l.value.find("chance to touch gas main") == 0;
    });
    EXPECT_TRUE(contact);
    EXPECT_NE(lines[1].value.find(units == UnitSystem::us ? "ft" : " m"), std::string::npos);
  }
}

}  // namespace
}  // namespace burrow::test
