#include "timeline.h"

#include <algorithm>
#include <numeric>
#include <utility>

#include "burrow/crossing/day_record.h"

namespace burrow {

namespace {

bool moves(ReadingKind kind) {
  return kind == ReadingKind::mark || kind == ReadingKind::stop || kind == ReadingKind::back;
}

/// Taken at the nose, which may have gone on since the last mark.
bool at_the_nose(ReadingKind kind) {
  return kind == ReadingKind::fix || kind == ReadingKind::grade || kind == ReadingKind::heading;
}

/// A run shorter than this says little about the rate, and a tap may be late by seconds.
constexpr double shortest_run_m = 0.10;

constexpr double furthest_ahead_m = 3.0;  ///< two marks (our default)

class Walk {
 public:
  Walk(const DayRecord& record, double longest_m) : record_(record), longest_m_(longest_m) {
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
    if (!counts(r)) {
      if (line_.started) line_.nose_of[i] = line_.nose_m;
      return;
    }
    // The first start alone says where it begins: a second one takes no nose back.
    if (r.kind == ReadingKind::start && !std::exchange(begun_, true)) {
      line_.nose_m = line_.furthest_m = marked_m_ = r.nose ? r.nose->m : 0.0;
      run_from(marked_m_, r.time.s);
    }
    if (r.kind != ReadingKind::note) line_.started = true;
    if (r.kind == ReadingKind::pressure && r.pressure && r.pressure->Pa > 0 && r.at.value_or("tool") == "tool")
      gauge_Pa_ = r.pressure->Pa;
    if (moves(r.kind) && r.nose) move(i, r);
    if (at_the_nose(r.kind) && r.nose && r.nose->m <= longest_m_) read_at_the_nose(i, r);
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

  void read_at_the_nose(std::size_t i, const Reading& r) {
    if (r.nose->m > line_.nose_m + furthest_ahead_m && !r.confirmed.value_or(false)) {
      line_.queried.push_back({i, QueryWhy::runs_ahead, 0});
      return;
    }
    line_.nose_m = std::max(line_.nose_m, r.nose->m);
    line_.furthest_m = std::max(line_.furthest_m, r.nose->m);
  }

  void move(std::size_t i, const Reading& r) {
    const double nose = r.nose->m;
    const bool back = r.kind == ReadingKind::back, stands = r.confirmed.value_or(false);
    if (nose > longest_m_ && !stands) {
      line_.left_out.push_back({i, ReadingTrouble::beyond_path});
      line_.queried.push_back({i, QueryWhy::beyond_bore, 0});
      return;
    }
    if (!back && nose < marked_m_ - 1e-9 && !stands) {
      line_.left_out.push_back({i, ReadingTrouble::runs_back});
      line_.queried.push_back({i, QueryWhy::runs_back, 0});
      return;
    }
    const bool forward = !back && nose > marked_m_;
    const bool new_ground = rate_from_m_ >= bored_m_ - 1e-9 || nose - rate_from_m_ < shortest_run_m;
    if (forward) stopped_s_.reset();  // somebody forgot to write that it goes on
    // A fix may have seen the nose ahead of this mark; only a reversal takes it back.
    line_.nose_m = back || nose < marked_m_ ? nose : std::max(line_.nose_m, nose);
    line_.furthest_m = std::max(line_.furthest_m, nose);
    marked_m_ = nose;
    if (forward && new_ground && nose - rate_from_m_ < shortest_run_m) return;  // its time goes to the next run
    const double taken = r.time.s - at_s_ - paused_s_;
    if (forward && new_ground && taken > 0) line_.runs.push_back({rate_from_m_, nose, taken, gauge_Pa_});
    run_from(nose, r.time.s);
  }

  void run_from(double nose, double time) {
    rate_from_m_ = nose;
    bored_m_ = std::max(bored_m_, nose);
    at_s_ = time;
    paused_s_ = 0;
  }

  const DayRecord& record_;
  double longest_m_;
  Timeline line_;
  double rate_from_m_ = 0, at_s_ = 0, paused_s_ = 0;
  double marked_m_ = 0, bored_m_ = 0;  ///< last mark, and the furthest of them
  bool begun_ = false;
  std::optional<double> stopped_s_, gauge_Pa_;
};

}  // namespace

Timeline timeline_of(const DayRecord& record, double longest_m) {
  return Walk(record, longest_m).run();
}

}  // namespace burrow
