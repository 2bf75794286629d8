#pragma once
/// The real window in a process of its own, which edits, keeps and saves by keys until it is killed.

#include <sys/types.h>

#include <atomic>
#include <string>

#include "support/failing_disk.h"

namespace burrow::test {

/// What the child is doing.
enum class ChildPhase { starting, editing, autosave, save };

/// Lies in a file that both processes map: what the child wrote there outlives it, however it ends.
struct ChildLog {
  DiskCalls calls;
  std::atomic<ChildPhase> phase{ChildPhase::starting};
  std::atomic<long> edit{0};   ///< the last edit on its screen; its bytes stand in the file `edit-N` beside the log
  std::atomic<long> kept{0};   ///< the last one whose copy was finished
  std::atomic<long> saved{0};  ///< the last one whose saving was finished
};

/// Makes the log, or (`make` false) takes part in it. It stays mapped until the end of the process.
ChildLog* map_log(const std::string& path, bool make);
std::string edit_file(const std::string& log, long edit);

/// The child's main: LOG FILE FOLDER UP, where UP is 1 or -1, the way the launch is moved; 0: it is moved once, and the
/// child waits for its end.
int run_child_window(char** words);
/// Starts one in a process of its own.
pid_t start_child_window(const std::string& log, const std::string& file, const std::string& kept, const char* up);
inline constexpr const char* child_word = "--child-window";

}  // namespace burrow::test
