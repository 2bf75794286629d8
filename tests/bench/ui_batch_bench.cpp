/// How many crossings a second `check --json` judges, beside what assess() alone would: of the same crossings, in the
/// same run. By processor time of all processes, which other work on the machine does not change, and by the clock.
/// Aim: 0.6 or more.

#include <sys/resource.h>
#include <unistd.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <thread>

#include "burrow/check/assess.h"
#include "burrow/file/crossing_file.h"
#include "burrow/file/disk.h"
#include "burrow/file/tables_file.h"
#include "commands.h"

namespace {

namespace fs = std::filesystem;
using namespace burrow;

double processor_seconds() {
  double sum = 0;
  for (const int who : {RUSAGE_SELF, RUSAGE_CHILDREN}) {
    rusage used{};
    ::getrusage(who, &used);
    for (const timeval& time : {used.ru_utime, used.ru_stime})
      sum += static_cast<double>(time.tv_sec) + 1e-6 * static_cast<double>(time.tv_usec);
  }
  return sum;
}

struct Took {
  double processor_s = 0, clock_s = 0;
};
template <class Run>
Took timed(Run run) {
  const double before = processor_seconds();
  const auto start = std::chrono::steady_clock::now();
  run();
  return {processor_seconds() - before,
          std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count()};
}

/// Swallows all.
struct Nowhere : std::streambuf {
  std::size_t bytes = 0;
  int overflow(int c) override {
    ++bytes;
    return c == traits_type::eof() ? 0 : c;
  }
  std::streamsize xsputn(const char*, std::streamsize count) override {
    bytes += static_cast<std::size_t>(count);
    return count;
  }
};

void bench(const std::string& sample, std::size_t count) {
  const std::string text = *read_text_file(BURROW_SOURCE_DIR "/samples/" + sample + ".crossing");
  const Tables tables = load_tables(today());
  const Crossing crossing = *read_crossing(text, tables);
  std::size_t findings = 0;
  const Took alone = timed([&] {
    for (std::size_t i = 0; i < count; ++i) findings += assess(crossing, tables).findings.size();
  });
  std::string lines;
  std::istringstream whole(text);
  std::string one_line;
  for (std::string line; std::getline(whole, line);) one_line += line;
  for (std::size_t i = 0; i < count; ++i) lines += one_line + "\n";
  const std::string name = "burrow-batch-" + std::to_string(::getpid());
  const fs::path folder = fs::temp_directory_path() / name;
  fs::create_directory(folder);
  for (std::size_t i = 0; i < count; ++i) std::ofstream(folder / (std::to_string(i) + ".crossing")) << text;
  const auto n = static_cast<double>(count);
  std::printf("%-16s assess() %.3f ms, %zu findings\n", sample.c_str(), 1e3 * alone.processor_s / n, findings / count);
  const auto tell = [&](const char* what, const Took& took, std::size_t bytes) {
    std::printf("%-16s %-18s %.3f ms each (%.0f a second and core), ratio %.2f by processor, %.2f by clock, %zu kB\n",
                sample.c_str(), what, 1e3 * took.processor_s / n, n / took.processor_s,
                alone.processor_s / took.processor_s, alone.clock_s / took.clock_s, bytes / count / 1000);
  };
  const std::size_t cores = std::max(1U, std::thread::hardware_concurrency());
  for (const std::size_t jobs : {std::size_t{1}, cores}) {
    Nowhere nowhere;
    std::ostream out(&nowhere);
    const Took took = timed([&] {
      run_command("check", {folder.string(), "--json", "--jobs", std::to_string(jobs)}, {out, std::cerr});
    });
    tell(("check, jobs " + std::to_string(jobs)).c_str(), took, nowhere.bytes);
  }
  Nowhere nowhere;
  std::ostream out(&nowhere);
  std::istringstream in(lines);
  tell("check -", timed([&] { run_command("check", {"-"}, {out, std::cerr, in}); }), nowhere.bytes);
  fs::remove_all(folder);
}

}  // namespace

int main() {
  for (const char* sample : {"house-service", "first-lesson", "sixty-utilities"}) bench(sample, 400);
}
