#include "burrow/day/with_day.h"

#include "burrow/check/with_findings.h"

namespace burrow {

Assessment with_day(const Crossing& crossing, const Tables& tables, Assessment assessment, const DayAnswer& day) {
  const bool told = day.advice && (*day.advice == Advice::back_out || *day.advice > Advice::record_only);
  if (!told || day.ended) return assessment;
  Finding finding;
  finding.code = "day." + std::string(word_of(*day.advice));
  finding.severity = Severity::stop;
  finding.subject = "bore";
  finding.name = day.near.empty() ? Phrase(translatable("bore")) : day.near.front().name;
  if (!day.smoothed.points.empty()) {
    finding.station_m = day.nose.x_m;
    finding.offset_m = day.nose.y_m;
    finding.elevation_m = day.nose.z_m;
  }
  finding.margin = -1e9;  // what is under way stands before what is predicted
  finding.source = {"advice of the day", SourceLabel::our_model};
  return with_findings(crossing, tables, std::move(assessment), {std::move(finding)});
}

Assessment with_open_record(const Crossing& crossing, const Tables& tables, Assessment assessment) {
  const DayRecord* open = open_record(crossing);
  if (!open || open->readings.empty()) return assessment;
  const DayAnswer day = day_of_record(crossing, tables, *open, assessment);
  return with_day(crossing, tables, std::move(assessment), day);
}

}  // namespace burrow
