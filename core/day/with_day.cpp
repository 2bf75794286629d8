#include "burrow/day/with_day.h"

#include <algorithm>

#include "burrow/check/old_hole.h"
#include "burrow/check/tool_at_work.h"
#include "burrow/check/with_findings.h"
#include "burrow/crossing/day_record.h"

namespace burrow {

Assessment with_day(const Crossing& crossing, const Tables& tables, Assessment assessment, const DayAnswer& day) {
  const bool told = day.advice && (*day.advice == Advice::back_out || *day.advice > Advice::record_only);
  if (!told || day.ended) return assessment;
  Finding finding;
  finding.code = "day." + std::string(word_of(*day.advice));
  finding.severity = Severity::stop;
  finding.subject = "bore";
  finding.name = !day.near.empty()        ? day.near.front().name
                 : !day.to_expose.empty() ? day.to_expose.front()
                                          : Phrase(translatable("bore"));
  if (!day.smoothed.points.empty()) {
    finding.station_m = day.nose.x_m;
    finding.offset_m = day.nose.y_m;
    finding.elevation_m = day.nose.z_m;
  }
  finding.margin = -1e9;  // what is under way stands before what is predicted
  finding.source = {"advice of the day", SourceLabel::our_model};
  return with_findings(crossing, tables, std::move(assessment), {std::move(finding)});
}

namespace {

bool reads_the_place(const Reading& reading) {
  return counts(reading) && (reading.kind == ReadingKind::fix || reading.kind == ReadingKind::grade ||
                             reading.kind == ReadingKind::heading);
}

/// Where its readings say that it lies.
std::optional<Finding> read_hole(const Crossing& crossing, const Tables& tables, const DayRecord& record,
                                 const Assessment& assessment) {
  const bool read = std::any_of(record.readings.begin(), record.readings.end(), reads_the_place);
  if (!read || !leaves_a_hole(crossing, record)) return std::nullopt;
  const DayAnswer day = day_of_record(crossing, tables, record, assessment);
  std::vector<PathPoint> hole = day.smoothed.points;
  std::erase_if(hole, [&](const PathPoint& p) { return p.s_m > day.furthest_m + 1e-9; });
  const std::optional<NearHole> near = nearest_to_hole(hole, assessment.bore.points);
  if (!near) return std::nullopt;
  return restart_near(record, *near,
                      fresh_ground(tool_at_work(as_bored(crossing, record), tables).tool.diameter.m,
                                   tool_at_work(crossing, tables).tool.diameter.m));
}

}  // namespace

Assessment with_old_holes(const Crossing& crossing, const Tables& tables, Assessment assessment) {
  std::vector<Finding> more;
  for (const DayRecord& record : crossing.record) {
    std::optional<Finding> found = read_hole(crossing, tables, record, assessment);
    if (!found) continue;
    const auto same = [&](const Finding& one) { return one.code == found->code && one.subject == found->subject; };
    const auto predicted = std::find_if(assessment.findings.begin(), assessment.findings.end(), same);
    // Of where it was to run and where it was read to run the nearer counts.
    if (predicted != assessment.findings.end()) {
      if (predicted->margin && found->margin && *predicted->margin <= *found->margin) continue;
      assessment.findings.erase(predicted);
    }
    more.push_back(std::move(*found));
  }
  return more.empty() ? assessment : with_findings(crossing, tables, std::move(assessment), std::move(more));
}

Assessment with_open_record(const Crossing& crossing, const Tables& tables, Assessment assessment) {
  assessment = with_old_holes(crossing, tables, std::move(assessment));
  // Of two that are open neither is forgotten.
  for (const DayRecord& record : crossing.record) {
    if (ended(record) || record.readings.empty()) continue;
    const DayAnswer day = day_of_record(crossing, tables, record, assessment);
    assessment = with_day(crossing, tables, std::move(assessment), day);
  }
  return assessment;
}

}  // namespace burrow
