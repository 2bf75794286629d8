#pragma once
/// A disk that fails, or a process that dies, at a chosen call to the system: holds as root too, and is the same each
/// time. The program that is linked with failing_disk.cpp makes its own calls through it; nothing else is changed.

#include <atomic>

namespace burrow::test {

enum class DiskCall { open, write, pwrite, fsync_file, fsync_folder, ftruncate, rename, unlink, fchmod, fchown };

/// Lies in shared memory where it has to outlive the process. Only calls on files and folders are counted, those that
/// open for reading alone are not.
struct DiskCalls {
  std::atomic<bool> counting{false};
  std::atomic<long> seen{0};
  std::atomic<long> killed_in{-1};  ///< the `DiskCall` at which the process ended itself
  /// Ends the process at that call (from 1 on; 0: never): before it, or in its middle: half of what was to be written
  /// is there, any other call is done.
  std::atomic<long> kill_at{0};
  std::atomic<bool> kill_in_the_middle{false};
  /// This call answers this error, so many times, after `spared` ones of its kind.
  std::atomic<int> fails{-1}, error{0}, times{0}, spared{0};
};

DiskCalls& disk_calls();
/// From now on that one; it must outlive the process's last call.
void use_disk_calls(DiskCalls* calls);

/// The disk fails for as long as this lives.
class Failing {
 public:
  Failing(DiskCall call, int error, int times = 1'000'000, int spared = 0);
  ~Failing();
  Failing(const Failing&) = delete;
  Failing& operator=(const Failing&) = delete;
};

}  // namespace burrow::test
