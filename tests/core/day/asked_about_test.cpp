// What cannot well be, and what it must not hide: a slip of the pen, words of danger that somebody waved through, a
// path that turns towards a main, an *arrived* half way.
#include <gtest/gtest.h>

#include <algorithm>

#include "burrow/crossing/day_record.h"
#include "burrow/day/with_day.h"
#include "burrow/words/day_text.h"
#include "support/day_for_tests.h"

namespace burrow::test {
namespace {

Reading note(const char* text) {
  Reading r = reading(ReadingKind::note, 2000);
  r.text = text;
  return r;
}

Reading end(EndHow how, double time_s = 1e4) {
  Reading r = reading(ReadingKind::end, time_s);
  r.how = how;
  return r;
}

bool asks(const DayAnswer& answer, QueryWhy why) {
  return std::any_of(answer.queried.begin(), answer.queried.end(),
                     [&](const ReadingQuery& query) { return query.why == why; });
}

// "It stands" quiets what may be harmless, never a smell of gas: that goes only with a name and a reason.
TEST(DayWrong, SmellOfGas_ConfirmedStays) {
  for (const char* words : {"smell of gas", "huele a gas", "Gasgeruch"}) {
    Day day;
    day.mark(3).done().add(note(words));
    day.record.readings.back().confirmed = true;
    EXPECT_EQ(day.advice(), Advice::get_out) << words;
    day.record.readings.back().cancelled = "the tar of the road, A. Nobody";
    EXPECT_EQ(day.advice(), Advice::go_on) << words;
  }
}

// Nobody has looked at it yet: the end of the bore does not make it harmless.
TEST(DayWrong, NoteThatMayMeanDanger_AfterTheEnd) {
  Day day;
  day.mark(3).done().add(note("hit something")).add(end(EndHow::backed_out));
  EXPECT_EQ(day.advice(), Advice::stop_and_look);
  day.record.readings[day.record.readings.size() - 2].confirmed = true;
  EXPECT_FALSE(day.answer().advice);
}

// A fix typed with a nose far ahead moves nothing: what lies between is still to come. What lies near there counts too.
TEST(DayWrong, FixFarAheadOfTheMarks) {
  Day day;
  day.mark(3).done().add(fix(2000, 7.9, 0.0, 1.4));
  const DayAnswer answer = day.answer();
  EXPECT_TRUE(asks(answer, QueryWhy::runs_ahead));
  EXPECT_NEAR(answer.nose_m, 3, 1e-9);
  EXPECT_NEAR(answer.furthest_m, 3, 1e-9);
  EXPECT_GE(gravity(*answer.advice), gravity(Advice::stop_and_look));
  EXPECT_NEAR(Day(day).mark(4.5).answer().nose_m, 4.5, 1e-9) << "marks go on from where they were";
  Day main = day;
  main.crossing.site.utilities = {gas_beside(5, 97.2), gas_beside(7.9, 97.9)};
  main.crossing.site.utilities[1].id = "u2";
  const DayAnswer near = main.answer();
  const auto passed = [&](const char* id) {
    return std::none_of(near.utilities.begin(), near.utilities.end(), [&](const DayUtility& u) { return u.id == id; });
  };
  EXPECT_FALSE(passed(main.crossing.site.utilities[0].id.c_str())) << "it lies ahead of the marks";
  EXPECT_TRUE(std::any_of(near.near.begin(), near.near.end(), [](const NearService& one) { return one.id == "u2"; }));
  day.record.readings.back().confirmed = true;
  EXPECT_NEAR(day.answer().nose_m, 7.9, 1e-9);
  EXPECT_FALSE(asks(day.answer(), QueryWhy::runs_ahead));
  // A grade with a nose of its own likewise.
  Day grade;
  grade.mark(3).done().add(reading(ReadingKind::grade, 2000, 7.9));
  grade.record.readings.back().grade = Ratio{0.0};
  EXPECT_TRUE(asks(grade.answer(), QueryWhy::runs_ahead));
  EXPECT_NEAR(grade.answer().nose_m, 3, 1e-9);
}

// The plan passes the main well clear; the path as it is read closes on it, metres before the nose is near.
TEST(DayWrong, PathAsReadClosesOnAMain) {
  Day day;
  day.crossing.site.utilities = {gas_beside(6, 97.6)};
  day.mark(3).done();
  ASSERT_EQ(day.advice(), Advice::go_on) << "the plan passes it well clear";
  Reading low = fix(2000, 3, 0.0, 100 - day.answer().nose.z_m + 0.3, 0.02);
  low.confirmed = true;
  day.add(low);
  const DayAnswer answer = day.answer();
  EXPECT_TRUE(broken(answer, "day.gap")) << *answer.utilities[0].separation_m << " of "
                                         << *answer.utilities[0].required_m;
  EXPECT_GE(gravity(*answer.advice), gravity(Advice::record_only));
  EXPECT_TRUE(answer.near.empty()) << "the nose is not near it yet";
  EXPECT_NE(reason_text(*reason(answer, "day.gap"), UnitSystem::metric).find("nobody has exposed it"),
            std::string::npos);
  // At the mark before it the tool stops, and what to expose is named.
  day.mark(4.6).done();
  const DayAnswer before = day.answer();
  EXPECT_EQ(before.advice, Advice::stop_until_exposed);
  ASSERT_EQ(before.to_expose.size(), 1u);
  // Seen where the bore passes, it is no secret any more.
  day.crossing.site.test_holes = {hole_at(day.crossing.site.utilities[0], 6, 97.6)};
  EXPECT_FALSE(broken(day.answer(), "day.gap"));
}

// Nobody comes out half way: the end is asked about, and until somebody confirms it nothing looks done.
TEST(DayWrong, ArrivedHalfWay) {
  Day day;
  day.mark(3).done().add(end(EndHow::arrived));
  const DayAnswer answer = day.answer();
  EXPECT_TRUE(asks(answer, QueryWhy::early_arrival));
  EXPECT_EQ(answer.advice, Advice::stop_and_look);
  EXPECT_TRUE(broken(answer, "day.early-end"));
  // A measured arrival at the same place says no more than the end does.
  Day measured;
  Reading arrival = reading(ReadingKind::arrival, 9e3);
  arrival.offset = Length{0.02};
  measured.mark(3).done().add(arrival).add(end(EndHow::arrived));
  EXPECT_NEAR(measured.answer().nose_m, 3, 1e-9);
  EXPECT_EQ(measured.answer().advice, Advice::stop_and_look);
  for (Day* one : {&day, &measured}) {
    one->record.readings.back().confirmed = true;
    EXPECT_FALSE(one->answer().advice);
    EXPECT_TRUE(one->answer().queried.empty());
  }
  Day through;
  through.mark(6.5).done().add(end(EndHow::arrived));
  EXPECT_FALSE(through.answer().advice) << "by its marks it may well have come out";
}

// A bore given up for running aside lies where it was read, not where it was to run.
TEST(WithDay, OldHole_WhereItWasRead) {
  Day day;
  Reading aside = fix(3000, 4, 0.9, 1.4, 0.02);
  aside.confirmed = true;
  day.mark(4).done().add(aside).add(end(EndHow::backed_out));
  day.record.layout = layout_of(day.crossing);
  day.record.aftermath.hole = HoleState::grouted;
  day.crossing.record = {day.record};
  Crossing restart = day.crossing;
  const double there = day.answer().nose.y_m;
  ASSERT_GT(there, 0.5);
  restart.bore.launch.offset.set(Length{there});
  restart.bore.exit.offset.set(Length{there});
  const Assessment plain = judged(restart);
  EXPECT_FALSE(find(plain, "record.restart-near")) << "five diameters from where it was to run";
  const Assessment read = with_open_record(restart, tables(), plain);
  ASSERT_TRUE(find(read, "record.restart-near"));
  EXPECT_LT(*find(read, "record.restart-near")->measured, 5 * 0.065);
  restart.record[0].aftermath.hole = HoleState::dug_out;
  EXPECT_FALSE(find(with_open_record(restart, tables(), judged(restart)), "record.restart-near"));
}

// Two records are open: the older one's danger is not forgotten.
TEST(WithDay, TwoOpenRecords_BothCount) {
  Day day;
  day.mark(3).done().add(reading(ReadingKind::danger, 2000));
  DayRecord second = Day().mark(1.5).done().record;
  second.id = "d2";
  day.crossing.record = {day.record, second};
  EXPECT_TRUE(find(with_open_record(day.crossing, tables(), judged(day.crossing)), "day.get-out"));
}

// Green stands over no open permit, and the words say it too.
TEST(DayText, PermitOpen_SaidInTheTitle) {
  Day day;
  day.mark(1.5).done();
  const DayAnswer answer = day.answer();
  ASSERT_EQ(answer.advice, Advice::go_on);
  EXPECT_NE(advice_title(answer).find("permit is open"), std::string::npos);
  EXPECT_NE(advice_text(answer, UnitSystem::metric).find("permit to bore"), std::string::npos);
}

}  // namespace
}  // namespace burrow::test
