#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <filesystem>
#include <optional>
#include <ostream>
#include <thread>

#include "burrow/check/assess.h"
#include "burrow/check/conclude_trials.h"
#include "burrow/check/trials_plan.h"
#include "burrow/day/day.h"
#include "burrow/day/with_day.h"
#include "burrow/file/assessment_file.h"
#include "burrow/file/crossing_file.h"
#include "burrow/file/disk.h"
#include "burrow/file/tables_file.h"
#include "burrow/language/label_text.h"
#include "burrow/language/say.h"
#include "burrow/words/day_text.h"
#include "burrow/words/headline.h"
#include "burrow/words/run_text.h"
#include "burrow/words/trials_text.h"
#include "burrow/words/working_text.h"
#include "commands.h"
#include "options.h"
#include "workers.h"

namespace burrow {

namespace {

namespace fs = std::filesystem;

struct CheckOptions {
  UnitSystem units = UnitSystem::metric;
  bool json = false;
  bool working = false;
  bool trials = false;
  unsigned threads_each = 0;  ///< of the trials of one file
  std::string alternative;
  Date on;  ///< the day to judge for
};

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

Answer refusal(const std::string& file, const Error& error, const CheckOptions& asked) {
  Answer answer;
  answer.code = 2;
  if (asked.json) answer.out = write_failure(file, error) + "\n";
  answer.err = file + ": " + translated_error(error) + "\n";
  return answer;
}

Answer check_one(const std::string& file, const Tables& tables, const CheckOptions& asked) {
  const auto refuse = [&](const Error& error) { return refusal(file, error, asked); };
  const Result<std::string> text = read_text_file(file);
  if (!text) return refuse(text.error());
  const Result<Crossing> read = read_crossing(*text, tables);
  if (!read) return refuse(read.error());
  if (!asked.alternative.empty() && std::none_of(read->alternatives.begin(), read->alternatives.end(),
                                                 [&](const Alternative& a) { return a.id == asked.alternative; })) {
    std::string known;
    for (const Alternative& a : read->alternatives) known += (known.empty() ? "" : ", ") + a.id;
    return refuse(Error{"--alternative", asked.alternative, known.empty() ? "a file that has alternatives" : known});
  }
  const Crossing crossing = asked.alternative.empty() ? *read : with_alternative(*read, asked.alternative);
  Assessment assessment = assess(crossing, tables);
  std::optional<Trials> trials;
  if (asked.trials) {
    trials = run_trials(crossing, tables, trials_setup(crossing, tables, assessment), {}, {}, asked.threads_each);
    assessment = conclude_trials(crossing, tables, std::move(assessment), *trials);
  }
  std::optional<DayAnswer> day;
  if (const DayRecord* open = open_record(*read)) {
    const bool as_it_is = open->alternative.value_or("") == asked.alternative && layout_stands(*read, *open);
    day = as_it_is ? day_answer(crossing, tables, *open, assessment) : day_answer(*read, tables, *open);
    assessment = with_day(crossing, tables, std::move(assessment), *day);
  }
  Answer answer;
  AssessmentOptions options;
  options.units = asked.units;
  options.working = asked.working;
  options.trials = trials ? &*trials : nullptr;
  options.day = day ? &*day : nullptr;
  answer.out = asked.json ? write_assessment(crossing, assessment, file, options) + "\n"
                          : as_text(file, crossing, assessment, options.trials, options.day, asked);
  answer.code = assessment.verdict == Verdict::stop || assessment.verdict == Verdict::incomplete ? 1 : 0;
  return answer;
}

/// A file to be judged, or a folder that holds none, and why.
struct Named {
  std::string path;
  std::optional<Error> error;
};

/// A folder means its crossings by name. One that has none, or may not be read, does not stop the others.
std::vector<Named> all_files(const std::vector<std::string>& named) {
  std::vector<Named> files;
  for (const std::string& name : named) {
    std::error_code error;
    if (!fs::is_directory(name, error)) {
      files.push_back({name, {}});
      continue;
    }
    std::vector<std::string> inside;
    for (fs::directory_iterator entry(name, error), end; !error && entry != end; entry.increment(error))
      if (entry->path().extension() == ".crossing") inside.push_back(entry->path().string());
    std::sort(inside.begin(), inside.end());
    for (std::string& file : inside) files.push_back({std::move(file), {}});
    if (error)
      files.push_back({name, Error{"", error.message(), "a folder that may be read"}});
    else if (inside.empty())
      files.push_back({name, Error{"", "a folder without *.crossing", "a folder of crossings"}});
  }
  return files;
}

/// "3/16": of sixteen equal shares the third, every sixteenth file from the third on, for a scheduler's array job.
Result<std::vector<Named>> part_of(std::vector<Named> files, const std::string& text) {
  const auto number = [](std::string_view digits) {
    long value = 0;
    const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), value);
    return error == std::errc() && end == digits.data() + digits.size() ? value : -1L;
  };
  const std::size_t slash = text.find('/');
  const long part = number(std::string_view(text).substr(0, slash));
  const long parts = slash == std::string::npos ? -1 : number(std::string_view(text).substr(slash + 1));
  if (!(parts >= 1 && parts <= 1'000'000 && part >= 1 && part <= parts))
    return fail("--part", text, "K/N, the K-th of N shares, K from 1 to N: 3/16");
  std::vector<Named> mine;
  for (auto i = static_cast<std::size_t>(part - 1); i < files.size(); i += static_cast<std::size_t>(parts))
    mine.push_back(std::move(files[i]));
  return mine;
}

