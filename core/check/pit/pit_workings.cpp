/// Workings that the checks of a pit share, and those that belong to no finding.

#include <cmath>

#include "burrow/base/phrase.h"
#include "burrow/pit/pit_shapes.h"
#include "pit_check.h"

namespace burrow {

void show_ground(CheckRun& run, const PitUnderCheck& pit) {
  const Site& site = run.crossing.site;
  if (!run.wants_working() || site.ground_points.empty() || pit.shape.footprint.empty()) return;
  const bool surveyed = pit.shape.ground.surveyed();
  double surface = 0, line = 0, x = 0, y = 0;
  for (const PlanPoint& p : pit.shape.footprint) {
    const double z_line = elevation_at(site.ground, p.x_m);
    const double z = surveyed ? pit.shape.ground.height_at(p.x_m, p.y_m) : z_line;
    if (surface != 0 && std::abs(z - z_line) <= std::abs(surface - line)) continue;
    surface = z;
    line = z_line;
    x = p.x_m;
    y = p.y_m;
  }
  run.add_working(
      {"pit.ground",
       pit.subject,
       "h = z_surface − z_line",
       {{"x", x, "m"}, {"y", y, "m"}, {"z_surface", surface, "m"}, {"z_line", line, "m"}},
       "h",
       surface - line,
       "m",
       std::nullopt,
       {surveyed ? translatable("cut out of triangles through the ground line and the surveyed points")
                 : translatable("cut out of the ground line, level across: no surveyed point within 10 m of the floor"),
        surveyed ? SourceLabel::derived : SourceLabel::our_default}});
}

namespace {

/// The clause of the slope, not that of the spoil.
Source slope_source(const PitUnderCheck& pit) {
  for (const SlopeRow& row : pit.rules.slopes)
    if (row.type == pit.shape.soil_type) return row.source;
  return pit.rules.source;
}

}  // namespace

void show_set_back(CheckRun& run, const PitUnderCheck& pit) {
  if (!run.wants_working()) return;
  constexpr std::string_view rises[] = {"t_1", "t_2", "t_3", "t_4", "t_5", "t_6"};
  constexpr std::string_view runs[] = {"n_1", "n_2", "n_3", "n_4", "n_5", "n_6"};
  if (pit.shape.layers.size() > std::size(rises)) return;
  Working working{"pit.set-back",
                  pit.subject,
                  translatable("r = Σ t n, n the flattest of a layer and those below it"),
                  {},
                  "r",
                  0,
                  "m",
                  std::nullopt,
                  slope_source(pit)};
  for (std::size_t i = 0; i < pit.shape.layers.size(); ++i) {
    const PitLayer& layer = pit.shape.layers[i];
    working.inputs.push_back({rises[i], layer.top_m - layer.bottom_m, "m"});
    working.inputs.push_back({runs[i], layer.run_per_rise, ""});
    working.value += (layer.top_m - layer.bottom_m) * layer.run_per_rise;
  }
  run.add_working(std::move(working));
}

void show_proposal(CheckRun& run, const PitUnderCheck& pit) {
  const PitProposal& proposal = pit.work.proposal;
  Working working{
      "pit.proposal",
      pit.subject,
      translatable("V = V_straight, at most V_sloped: upright where it may stand, else shored or behind a shield"),
      {{"V_straight", proposal.straight_m3, "m³"}},
      "V",
      pit.shape.volume_m3,
      "m³",
      std::nullopt,
      pit.rules.source};
  if (proposal.sloped_m3) working.inputs.push_back({"V_sloped", *proposal.sloped_m3, "m³"});
  run.add_working(std::move(working));
}

void show_loose(CheckRun& run, const PitUnderCheck& pit) {
  if (!run.wants_working()) return;
  constexpr std::string_view banks[] = {"V_1", "V_2", "V_3", "V_4", "V_5", "V_6"};
  constexpr std::string_view swells[] = {"s_1", "s_2", "s_3", "s_4", "s_5", "s_6"};
  if (pit.work.layers.size() > std::size(banks) || !pit.work.loose_m3) return;
  Working working{"pit.loose",
                  pit.subject,
                  "V_loose = Σ V (1 + s)",
                  {},
                  "V_loose",
                  *pit.work.loose_m3,
                  "m³",
                  std::nullopt,
                  {"swell from the bank to loose, as entered or of the class", SourceLabel::from_memory}};
  for (std::size_t i = 0; i < pit.work.layers.size(); ++i) {
    working.inputs.push_back({banks[i], pit.work.layers[i].bank_m3, "m³"});
    working.inputs.push_back({swells[i], run.ground.stratum_soil(pit.shape.layers[i].stratum).swell.v, ""});
  }
  run.add_working(std::move(working));
}

void show_heap(CheckRun& run, const PitUnderCheck& pit, const HeapShape& shape, double run_per_rise) {
  if (!run.wants_working()) return;
  run.add_working({"pit.heap",
                   pit.subject,
                   "V = L b h + (L + b) n h² + π n² h³/3",
                   {{"L", shape.ridge_length_m, "m"},
                    {"b", shape.ridge_width_m, "m"},
                    {"h", shape.height_m, "m"},
                    {"n", run_per_rise, ""}},
                   "V",
                   shape.volume_m3,
                   "m³",
                   std::nullopt,
                   {"heap with a level ridge L by b, slopes 1 : n, rounded ends", SourceLabel::derived}});
}

void show_gap(CheckRun& run, std::string_view code, const std::string& subject, const PlanGap& gap,
              const Limit& limit) {
  if (!run.wants_working()) return;
  run.add_working({code,
                   subject,
                   "g = √((x − x_edge)² + (y − y_edge)²)",
                   {{"x", gap.on_line.x_m, "m"},
                    {"y", gap.on_line.y_m, "m"},
                    {"x_edge", gap.on_outline.x_m, "m"},
                    {"y_edge", gap.on_outline.y_m, "m"}},
                   "g",
                   gap.gap_m,
                   "m",
                   limit.value,
                   {"nearest places in plan, from the edge of the excavation", SourceLabel::derived},
                   limit.source});
}

}  // namespace burrow
