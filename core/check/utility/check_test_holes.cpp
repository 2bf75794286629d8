/// Test holes: those that were dug, and which to dig first; the chances of the whole bore.

#include <algorithm>
#include <cmath>
#include <limits>

#include "burrow/base/phrase.h"
#include "burrow/clearance/contact.h"
#include "burrow/clearance/test_hole_worth.h"
#include "test_hole_first.h"

namespace burrow {

namespace {

constexpr double no_difference = 1e-6;  // chances nearer together than this rank alike

struct Candidate {
  std::size_t index = 0;
  double gain = 0;  ///< chance of contact that the hole takes away; endless where it cannot be told
  bool dangerous = false;
  double station_m = 0;
};

bool before(const Candidate& a, const Candidate& b) {
  if (a.gain != b.gain) return a.gain > b.gain;
  if (a.dangerous != b.dangerous) return a.dangerous;
  return a.station_m < b.station_m;
}

bool worth_exposing(const CheckRun& run, const Clearance& c, const UtilityAnswer& answer) {
  if (answer.expose) return true;
  if (!c.unexposed || !c.station_m) return false;
  return c.contact_chance_worst.value_or(0) > run.limit("contact_caution").value ||
         c.encroachment_chance.value_or(0) > run.limit("encroachment_caution").value;
}

/// Where to dig, and how deep its crown is to be expected there.
void place_hole(const CheckRun& run, const Clearance& c, const Utility& utility, UtilityAnswer& answer) {
  answer.hole_station_m = c.station_m;
  answer.hole_offset_m = c.offset_m;
  answer.required_after_hole_m = c.required_exposed_m;
  if (!c.elevation_m || !c.vertical_sd_m || c.no_sd || !utility.outside_diameter) return;
  const double crown = *c.elevation_m + utility.outside_diameter->m / 2;
  const double depth = run.ground.surface_m(*c.station_m, *c.offset_m) - crown;
  answer.hole_depth_low_m = depth - band_90_sd * *c.vertical_sd_m;
  answer.hole_depth_high_m = depth + band_90_sd * *c.vertical_sd_m;
}

}  // namespace

void rank_holes(CheckRun& run, const std::vector<Clearance>& all) {
  std::vector<Candidate> candidates;
  HolePlan plan;
  plan.hole_sd = Length{run.limit("hole_sd_m").value};
  plan.contact_stop = run.limit("contact_stop").value;
  for (std::size_t i = 0; i < all.size(); ++i) {
    const Clearance& c = all[i];
    UtilityAnswer& answer = run.answer.utilities[i];
    if (!c.station_m || !worth_exposing(run, c, answer)) continue;
    place_hole(run, c, run.crossing.site.utilities[i], answer);
    Candidate& candidate = candidates.emplace_back();
    candidate = {i, std::numeric_limits<double>::infinity(), c.dangerous, *c.station_m};
    if (!c.contact_chance || c.no_sd) continue;  // what nobody can tell is looked at first
    plan.required = Length{c.required_exposed_m};
    const HoleWorth worth = test_hole_worth(c, plan);
    answer.chance_to_go_on = worth.chance_to_go_on;
    answer.chance_after_hole = worth.chance_after;
    candidate.gain = std::round((*c.contact_chance - worth.chance_after) / no_difference) * no_difference;
    if (run.wants_working()) run.add_working(working_of(c, plan, worth));
  }
  std::stable_sort(candidates.begin(), candidates.end(), before);
  for (std::size_t rank = 0; rank < candidates.size(); ++rank)
    run.answer.utilities[candidates[rank].index].expose_rank = static_cast<double>(rank + 1);
}

void check_holes(CheckRun& run, const Clearance& c, const Phrase& name) {
  for (const HoleRemark& remark : c.pinned.remarks) {
    const auto code = [&]() -> std::string_view {
      switch (remark.trouble) {
        case HoleTrouble::no_level:
          return "utility.hole-without-level";
        case HoleTrouble::no_diameter:
          return "utility.hole-without-diameter";
        case HoleTrouble::no_location_error:
          return "utility.hole-without-error";
        case HoleTrouble::off_record:
          return "utility.hole-off-record";
        case HoleTrouble::holes_disagree:
          return "utility.holes-disagree";
      }
      return {};
    };
    Finding finding = finding_at(code(), Severity::caution, c.id, name, remark.station_m, remark.offset_m, 0);
    finding.elevation_m = c.elevation_m;
    if (remark.likely_m > 0) {
      finding.measured = remark.apart_m;
      finding.limit = remark.likely_m;
      finding.at_least = false;
      finding.margin = 1 - remark.apart_m / remark.likely_m;
      finding.source = {"three standard deviations of what is to be expected", SourceLabel::our_model};
    }
    run.add(std::move(finding));
  }
}

void check_any_contact(CheckRun& run, const std::vector<Clearance>& all) {
  const UtilitySearch& search = run.crossing.site.utility_search;
  if (!all.empty() || *search.none_found) {
    run.answer.contact_chance_any = contact_chance_of_any(all);
    if (run.answer.contact_chance_any && run.wants_working())
      run.add_working(working_of_any(all, *run.answer.contact_chance_any));
  }
  if (run.answer.bore.points.empty()) return;
  const double rate = search.unknown_rate->per_m2, length = run.answer.bore.length_m, width = run.tool.diameter.m;
  const double chance = -std::expm1(-rate * length * width);
  run.answer.chance_unknown_service = chance + 0.0;
  if (!(rate > 0)) return;
  const Source source{"services met at random; the rate was entered for this crossing", SourceLabel::our_model};
  Finding finding;
  finding.code = "site.unknown-service";
  finding.subject = "site";
  finding.name = translatable("services nobody drew");
  finding.measured = chance;
  finding.at_least = false;
  finding.source = source;
  run.add(std::move(finding));
  if (run.wants_working())
    run.add_working({"site.unknown-service",
                     "site",
                     "P = 1 − exp(−λ L D)",
                     {{"λ", rate, "1/m²"}, {"L", length, "m"}, {"D", width, "m"}},
                     "P",
                     chance,
                     "",
                     std::nullopt,
                     source});
}

}  // namespace burrow
