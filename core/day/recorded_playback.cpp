#include "burrow/day/recorded_playback.h"

#include <algorithm>

#include "burrow/bore/point_on_path.h"
#include "burrow/crossing/day_record.h"
#include "timeline.h"

namespace burrow {

namespace {

/// The part of a path that ends at an arc length.
BorePath path_up_to(const BorePath& path, double end_m) {
  BorePath part;
  for (const PathPoint& p : path.points)
    if (p.s_m < end_m) part.points.push_back(p);
  part.points.push_back(point_at(path, end_m));
  part.length_m = end_m;
  part.ends = path.ends;
  return part;
}

}  // namespace

Playback recorded_playback(const DayRecord& record, const DayAnswer& answer, const Tool& tool) {
  const auto& line = answer.smoothed.points;
  if (line.size() < 2 || !(answer.furthest_m > 0)) return {};
  const double longest_m = line.back().s_m, end_m = std::min(answer.furthest_m, longest_m);
  const Timeline timeline = timeline_of(record, longest_m);
  std::vector<double> nose_m, time_s, marks_m;
  double start_s = 0;
  const auto asked_about = [&](std::size_t i) {
    const auto& queried = answer.queried;
    return std::any_of(queried.begin(), queried.end(), [&](const ReadingQuery& one) { return one.reading == i; });
  };
  for (const std::size_t i : timeline.order) {
    const Reading& reading = record.readings[i];
    if (!counts(reading) || asked_about(i) || !timeline.nose_of[i]) continue;
    const double nose = std::min(*timeline.nose_of[i], end_m);
    if (nose_m.empty()) {
      if (reading.kind != ReadingKind::start) continue;
      start_s = reading.time.s;
      nose_m.push_back(nose);
      time_s.push_back(0);
    } else if (nose > nose_m.back()) {
      nose_m.push_back(nose);
      time_s.push_back(std::max(reading.time.s - start_s, time_s.back()));
      if (reading.kind == ReadingKind::mark) marks_m.push_back(nose);
    }
  }
  if (nose_m.size() < 2 || !(time_s.back() > 0)) return {};
  Playback bore;
  bore.path = path_up_to(answer.smoothed, nose_m.back());
  bore.time_s = times_between(bore.path, nose_m, time_s);
  bore.marks_m = std::move(marks_m);
  bore.tool_length_m = tool.length.m;
  bore.tool_diameter_m = tool.diameter.m;
  return bore;
}

}  // namespace burrow
