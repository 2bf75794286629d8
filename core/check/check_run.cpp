#include "check_run.h"

#include <cmath>
#include <thread>

#include "burrow/base/phrase.h"

namespace burrow {

std::vector<WorkingInput> inputs_of(const PathFans& fans, const FanChance& chance, bool scores) {
  std::vector<WorkingInput> inputs;
  for (std::size_t f = 0; f < chance.grounds.size(); ++f) {
    inputs.push_back({"p", fans.chance(f), ""});
    inputs.push_back({"P_ground", chance.grounds[f], ""});
  }
  if (!scores) return inputs;
  for (std::size_t k = 0; k < fan_lanes; ++k) {
    inputs.push_back({"c", fans.constants()[k], ""});
    inputs.push_back({"ζ(c)", chance.score[k], ""});
  }
  return inputs;
}

void set_numbers(Finding& finding, double value, const Limit& limit) {
  finding.measured = std::isfinite(value) ? std::optional(value) : std::nullopt;
  finding.limit = std::isfinite(limit.value) ? std::optional(limit.value) : std::nullopt;
  finding.at_least = limit.at_least;
}

Finding finding_at(std::string_view code, Severity severity, std::string subject, Phrase name, double station_m,
                   double offset_m, double elevation_m) {
  Finding finding;
  finding.code = code;
  finding.severity = severity;
  finding.subject = std::move(subject);
  finding.name = std::move(name);
  finding.station_m = station_m;
  finding.offset_m = offset_m;
  finding.elevation_m = elevation_m;
  finding.unit = "m";
  return finding;
}

void WorstOfMany::take(const Utility& one, const Point3& where, double its_value, const Limit& its_limit) {
  const double its_margin = margin_of(its_value, its_limit);
  if (its_margin >= 0) return;
  ++count;
  if (!(its_margin < margin)) return;
  margin = its_margin;
  utility = &one;
  at = where;
  value = its_value;
  limit = &its_limit;
}

void WorstOfMany::add_not_judged(CheckRun& run, std::string_view code, std::string_view unit) const {
  if (!utility) return;
  Phrase name = display_name(*utility);
  if (count > 1) name = phrase(translatable("{} and {} more"), std::move(name), std::to_string(count - 1));
  Finding finding = finding_at(code, Severity::note, utility->id, std::move(name), at.x_m, at.y_m, at.z_m);
  finding.unit = unit;
  if (std::isfinite(value)) finding.measured = value;
  finding.source = {"forms made for heavier blows", SourceLabel::our_model};
  run.add(std::move(finding));
}

StructureAnswer& structure_answer(Assessment& answer, const SurfaceFeature& feature) {
  for (StructureAnswer& structure : answer.structures)
    if (structure.id == feature.id) return structure;
  StructureAnswer& structure = answer.structures.emplace_back();
  structure.id = feature.id;
  structure.name = feature.name;
  return structure;
}

unsigned threads_for(const CheckRun& run, std::size_t utilities) {
  constexpr std::size_t many = 96;
  static const unsigned cores = std::clamp(std::thread::hardware_concurrency(), 1U, 4U);  // asking costs a system call
  return run.wants_working() && utilities >= many ? cores : 1;
}

}  // namespace burrow
