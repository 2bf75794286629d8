#include "burrow/window/import_job.h"

#include <chrono>

#include "burrow/import/found_in_frame.h"
#include "burrow/import/read_file.h"

namespace burrow {

ImportJob::ImportJob(QObject* parent) : QObject(parent) {
  worker_ = std::jthread([this](const std::stop_token& end) { work(end); });
}

ImportJob::~ImportJob() {
  stop_.request_stop();
  worker_.request_stop();
  wake_.notify_all();
}

void ImportJob::read(const std::string& path, const std::string& order, std::shared_ptr<const Found> beside) {
  begin([this, path, order, beside = std::move(beside)](const Tell& tell) -> std::function<void()> {
    ReadOptions options;
    options.order = order;
    options.progress = tell;
    auto found = std::make_shared<const Result<Found>>(read_foreign_file(path, options));
    std::shared_ptr<const Found> seen;
    const auto extent = beside ? extent_of(*beside) : std::nullopt;
    if (*found && extent) {
      const PlanPoint middle{(extent->low_x + extent->high_x) / 2, (extent->low_y + extent->high_y) / 2};
      // Where it cannot be placed, the cut says why; the picture goes without.
      if (auto moved = found_in_frame(**found, beside->frame, middle); moved && *moved)
        seen = std::make_shared<const Found>(*std::move(*moved));
    }
    return [this, found, seen] { Q_EMIT read_done(found, seen); };
  });
}

void ImportJob::cut(std::vector<ImportFile> files, const CrossingLine& line) {
  begin([this, files = std::move(files), line](const Tell& tell) -> std::function<void()> {
    auto imported = std::make_shared<const Result<Imported>>(into_crossing(files, line, {}, tell));
    return [this, imported] { Q_EMIT cut_done(imported); };
  });
}

void ImportJob::stop() {
  stop_.request_stop();
  ++newest_;
  running_ = false;
}

void ImportJob::begin(std::function<std::function<void()>(const Tell&)> run) {
  stop_.request_stop();
  stop_ = std::stop_source();
  {
    const std::lock_guard lock(mutex_);
    waiting_ = Job{std::move(run), ++newest_, stop_.get_token()};
  }
  running_ = true;
  wake_.notify_all();
}

void ImportJob::work(const std::stop_token& end) {
  while (true) {
    Job job;
    {
      std::unique_lock lock(mutex_);
      if (!wake_.wait(lock, end, [this] { return waiting_.has_value(); })) return;
      job = std::move(*waiting_);
      waiting_.reset();
    }
    auto reported = std::chrono::steady_clock::now();
    const Tell tell = [&](double share) {
      const auto now = std::chrono::steady_clock::now();
      if (now - reported > std::chrono::milliseconds(40)) {
        reported = now;
        QMetaObject::invokeMethod(
            this,
            [this, share, number = job.number] {
              if (number == newest_) Q_EMIT progressed(share);
            },
            Qt::QueuedConnection);
      }
      return !job.stop.stop_requested() && !end.stop_requested();
    };
    auto after = job.run(tell);
    QMetaObject::invokeMethod(
        this,
        [this, after = std::move(after), number = job.number] {
          if (number != newest_) return;
          running_ = false;
          after();
        },
        Qt::QueuedConnection);
  }
}

}  // namespace burrow
