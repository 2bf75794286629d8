// Whether a bore may start, and who may say so.
#include "burrow/day/start_gate.h"

#include <gtest/gtest.h>

#include "burrow/crossing/day_record.h"
#include "burrow/day/with_day.h"
#include "support/day_for_tests.h"

namespace burrow::test {
namespace {

StartGate gate_of(const Crossing& crossing, std::vector<Date> days = {{2026, 3, 2}}) {
  return start_gate(crossing, judged(crossing), days);
}

TEST(StartGate, Clean_IsOpen) {
  EXPECT_EQ(gate_of(clean_crossing()).gate, Gate::open);
}

TEST(StartGate, StopAndIncomplete_WantANamedPerson) {
  Crossing stop = clean_crossing();
  stop.site.surface[0].permission.set(Permission::refused);
  EXPECT_EQ(gate_of(stop).gate, Gate::take_on);
  Crossing incomplete = clean_crossing();
  incomplete.site.water.reset();
  EXPECT_EQ(gate_of(incomplete).gate, Gate::take_on);
}

TEST(StartGate, TicketAndExposure_NobodyCanTakeOn) {
  Crossing expired = clean_crossing();
  expired.site.utility_search.valid_to = "2026-03-01";
  EXPECT_EQ(gate_of(expired).gate, Gate::record_only);
  EXPECT_EQ(gate_of(clean_crossing(), {}).gate, Gate::record_only) << "no day is known";
  EXPECT_EQ(gate_of(clean_crossing(), {{2026, 3, 2}, {2026, 3, 25}}).gate, Gate::record_only);
  Crossing gas = clean_crossing();
  gas.site.utilities = {gas_beside(4, 98.95)};
  const StartGate gate = gate_of(gas);
  EXPECT_EQ(gate.gate, Gate::record_only);
  ASSERT_EQ(gate.to_expose.size(), 1u);
  EXPECT_EQ(gate.to_expose[0], "gas main");
}

// Name, reason, every finding, none of them worse since.
TEST(StartGate, TakenOn_ForWhatStoodThere) {
  Crossing crossing = clean_crossing();
  crossing.site.water.reset();
  crossing.site.surface[0].permission.set(Permission::refused);
  const StartGate gate = gate_of(crossing);
  ASSERT_GE(gate.to_take_on.size(), 2u);
  TakenOn by{"A. Nobody", "agreed with the owner", "2026-03-02", gate.to_take_on, ""};
  EXPECT_TRUE(taken_on(by, gate));
  EXPECT_FALSE(taken_on(std::nullopt, gate));
  for (std::string TakenOn::*member : {&TakenOn::by, &TakenOn::why}) {
    TakenOn nameless = by;
    nameless.*member = "-";
    EXPECT_FALSE(taken_on(nameless, gate));
  }
  TakenOn fewer = by;
  fewer.findings.pop_back();
  EXPECT_FALSE(taken_on(fewer, gate));
  StartGate worse = gate;
  worse.to_take_on[0].margin = by.findings[0].margin.value_or(0) - 0.1;
  EXPECT_FALSE(taken_on(by, worse));
}

TEST(StartGate, Days_FirstLastAndToday) {
  DayRecord record;
  record.started = "2026-02-28T22:00:00+01:00";
  record.readings = {reading(ReadingKind::start, 0), reading(ReadingKind::mark, 3 * 3600.0, 1.5)};
  EXPECT_EQ(days_of(record, Date{2026, 3, 1}), (std::vector<Date>{{2026, 2, 28}, {2026, 3, 1}}));
  EXPECT_EQ(days_of(record, Date{2026, 3, 9}).back(), (Date{2026, 3, 9}));
  Reading end = reading(ReadingKind::end, 4 * 3600.0);
  end.how = EndHow::arrived;
  record.readings.push_back(end);
  EXPECT_EQ(days_of(record, Date{2026, 3, 9}).back(), (Date{2026, 3, 1})) << "it has ended";
  record.started = "2026-12-31T23:59:00";
  EXPECT_EQ(days_of(record, {}).back(), (Date{2027, 1, 1}));
  record.started.reset();
  EXPECT_TRUE(days_of(record, {}).empty());
}

// The verdict of a bore under way says first what the day says.
TEST(WithDay, GraveAdvice_StandsFirst) {
  Day day;
  day.mark(3).done();
  day.crossing.record = {day.record};
  const Assessment fine = judged(day.crossing);
  EXPECT_EQ(with_open_record(day.crossing, tables(), fine), fine);
  day.crossing.record[0].readings.push_back(reading(ReadingKind::danger, 2000));
  const Assessment grave = with_open_record(day.crossing, tables(), judged(day.crossing));
  EXPECT_EQ(grave.verdict, Verdict::stop);
  EXPECT_EQ(grave.findings.front().severity, Severity::stop);
  EXPECT_TRUE(grave.findings.front().code == "day.get-out" || grave.findings.front().code == "record.struck");
  // It is not counted against the bore a second time.
  const DayAnswer again = day_answer(day.crossing, tables(), day.record, with_day(day.crossing, tables(), fine, [&] {
                                       DayAnswer told = day.answer();
                                       told.advice = Advice::back_out;
                                       return told;
                                     }()));
  EXPECT_EQ(again.advice, Advice::go_on);
}

TEST(WithDay, BackOut_IsAStop) {
  Day day;
  Reading far = fix(1e5, 5, 1.6, 1.4, 0.02);
  far.confirmed = true;
  day.mark(3).done().mark(5).done().add(far);
  ASSERT_EQ(day.advice(), Advice::back_out);
  day.crossing.record = {day.record};
  EXPECT_EQ(with_open_record(day.crossing, tables(), judged(day.crossing)).findings.front().code, "day.back-out");
}

}  // namespace
}  // namespace burrow::test
