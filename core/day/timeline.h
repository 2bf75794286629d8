#pragma once
/// A record in the order of its times: where the nose was at each reading, and how long it took from mark to mark.

#include <limits>
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
  std::vector<ReadingQuery> queried;
};

/// Times of stops do not count until the tool goes on. A mark behind an earlier one without a reversal, and one further
/// in than `longest_m`, are asked about; until somebody confirms them they move nothing. Any reading that says that the
/// nose is ahead of the last mark moves it there; one more than 3 m ahead is asked about too: a slip of the pen would
/// have passed all that lies between. What was struck through counts no more.
/// Evidence: DayRate.*, DayWrong.*
Timeline timeline_of(const DayRecord& record, double longest_m = std::numeric_limits<double>::infinity());

}  // namespace burrow
