// A thousand windows killed while they save and keep. The seed and the number can be given to go on from another place.

#include "ui/keep/killed_window.h"

namespace burrow::test {
namespace {

int number_from(const char* name, int otherwise) {
  bool given = false;
  const int number = qEnvironmentVariableIntValue(name, &given);
  return given ? number : otherwise;
}

TEST(KilledWindowLong, Thousand_LoseNothing) {
  const int kills = number_from("BURROW_KILLS", 1000);
  KilledWindow window(static_cast<unsigned>(number_from("BURROW_SEED", 2)));
  kill_windows(window, kills);
  EXPECT_GE(window.hits("save, "), kills / 6);
  EXPECT_GE(window.hits("autosave, "), kills / 4);
  if (kills < 500) return;
  for (const char* call : {"open", "write", "fsync of the file", "rename", "fsync of the folder"})
    for (const char* phase : {"save, ", "autosave, "})
      EXPECT_GT(window.hits(std::string(phase) + call), 0) << phase << call << " was never met";
}

}  // namespace
}  // namespace burrow::test
