/// What presses on the crown of the hole along the bore, and what of it is known.

#include <algorithm>

#include "burrow/base/phrase.h"
#include "pipe_check.h"

namespace burrow {

namespace {

/// One of the points each so many, the last always: the load changes slowly along a bore.
constexpr std::size_t most_points = 40;

Working of_highway(const HighwayPressure& p) {
  return {{},
          {},
          "p = n P m (1 + IM)/(l w)",
          {{"n", static_cast<double>(p.wheels), ""},
           {"P", p.wheel_N, "N"},
           {"m", p.presence, ""},
           {"IM", p.impact, ""},
           {"l", p.length_m, "m"},
           {"w", p.width_m, "m"},
           {"counted", p.negligible ? 0.0 : 1.0, ""}},
          "p",
          0,
          {},
          std::nullopt,
          {p.negligible ? translatable("AASHTO LRFD 3.6.1.2.6: left out under more than 8 ft of cover")
                        : "AASHTO LRFD 3.6.1.2, 3.6.2.2; spread 1.00 for each unit of depth, one lane",
           SourceLabel::from_memory}};
}

Working of_rail(const LiveLoad& load) {
  const bool table = load.rail->by_table;
  return {{},
          {},
          table ? translatable("p = p(H) of the printed table for E80, impact in it; straight between its rows")
                : "p = 4 q I(B/2H, L/2H) (1 + IM), q 2025 lb/ft² on B 8 ft by L 20 ft",
          {{"H", load.cover_m, "m"}, {"IM", load.rail->impact, ""}, {"p_half-space", load.rail->half_space_Pa, "Pa"}},
          "p",
          0,
          {},
          std::nullopt,
          {Phrase::of_table(std::string(load.source)), load.label}};
}

Working of_european(const LiveLoad& load) {
  const EuropeanPressure& p = *load.european;
  return {{},
          {},
          translatable(
              "p = greater of p_1 and p_2; n lanes: w < 5.4 m one, < 6 m two of w/2, else Int(w/3), loaded at most 3"),
          {{"w", p.carriageway_m, "m"},
           {"n", static_cast<double>(p.lanes.count), ""},
           {"b", p.lanes.width_m, "m"},
           {"H", load.cover_m, "m"},
           {"p_1", p.model_1_Pa, "Pa"},
           {"p_2", p.model_2_Pa, "Pa"}},
          "p",
          0,
          {},
          std::nullopt,
          {Phrase::of_table(std::string(load.source)), load.label}};
}

Working of_live(const LiveLoad& load) {
  if (load.highway) return of_highway(*load.highway);
  if (load.european) return of_european(load);
  if (load.rail) return of_rail(load);
  return {{},
          {},
          translatable("p = greatest Σ q I below the wheels or machines"),
          {{"H", load.cover_m, "m"}},
          "p",
          0,
          {},
          std::nullopt,
          {Phrase::of_table(std::string(load.source)), load.label}};
}

/// Words of traffic that nobody entered, or that this program does not know.
void say_taken(CheckRun& run, const LoadsAbove& above) {
  for (const TrafficStretch& t : above.traffic()) {
    if (t.above.entered && t.above.known) continue;
    const bool known = t.above.known;
    Finding finding;
    finding.code = known ? "pipe.traffic-taken" : "pipe.traffic-unknown";
    finding.severity = known ? Severity::note : Severity::caution;
    finding.subject = t.feature->id;
    finding.name = display_name(*t.feature);
    finding.station_m = (t.stretch.from_m + t.stretch.to_m) / 2;
    finding.source = {"the heaviest usual for its kind", SourceLabel::our_default};
    run.add(std::move(finding));
  }
}

}  // namespace

void check_loads(CheckRun& run) {
  const std::vector<PathPoint>& points = run.answer.bore.points;
  const LoadsAbove above(run.crossing, run.ground, run.tool.diameter, points);
  const std::size_t step = std::max<std::size_t>(1, (points.size() + most_points - 1) / most_points);
  run.answer.loads.reserve(most_points + 1);
  std::vector<const PathPoint*> places;
  places.reserve(most_points + 1);
  Column column;
  const auto take = [&](const PathPoint& p) {
    const auto load = above.at(p.x_m, p.y_m, p.z_m + run.tool.diameter.m / 2, column);
    if (!load) return;
    run.answer.loads.push_back(*load);
    places.push_back(&p);
  };
  for (std::size_t i = 0; i + 1 < points.size(); i += step) take(points[i]);
  if (!points.empty()) take(points.back());
  if (run.crossing.pipe) check_pipe(run, above, std::move(places));
}

void check_pipe_loads(CheckRun& run, const PipeUnderCheck& pipe) {
  const std::vector<LoadPoint>& loads = run.answer.loads;
  if (loads.empty()) return;
  say_taken(run, pipe.above);
  const auto most = [&](auto of) {
    return std::max_element(loads.begin(), loads.end(),
                            [&](const LoadPoint& a, const LoadPoint& b) { return of(a) < of(b); });
  };
  const LoadPoint& earth = *most([](const LoadPoint& p) { return p.earth_Pa; });
  report_pipe(run, pipe,
              {"pipe.earth", translatable("ground above it, all of its weight"), earth.earth_Pa, "Pa",
               place_of(run, pipe, earth),
               translatable("On the crown of the hole. Over the years the ground comes to rest on the pipe.")},
              {{},
               {},
               "p = γ H",
               {{"γ", earth.earth_Pa / earth.depth_m, "N/m³"}, {"H", earth.depth_m, "m"}},
               "p",
               0,
               {},
               std::nullopt,
               {"weight of the layers above, γ their mean", SourceLabel::derived}});
  const LoadPoint& arched = *most([](const LoadPoint& p) { return p.earth_arched_Pa; });
  report_pipe(
      run, pipe,
      {"pipe.earth-arched", translatable("ground above it, arching over the hole"), arched.earth_arched_Pa, "Pa",
       place_of(run, pipe, arched),
       translatable(
           "While the hole stands around the pipe. Its cohesion would often carry all of it on paper: not counted.")},
      {{},
       {},
       "p = C γ B, C = (1 − e^(−2 Kμ′ H/B))/(2 Kμ′)",
       {{"γ", arched.earth_Pa / arched.depth_m, "N/m³"},
        {"B", run.tool.diameter.m, "m"},
        {"H", arched.depth_m, "m"},
        {"Kμ′", pipe.above.k_mu_at(*place_of(run, pipe, arched)), ""}},
       "p",
       0,
       {},
       std::nullopt,
       {"Marston, tunnel form, cohesion 0; Kμ′ of sand or of wet clay", SourceLabel::second_hand}});
  const LoadPoint& live = *most([](const LoadPoint& p) { return p.live_Pa; });
  const PathPoint* place = place_of(run, pipe, live);
  if (const auto load = pipe.above.live_at(live.station_m, place->y_m, live.depth_m))
    report_pipe(run, pipe,
                {"pipe.live", translatable("traffic, track or machines above it"), live.live_Pa, "Pa", place,
                 Phrase::of_table(std::string(load->source))},
                of_live(*load));
}

}  // namespace burrow
