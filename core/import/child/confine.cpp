#include "confine.h"

#include <fcntl.h>
#include <linux/landlock.h>
#include <seccomp.h>
#include <sys/prctl.h>
#include <sys/resource.h>
#include <sys/syscall.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <cmath>
#include <csignal>
#include <cstdint>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <memory>

#include "../answer.h"

#if defined(__SANITIZE_ADDRESS__) || defined(__SANITIZE_THREAD__)
#include <atomic>
// Its header comes with clang alone; GCC's library has the functions.
extern "C" int __sanitizer_install_malloc_and_free_hooks(void (*allocated)(const volatile void*, std::size_t),
                                                         void (*freed)(const volatile void*));
extern "C" std::size_t __sanitizer_get_allocated_size(const volatile void* at);
#endif

namespace burrow {

namespace {

tl::unexpected<Error> failed(const char* what) {
  return fail(what, std::to_string(errno), "0");
}

#if defined(__SANITIZE_ADDRESS__) || defined(__SANITIZE_THREAD__)
/// The sanitizer takes address space by the terabyte, and where it gets none it ends in disorder: what is allocated is
/// counted instead.
std::atomic<std::size_t> allocated = 0;
std::size_t most_allocated = 0;

void limit_memory(std::size_t most_bytes) {
  most_allocated = most_bytes;
  __sanitizer_install_malloc_and_free_hooks(
      [](const volatile void*, std::size_t size) {
        if ((allocated += size) > most_allocated) ::_exit(reader_no_memory);
      },
      [](const volatile void* at) {
        // Freed that was allocated before the count began is not taken off.
        const std::size_t size = at ? __sanitizer_get_allocated_size(at) : 0;
        allocated -= std::min(size, allocated.load());
      });
}
#endif

bool limit(__rlimit_resource resource, rlim_t most) {
  rlimit now{};
  if (::getrlimit(resource, &now) != 0) return false;
  const rlim_t least = std::min({now.rlim_cur, now.rlim_max, most});
  const rlimit wanted{least, least};
  return ::setrlimit(resource, &wanted) == 0;
}

Result<void> limit_resources(const Bounds& bounds) {
  const rlim_t files = 64, seconds = static_cast<rlim_t>(std::ceil(std::clamp(bounds.most_seconds, 1.0, 1e6)));
  if (!limit(RLIMIT_CPU, seconds) || !limit(RLIMIT_NOFILE, files) || !limit(RLIMIT_CORE, 0)) return failed("setrlimit");
#if defined(__SANITIZE_ADDRESS__) || defined(__SANITIZE_THREAD__)
  limit_memory(bounds.most_memory_bytes);
#else
  // The whole, and what of it is the process's own to write, in pages.
  rlim_t whole = 0, shared = 0, resident = 0, text = 0, library = 0, own = 0;
  std::ifstream("/proc/self/statm") >> whole >> resident >> shared >> text >> library >> own;
  const auto page = static_cast<rlim_t>(::sysconf(_SC_PAGESIZE));
  if (own == 0 || !limit(RLIMIT_AS, whole * page + bounds.most_memory_bytes) ||
      !limit(RLIMIT_DATA, own * page + bounds.most_memory_bytes) || !limit(RLIMIT_FSIZE, 0))
    return failed("setrlimit");
#endif
  return {};
}

/// The kernel's own numbers; there are no functions of the C library for them.
long landlock_create(const landlock_ruleset_attr* rules, std::size_t size, unsigned flags) {
  return ::syscall(SYS_landlock_create_ruleset, rules, size, flags);
}

/// Access rights of the first version of Landlock, all those to the file system.
constexpr std::uint64_t all_access = (LANDLOCK_ACCESS_FS_MAKE_SYM << 1u) - 1;

void let_read(int rules, const std::string& path, bool folder) {
  landlock_path_beneath_attr below{};
  below.allowed_access = LANDLOCK_ACCESS_FS_READ_FILE | (folder ? LANDLOCK_ACCESS_FS_READ_DIR : 0U);
  below.parent_fd = ::open(path.c_str(), O_PATH | O_CLOEXEC | (folder ? O_DIRECTORY : 0));
  if (below.parent_fd < 0) return;  // what is not there needs no leave
  ::syscall(SYS_landlock_add_rule, rules, LANDLOCK_RULE_PATH_BENEATH, &below, 0);
  ::close(below.parent_fd);
}

Result<void> limit_files(const Bounds& bounds) {
  if (landlock_create(nullptr, 0, LANDLOCK_CREATE_RULESET_VERSION) < 1) return {};
  landlock_ruleset_attr attributes{};
  attributes.handled_access_fs = all_access;
  const int rules = static_cast<int>(landlock_create(&attributes, sizeof attributes.handled_access_fs, 0));
  if (rules < 0) return failed("landlock_create_ruleset");
  for (const char* folder : {"/usr", "/lib", "/lib64", "/proc/self", "/proc/sys/vm", "/sys/devices/system/cpu"})
    let_read(rules, folder, true);
  for (const char* variable : {"LD_LIBRARY_PATH", "PROJ_DATA", "PROJ_LIB", "GDAL_DATA"})
    if (const char* folder = std::getenv(variable)) let_read(rules, folder, true);
  for (const char* file : {"/etc/ld.so.cache", "/etc/localtime", "/dev/null", "/dev/urandom", "/dev/random"})
    let_read(rules, file, false);
  for (const std::string& file : bounds.files) {
    std::error_code none;
    let_read(rules, file, std::filesystem::is_directory(file, none));
  }
  const long done = ::syscall(SYS_landlock_restrict_self, rules, 0);
  ::close(rules);
  if (done != 0) return failed("landlock_restrict_self");
  return {};
}

/// What a reader needs: memory, the clock, files that are read. All else fails as if it were not allowed.
constexpr std::array let_through{SCMP_SYS(read),
                                 SCMP_SYS(readv),
                                 SCMP_SYS(pread64),
                                 SCMP_SYS(preadv),
                                 SCMP_SYS(close),
                                 SCMP_SYS(lseek),
                                 SCMP_SYS(stat),
                                 SCMP_SYS(lstat),
                                 SCMP_SYS(fstat),
                                 SCMP_SYS(newfstatat),
                                 SCMP_SYS(statx),
                                 SCMP_SYS(statfs),
                                 SCMP_SYS(fstatfs),
                                 SCMP_SYS(access),
                                 SCMP_SYS(faccessat),
                                 SCMP_SYS(faccessat2),
                                 SCMP_SYS(getdents64),
                                 SCMP_SYS(readlink),
                                 SCMP_SYS(readlinkat),
                                 SCMP_SYS(getcwd),
                                 SCMP_SYS(fcntl),
                                 SCMP_SYS(fadvise64),
                                 SCMP_SYS(dup),
                                 SCMP_SYS(mmap),
                                 SCMP_SYS(munmap),
                                 SCMP_SYS(mprotect),
                                 SCMP_SYS(mremap),
                                 SCMP_SYS(madvise),
                                 SCMP_SYS(mincore),
                                 SCMP_SYS(brk),
                                 SCMP_SYS(rt_sigaction),
                                 SCMP_SYS(rt_sigprocmask),
                                 SCMP_SYS(rt_sigreturn),
                                 SCMP_SYS(sigaltstack),
                                 SCMP_SYS(restart_syscall),
                                 SCMP_SYS(futex),
                                 SCMP_SYS(getpid),
                                 SCMP_SYS(gettid),
                                 SCMP_SYS(getuid),
                                 SCMP_SYS(geteuid),
                                 SCMP_SYS(getgid),
                                 SCMP_SYS(getegid),
                                 SCMP_SYS(tgkill),
                                 SCMP_SYS(exit),
                                 SCMP_SYS(exit_group),
                                 SCMP_SYS(getrandom),
                                 SCMP_SYS(clock_gettime),
                                 SCMP_SYS(clock_getres),
                                 SCMP_SYS(gettimeofday),
                                 SCMP_SYS(time),
                                 SCMP_SYS(nanosleep),
                                 SCMP_SYS(clock_nanosleep),
                                 SCMP_SYS(poll),
                                 SCMP_SYS(ppoll),
                                 SCMP_SYS(sched_yield),
                                 SCMP_SYS(sched_getaffinity),
                                 SCMP_SYS(getrusage),
                                 SCMP_SYS(getrlimit),
                                 SCMP_SYS(uname),
                                 SCMP_SYS(sysinfo),
                                 SCMP_SYS(set_robust_list),
                                 SCMP_SYS(rseq),
                                 SCMP_SYS(membarrier)};

struct Release {
  void operator()(void* filter) const { ::seccomp_release(filter); }
};

Result<void> limit_calls() {
  const std::unique_ptr<void, Release> filter(::seccomp_init(SCMP_ACT_ERRNO(EPERM)));
  if (!filter) return failed("seccomp_init");
  const auto allow = [&](int call, auto... conditions) {
    return ::seccomp_rule_add(filter.get(), SCMP_ACT_ALLOW, call, sizeof...(conditions), conditions...) == 0;
  };
  bool good = ::seccomp_attr_set(filter.get(), SCMP_FLTATR_CTL_TSYNC, 1) == 0;
  for (const int call : let_through) good = allow(call) && good;
  // Files for reading alone; words to the pipes that are open.
  constexpr scmp_datum_t to_write = O_ACCMODE | O_CREAT | O_TRUNC | O_APPEND;
  good = allow(SCMP_SYS(open), SCMP_A1(SCMP_CMP_MASKED_EQ, to_write, O_RDONLY)) && good;
  good = allow(SCMP_SYS(openat), SCMP_A2(SCMP_CMP_MASKED_EQ, to_write, O_RDONLY)) && good;
#if defined(__SANITIZE_ADDRESS__) || defined(__SANITIZE_THREAD__)
  // The sanitizer of undefined behaviour looks whether memory is there by writing it to a pipe of its own.
  for (const int call : {SCMP_SYS(write), SCMP_SYS(writev), SCMP_SYS(pipe), SCMP_SYS(pipe2)})
    good = allow(call) && good;
#else
  for (const int call : {SCMP_SYS(write), SCMP_SYS(writev)})
    good = allow(call, SCMP_A0(SCMP_CMP_LE, static_cast<scmp_datum_t>(answer_pipe))) && good;
#endif
  good = allow(SCMP_SYS(prlimit64), SCMP_A2(SCMP_CMP_EQ, 0)) && good;  // asked, not set
  if (!good || ::seccomp_load(filter.get()) != 0) return failed("seccomp");
  return {};
}

}  // namespace

Result<void> confine(const Bounds& bounds) {
  if (::prctl(PR_SET_NO_NEW_PRIVS, 1, 0, 0, 0) != 0) return failed("prctl");
  std::signal(SIGXFSZ, SIG_IGN);
  if (auto done = limit_files(bounds); !done) return done;
  if (auto done = limit_resources(bounds); !done) return done;
  return limit_calls();
}

}  // namespace burrow
