#pragma once
/// One piece of work at a time off the screen's thread. A newer one stops the older, whose answer is dropped.
/// Evidence: LatestJob.*

#include <QObject>
#include <condition_variable>
#include <cstdint>
#include <functional>
#include <mutex>
#include <optional>
#include <stop_token>
#include <thread>

namespace burrow {

class LatestJob : public QObject {
  Q_OBJECT

 public:
  using OnScreen = std::function<void()>;

  /// A piece of work as its own thread sees it.
  class Work {
   public:
    Work(LatestJob& job, std::uint64_t number, std::stop_token stop, std::stop_token end);
    /// Not cancelled, and nothing newer was begun.
    [[nodiscard]] bool wanted() const { return !stop_.stop_requested() && !end_.stop_requested(); }
    [[nodiscard]] const std::stop_token& stop() const { return stop_; }
    /// Tells the screen, at most every 40 ms; false: it may end.
    bool report(double share) const;
    /// Done on the screen's thread while the work goes on, unless a newer one was begun by then.
    void post(OnScreen part) const;

   private:
    LatestJob& job_;
    std::uint64_t number_;
    std::stop_token stop_, end_;
    mutable std::int64_t reported_ms_ = 0;
  };
  /// Gives what is then to be done on the screen's thread, when it no longer counts as running.
  using Task = std::function<OnScreen(const Work&)>;

  explicit LatestJob(QObject* parent = nullptr);
  /// Stops what runs and waits for it.
  ~LatestJob() override;

  /// In place of what is under way.
  void start(Task task);
  void cancel();
  [[nodiscard]] bool running() const { return running_; }
  [[nodiscard]] double progress() const { return progress_; }

  /// One core is left to the screen.
  static unsigned threads_to_use();

 Q_SIGNALS:
  void progressed(double share);

 private:
  struct Waiting {
    Task task;
    std::uint64_t number = 0;
    std::stop_token stop;
  };
  void work(const std::stop_token& end);

  std::uint64_t newest_ = 0;
  bool running_ = false;
  double progress_ = 0;
  std::stop_source stop_;
  std::mutex mutex_;
  std::condition_variable_any wake_;
  std::optional<Waiting> waiting_;
  std::jthread worker_;  ///< last: ends before the rest goes
};

}  // namespace burrow
