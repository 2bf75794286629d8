#pragma once
/// A process that saves again and again is killed at random points; each time the file must hold one whole version, and
/// none older than the last save that had finished.

#include <gtest/gtest.h>
#include <sched.h>
#include <signal.h>
#include <stdlib.h>
#include <sys/mman.h>
#include <sys/wait.h>
#include <unistd.h>

#include <atomic>
#include <filesystem>
#include <new>
#include <random>
#include <string>

#include "burrow/file/disk.h"

namespace burrow::test {

inline std::string fresh_folder() {
  std::string folder = testing::TempDir() + "burrow-XXXXXX";
  EXPECT_NE(::mkdtemp(folder.data()), nullptr);
  return folder;
}

/// Version n of the file: quick to make, so that the process spends its time saving; long enough for many steps.
inline std::string version_text(long n) {
  return std::to_string(n) + '\n' + std::string(400'000, static_cast<char>('a' + n % 26));
}

/// Removes what a killed save left beside the file; answers how many there were.
inline int remove_beside(const std::string& path) {
  int removed = 0;
  for (const auto& entry : std::filesystem::directory_iterator(std::filesystem::path(path).parent_path())) {
    if (entry.path() == path) continue;
    std::filesystem::remove(entry.path());
    ++removed;
  }
  return removed;
}

inline void kill_during_save(int kills, unsigned seed) {
  const std::string folder = fresh_folder();
  const std::string path = folder + "/a.crossing";
  void* shared = ::mmap(nullptr, sizeof(std::atomic<long>), PROT_READ | PROT_WRITE, MAP_SHARED | MAP_ANONYMOUS, -1, 0);
  ASSERT_NE(shared, MAP_FAILED);
  auto* saved = new (shared) std::atomic<long>(0);
  ASSERT_TRUE(save_atomically(path, version_text(0)).has_value());
  std::mt19937 random(seed);
  for (int round = 0; round < kills; ++round) {
    const long first = saved->load();
    const pid_t child = ::fork();
    ASSERT_GE(child, 0);
    if (child == 0) {
      for (long n = first + 1;; ++n) {
        if (!save_atomically(path, version_text(n))) ::_exit(1);
        saved->store(n);
      }
    }
    const long wait_for = first + static_cast<long>(random() % 3u);
    while (saved->load() < wait_for) ::sched_yield();
    for (auto spins = random() % 4'000'000u; spins > 0; --spins) saved->load();
    ::kill(child, SIGKILL);
    int status = 0;
    ::waitpid(child, &status, 0);
    ASSERT_TRUE(WIFSIGNALED(status)) << "the child could not save";
    const long finished = saved->load();
    const Result<std::string> text = read_text_file(path);
    ASSERT_TRUE(text.has_value()) << text.error().english();
    const bool is_finished = *text == version_text(finished);
    const bool is_next = *text == version_text(finished + 1);  // renamed, but killed before it could say so
    ASSERT_TRUE(is_finished || is_next) << "after kill " << round << ": " << text->substr(0, 40);
    remove_beside(path);
    saved->store(is_next ? finished + 1 : finished);
  }
  EXPECT_GT(saved->load(), 0);
  ::munmap(shared, sizeof(std::atomic<long>));
  std::filesystem::remove_all(folder);
}

}  // namespace burrow::test
