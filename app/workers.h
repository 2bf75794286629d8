#pragma once
/// Many things judged by worker processes, each kept apart from the others: one that kills its worker, takes too long
/// or too much memory is one failure, the rest go on. Workers are forks of this process that wait for numbers on a
/// socket, so that starting them costs a millisecond and the tables are there already. Range: a process with one thread
/// (Linux).   Evidence: Workers.*

#include <cstddef>
#include <functional>
#include <memory>
#include <string>

#include "burrow/base/result.h"

namespace burrow {

/// What one thing gives: text for each stream and its exit code.
struct Answer {
  std::string out;
  std::string err;
  int code = 0;
};

struct WorkerLimits {
  double seconds = 60;                       ///< for one thing, by the clock on the wall
  std::size_t memory_bytes = 2'000'000'000;  ///< of a worker, beyond what it starts with
};

struct WorkersAsk {
  std::size_t count = 0;  ///< things, numbered from 0
  std::size_t jobs = 1;   ///< workers at most
  WorkerLimits limits;
  std::function<Answer(std::size_t)> judge;                 ///< runs in a worker
  std::function<Answer(std::size_t, const Error&)> failed;  ///< in this process, for one whose worker ended
  std::function<void(Answer)> take;                         ///< in this process, in the order of the numbers
};

void run_in_workers(const WorkersAsk& ask);

/// The same for texts that come one after the other: one worker that is kept as long as it lives, and another in its
/// place when one has killed it.   Evidence: TextWorker.*
class TextWorker {
 public:
  /// `judge` runs in the worker, `failed` in this process.
  TextWorker(WorkerLimits limits, std::function<Answer(const std::string&)> judge,
             std::function<Answer(const Error&)> failed);
  ~TextWorker();
  TextWorker(const TextWorker&) = delete;
  TextWorker& operator=(const TextWorker&) = delete;
  Answer answer(std::string text);

 private:
  struct Parts;
  std::unique_ptr<Parts> parts_;
};

}  // namespace burrow
