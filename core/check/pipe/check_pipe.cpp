/// The pipe: what of it is known, and whether the hole takes it.

#include <algorithm>
#include <cmath>

#include "burrow/base/phrase.h"
#include "pipe_check.h"

namespace burrow {

namespace {

/// The strictest thing that is not known is a finding of its own; the checks that need it are left out by name.
void say_missing(CheckRun& run, const PipeUnderCheck& pipe, const PipeMaterial* material) {
  if (!pipe.pipe.outside_diameter) run.missing("pipe-diameter", pipe.subject, "pipe");
  if (pipe.pipe.outside_diameter && !pipe.section) run.missing("pipe-wall", pipe.subject, "pipe");
  if (!material) run.missing("pipe-material", pipe.subject, "pipe");
  if (material && !pipe.strength) {
    Finding finding;
    finding.code = "pipe.no-law";
    finding.severity = Severity::caution;
    finding.subject = pipe.subject;
    finding.name = material->name;
    finding.source = material->source;
    run.add(std::move(finding));
  }
  if (!pipe.water_known && pipe.section && pipe.strength)
    leave_out(run, "pipe.water", translatable("water around the pipe"),
              translatable("The water level is not entered: taken as dry, friction and "
                           "weight on the safe side."));
}

/// Nobody said how warm it gets in use: judged at the warmest its rows tell.
void say_service_taken(CheckRun& run, const PipeUnderCheck& pipe) {
  if (pipe.pipe.service_temperature || !pipe.minds_warmth()) return;
  Finding finding;
  finding.code = "pipe.service-taken";
  finding.severity = Severity::note;
  finding.subject = pipe.subject;
  finding.name = "pipe";
  finding.unit = "K";
  finding.measured = pipe.in_service().K;
  finding.source = {"warmest row of its material: what a pipe will carry is not known", SourceLabel::our_default};
  run.add(std::move(finding));
}

/// Temperature or time beyond what the rows of the material tell.
void say_beyond(CheckRun& run, const PipeUnderCheck& pipe) {
  if (!pipe.strength) return;
  const bool hot = !derating(*pipe.strength, *pipe.pipe.temperature) || !derating(*pipe.strength, pipe.in_service());
  if (!hot && pull_stress(*pipe.strength, *pipe.pipe.pull_time, *pipe.pipe.temperature)) return;
  Finding finding;
  finding.code = "pipe.beyond";
  finding.severity = Severity::caution;
  finding.subject = pipe.subject;
  finding.name = hot ? translatable("a temperature") : translatable("a time of the pull");
  finding.source = pipe.strength->source;
  run.add(std::move(finding));
}

}  // namespace

void check_pipe(CheckRun& run, const LoadsAbove& above, std::vector<const PathPoint*> places) {
  const Pipe& entered = *run.crossing.pipe;
  const PipeMaterial* material = find_pipe(run.tables, entered.material);
  PipeUnderCheck pipe{entered, nullptr, std::nullopt, std::nullopt, false, above};
  if (material && material->strength) pipe.strength = &*material->strength;
  if (auto section = pipe_section(entered, run.tables)) pipe.section = *section;
  if (const auto widest = widest_drawn(entered, run.tables)) pipe.widest_m = widest->m;
  pipe.water_known = run.crossing.site.water && !run.crossing.site.water->empty();
  pipe.places = std::move(places);
  run.answer.pipe_checks.reserve(24);
  say_missing(run, pipe, material);
  say_service_taken(run, pipe);
  say_beyond(run, pipe);
  check_pipe_hole(run, pipe);
  check_pipe_loads(run, pipe);
  check_pipe_pull(run, pipe);
  check_pipe_ring(run, pipe);
  check_pipe_along(run, pipe);
}

void check_pipe_hole(CheckRun& run, const PipeUnderCheck& pipe) {
  constexpr std::string_view code = "pipe.hole";
  const std::string_view name = translatable("hole over the widest thing drawn in");
  if (!pipe.widest_m) return leave_out(run, code, name, translatable("The diameter of the pipe is not entered."));
  const double hole = run.tool.diameter.m, ratio = hole / *pipe.widest_m;
  const Limit low = run.limit("pipe_hole_low"), high = run.limit("pipe_hole_high");
  const bool fits = ratio >= 1;
  const PipeLimit limit = fits ? PipeLimit{low.value, true, Severity::caution, low.source, false}
                               : PipeLimit{1, true, Severity::stop, {"it does not go in", SourceLabel::derived}, false};
  const PathPoint* place = run.answer.bore.points.empty() ? nullptr : &run.answer.bore.points.front();
  const PipeResult result{code, name, ratio, "", place, translatable("Couplings, pulling head and tolerance count.")};
  judge_pipe(run, pipe, result, limit,
             {{},
              {},
              "n = D/d",
              {{"D", hole, "m"}, {"d", *pipe.widest_m, "m"}},
              "n",
              0,
              {},
              std::nullopt,
              {"diameter of the tool over pipe, bundle, coupling or pulling head", SourceLabel::derived}});
  if (ratio <= high.value) return;
  Finding wide;
  wide.code = "pipe.hole-wide";
  wide.severity = Severity::caution;
  wide.subject = pipe.subject;
  wide.name = "pipe";
  if (place) wide.station_m = place->x_m;
  run.require(std::move(wide), ratio, high);
}

}  // namespace burrow
