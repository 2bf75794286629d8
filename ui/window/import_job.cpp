#include "burrow/window/import_job.h"

#include "burrow/import/found_in_frame.h"
#include "burrow/import/read_file.h"

namespace burrow {

ImportJob::ImportJob(QObject* parent) : QObject(parent) {
  connect(&job_, &LatestJob::progressed, this, &ImportJob::progressed);
}

void ImportJob::read(const std::string& path, const Manner& manner, std::shared_ptr<const Found> beside) {
  job_.start([this, path, manner, beside = std::move(beside)](const LatestJob::Work& work) -> LatestJob::OnScreen {
    ReadOptions options;
    options.order = manner.order;
    options.unit = manner.unit;
    options.progress = [&](double share) { return work.report(share); };
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
  job_.start([this, files = std::move(files), line](const LatestJob::Work& work) -> LatestJob::OnScreen {
    auto imported = std::make_shared<const Result<Imported>>(
        into_crossing(files, line, {}, [&](double share) { return work.report(share); }));
    return [this, imported] { Q_EMIT cut_done(imported); };
  });
}

}  // namespace burrow
