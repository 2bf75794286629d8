// Every sentence of wrong advice that was seen on site: "Go on" stood beside a red "Stop".
#include <gtest/gtest.h>

#include <cmath>

#include "burrow/crossing/day_record.h"
#include "burrow/words/day_text.h"
#include "support/day_for_tests.h"

namespace burrow::test {
namespace {

/// A gas main in the way, traced, not exposed.
Day under_gas(double gas_elevation_m = 98.95) {
  Day day;
  day.crossing.site.utilities = {gas_beside(4, gas_elevation_m)};
  return day;
}

Reading note(double time_s, const char* text) {
  Reading r = reading(ReadingKind::note, time_s);
  r.text = text;
  return r;
}

Reading peg(double station_m, double rise_m) {
  Reading r = reading(ReadingKind::peg, 1000);
  r.station = Length{station_m};
  r.rise = Length{rise_m};
  return r;
}

Reading pressure(double Pa) {
  Reading r = reading(ReadingKind::pressure, 900);
  r.pressure = Pressure{Pa};
  r.at = "tool";
  return r;
}

TEST(DayWrong, NoseUnderAnUnexposedGasMain) {
  for (const double nose : {3.2, 4.0, 4.4}) {
    Day day = under_gas();
    const DayAnswer answer = day.mark(nose).done().answer();
    EXPECT_GE(gravity(*answer.advice), gravity(Advice::stop_until_exposed)) << nose;
    EXPECT_FALSE(answer.may_back_out);
  }
}

// At the mark before it the run sheet says stop; it is not ticked off, and nobody can take it on.
TEST(DayWrong, MarkThatSaysStopUntilExposed) {
  Day day = under_gas();
  day.mark(2.6).taken_on();
  EXPECT_EQ(day.advice(), Advice::stop_until_exposed);
  Reading ticked = reading(ReadingKind::done, 1e4);
  for (const auto& [task, word] : EnumNames<MarkTask>::list) ticked.tasks.emplace_back(word);
  EXPECT_EQ(day.add(ticked).advice(), Advice::stop_until_exposed);
  // Entered, it is lifted.
  day.crossing.site.test_holes = {hole_at(day.crossing.site.utilities[0], 4, 98.95)};
  EXPECT_FALSE(broken(day.answer(), "day.expose"));
}

TEST(DayWrong, AfterStruckGas) {
  Day day;
  Reading end = reading(ReadingKind::end, 2000);
  end.how = EndHow::struck;
  day.mark(3).done().add(end);
  EXPECT_EQ(day.advice(), Advice::get_out);
  day.record.readings.back() = note(2000, "Struck gas");
  EXPECT_EQ(day.advice(), Advice::get_out);
  day.record.readings.back() = reading(ReadingKind::danger, 2000);
  EXPECT_EQ(day.advice(), Advice::get_out);
  const std::string text = advice_text(day.answer(), UnitSystem::metric);
  for (const char* said : {"upwind", "gas and as live power", "nothing of metal", "valve", "emergency number"})
    EXPECT_NE(text.find(said), std::string::npos) << said;
}

TEST(DayWrong, AfterSmellOfGas) {
  for (const char* words : {"smell of gas", "Gasgeruch in der Grube", "it hisses", "smoke from the pit", "es zischt"}) {
    Day day;
    day.mark(3).done().add(note(2000, words));
    EXPECT_EQ(day.advice(), Advice::get_out) << words;
  }
  // The same as the reason of a stop.
  Day day;
  Reading stop = reading(ReadingKind::stop, 2000, 3.0);
  stop.why = "smell of gas";
  day.mark(3).done().add(stop).add(reading(ReadingKind::go, 2100));
  EXPECT_EQ(day.advice(), Advice::get_out);
}

// A word that may mean nothing is looked at; said to be harmless, it no longer counts.
TEST(DayWrong, NoteThatMayMeanDanger) {
  Day day;
  day.mark(3).done().add(note(2000, "sounds of metal"));
  EXPECT_EQ(day.advice(), Advice::stop_and_look);
  day.record.readings.back().confirmed = true;
  EXPECT_EQ(day.advice(), Advice::go_on);
}

// Danger is taken back only with a reason.
TEST(DayWrong, DangerStruckThroughWithoutAReason) {
  Day day;
  day.mark(3).done().add(reading(ReadingKind::danger, 2000));
  day.record.readings.back().cancelled = "";
  EXPECT_EQ(day.advice(), Advice::get_out);
  day.record.readings.back().cancelled = "tapped with a glove, A. Nobody";
  EXPECT_EQ(day.advice(), Advice::go_on);
  day.add(note(2100, "smell of gas"));
  day.record.readings.back().cancelled = "";
  EXPECT_EQ(day.advice(), Advice::get_out);
  day.record.readings.back().cancelled = "the tar of the road, A. Nobody";
  EXPECT_EQ(day.advice(), Advice::go_on);
}

TEST(DayWrong, Pressure2BarWhere6Point8Predicted) {
  Day day;
  give_air(day.crossing);
  const double predicted = judged(day.crossing).air.pressure_worked_with_Pa.value();
  day.mark(3).done();
  EXPECT_EQ(Day(day).add(pressure(predicted)).advice(), Advice::go_on);
  EXPECT_EQ(Day(day).add(pressure(2.0e5)).advice(), Advice::stop_and_look);
  EXPECT_EQ(Day(day).add(pressure(0)).advice(), Advice::stop_and_look);
  EXPECT_EQ(Day(day).add(pressure(1.3 * predicted)).advice(), Advice::stop_and_look);
}

// The road's stop limit is 10 mm, wherever the peg stands: behind the nose, ahead of it, beside the road.
TEST(DayWrong, Peg20MillimetresWhere10IsTheLimit) {
  for (const double station : {1.0, 2.9, 5.5, 7.5, -3.0}) {
    Day day;
    day.mark(3).done();
    EXPECT_EQ(Day(day).add(peg(station, 0.020)).advice(), Advice::stop_and_look) << station;
    EXPECT_EQ(Day(day).add(peg(station, -0.020)).advice(), Advice::stop_and_look) << station;
    const DayAnswer caution = Day(day).add(peg(station, 0.008)).answer();
    EXPECT_TRUE(broken(caution, "day.heave-caution"));
    EXPECT_TRUE(caution.with_care);
  }
  Day day;
  day.mark(3).done().add(peg(3, 0.020));
  EXPECT_NE(advice_text(day.answer(), UnitSystem::metric).find("traffic"), std::string::npos);
}

TEST(DayWrong, ExpiredTicket) {
  Day day;
  day.mark(1.5).done().taken_on();
  ASSERT_EQ(day.advice(), Advice::go_on);
  UtilitySearch& search = day.crossing.site.utility_search;
  search.valid_to = "2026-03-01";
  EXPECT_EQ(day.advice(), Advice::record_only);
  search.valid_to.reset();
  EXPECT_EQ(day.advice(), Advice::record_only);
  search.valid_to = "2026-03-24";
  search.marks_visible.reset();
  EXPECT_EQ(day.advice(), Advice::record_only);
}

// A ticket that ran out over night.
// Somebody signed against it, today or without a day: nobody can take that on.
TEST(DayWrong, NoGoSigned) {
  for (const std::optional<std::string>& day : {std::optional<std::string>("2026-03-02"), {}}) {
    Day signed_against;
    signed_against.crossing.permit.crew = {GoDecision::no_go, "A. Nobody", day, ""};
    signed_against.mark(1.5).done().taken_on();
    EXPECT_EQ(signed_against.advice(), Advice::record_only);
  }
  Day yesterday;
  yesterday.crossing.permit.crew = {GoDecision::no_go, "A. Nobody", "2026-03-01", ""};
  EXPECT_EQ(yesterday.mark(1.5).done().advice(), Advice::go_on);
}

// What a supervisor is asked for before the first blow, and nobody entered, is never green.
TEST(DayWrong, PermitOpen_NeverGreen) {
  Day day;
  day.mark(1.5).done();
  const DayAnswer answer = day.answer();
  EXPECT_EQ(answer.advice, Advice::go_on);
  EXPECT_TRUE(broken(answer, "day.permit"));
  EXPECT_TRUE(answer.with_care);
}

TEST(DayWrong, TicketThatEndsWhileTheBoreIsOpen) {
  Day day;
  day.record.started = "2026-03-01T22:00:00+00:00";
  day.crossing.site.utility_search.valid_to = "2026-03-02";
  day.mark(1.5).done();
  EXPECT_EQ(day.advice(), Advice::go_on);
  Reading late = reading(ReadingKind::go, 30 * 3600.0);  // 04:00 on the third
  EXPECT_EQ(Day(day).add(late).advice(), Advice::record_only);
  day.crossing.site.utility_search.valid_to = "2026-03-01";  // judged on the second
  EXPECT_EQ(day.advice(), Advice::record_only);
}

// An odd fix, ahead of the last mark, 0.7 m from gas: it said "take a fix".
TEST(DayWrong, OddFix0Point7MetresFromGas) {
  Day day;
  day.crossing.site.utilities = {gas_beside(5, 97.2)};  // far below the bore as planned: 1.3 m
  day.mark(3).done();
  ASSERT_EQ(day.advice(), Advice::go_on) << "the plan passes it well clear";
  day.add(fix(2000, 4.8, 0.0, 100 - 98.0));  // 0.6 m too deep
  const DayAnswer answer = day.answer();
  EXPECT_EQ(answer.advice, Advice::leave_and_expose);
  EXPECT_EQ(answer.nose_m, 4.8) << "a fix moves the nose";
  EXPECT_TRUE(std::none_of(answer.next.begin(), answer.next.end(),
                           [](const NextReading& next) { return next.kind == NextReadingKind::fix; }));
}

TEST(DayWrong, VerdictStopWithoutAnybodyWhoTookItOn) {
  Day day;
  day.crossing.site.surface[0].permission.set(Permission::refused);
  ASSERT_EQ(judged(day.crossing).verdict, Verdict::stop);
  day.mark(1.5).done();
  EXPECT_EQ(day.advice(), Advice::record_only);
  day.taken_on();
  EXPECT_EQ(day.advice(), Advice::as_taken_on);
  day.record.taken_on->by = " ";
  EXPECT_EQ(day.advice(), Advice::record_only);
}

TEST(DayWrong, VerdictIncomplete) {
  Day day;
  day.crossing.site.water.reset();
  ASSERT_EQ(judged(day.crossing).verdict, Verdict::incomplete);
  day.mark(1.5).done();
  EXPECT_EQ(day.advice(), Advice::record_only);
  EXPECT_EQ(day.taken_on().advice(), Advice::as_taken_on);
}

TEST(DayWrong, OpenTaskOfThePresentMark) {
  Day day;
  day.mark(1.5);
  const DayAnswer answer = day.answer();
  ASSERT_FALSE(answer.tasks.empty());
  EXPECT_EQ(answer.advice, Advice::do_tasks);
  EXPECT_EQ(day.done().advice(), Advice::go_on);
  EXPECT_EQ(day.mark(3).advice(), Advice::do_tasks) << "the next mark has tasks of its own";
}

// A typed 10 km stays in the record and is asked about; it moves nothing, and blocks nothing.
TEST(DayWrong, Typed10Kilometres) {
  Day day;
  day.mark(3).done().add(reading(ReadingKind::mark, 2000, 1e4));
  const DayAnswer answer = day.answer();
  ASSERT_EQ(answer.queried.size(), 1u);
  EXPECT_EQ(answer.queried[0].why, QueryWhy::beyond_bore);
  EXPECT_NEAR(answer.nose_m, 3, 1e-9);
  EXPECT_EQ(answer.advice, Advice::do_tasks);
  EXPECT_NEAR(Day(day).mark(4.5).answer().nose_m, 4.5, 1e-9);
  day.record.readings.back().cancelled = "";
  EXPECT_EQ(day.advice(), Advice::go_on);
}

TEST(DayWrong, MarkBehindAnEarlierOne) {
  Day day;
  day.mark(3).done().add(reading(ReadingKind::mark, 2000, 1.5));
  EXPECT_EQ(day.advice(), Advice::do_tasks);
  EXPECT_EQ(day.answer().queried.at(0).why, QueryWhy::runs_back);
  EXPECT_NEAR(day.answer().nose_m, 3, 1e-9);
}

TEST(DayWrong, SteepGradeFarFixEarlyArrival) {
  Day day;
  day.mark(3).done();
  const double before = *day.answer().arrival.elevation_m;
  Reading steep = reading(ReadingKind::grade, 1000, 3.0);
  steep.grade = Ratio{0.25};
  Reading far = fix(1000, 3, 1.5, 1.4, 0.02);
  Reading early = reading(ReadingKind::arrival, 1000);
  early.offset = Length{0.02};
  early.elevation = Length{98.6};
  const std::pair<Reading, QueryWhy> all[] = {
      {steep, QueryWhy::steep}, {far, QueryWhy::far_off}, {early, QueryWhy::early_arrival}};
  for (const auto& [one, why] : all) {
    Day read = day;
    const DayAnswer answer = read.add(one).answer();
    ASSERT_EQ(answer.queried.size(), 1u) << word_of(why);
    EXPECT_EQ(answer.queried[0].why, why);
    EXPECT_EQ(answer.advice, Advice::stop_and_look) << word_of(why);
    EXPECT_NEAR(*answer.arrival.elevation_m, before, 1e-12) << "it moves nothing until it is confirmed";
    EXPECT_NEAR(answer.nose_m, 3, 1e-9);
    read.record.readings.back().confirmed = true;
    EXPECT_TRUE(read.answer().queried.empty());
  }
}

// An arrival metres beside the pit is a slip of the pen, or another tool: it ends no bore until somebody confirms it.
TEST(DayWrong, ArrivalFarFromThePit) {
  Day day;
  day.mark(6.5).done().add(reading(ReadingKind::arrival, day.expected_s(8)));
  day.record.readings.back().offset = Length{3.0};
  const DayAnswer answer = day.answer();
  ASSERT_EQ(answer.queried.size(), 1u);
  EXPECT_EQ(answer.queried[0].why, QueryWhy::far_off);
  EXPECT_GE(gravity(*answer.advice), gravity(Advice::stop_and_look));
  EXPECT_NEAR(answer.nose_m, 6.5, 1e-9) << "it is not through";
}

// Of a short bore two marks are the most of it: an arrival out of its middle is asked about too, and takes no doubt
// away.
TEST(DayWrong, EarlyArrivalOfAShortBore) {
  Day day;
  day.crossing.bore.exit.station = Length{4.5};
  day.mark(2.0).done().add(reading(ReadingKind::arrival, 1000));
  day.record.readings.back().offset = Length{0.02};
  const DayAnswer answer = day.answer();
  ASSERT_EQ(answer.queried.size(), 1u);
  EXPECT_EQ(answer.queried[0].why, QueryWhy::early_arrival);
  EXPECT_NEAR(answer.nose_m, 2.0, 1e-9);
  EXPECT_GE(gravity(*answer.advice), gravity(Advice::stop_and_look));
}

// By the hose it has gone out, and nobody saw it come.
TEST(DayWrong, HosePastTheExitAndNoArrival) {
  Day day;
  day.mark(6.5).done().add(reading(ReadingKind::mark, day.expected_s(7.9) + 60, 8.6));
  EXPECT_EQ(day.advice(), Advice::stop_and_look);
  EXPECT_TRUE(broken(day.answer(), "day.not-arrived"));
}

TEST(DayWrong, GivenUp_PromisesNoArrival) {
  Day day;
  Reading end = reading(ReadingKind::end, 3000);
  end.how = EndHow::backed_out;
  day.mark(4).add(end);
  const DayAnswer answer = day.answer();
  EXPECT_FALSE(answer.arrival.offset_m);
  EXPECT_FALSE(answer.arrival.chance_inside_exit_pit);
  for (const DayLine& line : day_lines(answer, day.crossing, UnitSystem::metric))
    EXPECT_EQ(line.what.find("arrives in"), std::string::npos);
}

// Driven back behind a line that it passed: it lies there all the same.
TEST(DayWrong, DrivenBackFromAnUnexposedMain) {
  Day day = under_gas();
  day.mark(4).done().add(reading(ReadingKind::back, 1e4, 1.0));
  EXPECT_GE(gravity(day.advice()), gravity(Advice::stop_until_exposed));
}

TEST(DayWrong, NoPath) {
  Day day;
  day.crossing.bore.exit.station = Length{14000};
  EXPECT_EQ(day.advice(), Advice::record_only);
}

// Old files: nothing of what is new stands in them, and they say no more than *first do this*.
TEST(DayWrong, RecordOfBefore_NeverGoesOnAtAMarkWithTasks) {
  Day day;
  day.record.started.reset();
  day.mark(1.5);
  EXPECT_NE(day.advice(), Advice::go_on);
  EXPECT_TRUE(day.answer().layout_stands);
}

// Green stands over no unexposed line that can hurt near the nose.
TEST(DayWrong, GasWellClearButNear_WithCare) {
  Day day;
  day.crossing.site.utilities = {gas_beside(4, 97.62)};
  day.mark(4).done();
  const DayAnswer answer = day.answer();
  ASSERT_EQ(answer.near.size(), 1u);
  EXPECT_FALSE(answer.near[0].too_near);
  EXPECT_EQ(answer.advice, Advice::go_on);
  EXPECT_TRUE(answer.with_care);
}

}  // namespace
}  // namespace burrow::test
