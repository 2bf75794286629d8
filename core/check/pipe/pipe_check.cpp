#include "pipe_check.h"

#include <algorithm>
#include <cmath>

namespace burrow {

namespace {

Finding at_place(const PipeUnderCheck& pipe, const PipeResult& result, std::string_view code, Severity severity,
                 Phrase name) {
  Finding finding;
  finding.code = code;
  finding.severity = severity;
  finding.subject = pipe.subject;
  finding.name = std::move(name);
  if (result.place) {
    finding.station_m = result.place->x_m;
    finding.offset_m = result.place->y_m;
    finding.elevation_m = result.place->z_m;
  }
  finding.unit = result.unit;
  return finding;
}

PipeCheck& write_down(CheckRun& run, const PipeResult& result) {
  PipeCheck& check = run.answer.pipe_checks.emplace_back();
  check.name = result.name;
  check.code = result.code;
  check.value = result.value;
  check.unit = result.unit;
  check.text = result.text;
  if (result.place) check.station_m = result.place->x_m;
  return check;
}

void complete(Working& working, const PipeUnderCheck& pipe, const PipeResult& result) {
  working.code = result.code;
  working.subject = pipe.subject;
  working.value = result.value;
  working.unit = result.unit;
}

}  // namespace

Temperature PipeUnderCheck::in_service() const {
  if (pipe.service_temperature) return *pipe.service_temperature;
  if (!minds_warmth()) return *pipe.temperature;
  return std::max(*pipe.temperature, strength->derating.back().temperature);
}

void judge_pipe(CheckRun& run, const PipeUnderCheck& pipe, const PipeResult& result, const PipeLimit& limit,
                Working working) {
  PipeCheck& check = write_down(run, result);
  check.limit = limit.value;
  check.at_least = limit.at_least;
  check.source = limit.source;
  const double part = limit.at_least ? limit.value : result.value, whole = limit.at_least ? result.value : limit.value;
  if (whole > 0) check.utilisation = std::max(part, 0.0) / whole;
  const Limit plain{limit.value, limit.at_least, limit.source};
  const double margin = run.require(at_place(pipe, result, result.code, limit.severity, "pipe"), result.value, plain);
  const Limit near = run.limit("pipe_near");
  if (limit.near_counts && margin >= 0 && check.utilisation && *check.utilisation > near.value) {
    Finding finding = at_place(pipe, result, "pipe.near", Severity::note, Phrase::of_table(std::string(result.name)));
    finding.about_check = result.code;
    finding.unit = "";
    finding.measured = *check.utilisation;
    finding.limit = 1;
    finding.at_least = false;
    finding.source = limit.source;
    finding.margin = 1 - *check.utilisation;
    run.add(std::move(finding));
  }
  complete(working, pipe, result);
  working.limit = limit.value;
  working.limit_source = limit.source;
  run.add_working(std::move(working));
}

void report_pipe(CheckRun& run, const PipeUnderCheck& pipe, const PipeResult& result, Working working) {
  write_down(run, result).source = working.source;
  complete(working, pipe, result);
  run.add_working(std::move(working));
}

void leave_out(CheckRun& run, std::string_view code, std::string_view name, Phrase what) {
  PipeCheck& check = run.answer.pipe_checks.emplace_back();
  check.name = name;
  check.code = code;
  check.text = std::move(what);
}

const PathPoint* place_of(const CheckRun& run, const PipeUnderCheck& pipe, const LoadPoint& load) {
  return pipe.places[static_cast<std::size_t>(&load - run.answer.loads.data())];
}

}  // namespace burrow
