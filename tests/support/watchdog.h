#pragma once
/// An application that watches how long the screen's thread is busy with one event. A person does not wait longer than
/// a second; what takes more is a fault, and the stack at that moment says where. Counted is the thread's own processor
/// time, so that a busy machine is not blamed on the program; a thread that neither works nor returns for a minute has
/// hung. Evidence: Watchdog.*

#include <QApplication>
#include <atomic>
#include <ctime>
#include <functional>
#include <mutex>
#include <string>
#include <thread>
#include <vector>

namespace burrow {

/// Seconds of the screen's thread for one event. The sanitizers of the checked build take about four times as long.
#if defined(BURROW_SANITIZED) || defined(__SANITIZE_THREAD__)
constexpr double longest_event_s = 4;
#else
constexpr double longest_event_s = 1;
#endif

class WatchedApplication : public QApplication {
 public:
  WatchedApplication(int& argc, char** argv);
  ~WatchedApplication() override;

  bool notify(QObject* receiver, QEvent* event) override;

  /// What took too long since the last call, each with receiver and event; the stacks stand in the log (stderr).
  static std::vector<std::string> take_faults();
  /// Told as well when something takes too long, from the watching thread: the monkey says what it did last.
  static void on_fault(std::function<void()> tell);
  /// For the test of the watchdog itself.
  static void set_limit_s(double limit_s);

 private:
  struct Busy {
    int loop_level = 0;
    double since_s = 0;  ///< processor time of the screen's thread at its start, or when an inner loop gave it back
  };
  void begin(int loop_level, const QObject* receiver, const QEvent* event);
  void end();
  void watch(const std::stop_token& stop);
  void report(double busy_s);

  std::vector<Busy> nested_;  ///< events that are being handled, one for each event loop; screen's thread only
  std::mutex mutex_;
  std::string what_;                       ///< receiver and event of the innermost one
  std::atomic<double> since_s_ = -1;       ///< processor time at its start; below 0: idle
  std::atomic<double> since_wall_s_ = -1;  ///< the same by the clock
  std::atomic<long> number_ = 0;
  clockid_t screen_clock_{};
  pthread_t screen_thread_{};
  std::jthread watcher_;
};

}  // namespace burrow
