/// Which soil type the published order gives for the layers of a pit, and whether the one in force is a better one.

#include <algorithm>
#include <cmath>

#include "burrow/pit/plan_overlap.h"
#include "pit_check.h"

namespace burrow {

namespace {

constexpr double traffic_near_m = 5.0;  ///< ground so near to a road or track is taken as shaken (our default)

bool beside_traffic(const Crossing& crossing, const PitShape& pit) {
  if (pit.footprint.empty()) return false;
  double from = pit.footprint.front().x_m, to = from;
  for (const PlanPoint& p : pit.footprint) {
    from = std::min(from, p.x_m);
    to = std::max(to, p.x_m);
  }
  return std::any_of(crossing.site.surface.begin(), crossing.site.surface.end(), [&](const SurfaceFeature& feature) {
    if (feature.kind != SurfaceKind::road && feature.kind != SurfaceKind::track) return false;
    if (feature.from && feature.to) {
      const auto [low, high] = std::minmax(feature.from->m, feature.to->m);
      return low - to < traffic_near_m && from - high < traffic_near_m;
    }
    return feature.outline.size() > 2 && gap_between(pit.footprint, feature.outline, true).gap_m < traffic_near_m;
  });
}

/// An old trench whose fill lies in this layer of the pit.
bool dug_before(const Crossing& crossing, const PitShape& pit, const PitLayer& layer) {
  return std::any_of(crossing.site.strips.begin(), crossing.site.strips.end(), [&](const Strip& strip) {
    const bool beside =
        strip.bottom_elevation.m >= layer.top_m || (strip.top_elevation && strip.top_elevation->m <= layer.bottom_m);
    return !beside && overlap_area(pit.footprint, strip.outline) > 1e-9;
  });
}

SoilSeen seen_in(const Judge& judge, const PitUnderCheck& pit, const PitLayer& layer, bool traffic) {
  const Site& site = judge.crossing.site;
  const Stratum& stratum = site.strata[layer.stratum];
  const SoilClass& soil_class = *find_soil(judge.tables, stratum.soil);
  const PitSigns& signs = pit.entered.signs;
  SoilSeen seen;
  seen.matter = matter_of(soil_class);
  const Soil& soil = judge.ground.stratum_soil(layer.stratum);
  // A stratum that somebody looked at was told apart by hand: its class then stands for the strength.
  const bool strength_known = stratum.values.undrained_strength || *stratum.known != Known::guess;
  if (!soil.drained && strength_known) seen.unconfined_strength = Pressure{2 * soil.undrained_strength.Pa};
  seen.fissured = signs.fissured;
  seen.vibrated = signs.vibrated;
  if (!seen.vibrated && traffic) seen.vibrated = true;
  seen.disturbed = signs.disturbed;
  if (dug_before(judge.crossing, pit.shape, layer)) seen.disturbed = true;
  seen.wet = signs.seeping;
  if (!seen.wet.value_or(false) && site.water && !site.water->empty())
    seen.wet = elevation_at(*site.water, (pit.shape.floor_from_m + pit.shape.floor_to_m) / 2) > layer.bottom_m;
  seen.dip_run_per_rise = signs.dip_run_per_rise;
  return seen;
}

/// A stop until the competent person has put a name to it.
void say_better(Judge& judge, const PitUnderCheck& pit, const PitLayerAnswer& layer) {
  Finding finding = finding_of(pit, "pit.soil-type", pit.work.confirmed ? Severity::caution : Severity::stop);
  finding.elevation_m = (layer.top_m + layer.bottom_m) / 2;
  finding.source = {std::string(layer.proposed.steps.back().clause), SourceLabel::read};
  finding.margin = -1;
  judge.say(std::move(finding));
}

}  // namespace

void check_pit_soil(Judge& judge, PitUnderCheck& pit) {
  const Site& site = judge.crossing.site;
  const bool traffic = beside_traffic(judge.crossing, pit.shape);
  pit.work.confirmed = !pit.entered.confirmed_by.empty();
  pit.work.proposed_best = pit.work.proposed_worst = ExcavationType::stable_rock;
  const PitLayerAnswer* better = nullptr;
  pit.work.layers.reserve(pit.shape.layers.size());
  for (const PitLayer& layer : pit.shape.layers) {
    if (layer.stratum >= site.strata.size()) continue;
    const Stratum& stratum = site.strata[layer.stratum];
    PitLayerAnswer& answer = pit.work.layers.emplace_back();
    answer.stratum = stratum.id;
    answer.soil = find_soil(judge.tables, stratum.soil)->name;
    answer.top_m = layer.top_m;
    answer.bottom_m = layer.bottom_m;
    answer.type = layer.type;
    answer.run_per_rise = layer.run_per_rise;
    answer.bank_m3 = layer.volume_m3;
    answer.proposed = propose_type(seen_in(judge, pit, layer, traffic));
    pit.work.proposed_best = std::max(pit.work.proposed_best, answer.proposed.best);
    pit.work.proposed_worst = std::max(pit.work.proposed_worst, answer.proposed.worst);
    if (layer.type < answer.proposed.best && !better) better = &answer;
  }
  if (pit.work.layers.empty()) pit.work.proposed_best = pit.work.proposed_worst = ExcavationType::c;
  if (better) say_better(judge, pit, *better);
  if (!better && pit.shape.soil_type < ExcavationType::c && !pit.work.confirmed) {
    Finding finding = finding_of(pit, "pit.soil-unconfirmed", Severity::caution);
    finding.source = {"29 CFR 1926 Subpart P App. A (b)(2): at least one look and one test by hand", SourceLabel::read};
    finding.margin = -1;
    judge.say(std::move(finding));
  }
  show_set_back(judge, pit);
}

}  // namespace burrow
