#include "burrow/document/trials_job.h"

#include "burrow/check/conclude_trials.h"
#include "burrow/check/trials_plan.h"

namespace burrow {

namespace {
constexpr int trials_settle_ms = 250;
}  // namespace

TrialsJob::TrialsJob(Document& document, QObject* parent)
    : QObject(parent), document_(document), tables_(document.tables()) {
  settle_.setSingleShot(true);
  settle_.setInterval(trials_settle_ms);
  connect(&settle_, &QTimer::timeout, this, &TrialsJob::run);
  connect(&document_, &Document::changed, this, &TrialsJob::crossing_changed);
  connect(&document_, &Document::replaced, this, [this] {
    cancel();
    trials_.reset();
    current_ = false;
    Q_EMIT changed();
  });
  connect(&job_, &LatestJob::progressed, this, &TrialsJob::progressed);
}

void TrialsJob::run() {
  settle_.stop();
  const Crossing& crossing = document_.crossing();
  job_.start([this, crossing, setup = trials_setup(crossing, document_.tables(), document_.assessment())](
                 const LatestJob::Work& work) -> LatestJob::OnScreen {
    Trials trials = run_trials(
        crossing, tables_, setup, work.stop(), [&](double share) { work.report(share); }, LatestJob::threads_to_use());
    if (trials.cancelled) return {};
    return [this, trials = std::move(trials), setup, crossing]() mutable {
      finish(std::move(trials), setup, std::move(crossing));
    };
  });
  Q_EMIT changed();
}

void TrialsJob::cancel() {
  settle_.stop();
  if (!running()) return;
  job_.cancel();
  Q_EMIT changed();
}

void TrialsJob::set_following(bool following) {
  following_ = following;
  if (following_ && !current_ && !running()) run();
}

void TrialsJob::crossing_changed() {
  if (trials_) {
    const bool fits = same_but_mutes(counted_, document_.crossing());
    if (fits != current_) {
      current_ = fits;
      Q_EMIT changed();
    }
  }
  if (following_ && !current_) settle_.start();
}

void TrialsJob::finish(Trials trials, const TrialsSetup& setup, Crossing crossing) {
  trials_ = std::move(trials);
  setup_ = setup;
  counted_ = std::move(crossing);
  current_ = same_but_mutes(counted_, document_.crossing());
  if (current_)
    document_.note_trials(counted_, trials_findings(counted_, document_.tables(), document_.assessment(), *trials_));
  Q_EMIT changed();
  if (following_ && !current_) settle_.start();
}

}  // namespace burrow
