#include "burrow/document/launch_search_job.h"

#include <cmath>

namespace burrow {

namespace {
constexpr int settle_ms = 200;
constexpr int coarse_cells = 16;

/// One core is left to the screen.
unsigned threads_to_use() {
  return std::max(2U, std::thread::hardware_concurrency()) - 1;
}

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
  worker_ = std::jthread([this](const std::stop_token& end) { work(end); });
}

LaunchSearchJob::~LaunchSearchJob() {
  stop_.request_stop();
  worker_.request_stop();
  wake_.notify_all();
}

void LaunchSearchJob::ask(bool tools) {
  settle_.stop();
  stop_.request_stop();
  stop_ = std::stop_source();
  Request request{document_.crossing(), over_, tools, full_cells_, ++newest_, stop_.get_token()};
  {
    const std::lock_guard lock(mutex_);
    waiting_ = std::move(request);
  }
  wake_.notify_all();
  running_ = true;
  tools_running_ = tools;
  progress_ = 0;
  Q_EMIT changed();
}

void LaunchSearchJob::run() {
  ask(false);
}

void LaunchSearchJob::ask_tools() {
  ask(true);
}

void LaunchSearchJob::cancel() {
  settle_.stop();
  if (!running_) return;
  stop_.request_stop();
  ++newest_;
  running_ = tools_running_ = false;
  Q_EMIT changed();
}

void LaunchSearchJob::set_wanted(bool wanted) {
  wanted_ = wanted;
  if (wanted_ && !running_ && (!current_ || coarse_)) run();
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

void LaunchSearchJob::post(std::uint64_t number, LaunchMap map, std::vector<Exposure> exposures, Crossing crossing,
                           bool coarse) {
  if (number != newest_) return;  // an older request, or cancelled meanwhile
  map_ = std::make_shared<const LaunchMap>(std::move(map));
  exposures_ = std::move(exposures);
  searched_ = std::move(crossing);
  coarse_ = coarse;
  running_ = coarse;
  current_ = fits();
  Q_EMIT changed();
  if (!coarse && wanted_ && !current_) settle_.start();
}

void LaunchSearchJob::report_progress(std::uint64_t number, double share) {
  QMetaObject::invokeMethod(
      this,
      [this, share, number] {
        if (number != newest_ || !running_) return;
        progress_ = share;
        Q_EMIT progressed(share);
      },
      Qt::QueuedConnection);
}

void LaunchSearchJob::search(Request request) {
  const auto send = [&](LaunchMap map, std::vector<Exposure> exposed, bool coarse) {
    QMetaObject::invokeMethod(
        this,
        [this, number = request.number, answer = std::move(map), dug = std::move(exposed), crossing = request.crossing,
         coarse]() mutable { post(number, std::move(answer), std::move(dug), std::move(crossing), coarse); },
        Qt::QueuedConnection);
  };
  LaunchMapOptions options{request.over, coarse_cells, false, threads_to_use()};
  LaunchMap map = search_launches(request.crossing, tables_, options, request.stop);
  if (map.cancelled) return;
  send(std::move(map), {}, true);
  options.cells = request.full_cells;
  options.refine = true;
  map = search_launches(request.crossing, tables_, options, request.stop,
                        [&](double share) { report_progress(request.number, share); });
  if (map.cancelled) return;
  std::vector<Exposure> dug;
  if (!map.works)
    dug = burrow::exposures(request.crossing, tables_, map, {coarse_cells, threads_to_use()}, request.stop);
  if (!request.stop.stop_requested()) send(std::move(map), std::move(dug), false);
}

void LaunchSearchJob::choose(Request request) {
  std::vector<ToolRow> rows = choose_tool(request.crossing, tables_, {14, threads_to_use()}, request.stop,
                                          [&](double share) { report_progress(request.number, share); });
  if (request.stop.stop_requested()) return;
  QMetaObject::invokeMethod(
      this,
      [this, number = request.number, answer = std::move(rows), crossing = std::move(request.crossing)]() mutable {
        if (number != newest_) return;
        running_ = tools_running_ = false;
        tools_ = std::move(answer);
        tools_of_ = std::move(crossing);
        Q_EMIT changed();
        if (wanted_ && (!current_ || coarse_)) settle_.start();
      },
      Qt::QueuedConnection);
}

void LaunchSearchJob::work(const std::stop_token& end) {
  for (;;) {
    Request request;
    {
      std::unique_lock lock(mutex_);
      if (!wake_.wait(lock, end, [this] { return waiting_.has_value(); })) return;
      request = std::move(*waiting_);
      waiting_.reset();
    }
    if (request.tools)
      choose(std::move(request));
    else
      search(std::move(request));
  }
}

}  // namespace burrow
