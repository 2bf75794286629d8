#include "day_taps.h"

#include <algorithm>

#include "burrow/crossing/day_record.h"
#include "burrow/crossing/find.h"
#include "burrow/document/clock_time.h"
#include "burrow/document/text.h"
#include "burrow/document/undo_step.h"
#include "burrow/language/say.h"

namespace burrow {

double seconds_since_start(const DayRecord& record, const QDateTime& now) {
  const QDateTime started = QDateTime::fromString(text_from(record.started.value_or("")), Qt::ISODate);
  const double last = record.readings.empty() ? 0 : record.readings.back().time.s;
  const double since = started.isValid() ? static_cast<double>(started.msecsTo(now)) / 1000 : last;
  // A clock that was set back, or a year off: after what stands there. A record may stay open over a weekend.
  constexpr double longest_s = 400 * 86400.0;
  return since >= 0 && since < longest_s ? std::max(since, last) : last;
}

DayRecord new_record(const Crossing& crossing, const QDateTime& now, std::optional<TakenOn> taken_on) {
  DayRecord begun;
  begun.id = free_id(crossing, "d");
  begun.started = now.toString(Qt::ISODate).toStdString();
  begun.layout = layout_of(crossing);
  begun.taken_on = std::move(taken_on);
  begun.readings.emplace_back().kind = ReadingKind::start;
  return begun;
}

Reading tapped(ReadingKind kind, double time_s, const Crossing& crossing, const Tables& tables,
               const DayRecord& record) {
  Reading reading;
  reading.kind = kind;
  reading.time = Duration{time_s};
  if (kind == ReadingKind::mark) reading.nose = Length{next_mark(crossing, tables, record)};
  return reading;
}

bool wants_reason(const Reading& reading, const DayAnswer& day) {
  return day.advice == Advice::get_out || reading.kind == ReadingKind::start || tells_danger(reading);
}

std::optional<std::size_t> danger_undone(const QUndoStack& steps, const DayRecord& record) {
  const auto* last = dynamic_cast<const UndoStep*>(steps.command(steps.index() - 1));
  if (!last) return std::nullopt;
  const DayRecord* before = find_by_id(last->records_before(), record.id);
  for (std::size_t i = record.readings.size(); i-- > 0;) {
    const Reading& one = record.readings[i];
    if (!tells_danger(one)) continue;
    const auto stays = [&](const Reading& other) {
      return tells_danger(other) && other.kind == one.kind && other.time == one.time && other.text == one.text &&
             other.why == one.why;
    };
    if (!before || std::none_of(before->readings.begin(), before->readings.end(), stays)) return i;
  }
  return std::nullopt;
}

std::optional<Reading> tasks_done(const DayAnswer& day, double time_s) {
  Reading reading;
  reading.kind = ReadingKind::done;
  reading.time = Duration{time_s};
  for (const DayTask& task : day.tasks)
    if (!task.done && task.task != MarkTask::stop_until_exposed) reading.tasks.emplace_back(word_of(task.task));
  return reading.tasks.empty() ? std::nullopt : std::optional(reading);
}

Result<Reading> typed_reading(const ReadingEntry& entry, double now_s, const Crossing& crossing, const Tables& tables,
                              const DayRecord& record, UnitSystem units) {
  double time = now_s;
  if (const std::string text = entry.time(); !text.empty()) {
    const double last = record.readings.empty() ? 0 : record.readings.back().time.s;
    const ClockOfRecord clock{time_of_day_s(record.started.value_or("")).value_or(0), last, now_s};
    const std::optional<double> by_clock = seconds_by_clock(text, clock);
    const Result<double> typed = by_clock ? Result<double>(*by_clock) : parse(text, Dimension::duration, units);
    if (!typed) return fail(burrow::translated("time"), typed.error().found, typed.error().expected);
    time = *typed;
  }
  const std::vector<ReadingForm> forms = reading_forms(tail_to_nose(as_bored(crossing, record), tables));
  Result<Reading> reading =
      reading_from(forms[static_cast<std::size_t>(entry.form_number())], entry.numbers(), entry.words(), time, units);
  if (reading && reading->kind == ReadingKind::mark && !reading->nose)
    reading->nose = Length{next_mark(crossing, tables, record)};
  return reading;
}

}  // namespace burrow
