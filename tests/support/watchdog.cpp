#include "support/watchdog.h"

#include <execinfo.h>
#include <pthread.h>
#include <unistd.h>

#include <QEvent>
#include <QThread>
#include <array>
#include <chrono>
#include <csignal>
#include <cstdlib>
#include <iostream>

#if defined(BURROW_SANITIZED) || defined(__SANITIZE_THREAD__)
extern "C" void __sanitizer_print_stack_trace();  // NOLINT: its own name
#endif

namespace burrow {

namespace {

constexpr double longest_wait_s = 60;
constexpr double given_up_after_s = 120;  ///< of processor time: nobody will see the end of it

std::mutex faults_mutex;
std::vector<std::string> faults;
std::function<void()> report_fault;
std::atomic<double> limit_s = longest_event_s;

double seconds(clockid_t clock) {
  timespec now{};
  clock_gettime(clock, &now);
  return static_cast<double>(now.tv_sec) + 1e-9 * static_cast<double>(now.tv_nsec);
}

/// In the screen's thread, wherever it is: a test may risk what a program may not.
void print_stack(int) {
#if defined(BURROW_SANITIZED) || defined(__SANITIZE_THREAD__)
  __sanitizer_print_stack_trace();
#else
  constexpr int most_frames = 60;
  std::array<void*, most_frames> frames{};
  backtrace_symbols_fd(frames.data(), backtrace(frames.data(), most_frames), STDERR_FILENO);
#endif
}

}  // namespace

WatchedApplication::WatchedApplication(int& argc, char** argv) : QApplication(argc, argv) {
  screen_thread_ = pthread_self();
  pthread_getcpuclockid(screen_thread_, &screen_clock_);
  std::signal(SIGUSR2, print_stack);
  watcher_ = std::jthread([this](const std::stop_token& stop) { watch(stop); });
}

WatchedApplication::~WatchedApplication() {
  watcher_.request_stop();
  watcher_.join();
}

std::vector<std::string> WatchedApplication::take_faults() {
  const std::lock_guard lock(faults_mutex);
  return std::exchange(faults, {});
}

void WatchedApplication::on_fault(std::function<void()> tell) {
  const std::lock_guard lock(faults_mutex);
  report_fault = std::move(tell);
}

void WatchedApplication::set_limit_s(double new_limit_s) {
  limit_s = new_limit_s;
}

bool WatchedApplication::notify(QObject* receiver, QEvent* event) {
  if (QThread::currentThread() != thread()) return QApplication::notify(receiver, event);
  const int level = QThread::currentThread()->loopLevel();
  if (!nested_.empty() && nested_.back().loop_level >= level) return QApplication::notify(receiver, event);
  begin(level, receiver, event);
  const bool answer = QApplication::notify(receiver, event);
  end();
  return answer;
}

void WatchedApplication::begin(int loop_level, const QObject* receiver, const QEvent* event) {
  const double now_s = seconds(screen_clock_);
  nested_.push_back({loop_level, now_s});
  {
    const std::lock_guard lock(mutex_);
    what_ = std::string(receiver->metaObject()->className()) + " '" + receiver->objectName().toStdString() +
            "', event " + std::to_string(static_cast<int>(event->type()));
  }
  ++number_;
  since_wall_s_ = seconds(CLOCK_MONOTONIC);
  since_s_ = now_s;
}

void WatchedApplication::end() {
  nested_.pop_back();
  ++number_;
  // The event whose loop this was goes on from here.
  since_wall_s_ = nested_.empty() ? -1 : seconds(CLOCK_MONOTONIC);
  since_s_ = nested_.empty() ? -1 : seconds(screen_clock_);
}

void WatchedApplication::watch(const std::stop_token& stop) {
  long reported = -1;
  while (!stop.stop_requested()) {
    std::this_thread::sleep_for(std::chrono::milliseconds(50));
    const long number = number_;
    const double since_s = since_s_;
    const double since_wall_s = since_wall_s_;
    if (since_s < 0 || since_wall_s < 0 || number != number_) continue;
    const double busy_s = seconds(screen_clock_) - since_s;
    const bool hangs = seconds(CLOCK_MONOTONIC) - since_wall_s > longest_wait_s;
    if ((busy_s > limit_s || hangs) && reported != number) {
      reported = number;
      report(busy_s);
    }
    if (busy_s > given_up_after_s) std::abort();
  }
}

void WatchedApplication::report(double busy_s) {
  std::string what;
  {
    const std::lock_guard lock(mutex_);
    what = what_;
  }
  std::cerr << "The screen's thread is busy for " << busy_s << " s with " << what << ", at\n";
  pthread_kill(screen_thread_, SIGUSR2);
  const std::lock_guard lock(faults_mutex);
  faults.push_back(what + ": " + std::to_string(busy_s) + " s");
  if (report_fault) report_fault();
}

}  // namespace burrow
