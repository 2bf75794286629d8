// Files replaced whole or not at all.

#include "burrow/file/disk.h"

#include <fcntl.h>
#include <gtest/gtest.h>
#include <signal.h>
#include <sys/ptrace.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <filesystem>
#include <functional>
#include <string>

#include "support/kill_during_save.h"

namespace burrow::test {
namespace {

namespace fs = std::filesystem;

class Disk : public testing::Test {
 protected:
  void SetUp() override { folder_ = fresh_folder(); }
  void TearDown() override {
    fs::permissions(folder_, fs::perms::owner_all);
    fs::remove_all(folder_);
  }
  std::string path(const std::string& name) const { return folder_ + "/" + name; }
  std::size_t files() const {
    return static_cast<std::size_t>(std::distance(fs::directory_iterator(folder_), fs::directory_iterator()));
  }
  std::string folder_;
};

std::string content(const std::string& path) {
  return read_text_file(path).value_or("unreadable");
}

/// Runs in a process of its own, which may spoil its limits and rights; answers its exit code.
int in_child(const std::function<int()>& body) {
  const pid_t child = ::fork();
  if (child == 0) ::_exit(body());
  int status = 0;
  ::waitpid(child, &status, 0);
  return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}

TEST_F(Disk, Save_MakesAndReplaces) {
  ASSERT_TRUE(save_atomically(path("a"), "one").has_value());
  EXPECT_EQ(content(path("a")), "one");
  const std::string large(300'000, 'x');
  ASSERT_TRUE(save_atomically(path("a"), large).has_value());
  EXPECT_EQ(content(path("a")), large);
  ASSERT_TRUE(save_atomically(path("a"), "").has_value());
  EXPECT_EQ(content(path("a")), "");
  EXPECT_EQ(files(), 1u);
}

TEST_F(Disk, Save_KeepsPermissions) {
  ASSERT_TRUE(save_atomically(path("a"), "one").has_value());
  ::chmod(path("a").c_str(), 0640);
  ASSERT_TRUE(save_atomically(path("a"), "two").has_value());
  struct stat status {};
  ASSERT_EQ(::stat(path("a").c_str(), &status), 0);
  EXPECT_EQ(status.st_mode & 0777U, 0640U);
}

TEST_F(Disk, Save_FollowsSymbolicLinks) {
  fs::create_directory(path("there"));
  ASSERT_TRUE(save_atomically(path("there/real"), "one").has_value());
  fs::create_symlink("there/real", path("link"));
  fs::create_symlink("link", path("link2"));
  ASSERT_TRUE(save_atomically(path("link2"), "two").has_value());
  EXPECT_TRUE(fs::is_symlink(path("link")) && fs::is_symlink(path("link2")));
  EXPECT_EQ(content(path("there/real")), "two");
  fs::create_symlink("there/not-yet", path("dangling"));
  ASSERT_TRUE(save_atomically(path("dangling"), "three").has_value());
  EXPECT_EQ(content(path("there/not-yet")), "three");
  fs::create_symlink("circle", path("circle"));
  const Result<void> circle = save_atomically(path("circle"), "x");
  ASSERT_FALSE(circle.has_value());
  EXPECT_EQ(circle.error().found, "too many symbolic links");
}

TEST_F(Disk, Save_RefusesFoldersAndMissingPlaces) {
  const Result<void> folder = save_atomically(folder_, "x");
  ASSERT_FALSE(folder.has_value());
  EXPECT_EQ(folder.error().found, "a folder");
  EXPECT_EQ(folder.error().place, folder_);
  const Result<void> nowhere = save_atomically(path("no/such/a"), "x");
  ASSERT_FALSE(nowhere.has_value());
  EXPECT_EQ(nowhere.error().found, "no such file or folder");
  EXPECT_EQ(files(), 0u);
}

TEST_F(Disk, Save_FullDiskLeavesTheOldFile) {
  ASSERT_TRUE(save_atomically(path("a"), "old").has_value());
  const int outcome = in_child([&] {
    ::signal(SIGXFSZ, SIG_IGN);
    const rlimit small{10'000, 10'000};
    if (::setrlimit(RLIMIT_FSIZE, &small) != 0) return 1;
    const Result<void> saved = save_atomically(path("a"), std::string(100'000, 'n'));
    return !saved && saved.error().found == "a file larger than this system allows" ? 42 : 2;
  });
  EXPECT_EQ(outcome, 42);
  EXPECT_EQ(content(path("a")), "old");
  EXPECT_EQ(files(), 1u) << "a temporary was left behind";
}

// Root may do anything, so the child becomes nobody first.
TEST_F(Disk, Save_ReadOnlyPlacesLeaveTheOldFile) {
  ASSERT_TRUE(save_atomically(path("a"), "old").has_value());
  ASSERT_TRUE(save_atomically(path("b"), "old").has_value());
  ::chmod(path("b").c_str(), 0444);
  ::chmod(folder_.c_str(), 0555);
  const int outcome = in_child([&] {
    if (::geteuid() == 0 && (::setgid(65534) != 0 || ::setuid(65534) != 0)) return 1;
    const Result<void> in_folder = save_atomically(path("new"), "new");
    const Result<void> on_file = save_atomically(path("b"), "new");
    if (in_folder || in_folder.error().found != "no permission") return 2;
    if (on_file || on_file.error().found != "no permission") return 3;
    return 42;
  });
  EXPECT_EQ(outcome, 42);
  EXPECT_EQ(content(path("b")), "old");
  EXPECT_EQ(files(), 2u);
}

TEST_F(Disk, Read_SaysWhatIsWrong) {
  EXPECT_EQ(read_text_file(path("none")).error().found, "no such file or folder");
  EXPECT_EQ(read_text_file(folder_).error().found, "a folder");
  ASSERT_TRUE(save_atomically(path("a"), "x").has_value());
  EXPECT_EQ(read_text_file(path("a/b")).error().found, "no such file or folder");
  ASSERT_EQ(::truncate(path("a").c_str(), 64'000'001), 0);
  EXPECT_EQ(read_text_file(path("a")).error().found, "more than 64 MB");
  ::chmod(path("a").c_str(), 0);
  const int outcome = in_child([&] {
    if (::geteuid() == 0 && (::setgid(65534) != 0 || ::setuid(65534) != 0)) return 1;
    const Result<std::string> read = read_text_file(path("a"));
    return !read && read.error().found == "no permission" ? 42 : 2;
  });
  EXPECT_EQ(outcome, 42);
}

// A window would wait for it: only the command line reads from a pipe. Nor is one waited for that lies where the two
// contents of a save wait.
TEST_F(Disk, Pipe_IsNoFileForAWindow) {
  ASSERT_EQ(::mkfifo(path("p").c_str(), 0600), 0);
  EXPECT_FALSE(read_regular_file(path("p")));
  ASSERT_TRUE(save_atomically(path("a"), "text"));
  ASSERT_EQ(::mkfifo(path(".a.saving").c_str(), 0600), 0);
  EXPECT_EQ(*read_regular_file(path("a")), "text");
}

// A colleague's file that all of the group may write stays hers.
TEST_F(Disk, AnothersFile_StaysTheirs) {
  if (::geteuid() != 0) return;  // only root can give a file away
  ASSERT_TRUE(save_atomically(path("a"), "hers").has_value());
  ASSERT_EQ(::chown(path("a").c_str(), 4321, 4321), 0);
  ::chmod(path("a").c_str(), 0666);
  ::chmod(folder_.c_str(), 0777);
  const int outcome = in_child([&] {
    if (::setgid(65534) != 0 || ::setuid(65534) != 0) return 1;
    return save_atomically(path("a"), "mine too") ? 42 : 2;
  });
  EXPECT_EQ(outcome, 42);
  struct stat status {};
  ASSERT_EQ(::stat(path("a").c_str(), &status), 0);
  EXPECT_EQ(status.st_uid, 4321U);
  EXPECT_EQ(content(path("a")), "mine too");
}

TEST(KillDuringSave, Seeded_LosesNothing) {
  kill_during_save(25, 1);
}

/// A process that saves `text` once and is killed at its n-th stop on the way into or out of the system.
/// Answers whether it was killed; false: it had ended before.
bool killed_at_stop(int n, const std::string& path, const std::string& text) {
  const pid_t child = ::fork();
  if (child == 0) {
    ::ptrace(PTRACE_TRACEME, 0, nullptr, nullptr);
    ::raise(SIGSTOP);
    ::_exit(save_atomically(path, text) ? 0 : 1);
  }
  int status = 0;
  ::waitpid(child, &status, 0);
  for (int i = 0; i < n && WIFSTOPPED(status); ++i) {
    ::ptrace(PTRACE_SYSCALL, child, nullptr, nullptr);
    ::waitpid(child, &status, 0);
  }
  if (!WIFSTOPPED(status)) return false;
  ::kill(child, SIGKILL);
  ::waitpid(child, &status, 0);
  return WIFSIGNALED(status);
}

// Not by luck but at every system call of a save, before and after it.
TEST(KillDuringSave, EverySystemCall_LosesNothing) {
  const std::string folder = fresh_folder();
  const std::string path = folder + "/a.crossing";
  const std::string before(50'000, 'b');
  const std::string after(70'000, 'a');
  int old_kept = 0;
  int new_there = 0;
  int cut_short = 0;
  for (int n = 1;; ++n) {
    ASSERT_TRUE(save_atomically(path, before).has_value());
    if (!killed_at_stop(n, path, after)) break;
    const std::string text = content(path);
    ASSERT_TRUE(text == before || text == after) << "killed at stop " << n;
    ++(text == before ? old_kept : new_there);
    cut_short += remove_beside(path);
  }
  EXPECT_EQ(content(path), after);
  EXPECT_GT(old_kept, 10);
  EXPECT_GT(new_there, 3);
  EXPECT_GT(cut_short, 5) << "no kill met a save under way";
  fs::remove_all(folder);
}

}  // namespace
}  // namespace burrow::test
