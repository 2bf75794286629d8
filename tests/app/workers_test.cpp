// Worker processes: what kills one, takes too long or too much memory is one failure, the rest go on, in order.

#include "workers.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <signal.h>
#include <unistd.h>

#include <cstdlib>
#include <vector>

namespace burrow::test {
namespace {

using ::testing::HasSubstr;

struct Took {
  std::vector<Answer> answers;

  explicit Took(std::size_t count, std::size_t jobs, std::function<Answer(std::size_t)> judge,
                WorkerLimits limits = {}) {
    WorkersAsk ask;
    ask.count = count;
    ask.jobs = jobs;
    ask.limits = limits;
    ask.judge = std::move(judge);
    ask.failed = [](std::size_t i, const Error& error) {
      return Answer{std::to_string(i) + " failed", error.found.english() + "; " + error.expected.english(), 2};
    };
    ask.take = [this](Answer answer) { answers.push_back(std::move(answer)); };
    run_in_workers(ask);
  }
};

Answer plain(std::size_t i) {
  return {std::to_string(i), "e" + std::to_string(i), static_cast<int>(i % 2)};
}

/// All are there in their order, but for one that failed with these words.
void expect_one_failure(const Took& took, std::size_t count, std::size_t failed, const char* found) {
  ASSERT_EQ(took.answers.size(), count);
  for (std::size_t i = 0; i < count; ++i) {
    const Answer& answer = took.answers[i];
    if (i == failed) {
      EXPECT_EQ(answer.out, std::to_string(i) + " failed");
      EXPECT_THAT(answer.err, HasSubstr(found));
      EXPECT_THAT(answer.err, HasSubstr("a file that can be judged in"));
      EXPECT_EQ(answer.code, 2);
    } else {
      EXPECT_EQ(answer.out, std::to_string(i));
      EXPECT_EQ(answer.err, "e" + std::to_string(i));
      EXPECT_EQ(answer.code, static_cast<int>(i % 2));
    }
  }
}

TEST(Workers, Answers_ComeInOrder) {
  for (const std::size_t jobs : {1u, 2u, 7u}) {
    const Took took(100, jobs, plain);
    ASSERT_EQ(took.answers.size(), 100u);
    for (std::size_t i = 0; i < 100; ++i) EXPECT_EQ(took.answers[i].out, std::to_string(i));
  }
  EXPECT_TRUE(Took(0, 3, plain).answers.empty());
}

TEST(Workers, LongAnswers_ComeWhole) {
  const Took took(9, 2, [](std::size_t i) { return Answer{std::string(3'000'000 + i, 'x'), std::string(i, 'y'), 0}; });
  ASSERT_EQ(took.answers.size(), 9u);
  for (std::size_t i = 0; i < 9; ++i) {
    EXPECT_EQ(took.answers[i].out.size(), 3'000'000 + i);
    EXPECT_EQ(took.answers[i].err.size(), i);
  }
}

TEST(Workers, OneThatIsKilled_IsOneFailure) {
  for (const std::size_t jobs : {1u, 3u})
    for (const int signal : {SIGKILL, SIGTERM}) {
      const Took took(12, jobs, [signal](std::size_t i) {
        if (i == 5) ::kill(::getpid(), signal);
        return plain(i);
      });
      expect_one_failure(took, 12, 5, ("worker ended by signal " + std::to_string(signal)).c_str());
    }
}

TEST(Workers, OneThatExits_IsOneFailure) {
  const Took took(6, 2, [](std::size_t i) {
    if (i == 0) ::_exit(7);
    return plain(i);
  });
  expect_one_failure(took, 6, 0, "worker ended with exit code 7");
}

TEST(Workers, OneThatNeverEnds_IsStopped) {
  const Took took(5, 2,
                  [](std::size_t i) {
                    while (i == 4) ::pause();
                    return plain(i);
                  },
                  {.seconds = 3});
  expect_one_failure(took, 5, 4, "worker stopped after");
}

TEST(Workers, OneThatEatsMemory_IsOneFailure) {
  const Took took(6, 2,
                  [](std::size_t i) {
                    std::vector<std::string> eaten;
                    while (i == 3) eaten.emplace_back(10'000'000, 'x');
                    return plain(i);
                  },
                  {.memory_bytes = 300'000'000});
#ifdef BURROW_SANITIZED
  expect_one_failure(took, 6, 3, "worker ended");  // the sanitizer's own allocator ends it, and does not throw
#else
  expect_one_failure(took, 6, 3, "no memory left");
#endif
}

TEST(Workers, EachThatDies_IsItsOwnFailure) {
  const Took took(8, 3, [](std::size_t) -> Answer { ::_exit(1); });
  ASSERT_EQ(took.answers.size(), 8u);
  for (std::size_t i = 0; i < 8; ++i) EXPECT_EQ(took.answers[i].out, std::to_string(i) + " failed");
}

}  // namespace
}  // namespace burrow::test
