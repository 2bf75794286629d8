// Reading of foreign files: a million survey points, by the reader alone and by the process that reads them for the
// program. `tests/bench/import_pandas.py` sets pandas' reader of the same file beside it.

#include <benchmark/benchmark.h>
#include <fmt/format.h>

#include <filesystem>
#include <fstream>
#include <string>

#include "burrow/import/read_file.h"
#include "burrow/import/survey_csv.h"

namespace burrow {
namespace {

/// The same numbers as in the script.
std::string survey(std::size_t points) {
  static constexpr const char* codes[] = {"GND", "KERB", "EP", "TC", "MH", "GND", "GND"};
  std::uint64_t state = 1;
  const auto next = [&state] { return (state = (state * 6364136223846793005u + 1442695040888963407u)) >> 33u; };
  std::string text;
  for (std::size_t i = 1; i <= points; ++i) {
    const double north = 5540000 + static_cast<double>(next() % 500000) / 1000;
    const double east = 500000 + static_cast<double>(next() % 500000) / 1000;
    const double height = 100 + static_cast<double>(next() % 5000) / 1000;
    text += fmt::format("{},{:.3f},{:.3f},{:.3f},{}\n", i, north, east, height, codes[next() % 7]);
  }
  return text;
}

const std::string& million() {
  static const std::string text = survey(1'000'000);
  return text;
}

void survey_text(benchmark::State& state) {
  for (auto _ : state) {
    const auto found = read_survey_csv(million(), {});
    if (!found || found->features.size() != 1'000'000) state.SkipWithError("not read");
    benchmark::DoNotOptimize(found);
  }
}
BENCHMARK(survey_text)->Unit(benchmark::kMillisecond);

void survey_file(benchmark::State& state) {
  const std::string path = (std::filesystem::temp_directory_path() / "burrow-bench-million.csv").string();
  std::ofstream(path, std::ios::binary) << million();
  for (auto _ : state) {
    const auto found = read_foreign_file(path, {});
    if (!found) state.SkipWithError("not read");
    benchmark::DoNotOptimize(found);
  }
  std::filesystem::remove(path);
}
BENCHMARK(survey_file)->Unit(benchmark::kMillisecond)->UseRealTime();

}  // namespace
}  // namespace burrow
