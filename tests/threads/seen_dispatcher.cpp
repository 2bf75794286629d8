#include "seen_dispatcher.h"

#include <QTimerEvent>
#include <algorithm>

namespace burrow::test {

bool SeenDispatcher::processEvents(QEventLoop::ProcessEventsFlags flags) {
  {
    std::unique_lock lock(mutex_);
    if (flags.testFlag(QEventLoop::WaitForMoreEvents) && !awake_) {
      Q_EMIT aboutToBlock();
      woken_.wait_until(lock, next_due(), [this] { return awake_; });
    }
    awake_ = false;
  }
  Q_EMIT awake();
  QCoreApplication::sendPostedEvents();
  return fire_timers();
}

bool SeenDispatcher::fire_timers() {
  const auto now = Clock::now();
  std::vector<std::pair<int, QObject*>> due;
  for (Timer& timer : timers_)
    if (timer.due <= now) {
      timer.due = now + std::chrono::milliseconds(timer.interval);
      due.emplace_back(timer.id, timer.object);
    }
  for (const auto& [id, object] : due) {
    const auto there = [&, timer = id](const Timer& t) { return t.id == timer; };
    if (std::none_of(timers_.begin(), timers_.end(), there)) continue;  // stopped by one before it
    QTimerEvent event(id);
    QCoreApplication::sendEvent(object, &event);
  }
  return !due.empty();
}

SeenDispatcher::Clock::time_point SeenDispatcher::next_due() const {
  auto due = Clock::now() + std::chrono::milliseconds(100);
  for (const Timer& timer : timers_) due = std::min(due, timer.due);
  return due;
}

void SeenDispatcher::registerTimer(int id, qint64 interval, Qt::TimerType type, QObject* object) {
  timers_.push_back({id, interval, type, object, Clock::now() + std::chrono::milliseconds(interval)});
}

bool SeenDispatcher::unregisterTimer(int id) {
  return timers_.remove_if([&](const Timer& timer) { return timer.id == id; }) > 0;
}

bool SeenDispatcher::unregisterTimers(QObject* object) {
  return timers_.remove_if([&](const Timer& timer) { return timer.object == object; }) > 0;
}

QList<QAbstractEventDispatcher::TimerInfo> SeenDispatcher::registeredTimers(QObject* object) const {
  QList<TimerInfo> found;
  for (const Timer& timer : timers_)
    if (timer.object == object) found.append(TimerInfo(timer.id, static_cast<int>(timer.interval), timer.type));
  return found;
}

int SeenDispatcher::remainingTime(int id) {
  for (const Timer& timer : timers_)
    if (timer.id == id)
      return std::max(
          0, static_cast<int>(std::chrono::duration_cast<std::chrono::milliseconds>(timer.due - Clock::now()).count()));
  return -1;
}

void SeenDispatcher::wakeUp() {
  {
    const std::lock_guard lock(mutex_);
    awake_ = true;
    if (std::this_thread::get_id() != own_) ++told_;
  }
  woken_.notify_all();
  posted_.notify_all();
}

void SeenDispatcher::wait_for_poster() {
  std::unique_lock lock(mutex_);
  // A call that the main thread queued for itself is told of by nobody: then the wait ends by time, and no harm is
  // done.
  if (posted_.wait_for(lock, std::chrono::milliseconds(200), [this] { return told_ > run_; })) ++run_;
}

void SeenDispatcher::forget_posts() {
  const std::lock_guard lock(mutex_);
  run_ = told_;
}

bool SeenApplication::notify(QObject* receiver, QEvent* event) {
  if (event->type() == QEvent::MetaCall) seen_dispatcher().wait_for_poster();
  return QCoreApplication::notify(receiver, event);
}

SeenDispatcher& seen_dispatcher() {
  static auto* const dispatcher = new SeenDispatcher;  // the application takes it
  return *dispatcher;
}

bool turn_until(const std::function<bool()>& holds) {
  const auto end = std::chrono::steady_clock::now() + std::chrono::minutes(2);
  while (!holds()) {
    if (std::chrono::steady_clock::now() > end) return false;
    QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
  }
  return true;
}

}  // namespace burrow::test
