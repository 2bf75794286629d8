#include <algorithm>
#include <charconv>
#include <filesystem>
#include <optional>
#include <ostream>
#include <thread>

#include "burrow/file/disk.h"
#include "burrow/file/tables_file.h"
#include "burrow/language/say.h"
#include "commands.h"
#include "judged_text.h"
#include "options.h"
#include "texts_in.h"

namespace burrow {

namespace {

namespace fs = std::filesystem;

Answer check_one(const std::string& file, const Tables& tables, const CheckOptions& asked) {
  const Result<std::string> text = read_text_file(file);
  return text ? judged_text(file, *text, tables, asked) : not_judged(file, text.error(), asked);
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

WorkerLimits limits_for(const CheckOptions& asked) {
  constexpr double trials_take = 10;  // times as long
  WorkerLimits limits;
  if (asked.trials) limits.seconds *= trials_take;
  return limits;
}

/// Answers in the order of the files: of one file here, of many by worker processes. Gives the largest exit code.
int check_all(const std::vector<Named>& files, std::size_t jobs, const CheckOptions& asked, Streams streams) {
  const Tables tables = load_tables(asked.on);
  int worst = 0;
  WorkersAsk ask;
  ask.count = files.size();
  ask.jobs = jobs;
  ask.limits = limits_for(asked);
  ask.judge = [&](std::size_t i) {
    return files[i].error ? not_judged(files[i].path, *files[i].error, asked) : check_one(files[i].path, tables, asked);
  };
  ask.failed = [&](std::size_t i, const Error& error) { return not_judged(files[i].path, error, asked); };
  ask.take = [&](const Answer& answer) {
    streams.out << answer.out << std::flush;
    streams.err << answer.err << std::flush;
    worst = std::max(worst, answer.code);
  };
  if (asked.told == Told::csv) streams.out << csv_heading();
  if (files.size() > 1)
    run_in_workers(ask);
  else if (!files.empty())
    ask.take(ask.judge(0));
  return worst;
}

/// Crossings on standard input, each answered before the next is read. One that kills its worker is one failure.
int check_stream(const CheckOptions& asked, Streams streams) {
  const Tables tables = load_tables(asked.on);
  // The name goes to the worker in front of the text.
  const auto judge = [&](const std::string& named) {
    const std::size_t end = named.find('\n');
    return judged_text(named.substr(0, end), named.substr(end + 1), tables, asked);
  };
  std::string name;
  TextWorker worker(limits_for(asked), judge, [&](const Error& error) { return not_judged(name, error, asked); });
  TextsIn texts(streams.in);
  int worst = 0;
  while (std::optional<TextIn> one = texts.next()) {
    name = one->name;
    const Answer answer = one->error ? not_judged(name, *one->error, asked) : worker.answer(name + "\n" + one->text);
    streams.out << answer.out << std::flush;
    streams.err << answer.err << std::flush;
    worst = std::max(worst, answer.code);
  }
  return worst;
}

Result<Told> told_by(const Options& options, bool stream) {
  if (options.has("--csv") && options.has("--json"))
    return fail("--csv", "--json", translatable("one of them: a table, or lines of JSON"));
  if (stream && options.has("--csv"))
    return fail("--csv", "-", translatable("files: of standard input each answer is a line of JSON"));
  if (options.has("--csv")) return Told::csv;
  return options.has("--json") || stream ? Told::json : Told::words;
}

Result<void> check_alone(const Options& options) {
  if (options.files.size() > 1) return fail("-", std::to_string(options.files.size()) + " files", "\"-\" alone");
  if (options.has("--part")) return fail("--part", "-", translatable("files: whoever feeds standard input shares out"));
  return {};
}

}  // namespace

int check_command(const CommandArgs& args, Streams streams) {
  const auto refuse = [&](const Error& error) {
    streams.err << "burrowline check: " << translated_error(error) << "\n";
    return 2;
  };
  const Result<Options> options = read_options(args, {{"--json", false},
                                                      {"--csv", false},
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
  const bool stream = options->reads_standard_input();
  const Result<Told> told = told_by(*options, stream);
  if (!told) return refuse(told.error());
  const Result<UnitSystem> units = units_of(*options);
  if (!units) return refuse(units.error());
  const long cores = std::max(1L, static_cast<long>(std::thread::hardware_concurrency()));
  const Result<long> jobs = whole_number(*options, "--jobs", cores, 1, 1024);
  if (!jobs) return refuse(jobs.error());
  const std::optional<Date> on = options->has("--on") ? date_of(options->value("--on", "")) : today();
  if (!on) return refuse(Error{"--on", options->value("--on", ""), "a day, as 2026-03-02"});

  CheckOptions asked;
  asked.units = *units;
  asked.told = *told;
  asked.working = options->has("--working");
  asked.trials = options->has("--trials");
  asked.on = *on;
  asked.alternative = options->value("--alternative", "");
  if (stream) {
    asked.threads_each = 1;
    const Result<void> alone = check_alone(*options);
    return alone ? check_stream(asked, streams) : refuse(alone.error());
  }
  Result<std::vector<Named>> files = all_files(options->files);
  if (options->has("--part")) files = part_of(std::move(*files), options->value("--part", ""));
  if (!files) return refuse(files.error());
  asked.threads_each = files->size() > 1 ? 1 : static_cast<unsigned>(*jobs);
  return check_all(*files, static_cast<std::size_t>(*jobs), asked, streams);
}

}  // namespace burrow
