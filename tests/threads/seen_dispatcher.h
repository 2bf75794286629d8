#pragma once
/// An event loop for tests under the thread sanitizer. Qt's libraries are not built for it: what a worker hands over by
/// a queued call looks like a race, since the lock between is inside Qt. This loop waits by std::mutex, which the
/// sanitizer sees, and lets a queued call run only after the thread that posted it has come back from posting. So
/// nothing of ours need be suppressed.

#include <QAbstractEventDispatcher>
#include <QCoreApplication>
#include <QEvent>
#include <chrono>
#include <condition_variable>
#include <functional>
#include <list>
#include <mutex>
#include <thread>

namespace burrow::test {

class SeenDispatcher : public QAbstractEventDispatcher {
 public:
  bool processEvents(QEventLoop::ProcessEventsFlags flags) override;
  void registerSocketNotifier(QSocketNotifier* /*none*/) override {}
  void unregisterSocketNotifier(QSocketNotifier* /*none*/) override {}
  void registerTimer(int id, qint64 interval, Qt::TimerType type, QObject* object) override;
  bool unregisterTimer(int id) override;
  bool unregisterTimers(QObject* object) override;
  QList<TimerInfo> registeredTimers(QObject* object) const override;
  int remainingTime(int id) override;
  /// Qt calls it after each event posted, on the thread that posted it.
  void wakeUp() override;
  void interrupt() override { wakeUp(); }

  /// Before the `n`th queued call of another thread is run: waits until as many posts have been told of.
  void wait_for_poster();
  /// After a thread has been joined: what it posted and nobody ran is forgotten.
  void forget_posts();

 private:
  using Clock = std::chrono::steady_clock;
  struct Timer {
    int id;
    qint64 interval;
    Qt::TimerType type;
    QObject* object;
    Clock::time_point due;
  };
  bool fire_timers();
  Clock::time_point next_due() const;

  std::mutex mutex_;
  std::condition_variable woken_, posted_;
  bool awake_ = false;
  long told_ = 0, run_ = 0;  ///< posts of other threads
  const std::thread::id own_ = std::this_thread::get_id();
  std::list<Timer> timers_;
};

/// The application whose queued calls pass by the dispatcher above.
class SeenApplication : public QCoreApplication {
 public:
  using QCoreApplication::QCoreApplication;
  bool notify(QObject* receiver, QEvent* event) override;
};

SeenDispatcher& seen_dispatcher();

/// Turns the loop until it holds, at most two minutes.
bool turn_until(const std::function<bool()>& holds);

}  // namespace burrow::test
