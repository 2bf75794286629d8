#include "unlocated_head.h"

#include "burrow/crossing/statement.h"

namespace burrow {

namespace {

const Source rule{
    "DGUV Information 203-017 (02/2019) 6.4: without running location of the head only where no line in "
    "service lies in the working area (taken as 5 m about bore and pits, our default)",
    SourceLabel::read};

void place(Finding& finding, const LineNearby& line) {
  finding.station_m = line.station_m;
  finding.offset_m = line.offset_m;
  finding.elevation_m = line.elevation_m;
}

}  // namespace

void check_unlocated_head(CheckRun& run, std::span<const LineNearby> in_service) {
  if (*run.crossing.pits.rules != ExcavationRules::din_4124 || in_service.empty()) return;
  const auto& on = run.tables.judged_on;
  if (!vouched(run.crossing.bore.head_located, on)) {
    const double lines = static_cast<double>(in_service.size());
    Finding finding;
    finding.code = "bore.head-unlocated";
    finding.severity = Severity::stop;
    finding.subject = "bore";
    finding.name = in_service.front().name;
    place(finding, in_service.front());
    finding.unit = "";
    run.require(std::move(finding), lines, {0, false, rule});
  }
  for (const LineNearby& line : in_service) {
    const AgreedGap& agreed = line.utility->agreed;
    if (agreed.distance && says_something(agreed.with) && dated(agreed.date, on)) continue;
    place(run.missing("agreed-gap", line.utility->id, line.name), line);
  }
}

}  // namespace burrow
