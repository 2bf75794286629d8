// A monkey on the window, about a minute in the checked build. BURROW_MONKEY_LOG=FILE writes the events of each burst
// to FILE.SEED, BURROW_MONKEY_PLAY=FILE.SEED plays them again on the sample they were sent on.
#include "monkey/burst.h"

namespace burrow {
namespace {

TEST(Monkey, Seeds1To6_NothingBreaksHangsOrIsLost) {
  constexpr int events_each = 1800;
  const std::array samples{"house-service", "first-lesson",  "rail-siding",
                           "four-faults",   "car-park-duct", "lesson-mark"};
  MonkeyHouse house;
  unsigned seed = 0;
  for (const char* sample : samples) {
    house.start(QLatin1String(sample));
    house.burst(++seed, events_each);
    if (testing::Test::HasFatalFailure()) return;
  }
  for (const auto& [window, times] : house.windows())
    std::cerr << times << " events to " << window.toStdString() << '\n';
  std::cerr << house.undone() << " steps undone and redone\n";
  EXPECT_GE(house.windows().size(), 5U) << "it got about: window, menus, dialogs";
  EXPECT_GT(house.undone(), 30) << "and changed things";
}

}  // namespace
}  // namespace burrow
