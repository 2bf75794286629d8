#include "burrow/document/remedies.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "burrow/check/assess.h"
#include "burrow/check/mute.h"
#include "burrow/document/measures.h"

namespace burrow {

namespace {

constexpr double spares_m[] = {0.05, 0.10, 0.20, 0.35, 0.50};
constexpr double level_step_m = 0.01;

struct Aim {
  MeasureRef measure;
  double least_m = 0;      ///< that the measure must reach
  bool with_spare = true;  ///< a gap or a cover; a floor is made as long as it must be
};

std::optional<Aim> aim_of(const Assessment& now, const Finding& f) {
  const auto begins = [&](std::string_view with) { return f.code.starts_with(with); };
  if (f.code == "utility.separation" || f.code == "utility.encroachment" || f.code == "utility.contact") {
    for (const UtilityAnswer& answer : now.utilities)
      if (answer.id == f.subject && answer.required_m)
        return Aim{{MeasureKind::separation, f.subject}, *answer.required_m};
    return std::nullopt;
  }
  if (!f.limit || f.unit != "m") return std::nullopt;
  if (begins("surface.cover")) return Aim{{MeasureKind::surface_cover, f.subject}, *f.limit};
  const std::string pit = f.subject == "launch-pit" ? "launch" : f.subject == "exit-pit" ? "exit" : "";
  if (f.code == "pit.floor-length" && !pit.empty()) return Aim{{MeasureKind::floor_length, pit}, *f.limit, false};
  if (f.code == "pit.floor-width" && !pit.empty()) return Aim{{MeasureKind::floor_width, pit}, *f.limit, false};
  return std::nullopt;
}

/// Whether it is gone.
bool gone(const Assessment& then, const Finding& finding) {
  return std::none_of(then.findings.begin(), then.findings.end(), [&](const Finding& f) {
    return f.code == finding.code && f.subject == finding.subject && counts_in_verdict(f);
  });
}

/// What counts then and did not before, or not so severely.
std::vector<Finding> brought(const Assessment& now, const Assessment& then) {
  std::vector<Finding> fresh;
  for (const Finding& f : then.findings) {
    const bool was = std::any_of(now.findings.begin(), now.findings.end(), [&](const Finding& g) {
      return g.code == f.code && g.subject == f.subject && g.severity <= f.severity;
    });
    if (!was && counts_in_verdict(f)) fresh.push_back(f);
  }
  return fresh;
}

/// A whole centimetre beyond where it was brought.
void round_level(const Crossing& before, Crossing& after) {
  double& level = after.bore.launch.elevation.m;
  const bool down = level < before.bore.launch.elevation.m;
  const double steps = level / level_step_m;
  level = (down ? std::floor(steps + 1e-9) : std::ceil(steps - 1e-9)) * level_step_m;
}

Remedy told(const Crossing& before, const Aim& aim, Crossing after) {
  Remedy remedy;
  if (aim.measure.kind == MeasureKind::floor_length || aim.measure.kind == MeasureKind::floor_width) {
    remedy.kind = aim.measure.kind == MeasureKind::floor_length ? RemedyKind::longer_floor : RemedyKind::wider_floor;
    remedy.value_m = aim.least_m;
  } else {
    remedy.value_m = after.bore.launch.elevation.m;
    remedy.kind = remedy.value_m < before.bore.launch.elevation.m ? RemedyKind::lower : RemedyKind::raise;
  }
  remedy.after = std::move(after);
  return remedy;
}

}  // namespace

std::vector<Remedy> remedies(const Crossing& crossing, const Tables& tables, const Assessment& now,
                             const Finding& finding, const std::stop_token& stop) {
  const std::optional<Aim> aim = aim_of(now, finding);
  if (!aim || !measure_lock(crossing, aim->measure).empty()) return {};
  std::vector<Remedy> second_best;
  for (const double spare : spares_m) {
    if (stop.stop_requested()) return {};
    Result<Crossing> after =
        with_measure(crossing, tables, aim->measure, aim->least_m + (aim->with_spare ? spare : 0), now.ground_surface);
    if (!after) break;
    if (aim->with_spare) round_level(crossing, *after);
    const Assessment then = assess(*after, tables, now.ground_surface);
    if (gone(then, finding)) {
      Remedy remedy = told(crossing, *aim, std::move(*after));
      remedy.brings = brought(now, then);
      if (remedy.brings.empty()) return {remedy};
      const bool lesser = std::all_of(remedy.brings.begin(), remedy.brings.end(),
                                      [&](const Finding& f) { return f.severity > finding.severity && !f.missing; });
      if (lesser && second_best.empty()) second_best.push_back(std::move(remedy));
    }
    if (!aim->with_spare) break;
  }
  return second_best;
}

}  // namespace burrow
