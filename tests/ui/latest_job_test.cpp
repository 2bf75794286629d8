/// One piece of work at a time: the newest wins, what was cancelled is dropped.

#include "burrow/document/latest_job.h"

#include <gtest/gtest.h>

#include <atomic>
#include <memory>
#include <thread>
#include <vector>

#include "support/settle.h"

namespace burrow {
namespace {

TEST(LatestJob, Answer_ComesOnTheScreensThread_AfterItNoLongerRuns) {
  LatestJob job;
  std::thread::id where;
  bool ran = true;
  job.start([&](const LatestJob::Work&) -> LatestJob::OnScreen {
    return [&] {
      where = std::this_thread::get_id();
      ran = job.running();
    };
  });
  EXPECT_TRUE(job.running());
  ASSERT_TRUE(comes([&] { return !job.running(); }));
  EXPECT_EQ(where, std::this_thread::get_id());
  EXPECT_FALSE(ran);
}

TEST(LatestJob, NewerOne_StopsTheOlder_WhoseAnswerIsDropped) {
  LatestJob job;
  std::vector<int> answers;
  std::atomic<bool> begun = false;
  job.start([&](const LatestJob::Work& work) -> LatestJob::OnScreen {
    begun = true;
    while (work.wanted()) std::this_thread::yield();
    work.post([&] { answers.push_back(-1); });
    return [&] { answers.push_back(1); };
  });
  ASSERT_TRUE(comes([&] { return begun.load(); }));
  job.start([&](const LatestJob::Work& work) -> LatestJob::OnScreen {
    work.post([&] { answers.push_back(2); });
    return [&] { answers.push_back(3); };
  });
  ASSERT_TRUE(comes([&] { return !job.running(); }));
  EXPECT_EQ(answers, (std::vector<int>{2, 3}));
}

TEST(LatestJob, Cancelled_AnswersNothing_AndCanBeginAnew) {
  LatestJob job;
  std::vector<int> answers;
  std::atomic<bool> begun = false;
  job.start([&](const LatestJob::Work& work) -> LatestJob::OnScreen {
    begun = true;
    while (work.report(0.5)) std::this_thread::yield();
    return [&] { answers.push_back(1); };
  });
  ASSERT_TRUE(comes([&] { return begun.load(); }));
  job.cancel();
  EXPECT_FALSE(job.running());
  job.start([&](const LatestJob::Work&) -> LatestJob::OnScreen { return [&] { answers.push_back(2); }; });
  ASSERT_TRUE(comes([&] { return !job.running(); }));
  EXPECT_EQ(answers, std::vector<int>{2});
}

TEST(LatestJob, Progress_IsTold_AndBeginsAnewWithTheNext) {
  LatestJob job;
  std::atomic<bool> enough = false;
  job.start([&](const LatestJob::Work& work) -> LatestJob::OnScreen {
    while (!enough && work.report(0.25)) std::this_thread::yield();
    return {};
  });
  ASSERT_TRUE(comes([&] { return job.progress() > 0; }));
  EXPECT_EQ(job.progress(), 0.25);
  enough = true;
  ASSERT_TRUE(comes([&] { return !job.running(); }));
  job.start([](const LatestJob::Work&) -> LatestJob::OnScreen { return {}; });
  EXPECT_EQ(job.progress(), 0);
}

TEST(LatestJob, Destroyed_StopsWhatRuns) {
  auto job = std::make_unique<LatestJob>();
  std::atomic<bool> begun = false, ended = false;
  job->start([&](const LatestJob::Work& work) -> LatestJob::OnScreen {
    begun = true;
    while (work.wanted()) std::this_thread::yield();
    ended = true;
    return [] { FAIL() << "nobody is left to be told"; };
  });
  ASSERT_TRUE(comes([&] { return begun.load(); }));
  job.reset();
  EXPECT_TRUE(ended);
}

}  // namespace
}  // namespace burrow
