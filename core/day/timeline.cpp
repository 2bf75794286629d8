#include "timeline.h"

#include <algorithm>
#include <numeric>

namespace burrow {

namespace {

bool moves(ReadingKind kind) {
  return kind == ReadingKind::mark || kind == ReadingKind::stop || kind == ReadingKind::back;
}

/// A run shorter than this says little about the rate, and a tap may be late by seconds.
constexpr double shortest_run_m = 0.10;

class Walk {
 public:
  explicit Walk(const DayRecord& record) : record_(record) {
    line_.nose_of.resize(record.readings.size());
    line_.order.resize(record.readings.size());
    std::iota(line_.order.begin(), line_.order.end(), std::size_t{0});
    std::stable_sort(line_.order.begin(), line_.order.end(), [&](std::size_t a, std::size_t b) {
      return record.readings[a].time.s < record.readings[b].time.s;
    });
  }

  Timeline run() {
    for (const std::size_t i : line_.order) take(i, record_.readings[i]);
    return std::move(line_);
  }

 private:
  void take(std::size_t i, const Reading& r) {
    line_.time_s = r.time.s;
    if (r.kind == ReadingKind::start) {
      line_.started = true;
      set_nose(r.nose ? r.nose->m : 0.0, r.time.s);
    }
    if (r.kind == ReadingKind::pressure && r.pressure && r.pressure->Pa > 0 && r.at.value_or("tool") == "tool")
      gauge_Pa_ = r.pressure->Pa;
    if (moves(r.kind) && r.nose) move(i, r);
    if (r.kind == ReadingKind::mark && !r.nose) line_.left_out.push_back({i, ReadingTrouble::no_nose});
    if (r.kind == ReadingKind::stop) stopped_s_ = r.time.s;
    if (r.kind == ReadingKind::go && stopped_s_) {
      paused_s_ += r.time.s - *stopped_s_;
      stopped_s_.reset();
    }
    if (r.kind == ReadingKind::end) {
      line_.ended = true;
      line_.how = r.how;
    }
    line_.nose_of[i] = r.nose          ? std::optional<double>(r.nose->m)
                       : line_.started ? std::optional(line_.nose_m)
                                       : std::nullopt;
  }

  void move(std::size_t i, const Reading& r) {
    const double nose = r.nose->m;
    line_.started = true;
    if (r.kind != ReadingKind::back && nose < line_.nose_m - 1e-9) {
      line_.left_out.push_back({i, ReadingTrouble::runs_back});
      return;
    }
    const bool forward = r.kind != ReadingKind::back && nose > line_.nose_m;
    const bool new_ground = rate_from_m_ >= line_.furthest_m - 1e-9 || nose - rate_from_m_ < shortest_run_m;
    if (forward) stopped_s_.reset();  // somebody forgot to write that it goes on
    if (forward && new_ground && nose - rate_from_m_ < shortest_run_m) {
      line_.nose_m = nose;  // its time goes to the next run
      return;
    }
    const double taken = r.time.s - at_s_ - paused_s_;
    if (forward && new_ground && taken > 0) line_.runs.push_back({rate_from_m_, nose, taken, gauge_Pa_});
    set_nose(nose, r.time.s);
  }

  void set_nose(double nose, double time) {
    line_.nose_m = rate_from_m_ = nose;
    line_.furthest_m = std::max(line_.furthest_m, nose);
    at_s_ = time;
    paused_s_ = 0;
  }

  const DayRecord& record_;
  Timeline line_;
  double rate_from_m_ = 0, at_s_ = 0, paused_s_ = 0;
  std::optional<double> stopped_s_, gauge_Pa_;
};

}  // namespace

Timeline timeline_of(const DayRecord& record) {
  return Walk(record).run();
}

}  // namespace burrow