/// Answers in the order of the files: of one file here, of many by worker processes. Gives the largest exit code.
int check_all(const std::vector<Named>& files, std::size_t jobs, const CheckOptions& asked, Streams streams) {
  constexpr double trials_take = 10;  // times as long
  const Tables tables = load_tables(asked.on);
  int worst = 0;
  WorkersAsk ask;
  ask.count = files.size();
  ask.jobs = jobs;
  if (asked.trials) ask.limits.seconds *= trials_take;
  ask.judge = [&](std::size_t i) {
    return files[i].error ? refusal(files[i].path, *files[i].error, asked) : check_one(files[i].path, tables, asked);
  };
  ask.failed = [&](std::size_t i, const Error& error) { return refusal(files[i].path, error, asked); };
  ask.take = [&](const Answer& answer) {
    streams.out << answer.out << std::flush;
    streams.err << answer.err << std::flush;
    worst = std::max(worst, answer.code);
  };
  if (files.size() > 1)
    run_in_workers(ask);
  else if (!files.empty())
    ask.take(ask.judge(0));
  return worst;
}

}  // namespace

int check_command(const CommandArgs& args, Streams streams) {
  const auto refuse = [&](const Error& error) {
    streams.err << "burrowline check: " << translated_error(error) << "\n";
    return 2;
  };
  const Result<Options> options = read_options(args, {{"--json", false},
                                                      {"--units", true},
                                                      {"--working", false},
                                                      {"--trials", false},
                                                      {"--on", true},
                                                      {"--alternative", true},
                                                      {"--jobs", true},
                                                      {"--part", true}});
  if (!options) return refuse(options.error());
  if (options->files.empty())
    return refuse(Error{"", "no file", "FILE or FOLDER, for example samples/house-service.crossing"});
  const Result<UnitSystem> units = units_of(*options);
  if (!units) return refuse(units.error());
  const long cores = std::max(1L, static_cast<long>(std::thread::hardware_concurrency()));
  const Result<long> jobs = whole_number(*options, "--jobs", cores, 1, 1024);
  if (!jobs) return refuse(jobs.error());
  const std::optional<Date> on = options->has("--on") ? date_of(options->value("--on", "")) : today();
  if (!on) return refuse(Error{"--on", options->value("--on", ""), "a day, as 2026-03-02"});
  Result<std::vector<Named>> files = all_files(options->files);
  if (options->has("--part")) files = part_of(std::move(*files), options->value("--part", ""));
  if (!files) return refuse(files.error());

  CheckOptions asked;
  asked.units = *units;
  asked.json = options->has("--json");
  asked.working = options->has("--working");
  asked.trials = options->has("--trials");
  asked.on = *on;
  asked.threads_each = files->size() > 1 ? 1 : static_cast<unsigned>(*jobs);
  asked.alternative = options->value("--alternative", "");
  return check_all(*files, static_cast<std::size_t>(*jobs), asked, streams);
}

}  // namespace burrow
