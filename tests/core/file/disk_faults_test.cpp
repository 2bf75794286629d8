// A disk that fails at each call of a save, and files with several names.

#include <fcntl.h>
#include <gtest/gtest.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <sys/xattr.h>
#include <unistd.h>

#include <cerrno>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>

#include "burrow/file/disk.h"
#include "support/failing_disk.h"
#include "support/kill_during_save.h"

namespace burrow::test {
namespace {

namespace fs = std::filesystem;

std::string raw(const std::string& path) {
  std::ifstream in(path, std::ios::binary);
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

class DiskFaults : public testing::Test {
 protected:
  void SetUp() override {
    folder = fresh_folder();
    path = folder + "/a.crossing";
    ASSERT_TRUE(save_atomically(path, before));
  }
  void TearDown() override { fs::remove_all(folder); }
  std::size_t files() const {
    return static_cast<std::size_t>(std::distance(fs::directory_iterator(folder), fs::directory_iterator()));
  }
  void link() {
    second = folder + "/second.crossing";
    fs::create_hard_link(path, second);
  }
  std::string folder, path, second;
  const std::string before = std::string(50'000, 'b') + "end";
  const std::string after = std::string(70'000, 'a') + "end";
};

struct Fault {
  DiskCall call;
  int error;
  const char* found;
};

constexpr Fault before_the_rename[] = {{DiskCall::open, EROFS, "a read-only disk"},
                                       {DiskCall::open, ENOSPC, "a full disk"},
                                       {DiskCall::open, EACCES, "no permission"},
                                       {DiskCall::fchmod, EIO, "a fault of the disk"},
                                       {DiskCall::write, ENOSPC, "a full disk"},
                                       {DiskCall::write, EDQUOT, "a full disk"},
                                       {DiskCall::write, EIO, "a fault of the disk"},
                                       {DiskCall::fsync_file, EIO, "(a fault of the disk)"},
                                       {DiskCall::fsync_file, ENOSPC, "(a full disk)"},
                                       {DiskCall::rename, EIO, "a fault of the disk"},
                                       {DiskCall::rename, ENOENT, "no such file or folder"}};

TEST_F(DiskFaults, BeforeTheRename_LeaveTheOldFile) {
  for (const Fault& fault : before_the_rename) {
    const Failing failing(fault.call, fault.error);
    const Result<Written> saved = replace_file(path, after);
    ASSERT_FALSE(saved) << fault.found;
    EXPECT_NE(saved.error().english().find(fault.found), std::string::npos) << saved.error().english();
    EXPECT_EQ(raw(path), before) << fault.found;
    EXPECT_EQ(files(), 1u) << fault.found << ": something was left behind";
  }
}

TEST_F(DiskFaults, UnconfirmedContent_IsSaidClearly) {
  const Failing failing(DiskCall::fsync_file, EIO);
  const std::string shown_text = save_atomically(path, after).error().english();
  EXPECT_NE(shown_text.find("did not confirm the new content"), std::string::npos) << shown_text;
  EXPECT_NE(shown_text.find("untouched"), std::string::npos) << shown_text;
}

// The rename itself may be lost in a power cut: told where the disk failed, not where it has no such thing to offer.
TEST_F(DiskFaults, UnconfirmedFolder_IsTold) {
  for (const int error : {EIO, ENOSPC, EDQUOT}) {
    const Failing failing(DiskCall::fsync_folder, error);
    EXPECT_EQ(replace_file(path, after), Written::unconfirmed);
    const Result<void> saved = save_atomically(path, after);
    ASSERT_FALSE(saved);
    EXPECT_NE(saved.error().english().find("the new content is there"), std::string::npos) << saved.error().english();
    EXPECT_EQ(raw(path), after);
  }
  for (const int error : {EINVAL, EROFS, ENOSYS, EOPNOTSUPP}) {
    const Failing failing(DiskCall::fsync_folder, error);
    EXPECT_EQ(replace_file(path, before), Written::surely) << error;
  }
}

TEST_F(DiskFaults, LinkedFile_KeepsItsNames) {
  link();
  for (const std::string& text : {after, before, std::string(), after}) {
    ASSERT_EQ(replace_file(second, text), Written::surely);
    EXPECT_EQ(raw(path), text);
    EXPECT_EQ(fs::hard_link_count(path), 2u);
    EXPECT_EQ(files(), 2u) << "the safety copy was left behind";
  }
}

// Whatever fails: the old content under both names and nothing beside it.
TEST_F(DiskFaults, LinkedFile_FaultsLeaveTheOldContent) {
  link();
  const Fault faults[] = {
      {DiskCall::open, EROFS, "a read-only disk"},      {DiskCall::write, ENOSPC, "a full disk"},
      {DiskCall::fsync_file, EIO, "a fault of"},        {DiskCall::rename, EIO, "a fault of the disk"},
      {DiskCall::fsync_folder, EIO, "a fault of"},      {DiskCall::pwrite, ENOSPC, "a full disk"},
      {DiskCall::ftruncate, EIO, "a fault of the disk"}};
  for (const Fault& fault : faults) {
    const Failing failing(fault.call, fault.error, 1);
    const Result<Written> saved = replace_file(path, after);
    ASSERT_FALSE(saved) << fault.found;
    EXPECT_NE(saved.error().english().find(fault.found), std::string::npos) << saved.error().english();
    EXPECT_EQ(raw(second), before) << fault.found;
    EXPECT_EQ(files(), 2u) << fault.found;
  }
  const Failing later(DiskCall::fsync_file, EIO, 1, 1);  // not of the safety copy but of the file
  ASSERT_FALSE(replace_file(path, after));
  EXPECT_EQ(raw(second), before);
  EXPECT_EQ(files(), 2u);
}

// The disk fails in the middle and does not come back: both contents wait, and the message says where.
TEST_F(DiskFaults, LinkedFile_NotEvenPutBack_BothWait) {
  link();
  {
    const Failing failing(DiskCall::fsync_file, EIO, 1000, 1);
    const Result<Written> saved = replace_file(path, after);
    ASSERT_FALSE(saved);
    EXPECT_NE(saved.error().english().find("/.a.crossing.saving"), std::string::npos) << saved.error().english();
  }
  EXPECT_EQ(files(), 3u);
  ASSERT_EQ(replace_file(path, after), Written::surely);
  EXPECT_EQ(raw(second), after);
  EXPECT_EQ(files(), 2u);
}

/// A process that saves once and dies at its n-th call; false: it had ended before.
bool dies_saving(const std::string& path, const std::string& text, long n, bool in_the_middle) {
  const pid_t child = ::fork();
  if (child == 0) {
    disk_calls().kill_at = n;
    disk_calls().kill_in_the_middle = in_the_middle;
    disk_calls().counting = true;
    ::_exit(replace_file(path, text) ? 0 : 1);
  }
  int status = 0;
  ::waitpid(child, &status, 0);
  return WIFSIGNALED(status);
}

// At each call and in its middle: no moment at which both contents are lost, and the next start puts it in order.
TEST(KillDuringSave, LinkedFile_LosesNothing) {
  const std::string folder = fresh_folder();
  const std::string path = folder + "/a.crossing";
  const std::string second = folder + "/second.crossing";
  const std::string longer(70'000, 'a');
  const std::string shorter = std::string(20'000, 'c') + "b";
  int half = 0;
  int kills = 0;
  for (const auto& [before, after] : {std::pair{shorter, longer}, {longer, shorter}}) {
    for (const bool in_the_middle : {false, true})
      for (long n = 1;; ++n) {
        ASSERT_TRUE(replace_file(path, before));
        if (!fs::exists(second)) fs::create_hard_link(path, second);
        if (!dies_saving(path, after, n, in_the_middle)) break;
        ++kills;
        const std::string there = raw(path);
        half += there != before && there != after;
        const Result<std::string> read = read_text_file(path);
        ASSERT_TRUE(read);
        ASSERT_TRUE(*read == before || *read == after) << "killed at call " << n;
        mend_killed_save(path);
        clean_leftovers(folder);
        EXPECT_EQ(raw(path), *read);
        EXPECT_EQ(raw(second), *read) << "the other name fell behind";
        EXPECT_EQ(std::distance(fs::directory_iterator(folder), fs::directory_iterator()), 2);
      }
    ASSERT_EQ(raw(path), after);
  }
  EXPECT_GE(half, 3) << "no kill met the writing itself";
  EXPECT_GT(kills, 40);
  fs::remove_all(folder);
}

// What another program made of the file meanwhile is not taken for half of ours.
TEST_F(DiskFaults, ForeignContentBesideAKilledSave_Stays) {
  link();
  long n = 1;
  while (raw(path) == before && dies_saving(path, after, n, true)) ++n;
  ASSERT_NE(raw(path), before);
  ASSERT_NE(raw(path), after);
  std::ofstream(path) << "somebody else's";
  EXPECT_EQ(read_text_file(path).value(), "somebody else's");
  mend_killed_save(path);
  EXPECT_EQ(raw(path), "somebody else's");
  clean_leftovers(folder);
  EXPECT_EQ(files(), 2u);
}

TEST_F(DiskFaults, LinkedFile_BeingSavedByAnother_IsSaid) {
  link();
  const int fd = ::open(second.c_str(), O_RDONLY | O_CLOEXEC);
  ASSERT_EQ(::flock(fd, LOCK_EX), 0);
  const Result<Written> saved = replace_file(path, after);
  ::close(fd);
  ASSERT_FALSE(saved);
  EXPECT_EQ(saved.error().found, "another program that is saving it");
  EXPECT_EQ(raw(path), before);
  EXPECT_TRUE(replace_file(path, after));
}

// Where this system has such attributes at all; a file system without them has nothing to keep.
TEST_F(DiskFaults, Attributes_AreKept) {
  const std::string value = "kept";
  const bool possible = ::setxattr(path.c_str(), "user.burrow-test", value.data(), value.size(), 0) == 0;
  ASSERT_TRUE(save_atomically(path, after));
  std::string found(16, '\0');
  const ssize_t length = ::getxattr(path.c_str(), "user.burrow-test", found.data(), found.size());
  EXPECT_EQ(length, possible ? static_cast<ssize_t>(value.size()) : -1);
  EXPECT_TRUE(!possible || found.starts_with(value));
}

// A group that cannot be kept: the new one may do no more than everybody might.
TEST_F(DiskFaults, GroupThatCannotBeKept_GetsNothingMore) {
  ::chmod(path.c_str(), 0664);
  if (::chown(path.c_str(), ::getuid(), ::getgid() + 1) != 0) ::chmod(path.c_str(), 0664);  // not root: group is ours
  const bool other_group = [&] {
    struct stat status {};
    return ::stat(path.c_str(), &status) == 0 && status.st_gid != ::getgid();
  }();
  const Failing failing(DiskCall::fchown, EPERM);
  ASSERT_TRUE(save_atomically(path, after));
  struct stat status {};
  ASSERT_EQ(::stat(path.c_str(), &status), 0);
  EXPECT_EQ(status.st_mode & 0777U, other_group ? 0644U : 0664U);
}

TEST_F(DiskFaults, GroupAndOwner_AreKeptWhereTheSystemLetsIt) {
  const bool given_away = ::chown(path.c_str(), 12345, 12346) == 0;  // only root may
  ASSERT_TRUE(save_atomically(path, after));
  struct stat status {};
  ASSERT_EQ(::stat(path.c_str(), &status), 0);
  EXPECT_EQ(status.st_uid, given_away ? 12345U : ::getuid());
  EXPECT_EQ(status.st_gid, given_away ? 12346U : ::getgid());
}

TEST_F(DiskFaults, Leftovers_GoUnlessTheyAreBeingWritten) {
  for (long n = 2; n < 6; ++n) ASSERT_TRUE(dies_saving(path, after, n, true));
  const std::size_t left = files();
  EXPECT_GT(left, 2u);
  const std::string mine = folder + "/.burrowline-1-1.tmp";
  const int fd = ::open(mine.c_str(), O_RDWR | O_CREAT | O_CLOEXEC, 0666);
  ASSERT_EQ(::flock(fd, LOCK_EX), 0);
  clean_leftovers(folder);
  EXPECT_EQ(files(), 2u);
  EXPECT_TRUE(fs::exists(mine));
  ::close(fd);
  clean_leftovers(folder);
  EXPECT_EQ(files(), 1u);
  clean_leftovers(folder + "/none");
}

}  // namespace
}  // namespace burrow::test
