#pragma once
/// Random trials beside the open crossing, off the screen's thread. The newest request wins; an answer to an older one
/// is dropped. What was counted stays until it is counted anew, and says whether it still fits the crossing.

#include <QObject>
#include <QTimer>
#include <condition_variable>
#include <mutex>
#include <optional>
#include <stop_token>
#include <thread>

#include "burrow/document/document.h"
#include "burrow/trials/trials.h"

namespace burrow {

class TrialsJob : public QObject {
  Q_OBJECT

 public:
  explicit TrialsJob(Document& document, QObject* parent = nullptr);
  /// Stops what runs and waits for it.
  ~TrialsJob() override;

  /// Starts the trials of the crossing as it stands, in place of those under way.
  void run();
  void cancel();
  [[nodiscard]] bool running() const { return running_; }
  [[nodiscard]] double progress() const { return progress_; }

  /// The last ones finished, null before the first.
  [[nodiscard]] const Trials* trials() const { return trials_ ? &*trials_ : nullptr; }
  [[nodiscard]] const TrialsSetup& setup() const { return setup_; }
  /// Whether they are of the crossing as it stands.
  [[nodiscard]] bool current() const { return current_; }

  /// Counts anew after each change, once nothing has moved for a moment.
  void set_following(bool following);
  [[nodiscard]] bool following() const { return following_; }

 Q_SIGNALS:
  /// Started, finished, cancelled, or no longer current.
  void changed();
  void progressed(double share);

 private:
  struct Request {
    Crossing crossing;
    TrialsSetup setup;
    std::uint64_t number = 0;
    std::stop_token stop;
  };
  void work(const std::stop_token& end);
  void finish(std::uint64_t number, Trials trials, const TrialsSetup& setup, Crossing crossing);
  void crossing_changed();

  Document& document_;
  Tables tables_;  ///< the worker's own
  std::optional<Trials> trials_;
  TrialsSetup setup_;
  Crossing counted_;  ///< the crossing that they are of
  bool current_ = false;
  bool running_ = false;
  bool following_ = false;
  double progress_ = 0;
  std::uint64_t newest_ = 0;
  std::stop_source stop_;
  QTimer settle_;

  std::mutex mutex_;
  std::condition_variable_any wake_;
  std::optional<Request> waiting_;
  std::jthread worker_;  ///< last: ends before the rest goes
};

}  // namespace burrow
