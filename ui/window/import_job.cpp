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
      const auto go_on = [&] { return work.report(1); };
      if (auto moved = found_in_frame(**found, (*found)->frame, 1, beside->frame, middle, go_on); moved && *moved)
        seen = std::make_shared<const Found>(*std::move(*moved));
    }
    return [this, found, seen] { Q_EMIT read_done(found, seen); };
  });
}

void ImportJob::see(std::vector<ImportFile> files) {
  seeing_.start([this, files = std::move(files)](const LatestJob::Work& work) -> LatestJob::OnScreen {
    std::vector<std::pair<std::shared_ptr<const Found>, std::shared_ptr<const Found>>> all;
    const auto extent = extent_of(*files.front().found);
    for (std::size_t i = 1; i < files.size() && extent; ++i) {
      const PlanPoint middle{(extent->low_x + extent->high_x) / 2, (extent->low_y + extent->high_y) / 2};
      auto moved = found_in_frame(*files[i].found, frame_of(files[i]), units_of_system(files[i]),
                                  frame_of(files.front()), middle, [&] { return work.wanted(); });
      std::shared_ptr<const Found> seen;
      if (moved && *moved) seen = std::make_shared<const Found>(*std::move(*moved));
      all.emplace_back(files[i].found, std::move(seen));
    }
    return [this, all = std::move(all)] { Q_EMIT seen_done(all); };
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
