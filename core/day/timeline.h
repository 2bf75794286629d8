#pragma once
/// A record in the order of its times: where the nose was at each reading, and how long it took from mark to mark.

#include <optional>
#include <vector>

#include "burrow/day/day.h"

namespace burrow {

struct TimelineRun {
  double from_m = 0, to_m = 0;
  double taken_s = 0;
  std::optional<double> gauge_Pa;  ///< read last before its end
};

struct Timeline {
  bool started = false, ended = false;
  std::optional<EndHow> how;
  double time_s = 0, nose_m = 0, furthest_m = 0;
  std::vector<std::optional<double>> nose_of;  ///< at each reading of the record
  std::vector<std::size_t> order;              ///< numbers of the readings by time
  std::vector<TimelineRun> runs;               ///< into new ground only
  std::vector<ReadingLeftOut> left_out;
};

/// Times of stops do not count until the tool goes on. A mark behind an earlier one without a reversal is left out.
Timeline timeline_of(const DayRecord& record);

}  // namespace burrow
