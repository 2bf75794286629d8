// Every working of all samples and of 500 random crossings, worked out again from its printed text alone.

#include <gtest/gtest.h>

#include <map>
#include <set>
#include <string>

#include "burrow/file/crossing_file.h"
#include "burrow/file/disk.h"
#include "support/pit_for_tests.h"
#include "support/property_for_tests.h"
#include "support/working_by_hand.h"

namespace burrow::test {
namespace {

/// Counts them; tells of each kind the first that does not come out, and how many.
class ByHand {
 public:
  void work_out(const Assessment& answer, UnitSystem units, const std::string& where) {
    slack = 5e-5;
    for (const Working& w : answer.working) {
      ++read_;
      met_.insert(w.code);
      const std::string wrong = what_does_not_come_out(w, units);
      if (wrong.empty()) continue;
      auto& [count, first] = wrong_[w.code];
      if (++count == 1) first = where + ": " + wrong;
    }
    slack = 0;
  }
  void expect_all() const {
    for (const auto& [code, one] : wrong_) ADD_FAILURE() << one.first << " times, first " << one.second;
  }
  [[nodiscard]] int read() const { return read_; }
  [[nodiscard]] bool met(std::string_view code) const { return met_.contains(code); }

 private:
  int read_ = 0;
  std::set<std::string_view> met_;
  std::map<std::string_view, std::pair<int, std::string>> wrong_;
};

TEST(WorkingText, Printed_AllSamplesComeOutByHand) {
  ByHand hand;
  for (const char* name :
       {"car-park-duct", "first-lesson", "four-faults", "house-service", "lesson-level", "lesson-mark", "lesson-sag",
        "lesson-shallow", "lesson-sight", "rail-siding", "sixty-utilities"}) {
    const auto text = read_text_file(std::string(BURROW_SOURCE_DIR "/samples/") + name + ".crossing");
    ASSERT_TRUE(text) << name;
    const auto crossing = read_crossing(*text, tables());
    ASSERT_TRUE(crossing) << name;
    const Assessment answer = assess(*crossing, tables());
    for (const UnitSystem units : {UnitSystem::metric, UnitSystem::us}) hand.work_out(answer, units, name);
  }
  hand.expect_all();
  EXPECT_GT(hand.read(), 1000);
  for (const char* code : {"pit.trench-width", "pit.working-space"}) EXPECT_TRUE(hand.met(code)) << code;
}

// What no sample has: benches, and a support before the upright part of a slope.
TEST(WorkingText, Printed_BenchesAndSupportsComeOutByHand) {
  constexpr double ft = 0.3048;
  Crossing benches = pit_in("firm-clay", 8 * ft, ExcavationType::b);
  benches.pits.launch.sides.left = benched({{4 * ft, 4 * ft}});
  Crossing support = pit_in("medium-sand", 3);
  PitSide& side = support.pits.launch.sides.left = sloped(1.5);
  side.upright = Length{1.5};
  side.support_top = Length{2.0};
  side.support_foot = Length{1.0};
  Crossing held = pit_in("medium-sand", 3);
  PitSide& wall = held.pits.launch.sides.left;
  wall = {};
  wall.kind.set(SideKind::shored);
  wall.support_top = Length{2.9};
  ByHand hand;
  for (const UnitSystem units : {UnitSystem::metric, UnitSystem::us}) {
    hand.work_out(judged(benches), units, "benches");
    hand.work_out(judged(support), units, "support");
    hand.work_out(judged(held), units, "held");
  }
  hand.expect_all();
  for (const char* code : {"pit.slope", "pit.support-short", "pit.support-foot"}) EXPECT_TRUE(hand.met(code)) << code;
}

TEST(WorkingText, Printed_FiveHundredRandomCrossingsComeOutByHand) {
  ByHand hand;
  for (unsigned seed = 1; seed <= 500; ++seed)
    hand.work_out(judged(drawn_crossing(seed)), seed % 2 == 0 ? UnitSystem::metric : UnitSystem::us,
                  "seed " + std::to_string(seed));
  hand.expect_all();
  EXPECT_GT(hand.read(), 15000);
}

}  // namespace
}  // namespace burrow::test
