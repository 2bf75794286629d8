#include "support/failing_disk.h"

#include <fcntl.h>
#include <signal.h>
#include <sys/stat.h>
#include <sys/syscall.h>
#include <unistd.h>

#include <cerrno>
#include <cstdarg>
#include <cstdio>

namespace burrow::test {

namespace {

DiskCalls own_calls;
DiskCalls* calls = &own_calls;

bool on_disk(int fd, bool* folder = nullptr) {
  struct stat status {};
  if (::fstat(fd, &status) != 0) return false;
  if (folder) *folder = S_ISDIR(status.st_mode);
  return S_ISREG(status.st_mode) || S_ISDIR(status.st_mode);
}

void die(DiskCall call) {
  calls->killed_in = static_cast<long>(call);
  ::kill(::getpid(), SIGKILL);
  for (;;) ::pause();
}

bool fails(DiskCall call) {
  if (calls->fails != static_cast<int>(call) || calls->times <= 0) return false;
  if (calls->spared > 0) {
    --calls->spared;
    return false;
  }
  --calls->times;
  errno = calls->error;
  return true;
}

/// `half` is what is done of the call when the process dies in its middle.
template <class Whole, class Half>
long pass(DiskCall call, Whole whole, Half half) {
  const bool now = calls->counting && ++calls->seen == calls->kill_at;
  if (now && !calls->kill_in_the_middle) die(call);
  if (fails(call)) return -1;
  if (now) {
    half();
    die(call);
  }
  return whole();
}

template <class Whole>
long pass(DiskCall call, Whole whole) {
  return pass(call, whole, whole);
}

}  // namespace

DiskCalls& disk_calls() {
  return *calls;
}

void use_disk_calls(DiskCalls* other) {
  calls = other;
}

Failing::Failing(DiskCall call, int error, int times, int spared) {
  calls->error = error;
  calls->times = times;
  calls->spared = spared;
  calls->fails = static_cast<int>(call);
}

Failing::~Failing() {
  calls->fails = -1;
}

}  // namespace burrow::test

// The calls themselves, in place of those of the C library.
using burrow::test::DiskCall;
using burrow::test::on_disk;
using burrow::test::pass;

extern "C" {

int open(const char* path, int flags, ...) {
  mode_t mode = 0;
  if ((flags & (O_CREAT | O_TMPFILE)) != 0) {
    va_list more;
    va_start(more, flags);
    mode = va_arg(more, mode_t);
    va_end(more);
  }
  const auto really = [&] { return ::syscall(SYS_openat, AT_FDCWD, path, flags, mode); };
  const bool to_write = (flags & O_ACCMODE) != O_RDONLY;
  return static_cast<int>(to_write ? pass(DiskCall::open, really) : really());
}

ssize_t write(int fd, const void* data, size_t size) {
  const auto really = [&](size_t of) { return ::syscall(SYS_write, fd, data, of); };
  if (!on_disk(fd)) return really(size);
  return pass(
      DiskCall::write, [&] { return really(size); }, [&] { really(size / 2); });
}

ssize_t pwrite(int fd, const void* data, size_t size, off_t at) {
  const auto really = [&](size_t of) { return ::syscall(SYS_pwrite64, fd, data, of, at); };
  return pass(
      DiskCall::pwrite, [&] { return really(size); }, [&] { really(size / 2); });
}

int fsync(int fd) {
  bool folder = false;
  on_disk(fd, &folder);
  return static_cast<int>(
      pass(folder ? DiskCall::fsync_folder : DiskCall::fsync_file, [&] { return ::syscall(SYS_fsync, fd); }));
}

int ftruncate(int fd, off_t size) noexcept {
  return static_cast<int>(pass(DiskCall::ftruncate, [&] { return ::syscall(SYS_ftruncate, fd, size); }));
}

int rename(const char* from, const char* to) noexcept {
  return static_cast<int>(
      pass(DiskCall::rename, [&] { return ::syscall(SYS_renameat, AT_FDCWD, from, AT_FDCWD, to); }));
}

int unlink(const char* path) noexcept {
  return static_cast<int>(pass(DiskCall::unlink, [&] { return ::syscall(SYS_unlinkat, AT_FDCWD, path, 0); }));
}

int fchmod(int fd, mode_t mode) noexcept {
  return static_cast<int>(pass(DiskCall::fchmod, [&] { return ::syscall(SYS_fchmod, fd, mode); }));
}

int fchown(int fd, uid_t owner, gid_t group) noexcept {
  return static_cast<int>(pass(DiskCall::fchown, [&] { return ::syscall(SYS_fchown, fd, owner, group); }));
}
}
