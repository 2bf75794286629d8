// The watchdog itself: what takes long is told with its receiver, what takes no time is not, and neither is waiting.
#include "support/watchdog.h"

#include <gtest/gtest.h>

#include <QEventLoop>
#include <QTimer>

namespace burrow {
namespace {

/// Busy for so much of this thread's processor time.
void work_for(double seconds) {
  const auto now_s = [] {
    timespec now{};
    clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
    return static_cast<double>(now.tv_sec) + 1e-9 * static_cast<double>(now.tv_nsec);
  };
  const double end_s = now_s() + seconds;
  while (now_s() < end_s) {
  }
}

class Watchdog : public ::testing::Test {
 protected:
  Watchdog() { WatchedApplication::set_limit_s(0.4); }
  ~Watchdog() override { WatchedApplication::set_limit_s(longest_event_s); }
  /// What is told of an event that does this.
  static std::vector<std::string> informed_of(const std::function<void()>& doing) {
    QEventLoop loop;
    QTimer timer;
    timer.setObjectName(QStringLiteral("the slow one"));
    QObject::connect(&timer, &QTimer::timeout, [&] {
      timer.stop();
      doing();
      loop.quit();
    });
    timer.start(0);
    loop.exec();
    return WatchedApplication::take_faults();
  }
};

TEST_F(Watchdog, LongEvent_IsToldWithItsReceiver) {
  const std::vector<std::string> faults = informed_of([] { work_for(1.2); });
  ASSERT_EQ(faults.size(), 1U) << "each event is told once";
  EXPECT_NE(faults.front().find("the slow one"), std::string::npos) << faults.front();
}

TEST_F(Watchdog, ShortEventAndWaiting_AreNotTold) {
  EXPECT_TRUE(informed_of([] {}).empty());
  EXPECT_TRUE(informed_of([] {
                QEventLoop inner;  // a dialog that waits for its person
                QTimer::singleShot(600, &inner, &QEventLoop::quit);
                inner.exec();
              }).empty());
}

TEST_F(Watchdog, LongEventInAnInnerLoop_IsTold) {
  const std::vector<std::string> faults = informed_of([] {
    QEventLoop inner;
    QTimer::singleShot(0, &inner, [&] {
      work_for(1.2);
      inner.quit();
    });
    inner.exec();
  });
  EXPECT_EQ(faults.size(), 1U);
}

}  // namespace
}  // namespace burrow
