#include <algorithm>
#include <atomic>
#include <charconv>
#include <condition_variable>
#include <filesystem>
#include <map>
#include <mutex>
#include <ostream>
#include <thread>

#include "burrow/base/say.h"
#include "burrow/check/assess.h"
#include "burrow/check/headline.h"
#include "burrow/check/working_text.h"
#include "burrow/file/assessment_file.h"
#include "burrow/file/crossing_file.h"
#include "burrow/file/disk.h"
#include "burrow/file/tables_file.h"
#include "burrow/plan/conclude_trials.h"
#include "burrow/plan/day.h"
#include "burrow/plan/day_text.h"
#include "burrow/plan/run_text.h"
#include "burrow/plan/trials_plan.h"
#include "burrow/plan/trials_text.h"
#include "commands.h"
#include "options.h"

namespace burrow {

namespace {

namespace fs = std::filesystem;

struct Wish {
  UnitSystem units = UnitSystem::metric;
  bool json = false;
  bool working = false;
  bool trials = false;
  unsigned threads_each = 0;  ///< of the trials of one file
  std::string alternative;
};

/// What one file gives: text for each stream and its exit code.
struct Answer {
  std::string out;
  std::string err;
  int code = 0;
};

std::string as_text(const std::string& file, const Crossing& crossing, const Assessment& assessment,
                    const Trials* trials, const DayAnswer* day, const Wish& wish) {
  std::string text =
      file + ": " + std::string(verdict_title(assessment.verdict)) + ". " + headline(assessment, wish.units) + "\n";
  int number = 0;
  for (const Finding& f : assessment.findings) {
    text += "  " + std::to_string(++number) + ". " +
            (f.missing ? std::string(said("missing")) : said(words(f.severity))) + ": " + finding_text(f, wish.units);
    if (f.station_m) text += say(" (station {})", format(*f.station_m, Dimension::station, wish.units));
    if (f.muted) text += say(" (muted: {})", f.muted->reason);
    text += "\n";
    if (!f.source.text.empty() && f.limit)
      text += "     " + say("limit from: {} [{}]", said(std::string_view(f.source.text)), said(words(f.source.label))) +
              "\n";
  }
  text += std::string("  ") + said("air: ") + air_words(assessment.air, wish.units) + "\n";
  if (!assessment.marks.empty()) text += std::string("  ") + said("run sheet") + "\n";
  for (const Mark& mark : assessment.marks) text += "    " + mark_words(mark, crossing, wish.units) + "\n";
  if (trials) {
    text += std::string("  ") + said("random trials") + "\n";
    for (const TrialsLine& line : trials_lines(*trials, assessment, wish.units))
      text += "    " + line.what + ": " + line.value + "\n";
  }
  if (day) {
    text += std::string("  ") + said("the day") + "\n";
    for (const DayLine& line : day_lines(*day, crossing, wish.units))
      text += "    " + line.what + (line.what.empty() || line.value.empty() ? "" : ": ") + line.value + "\n";
  }
  if (wish.working) {
    text += std::string("  ") + said("working") + "\n";
    std::vector<Working> all = assessment.working;
    if (day) all.insert(all.end(), day->working.begin(), day->working.end());
    for (const Working& w : all) {
      text += "  - " + std::string(w.code) + ", " + w.subject + "\n";
      std::string lines = working_text(w, wish.units);
      for (std::size_t at = 0; (at = lines.find('\n', at)) != std::string::npos; at += 5)
        lines.replace(at, 1, "\n    ");
      text += "    " + lines + "\n";
    }
  }
  return text;
}

Answer check_one(const std::string& file, const Tables& tables, const Wish& wish) {
  const auto refuse = [&](const Error& error) {
    Answer answer;
    answer.code = 2;
    if (wish.json) answer.out = write_failure(file, error) + "\n";
    answer.err = file + ": " + error.text() + "\n";
    return answer;
  };
  const Result<std::string> text = read_text_file(file);
  if (!text) return refuse(text.error());
  const Result<Crossing> read = read_crossing(*text, tables);
  if (!read) return refuse(read.error());
  if (!wish.alternative.empty() && std::none_of(read->alternatives.begin(), read->alternatives.end(),
                                                [&](const Alternative& a) { return a.id == wish.alternative; })) {
    std::string known;
    for (const Alternative& a : read->alternatives) known += (known.empty() ? "" : ", ") + a.id;
    return refuse(Error{"--alternative", wish.alternative, known.empty() ? "a file that has alternatives" : known});
  }
  const Crossing crossing = wish.alternative.empty() ? *read : with_alternative(*read, wish.alternative);
  Assessment assessment = assess(crossing, tables);
  std::optional<Trials> trials;
  if (wish.trials) {
    trials = run_trials(crossing, tables, trials_setup(crossing, tables, assessment), {}, {}, wish.threads_each);
    assessment = conclude_trials(crossing, tables, std::move(assessment), *trials);
  }
  std::optional<DayAnswer> day;
  if (const DayRecord* open = open_record(*read))
    day = open->alternative.value_or("") == wish.alternative ? day_answer(crossing, tables, *open, assessment)
                                                             : day_answer(*read, tables, *open);
  Answer answer;
  AssessmentOptions options;
  options.units = wish.units;
  options.working = wish.working;
  options.trials = trials ? &*trials : nullptr;
  options.day = day ? &*day : nullptr;
  answer.out = wish.json ? write_assessment(crossing, assessment, file, options) + "\n"
                         : as_text(file, crossing, assessment, options.trials, options.day, wish);
  answer.code = assessment.verdict == Verdict::stop || assessment.verdict == Verdict::incomplete ? 1 : 0;
  return answer;
}

Result<std::vector<std::string>> all_files(const std::vector<std::string>& named) {
  std::vector<std::string> files;
  for (const std::string& name : named) {
    std::error_code error;
    if (!fs::is_directory(name, error)) {
      files.push_back(name);
      continue;
    }
    std::vector<std::string> inside;
    for (const auto& entry : fs::directory_iterator(name, error))
      if (entry.path().extension() == ".crossing") inside.push_back(entry.path().string());
    if (error) return fail(name, error.message(), "a folder that may be read");
    if (inside.empty()) return fail(name, "a folder without *.crossing", "a folder of crossings");
    std::sort(inside.begin(), inside.end());
    files.insert(files.end(), inside.begin(), inside.end());
  }
  return files;
}

/// "3/16": of sixteen equal shares the third, every sixteenth file from the third on, for a scheduler's array job.
Result<std::vector<std::string>> part_of(std::vector<std::string> files, const std::string& text) {
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
  std::vector<std::string> mine;
  for (auto i = static_cast<std::size_t>(part - 1); i < files.size(); i += static_cast<std::size_t>(parts))
    mine.push_back(std::move(files[i]));
  return mine;
}

/// Answers in the order of the files, made by `jobs` threads; no more than a few wait to be printed, so memory stays
/// flat.
class InOrder {
 public:
  InOrder(const std::vector<std::string>& files, const Tables& tables, const Wish& wish)
      : files_(files), tables_(tables), wish_(wish) {}

