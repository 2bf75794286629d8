#include "judged_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

#include "burrow/check/assess.h"
#include "burrow/check/conclude_trials.h"
#include "burrow/check/trials_plan.h"
#include "burrow/crossing/day_record.h"
#include "burrow/day/day.h"
#include "burrow/day/with_day.h"
#include "burrow/export/csv.h"
#include "burrow/file/assessment_file.h"
#include "burrow/file/crossing_file.h"
#include "burrow/language/label_text.h"
#include "burrow/language/say.h"
#include "burrow/words/day_text.h"
#include "burrow/words/headline.h"
#include "burrow/words/run_text.h"
#include "burrow/words/trials_text.h"
#include "burrow/words/working_text.h"
#include "version.h"

namespace burrow {

namespace {

std::string as_text(const std::string& file, const Crossing& crossing, const Assessment& assessment,
                    const Trials* trials, const DayAnswer* day, const CheckOptions& asked) {
  std::string text =
      file + ": " + std::string(verdict_title(assessment.verdict)) + ". " + headline(assessment, asked.units) + "\n";
  int number = 0;
  for (const Finding& f : assessment.findings) {
    std::string line = finding_text(f, asked.units);
    if (f.station_m) line = say("{} (station {})", line, format(*f.station_m, Dimension::station, asked.units));
    if (f.muted) line = say("{} (accepted: {})", line, f.muted->reason);
    text += fmt::format("  {}. {}: {}\n", ++number, f.missing ? translated("missing") : translated(word_of(f.severity)),
                        line);
    if (!f.source.text.empty() && f.limit)
      text += "     " + say("limit from: {} [{}]", translated_phrase(f.source.text), label_text(f.source.label)) + "\n";
  }
  text += "  " + say("air: {}", air_words(assessment.air, asked.units)) + "\n";
  if (!assessment.marks.empty()) text += std::string("  ") + translated("run sheet") + "\n";
  for (const Mark& mark : assessment.marks) text += "    " + mark_words(mark, crossing, asked.units) + "\n";
  if (trials) {
    text += std::string("  ") + translated("simulation") + "\n";
    for (const TrialsLine& line : trials_lines(*trials, assessment, asked.units))
      text += "    " + line.what + ": " + line.value + "\n";
  }
  if (day) {
    text += std::string("  ") + translated("the day") + "\n";
    for (const DayLine& line : day_lines(*day, crossing, asked.units))
      text += "    " + line.what + (line.what.empty() || line.value.empty() ? "" : ": ") + line.value + "\n";
  }
  if (asked.working) {
    text += std::string("  ") + translated("calculation") + "\n";
    std::vector<Working> all = assessment.working;
    if (day) all.insert(all.end(), day->working.begin(), day->working.end());
    for (const Working& w : all) {
      text += "  - " + std::string(w.code) + ", " + w.subject + "\n";
      std::string lines = working_text(w, asked.units);
      for (std::size_t at = 0; (at = lines.find('\n', at)) != std::string::npos; at += 5)
        lines.replace(at, 1, "\n    ");
      text += "    " + lines + "\n";
    }
  }
  return text;
}

using Cells = std::vector<std::string>;

std::string csv_line(const Cells& cells) {
  std::string line;
  for (const std::string& cell : cells) line += (line.empty() ? "" : ",") + csv_field(cell);
  return line + "\r\n";
}

/// The least of what is known.
template <class Member>
std::optional<double> least_of(const std::vector<UtilityAnswer>& utilities, Member member) {
  std::optional<double> least;
  for (const UtilityAnswer& one : utilities)
    if (const std::optional<double> value = one.*member; value && (!least || *value < *least)) least = value;
  return least;
}

std::string as_csv(const std::string& file, const Crossing& crossing, const Assessment& assessment,
                   const CheckOptions& asked) {
  const auto count = [&](auto counts) {
    return std::to_string(std::count_if(assessment.findings.begin(), assessment.findings.end(), counts));
  };
  const auto number = [](const std::optional<double>& value) { return value ? exact_text(*value) : std::string(); };
  const Finding* first = assessment.findings.empty() ? nullptr : &assessment.findings.front();
  return csv_line({file, crossing.name, std::string(word_of(assessment.verdict)),
                   count([](const Finding& f) { return f.severity == Severity::stop && !f.missing; }),
                   count([](const Finding& f) { return f.missing; }),
                   count([](const Finding& f) { return f.severity == Severity::caution && !f.missing && !f.muted; }),
                   first ? std::string(first->code) : "", first ? first->subject : "",
                   first ? finding_text(*first, asked.units) : "", number(assessment.cover.least_m),
                   number(least_of(assessment.utilities, &UtilityAnswer::separation_m)),
                   number(least_of(assessment.utilities, &UtilityAnswer::gap_low_m)),
                   number(assessment.chance_of_refusal), ""});
}

}  // namespace

std::string csv_heading() {
  return csv_line({"file", "crossing", "verdict", "stops", "missing", "cautions", "first_code", "first_subject",
                   "first_text", "least_cover_m", "least_separation_m", "least_gap_low_m", "chance_of_refusal",
                   "error"});
}

Answer not_judged(const std::string& name, const Error& error, const CheckOptions& asked) {
  Answer answer;
  answer.code = 2;
  if (asked.told == Told::json) answer.out = write_failure(name, error) + "\n";
  if (asked.told == Told::csv)
    answer.out = csv_line({name, "", "not-judged", "", "", "", "", "", "", "", "", "", "", translated_error(error)});
  answer.err = name + ": " + translated_error(error) + "\n";
  return answer;
}

Answer judged_text(const std::string& name, const std::string& text, const Tables& tables, const CheckOptions& asked) {
  const auto refuse = [&](const Error& error) { return not_judged(name, error, asked); };
  const Result<Crossing> read = read_crossing(text, tables);
  if (!read) return refuse(read.error());
  if (!asked.alternative.empty() && std::none_of(read->alternatives.begin(), read->alternatives.end(),
                                                 [&](const Alternative& a) { return a.id == asked.alternative; })) {
    std::string known;
    for (const Alternative& a : read->alternatives) known += (known.empty() ? "" : ", ") + a.id;
    return refuse(Error{"--alternative", asked.alternative, known.empty() ? "a file that has alternatives" : known});
  }
  std::optional<Crossing> other;
  if (!asked.alternative.empty()) other = with_alternative(*read, asked.alternative);
  const Crossing& crossing = other ? *other : *read;
  Assessment assessment = assess(crossing, tables);
  std::optional<Trials> trials;
  if (asked.trials) {
    trials = run_trials(crossing, tables, trials_setup(crossing, tables, assessment), {}, {}, asked.threads_each);
    assessment = conclude_trials(crossing, tables, std::move(assessment), *trials);
  }
  assessment = with_old_holes(crossing, tables, std::move(assessment));
  std::optional<DayAnswer> day;
  if (const DayRecord* open = open_record(*read)) {
    const bool as_it_is = open->alternative.value_or("") == asked.alternative && layout_stands(*read, *open);
    day = as_it_is ? day_answer(crossing, tables, *open, assessment) : day_answer(*read, tables, *open);
    assessment = with_day(crossing, tables, std::move(assessment), *day);
    // The newest is told; of others that nobody has ended none is forgotten.
    for (const DayRecord& record : read->record)
      if (&record != open && !record.readings.empty() && !ended(record))
        assessment = with_day(crossing, tables, std::move(assessment), day_answer(*read, tables, record));
  }
  AssessmentOptions options;
  options.units = asked.units;
  options.working = asked.working;
  options.trials = trials ? &*trials : nullptr;
  options.day = day ? &*day : nullptr;
  options.program = program_version();
  Answer answer;
  switch (asked.told) {
    case Told::words:
      answer.out = as_text(name, crossing, assessment, options.trials, options.day, asked);
      break;
    case Told::json:
      answer.out = write_assessment(crossing, assessment, name, options) + "\n";
      break;
    case Told::csv:
      answer.out = as_csv(name, crossing, assessment, asked);
      break;
  }
  answer.code = assessment.verdict == Verdict::stop || assessment.verdict == Verdict::incomplete ? 1 : 0;
  return answer;
}

}  // namespace burrow
