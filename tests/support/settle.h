#pragma once
/// No test lets time pass. What a window put off for a moment (a list that catches up, a page that is brought up to
/// date once nothing moves) is done at once by `settle`; what a worker or another process does is awaited by `comes`.

#include <QCoreApplication>
#include <QTest>
#include <QTimer>
#include <QTimerEvent>
#include <utility>

namespace burrow {

/// What is put off for longer is not for the sake of the screen: copies of unsaved work, midnight.
constexpr int moment_ms = 300;

/// The time of a timer has come, now.
inline void fire(QTimer& timer) {
  QTimerEvent event(timer.timerId());
  QCoreApplication::sendEvent(&timer, &event);
}

/// Everything that lies in the event loop, and what widgets put off until then.
inline void turn_event_loop() {
  constexpr int rounds = 3;  // a size that changes lays out, which changes sizes
  for (int i = 0; i < rounds; ++i) {
    QCoreApplication::processEvents();
    QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
  }
}

/// Until nothing below `root` is put off any more.   Evidence: Settle.*
inline void settle(QObject& root) {
  constexpr int most_rounds = 50;  // something that puts itself off again and again has no end
  turn_event_loop();
  for (int round = 0; round < most_rounds; ++round) {
    bool fired = false;
    for (QTimer* timer : root.findChildren<QTimer*>()) {
      if (!timer->isActive() || !timer->isSingleShot() || timer->interval() > moment_ms) continue;
      fired = true;
      fire(*timer);
      break;  // what it did may have deleted the others
    }
    if (!fired) return;
    turn_event_loop();
  }
  qFatal("%s never settles", root.metaObject()->className());
}

/// The next frame of what moves by itself, without its time.
inline void next_frame(QObject& root) {
  for (QTimer* timer : root.findChildren<QTimer*>())
    if (timer->isActive() && !timer->isSingleShot()) fire(*timer);
}

/// Whether it comes: what a worker beside the screen, the system or another process does. The limit is for a test that
/// would not end; nothing is concluded from how long it took.
template <class Condition>
[[nodiscard]] bool comes(Condition&& condition) {
  constexpr int far_too_long_ms = 240'000;
  return QTest::qWaitFor(std::forward<Condition>(condition), far_too_long_ms);
}

}  // namespace burrow
