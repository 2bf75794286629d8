#pragma once
/// Random trials beside the open crossing, off the screen's thread. The newest request wins; an answer to an older one
/// is dropped. What was counted stays until it is counted anew, and says whether it still fits the crossing.

#include <QObject>
#include <QTimer>
#include <optional>

#include "burrow/document/document.h"
#include "burrow/document/latest_job.h"
#include "burrow/trials/trials.h"

namespace burrow {

class TrialsJob : public QObject {
  Q_OBJECT

 public:
  explicit TrialsJob(Document& document, QObject* parent = nullptr);

  /// Starts the trials of the crossing as it stands, in place of those under way.
  void run();
  void cancel();
  [[nodiscard]] bool running() const { return job_.running(); }
  [[nodiscard]] double progress() const { return job_.progress(); }

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
  void finish(Trials trials, const TrialsSetup& setup, Crossing crossing);
  void crossing_changed();

  Document& document_;
  Tables tables_;  ///< the worker's own
  std::optional<Trials> trials_;
  TrialsSetup setup_;
  Crossing counted_;  ///< the crossing that they are of
  bool current_ = false;
  bool following_ = false;
  QTimer settle_;
  LatestJob job_;  ///< last: ends before the rest goes
};

}  // namespace burrow
