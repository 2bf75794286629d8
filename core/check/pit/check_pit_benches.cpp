/// Benched sides: in which soil they may be cut, how high a step and how wide a tread may be, and whether the whole of
/// it lies behind the rules' slope.

#include <algorithm>
#include <cmath>

#include "burrow/base/phrase.h"
#include "burrow/pit/slope.h"
#include "pit_check.h"

namespace burrow {

namespace {

constexpr double rounding = 1e-9;

/// A face from its foot up to its top edge, or to the ground; behind it the tread, unless it is the last.
struct Face {
  double foot_m = 0, top_m = 0;  ///< above the floor
  double run_m = 0;              ///< of the top edge, back from the edge of the floor
  double run_per_rise = 0;
  std::optional<double> tread_m;
};

/// Highest ground above the floor over what a side takes.
double highest_over(const CheckRun& run, const PitUnderCheck& pit, PitSideName side) {
  double highest = height_at(run, pit, side);
  const double floor = pit.shape.floor_elevation_m;
  const bool across = side == PitSideName::left || side == PitSideName::right;
  if (pit.shape.ground.there()) {
    for (const PlanPoint& p : pit.shape.footprint)
      highest = std::max(highest, pit.shape.ground.height_at(p.x_m, p.y_m) - floor);
  } else if (!across && !pit.shape.section.empty()) {
    const bool high_end = (side == PitSideName::bore) == pit.shape.bore_side_high;
    const double edge = high_end ? pit.shape.section.back().station_m : pit.shape.section.front().station_m;
    const double foot = high_end ? pit.shape.floor_to_m : pit.shape.floor_from_m;
    const LevelLine& ground = run.crossing.site.ground;
    highest = std::max(highest, elevation_at(ground, edge) - floor);
    for (const LevelPoint& p : ground)
      if (p.station_m > std::min(edge, foot) && p.station_m < std::max(edge, foot))
        highest = std::max(highest, p.elevation_m - floor);
  }
  return highest;
}

std::vector<Face> faces_of(const SideProfile& profile, double ground_m) {
  std::vector<Face> faces;
  double height = 0, run = 0;
  for (const SidePiece& piece : profile.pieces()) {
    if (height >= ground_m - rounding) break;
    if (piece.rise_m > 0) {
      const double rise = std::min(piece.rise_m, ground_m - height), slope = piece.run_m / piece.rise_m;
      faces.push_back({height, height + rise, run + rise * slope, slope, {}});
      height += piece.rise_m;
    } else if (!faces.empty()) {
      faces.back().tread_m = piece.run_m;
    }
    run += piece.run_m;
  }
  return faces;
}

/// How far back the line of the rules' slope, from the toe up through the layers, stands at a height.
double line_at(const PitUnderCheck& pit, double height_m) {
  const double at_ends = run_at_ends(pit), floor = pit.shape.floor_elevation_m;
  double back = 0, reached = 0;
  for (auto layer = pit.shape.layers.rbegin(); layer != pit.shape.layers.rend(); ++layer) {
    const bool uppermost = std::next(layer) == pit.shape.layers.rend();  // the ground may rise behind the pit
    const double top = uppermost ? height_m : std::min(layer->top_m - floor, height_m);
    if (!(top > reached)) continue;
    back += (top - reached) * std::max(layer->compound_run_per_rise, at_ends);
    reached = top;
  }
  return back;
}

/// The slope that the soil wants over a stretch of height.
double slope_over(const PitUnderCheck& pit, double from_m, double to_m) {
  double wanted = run_at_ends(pit);
  const double floor = pit.shape.floor_elevation_m;
  for (const PitLayer& layer : pit.shape.layers)
    if (layer.bottom_m - floor < to_m - rounding && layer.top_m - floor > from_m + rounding)
      wanted = std::max(wanted, layer.compound_run_per_rise);
  if (wanted == 0 && !pit.shape.layers.empty()) wanted = pit.shape.layers.front().compound_run_per_rise;
  return wanted;
}

/// American steps are upright: the first may stand ahead of the line. A step that is all of the side is none.
std::size_t first_behind_line(const PitUnderCheck& pit, const std::vector<Face>& faces) {
  return pit.rules.rules == ExcavationRules::us_1926 && faces.size() > 1 ? 1 : 0;
}

Source slope_source(const PitUnderCheck& pit) {
  for (const SlopeRow& row : pit.rules.slopes)
    if (row.type == pit.shape.soil_type) return row.source;
  return pit.rules.source;
}

bool benched(const SideUnderCheck& side) {
  return *side.entered.kind == SideKind::benched;
}

void demand_line(CheckRun& run, const PitUnderCheck& pit, const SideUnderCheck& side, const std::vector<Face>& faces) {
  const Source source = pit.rules.rules == ExcavationRules::us_1926
                            ? Source{"29 CFR 1926 Subpart P App. B Fig. B-1.1: the maximum slope lies on the whole "
                                     "benched excavation; which edges it touches stands in a figure, read on the safe "
                                     "side",
                                     SourceLabel::second_hand}
                            : slope_source(pit);
  const Face* worst = nullptr;
  double least = 0;
  for (std::size_t i = first_behind_line(pit, faces); i < faces.size(); ++i) {
    const double over = faces[i].run_m - line_at(pit, faces[i].top_m);
    if (worst && over >= least) continue;
    worst = &faces[i];
    least = over;
  }
  if (!worst || !(worst->top_m > 0)) return;
  const Limit limit{line_at(pit, worst->top_m) / worst->top_m, true, source};
  Finding finding = finding_of(pit, side.name, "pit.slope", Severity::stop);
  finding.unit = "";
  require(run, std::move(finding), worst->run_m / worst->top_m, limit);
  if (run.wants_working())
    run.add_working({"pit.slope",
                     pit.subject,
                     "n = r / h",
                     {{"r", worst->run_m, "m"}, {"h", worst->top_m, "m"}},
                     "n",
                     worst->run_m / worst->top_m,
                     "",
                     limit.value,
                     {"top edge of a bench that stands farthest ahead of the slope from the toe", SourceLabel::derived},
                     limit.source});
}

void demand_steps(CheckRun& run, const PitUnderCheck& pit, const SideUnderCheck& side, const std::vector<Face>& faces) {
  const DutyRow* lowest = find_duty(pit.rules, "bench-rise");
  const DutyRow* upper = pit.shape.soil_type == ExcavationType::a ? find_duty(pit.rules, "bench-rise-upper") : nullptr;
  for (std::size_t i = 0; lowest && i < faces.size(); ++i) {
    const DutyRow& rule = i > 0 && upper ? *upper : *lowest;
    require(run, finding_of(pit, side.name, "pit.bench", Severity::stop), faces[i].top_m - faces[i].foot_m,
            {rule.value, false, rule.source});
  }
  const DutyRow* berm = berm_row(pit.rules, side.entered.benches_only_walked.value_or(false));
  if (!berm) return;
  for (std::size_t i = 0; i < faces.size(); ++i) {
    const Face& face = faces[i];
    Finding steep = finding_of(pit, side.name, "pit.slope", Severity::stop);
    steep.unit = "";
    require(run, std::move(steep), face.run_per_rise,
            {slope_over(pit, face.foot_m, face.top_m), true, slope_source(pit)});
    if (face.tread_m && i + 1 < faces.size())
      require(run, finding_of(pit, side.name, "pit.bench-narrow", Severity::stop), *face.tread_m,
              {berm->value, true, berm->source});
  }
}

/// Type C offers no benched side; Type B only in cohesive soil.
bool benches_allowed(const CheckRun& run, const PitUnderCheck& pit) {
  if (pit.rules.rules != ExcavationRules::us_1926) return true;  // by the slope of each face
  if (pit.shape.soil_type == ExcavationType::c) return false;
  if (pit.shape.soil_type != ExcavationType::b) return true;
  return std::none_of(pit.shape.layers.begin(), pit.shape.layers.end(), [&](const PitLayer& layer) {
    if (layer.type != ExcavationType::b || layer.stratum >= run.crossing.site.strata.size()) return false;
    const ExcavationMatter matter = matter_of(*find_soil(run.tables, run.crossing.site.strata[layer.stratum].soil));
    return matter != ExcavationMatter::cohesive && matter != ExcavationMatter::cemented;
  });
}

}  // namespace

bool benches_gentle(const CheckRun& run, const PitUnderCheck& pit, const SideUnderCheck& side) {
  const std::vector<Face> faces = faces_of(side.profile, highest_over(run, pit, side.name));
  if (berm_row(pit.rules, false))
    for (const Face& face : faces)
      if (face.run_per_rise < slope_over(pit, face.foot_m, face.top_m) - rounding) return false;
  for (std::size_t i = first_behind_line(pit, faces); i < faces.size(); ++i)
    if (faces[i].run_m < line_at(pit, faces[i].top_m) - rounding) return false;
  return true;
}

void check_pit_benches(CheckRun& run, const PitUnderCheck& pit) {
  bool any = false;
  for (const SideUnderCheck& side : sides_of(pit)) {
    if (!benched(side)) continue;
    any = true;
    const std::vector<Face> faces = faces_of(side.profile, highest_over(run, pit, side.name));
    demand_steps(run, pit, side, faces);
    demand_line(run, pit, side, faces);
  }
  if (!any || benches_allowed(run, pit)) return;
  Finding finding = finding_of(pit, "pit.bench-soil", Severity::stop);
  finding.source = {"29 CFR 1926 Subpart P App. B as restated: no benches in type C, in type B in cohesive soil only",
                    SourceLabel::second_hand};
  finding.margin = -1;
  run.add(std::move(finding));
}

}  // namespace burrow
