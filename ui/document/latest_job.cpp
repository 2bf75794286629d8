#include "burrow/document/latest_job.h"

#include <algorithm>
#include <chrono>
#include <utility>

namespace burrow {

namespace {

constexpr std::int64_t progress_every_ms = 40;

std::int64_t now_ms() {
  const auto now = std::chrono::steady_clock::now().time_since_epoch();
  return std::chrono::duration_cast<std::chrono::milliseconds>(now).count();
}

}  // namespace

LatestJob::Work::Work(LatestJob& job, std::uint64_t number, std::stop_token stop, std::stop_token end)
    : job_(job), number_(number), stop_(std::move(stop)), end_(std::move(end)), reported_ms_(now_ms()) {}

bool LatestJob::Work::report(double share) const {
  if (const std::int64_t now = now_ms(); now - reported_ms_ >= progress_every_ms) {
    reported_ms_ = now;
    post([&job = job_, share] {
      job.progress_ = share;
      Q_EMIT job.progressed(share);
    });
  }
  return wanted();
}

void LatestJob::Work::post(OnScreen part) const {
  QMetaObject::invokeMethod(
      &job_,
      [&job = job_, number = number_, part = std::move(part)] {
        if (number == job.newest_ && job.running_) part();
      },
      Qt::QueuedConnection);
}

LatestJob::LatestJob(QObject* parent) : QObject(parent) {
  worker_ = std::jthread([this](const std::stop_token& end) { work(end); });
}

LatestJob::~LatestJob() {
  stop_.request_stop();
  worker_.request_stop();
  wake_.notify_all();
}

unsigned LatestJob::threads_to_use() {
  return std::max(2U, std::thread::hardware_concurrency()) - 1;
}

void LatestJob::start(Task task) {
  stop_.request_stop();
  stop_ = std::stop_source();
  {
    const std::lock_guard lock(mutex_);
    waiting_ = Waiting{std::move(task), ++newest_, stop_.get_token()};
  }
  wake_.notify_all();
  running_ = true;
  progress_ = 0;
}

void LatestJob::cancel() {
  stop_.request_stop();
  ++newest_;
  running_ = false;
}

void LatestJob::work(const std::stop_token& end) {
  for (;;) {
    Waiting next;
    {
      std::unique_lock lock(mutex_);
      if (!wake_.wait(lock, end, [this] { return waiting_.has_value(); })) return;
      next = std::move(*waiting_);
      waiting_.reset();
    }
    const Work work(*this, next.number, next.stop, end);
    OnScreen after = next.task(work);
    work.post([this, after = std::move(after)] {
      running_ = false;
      if (after) after();
    });
  }
}

}  // namespace burrow
