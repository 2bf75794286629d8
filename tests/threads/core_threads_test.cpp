// What the core does on several threads at once, for the thread sanitizer (preset tsan): trials, the search for a
// launch, texts made while the language is changed. That the answers are those of one thread is asked as well.

#include <gtest/gtest.h>

#include <atomic>
#include <fstream>
#include <iterator>
#include <latch>
#include <thread>

#include "burrow/base/display_precision.h"
#include "burrow/check/assess.h"
#include "burrow/check/trials_plan.h"
#include "burrow/file/assessment_file.h"
#include "burrow/file/crossing_file.h"
#include "burrow/file/dictionary_file.h"
#include "burrow/file/tables_file.h"
#include "burrow/language/say.h"
#include "burrow/search/launch_choice.h"
#include "burrow/search/launch_map.h"

namespace burrow::test {
namespace {

const Tables& tables() {
  static const Tables all = load_tables(Date{2026, 3, 2});
  return all;
}

Crossing sample(const std::string& name) {
  std::ifstream in(BURROW_SOURCE_DIR "/samples/" + name + ".crossing");
  const std::string text{std::istreambuf_iterator<char>(in), std::istreambuf_iterator<char>()};
  auto crossing = read_crossing(text, tables());
  EXPECT_TRUE(crossing.has_value()) << name;
  return std::move(*crossing);
}

Crossing with_trials(std::int64_t count) {
  Crossing crossing = sample("house-service");
  crossing.bore.trials.count.set(count);
  return crossing;
}

// One surface of the ground, looked at by several judgings at once.
TEST(Threads, Assess_OneSurfaceOfTheGround) {
  Crossing crossing = sample("house-service");
  for (int i = 0; i < 200; ++i)
    crossing.site.ground_points.push_back({-6 + 0.13 * i, i % 11 - 5.5, 100 + 0.05 * (i % 7)});
  const Assessment first = assess(crossing, tables());
  std::vector<Assessment> answers(4);
  std::vector<std::thread> threads;
  for (Assessment& answer : answers)
    threads.emplace_back([&] { answer = assess(crossing, tables(), first.ground_surface); });
  for (std::thread& thread : threads) thread.join();
  for (const Assessment& answer : answers) EXPECT_TRUE(answer == first);
}

// So many lines that one judging takes several threads, twice at once.
TEST(Threads, Assess_ManyLines) {
  Crossing crossing = sample("sixty-utilities");
  const std::vector<Utility> sixty = crossing.site.utilities;
  for (Utility utility : sixty) {
    utility.id += "-again";
    for (PathVertex& vertex : utility.path) vertex.x_m += 0.11;
    crossing.site.utilities.push_back(std::move(utility));
  }
  Assessment one, other;
  std::thread second([&] { other = assess(crossing, tables()); });
  one = assess(crossing, tables());
  second.join();
  EXPECT_TRUE(one == other);
}

TEST(Threads, Trials_SameOnOneAndOnFour) {
  const Crossing crossing = with_trials(2000);
  const TrialsSetup setup = trials_setup(crossing, tables(), assess(crossing, tables()));
  const Trials one = run_trials(crossing, tables(), setup, {}, {}, 1);
  double reported = 0;
  EXPECT_EQ(run_trials(
                crossing, tables(), setup, {}, [&](double share) { reported = share; }, 4),
            one);
  EXPECT_GT(reported, 0);
}

// Stopped from another thread, at once and after any number of steps of the progress.
TEST(Threads, Trials_StoppedFromOutside) {
  const Crossing crossing = with_trials(3000);
  const TrialsSetup setup = trials_setup(crossing, tables(), assess(crossing, tables()));
  for (int after = 0; after < 6; ++after) {
    std::stop_source stop;
    std::latch reached(1);
    std::jthread stopper([&] {
      reached.wait();
      stop.request_stop();
    });
    int steps = 0;
    bool freed = after == 0;
    if (freed) reached.count_down();
    const Trials trials = run_trials(
        crossing, tables(), setup, stop.get_token(),
        [&](double) {
          if (++steps < after || freed) return;
          freed = true;
          reached.count_down();
          while (!stop.stop_requested()) std::this_thread::yield();
        },
        3);
    if (!freed) reached.count_down();
    EXPECT_TRUE(trials.cancelled || trials.count == 3000) << after;
    if (freed && after > 0) {
      EXPECT_TRUE(trials.cancelled || trials.outcomes.size() == 3000) << after;
    }
  }
}

TEST(Threads, Search_SameOnOneAndOnFour) {
  const Crossing crossing = sample("house-service");
  for (const MapOver over : {MapOver::depth_and_grade, MapOver::station_and_offset}) {
    const LaunchMap one = search_launches(crossing, tables(), {over, 6, true, 1});
    EXPECT_EQ(search_launches(crossing, tables(), {over, 6, true, 4}), one);
  }
}

TEST(Threads, Search_StoppedFromOutside) {
  const Crossing crossing = sample("four-faults");
  for (int after = 1; after < 5; ++after) {
    std::stop_source stop;
    int steps = 0;
    const auto progress = [&](double) {
      if (++steps >= after) stop.request_stop();
    };
    const LaunchMap map =
        search_launches(crossing, tables(), {MapOver::depth_and_grade, 8, true, 3}, stop.get_token(), progress);
    EXPECT_EQ(map.cancelled, stop.stop_requested() && map.cancelled);
    choose_tool(crossing, tables(), {3, 3}, stop.get_token());
  }
}

// The program lets the language be changed while workers make texts.
TEST(Threads, Language_ChangesWhileTextsAreMade) {
  const Crossing crossing = sample("four-faults");
  std::atomic<bool> over = false;
  std::atomic<int> made = 0;
  std::vector<std::jthread> makers;
  for (int i = 0; i < 3; ++i)
    makers.emplace_back([&] {
      while (!over || made < 6) {
        const Assessment answer = assess(crossing, tables());
        EXPECT_FALSE(write_assessment(crossing, answer, "f", {.working = true}).empty());
        ++made;
      }
    });
  const std::optional<Dictionary> german = dictionary_of("de");
  ASSERT_TRUE(german.has_value());
  for (int i = 0; i < 20 || made < 6; ++i) {
    use_dictionary(i % 2 == 0 ? *german : Dictionary{});
    set_display_precision(i % 2 == 0 ? DisplayPrecision::fine : DisplayPrecision::usual);
    std::this_thread::yield();
  }
  over = true;
  makers.clear();
  use_dictionary(Dictionary{});
  set_display_precision(DisplayPrecision::usual);
}

}  // namespace
}  // namespace burrow::test