  int run(std::size_t jobs, Streams streams) {
    std::vector<std::jthread> threads;
    for (std::size_t i = 0; i < std::min(jobs, files_.size()); ++i)
      threads.emplace_back([this, jobs] { work(4 * jobs); });
    int worst = 0;
    for (std::size_t i = 0; i < files_.size(); ++i) {
      Answer answer = wait_for(i);
      streams.out << answer.out << std::flush;
      streams.err << answer.err;
      worst = std::max(worst, answer.code);
    }
    return worst;
  }

 private:
  void work(std::size_t most_ahead) {
    for (;;) {
      std::size_t mine = 0;
      {
        std::unique_lock lock(mutex_);
        room_.wait(lock, [&] { return next_ >= files_.size() || next_ < printed_ + most_ahead; });
        if (next_ >= files_.size()) return;
        mine = next_++;
      }
      Answer answer = check_one(files_[mine], tables_, wish_);
      const std::lock_guard lock(mutex_);
      ready_[mine] = std::move(answer);
      done_.notify_one();
    }
  }

  Answer wait_for(std::size_t index) {
    std::unique_lock lock(mutex_);
    done_.wait(lock, [&] { return ready_.contains(index); });
    Answer answer = std::move(ready_.extract(index).mapped());
    printed_ = index + 1;
    room_.notify_all();
    return answer;
  }

  const std::vector<std::string>& files_;
  const Tables& tables_;
  const Wish& wish_;
  std::mutex mutex_;
  std::condition_variable room_, done_;
  std::map<std::size_t, Answer> ready_;
  std::size_t next_ = 0;
  std::size_t printed_ = 0;
};

}  // namespace

int check_command(const CommandWords& words, Streams streams) {
  const auto refuse = [&](const Error& error) {
    streams.err << "burrowline check: " << error.text() << "\n";
    return 2;
  };
  const Result<Options> options = read_options(words, {{"--json", false},
                                                       {"--units", true},
                                                       {"--working", false},
                                                       {"--trials", false},
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
  Result<std::vector<std::string>> files = all_files(options->files);
  if (files && options->has("--part")) files = part_of(std::move(*files), options->value("--part", ""));
  if (!files) return refuse(files.error());

  Wish wish;
  wish.units = *units;
  wish.json = options->has("--json");
  wish.working = options->has("--working");
  wish.trials = options->has("--trials");
  wish.threads_each = files->size() > 1 ? 1 : static_cast<unsigned>(*jobs);
  wish.alternative = options->value("--alternative", "");
  const Tables tables = load_tables(today());
  return InOrder(*files, tables, wish).run(static_cast<std::size_t>(*jobs), streams);
}

}  // namespace burrow
