#include "burrow/document/launch_search_job.h"

#include <cmath>

namespace burrow {

namespace {
constexpr int settle_ms = 200;
constexpr int coarse_cells = 16;

/// The crossing without what a map runs over.
void forget_place(Launch& launch, MapOver over) {
  if (over == MapOver::depth_and_grade) {
    launch.elevation = {};
    launch.grade = {};
  } else {
    launch.station = {};
    launch.offset = {};
  }
}
}  // namespace

LaunchSearchJob::LaunchSearchJob(Document& document, QObject* parent)
    : QObject(parent), document_(document), tables_(document.tables()) {
  settle_.setSingleShot(true);
  settle_.setInterval(settle_ms);
  connect(&settle_, &QTimer::timeout, this, &LaunchSearchJob::run);
  connect(&document_, &Document::changed, this, &LaunchSearchJob::crossing_changed);
  connect(&document_, &Document::replaced, this, [this] {
    cancel();
    map_.reset();
    tools_.reset();
    exposures_.clear();
    current_ = false;
    if (wanted_) settle_.start();
    Q_EMIT changed();
  });
  connect(&job_, &LatestJob::progressed, this, &LaunchSearchJob::progressed);
}

void LaunchSearchJob::run() {
  settle_.stop();
  asked_tools_ = false;
  job_.start([this, request = Request{document_.crossing(), over_, full_cells_}](const LatestJob::Work& work) {
    return search(request, work);
  });
  Q_EMIT changed();
}

void LaunchSearchJob::ask_tools() {
  settle_.stop();
  asked_tools_ = true;
  job_.start([this, crossing = document_.crossing()](const LatestJob::Work& work) { return choose(crossing, work); });
  Q_EMIT changed();
}

void LaunchSearchJob::cancel() {
  settle_.stop();
  if (!running()) return;
  job_.cancel();
  Q_EMIT changed();
}

void LaunchSearchJob::set_wanted(bool wanted) {
  wanted_ = wanted;
  if (wanted_ && !running() && (!current_ || coarse_)) run();
}

void LaunchSearchJob::set_over(MapOver over) {
  if (over == over_) return;
  over_ = over;
  current_ = false;
  if (wanted_) run();
}

bool LaunchSearchJob::fits() const {
  if (!map_ || map_->over != over_) return false;
  Crossing then = searched_, now = document_.crossing();
  const MapPlace place = place_of(now, over_);
  const auto within = [](const MapAxis& axis, double value) {
    return axis.locked ? std::abs(value - axis.from) < 1e-9 : value >= axis.from && value <= axis.to;
  };
  if (!within(map_->across, place.across) || !within(map_->down, place.down)) return false;
  forget_place(then.bore.launch, over_);
  forget_place(now.bore.launch, over_);
  return then == now;
}

bool LaunchSearchJob::tools_current() const {
  if (!tools_) return false;
  Crossing then = tools_of_, now = document_.crossing();
  forget_place(then.bore.launch, MapOver::depth_and_grade);
  forget_place(now.bore.launch, MapOver::depth_and_grade);
  return then == now;
}

void LaunchSearchJob::crossing_changed() {
  const bool now = fits();
  if (now != current_) {
    current_ = now;
    Q_EMIT changed();
  }
  if (wanted_ && !current_) settle_.start();
}

void LaunchSearchJob::show(LaunchMap map, std::vector<Exposure> exposures, Crossing crossing, bool coarse) {
  map_ = std::make_shared<const LaunchMap>(std::move(map));
  exposures_ = std::move(exposures);
  searched_ = std::move(crossing);
  coarse_ = coarse;
  current_ = fits();
  Q_EMIT changed();
  if (!coarse && wanted_ && !current_) settle_.start();
}

LatestJob::OnScreen LaunchSearchJob::search(const Request& request, const LatestJob::Work& work) {
  LaunchMapOptions options{request.over, coarse_cells, false, LatestJob::threads_to_use()};
  LaunchMap map = search_launches(request.crossing, tables_, options, work.stop());
  if (map.cancelled) return {};
  work.post([this, map = std::move(map), crossing = request.crossing]() mutable {
    show(std::move(map), {}, std::move(crossing), true);
  });
  options.cells = request.full_cells;
  options.refine = true;
  map = search_launches(request.crossing, tables_, options, work.stop(), [&](double share) { work.report(share); });
  if (map.cancelled) return {};
  std::vector<Exposure> dug;
  if (!map.works)
    dug = burrow::exposures(request.crossing, tables_, map, {coarse_cells, LatestJob::threads_to_use()}, work.stop());
  if (!work.wanted()) return {};
  return [this, map = std::move(map), dug = std::move(dug), crossing = request.crossing]() mutable {
    show(std::move(map), std::move(dug), std::move(crossing), false);
  };
}

LatestJob::OnScreen LaunchSearchJob::choose(const Crossing& crossing, const LatestJob::Work& work) {
  std::vector<ToolRow> rows = choose_tool(crossing, tables_, {14, LatestJob::threads_to_use()}, work.stop(),
                                          [&](double share) { work.report(share); });
  if (!work.wanted()) return {};
  return [this, rows = std::move(rows), crossing]() mutable {
    tools_ = std::move(rows);
    tools_of_ = std::move(crossing);
    Q_EMIT changed();
    if (wanted_ && (!current_ || coarse_)) settle_.start();
  };
}

}  // namespace burrow
