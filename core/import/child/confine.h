#pragma once
/// What a process that reads a foreign file may do from then on: little. Private to `burrowline-reader`.

#include <string>
#include <vector>

#include "burrow/base/result.h"

namespace burrow {

struct Bounds {
  std::size_t most_memory_bytes = 0;  ///< beyond what is there now
  double most_seconds = 0;            ///< of the processor
  std::vector<std::string> files;     ///< that may be read, beside the data of the system's libraries
};

/// Never again more than before: bounds on memory, time, open files; nothing is written but to the pipes that are open;
/// no socket, no other program, no other process, no more rights (system calls by seccomp, a list of what is let
/// through); no other file than those and what lies in the folders of the system's libraries (Landlock, where the
/// kernel has it). Holds for root as well. Under the address sanitizer files may still grow, or its reports would be
/// lost. Error: the system call that failed.   Evidence: Confined.*, NothingElseOpened.*
Result<void> confine(const Bounds& bounds);

}  // namespace burrow
