/// Which soil type the published order gives for the layers of a pit, and whether the one in force is a better one.

#include <algorithm>

#include "burrow/pit/soil_facts.h"
#include "pit_check.h"

namespace burrow {

namespace {

/// What the facts rule out no name brings back; without a name it does not count either.
void say_better(CheckRun& run, const PitUnderCheck& pit, const PitLayerAnswer& layer) {
  Finding finding = finding_of(pit, "pit.soil-type", Severity::stop);
  finding.elevation_m = (layer.top_m + layer.bottom_m) / 2;
  finding.source = {std::string(layer.proposed.steps.back().clause), SourceLabel::read};
  finding.margin = -1;
  run.add(std::move(finding));
}

}  // namespace

void check_pit_soil(CheckRun& run, PitUnderCheck& pit) {
  const Site& site = run.crossing.site;
  pit.work.confirmed = soil_confirmed(pit.entered);
  bool better_than_c = false;
  pit.work.proposed_best = pit.work.proposed_worst = ExcavationType::stable_rock;
  const PitLayerAnswer* better = nullptr;
  pit.work.layers.reserve(pit.shape.layers.size());
  for (const PitLayer& layer : pit.shape.layers) {
    if (layer.stratum >= site.strata.size()) continue;
    const Stratum& stratum = site.strata[layer.stratum];
    PitLayerAnswer& answer = pit.work.layers.emplace_back();
    answer.stratum = stratum.id;
    answer.soil = find_soil(run.tables, stratum.soil)->name;
    answer.top_m = layer.top_m;
    answer.bottom_m = layer.bottom_m;
    answer.type = layer.type;
    answer.run_per_rise = layer.run_per_rise;
    answer.bank_m3 = layer.volume_m3;
    answer.proposed =
        propose_type(soil_seen_in_layer(run.crossing, pit.entered, run.tables, place_of(pit.shape), layer));
    pit.work.proposed_best = std::max(pit.work.proposed_best, answer.proposed.best);
    pit.work.proposed_worst = std::max(pit.work.proposed_worst, answer.proposed.worst);
    const auto entered = entered_type(site, layer.stratum, pit.entered);
    if (!entered || *entered == ExcavationType::c) continue;
    better_than_c = true;
    if (*entered < answer.proposed.best && !better) better = &answer;
  }
  if (pit.work.layers.empty()) pit.work.proposed_best = pit.work.proposed_worst = ExcavationType::c;
  if (better) say_better(run, pit, *better);
  if (!better && better_than_c && !pit.work.confirmed) {
    Finding finding = finding_of(pit, "pit.soil-unconfirmed", Severity::caution);
    finding.source = {"29 CFR 1926 Subpart P App. A (b)(2): at least one look and one test by hand", SourceLabel::read};
    finding.margin = -1;
    run.add(std::move(finding));
  }
  show_set_back(run, pit);
}

}  // namespace burrow
