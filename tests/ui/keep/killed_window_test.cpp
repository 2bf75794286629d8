// The window killed while it saves and keeps: the short run. The long one is in long/.

#include "ui/keep/killed_window.h"

namespace burrow::test {
namespace {

TEST(KilledWindow, Seeded_LosesNothing) {
  KilledWindow window(1);
  kill_windows(window, 16);
  EXPECT_GE(window.hits("save, "), 3) << "no kill met a save";
  EXPECT_GE(window.hits("autosave, "), 5) << "no kill met the keeping of a copy";
}

}  // namespace
}  // namespace burrow::test
