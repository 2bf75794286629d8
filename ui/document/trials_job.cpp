#include "burrow/document/trials_job.h"

#include <chrono>

#include "burrow/check/conclude_trials.h"
#include "burrow/check/trials_plan.h"

namespace burrow {

namespace {
constexpr int settle_ms = 250;
constexpr std::chrono::milliseconds progress_every{40};

/// One core is left to the screen.
unsigned threads_to_use() {
  return std::max(2U, std::thread::hardware_concurrency()) - 1;
}
}  // namespace

TrialsJob::TrialsJob(Document& document, QObject* parent)
    : QObject(parent), document_(document), tables_(document.tables()) {
  settle_.setSingleShot(true);
  settle_.setInterval(settle_ms);
  connect(&settle_, &QTimer::timeout, this, &TrialsJob::run);
  connect(&document_, &Document::changed, this, &TrialsJob::crossing_changed);
  connect(&document_, &Document::replaced, this, [this] {
    cancel();
    trials_.reset();
    current_ = false;
    Q_EMIT changed();
  });
  worker_ = std::jthread([this](const std::stop_token& end) { work(end); });
}

TrialsJob::~TrialsJob() {
  stop_.request_stop();
  worker_.request_stop();
  wake_.notify_all();
}

void TrialsJob::run() {
  settle_.stop();
  stop_.request_stop();
  stop_ = std::stop_source();
  const Crossing& crossing = document_.crossing();
  Request request{crossing, trials_setup(crossing, document_.tables(), document_.assessment()), ++newest_,
                  stop_.get_token()};
  {
    const std::lock_guard lock(mutex_);
    waiting_ = std::move(request);
  }
  wake_.notify_all();
  running_ = true;
  progress_ = 0;
  Q_EMIT changed();
}

void TrialsJob::cancel() {
  settle_.stop();
  if (!running_) return;
  stop_.request_stop();
  ++newest_;
  running_ = false;
  Q_EMIT changed();
}

void TrialsJob::set_following(bool following) {
  following_ = following;
  if (following_ && !current_ && !running_) run();
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

void TrialsJob::finish(std::uint64_t number, Trials trials, const TrialsSetup& setup, Crossing crossing) {
  if (number != newest_) return;  // an older request, or cancelled meanwhile
  running_ = false;
  trials_ = std::move(trials);
  setup_ = setup;
  counted_ = std::move(crossing);
  current_ = same_but_mutes(counted_, document_.crossing());
  if (current_)
    document_.note_trials(counted_, trials_findings(counted_, document_.tables(), document_.assessment(), *trials_));
  Q_EMIT changed();
  if (following_ && !current_) settle_.start();
}

void TrialsJob::work(const std::stop_token& end) {
  for (;;) {
    Request request;
    {
      std::unique_lock lock(mutex_);
      if (!wake_.wait(lock, end, [this] { return waiting_.has_value(); })) return;
      request = std::move(*waiting_);
      waiting_.reset();
    }
    auto reported = std::chrono::steady_clock::now();
    const auto progress = [&](double share) {
      const auto now = std::chrono::steady_clock::now();
      if (now - reported < progress_every) return;
      reported = now;
      QMetaObject::invokeMethod(
          this,
          [this, share, number = request.number] {
            if (number != newest_ || !running_) return;
            progress_ = share;
            Q_EMIT progressed(share);
          },
          Qt::QueuedConnection);
    };
    Trials trials = run_trials(request.crossing, tables_, request.setup, request.stop, progress, threads_to_use());
    if (trials.cancelled) continue;
    QMetaObject::invokeMethod(
        this,
        [this, number = request.number, answer = std::move(trials), setup = request.setup,
         crossing = std::move(request.crossing)]() mutable {
          finish(number, std::move(answer), setup, std::move(crossing));
        },
        Qt::QueuedConnection);
  }
}

}  // namespace burrow
