#include "burrow/trials/trials.h"

#include <algorithm>
#include <boost/math/special_functions/beta.hpp>
#include <cmath>
#include <memory>
#include <numeric>

#include "burrow/base/parallel_for.h"
#include "grounds.h"
#include "obstacle.h"

namespace burrow {

namespace {

using namespace trials;

constexpr double share_of_tables = 0.05;  // of the progress shown

/// How far the table reaches and how wide bores stray from the mean path.
struct Room {
  TurnExtent extent;
  double widest_m = 0;
};

Room room_for(const BorePath& path, const Crossing& crossing, const Tool& tool) {
  Room room;
  room.extent.from_m = crossing.bore.launch.station.m;
  room.extent.to_m = crossing.bore.exit.station.m;
  for (const PathPoint& p : path.points) {
    const double depth = p.cover_m + 0.5 * tool.diameter.m;
    room.extent.deepest_m = std::max(room.extent.deepest_m, depth + 6 * p.sd_vertical_m + 0.5);
    room.widest_m = std::max(room.widest_m, 20 * std::hypot(p.sd_lateral_m, p.sd_vertical_m));  // c has a long tail
  }
  const double length = room.extent.to_m - room.extent.from_m;
  room.extent.deepest_m =
      std::max(room.extent.deepest_m, path.points[0].cover_m + tool.diameter.m + 0.5 + 0.05 * length);
  room.widest_m = std::max(room.widest_m, 2.0);
  return room;
}

/// What became of the bores of one block.
struct BlockResult {
  std::vector<TrialOutcome> outcomes;
  std::vector<std::vector<Point3>> paths;
  std::vector<std::int64_t> contacts, encroachments;  // by utility
};

/// Everything the blocks share.
struct Run {
  Run(const TrialsSetup& the_setup, const Course& the_course) : setup(the_setup), course(the_course) {}
  const TrialsSetup& setup;
  Course course;
  std::vector<Terrain> terrains;
  std::vector<std::size_t> terrain_of_block;
  std::vector<Obstacle> obstacles;
  std::uint64_t seed = 0;
  std::size_t count = 0;
};

/// Each ground gets its share of the blocks, to one block, spread evenly over their numbers.
std::vector<std::size_t> deal(const std::vector<DrawnGround>& grounds, std::size_t blocks) {
  std::size_t stride = std::max<std::size_t>(1, static_cast<std::size_t>(0.618034 * static_cast<double>(blocks)));
  while (std::gcd(stride, blocks) != 1) ++stride;
  std::vector<std::size_t> of_block(blocks);
  for (std::size_t b = 0; b < blocks; ++b) {
    double left = (static_cast<double>((b * stride) % blocks) + 0.5) / static_cast<double>(blocks);
    std::size_t g = 0;
    while (g + 1 < grounds.size() && left > grounds[g].chance) left -= grounds[g++].chance;
    of_block[b] = g;
  }
  return of_block;
}

bool inside(const ExitWindow& window, const Point3& at) {
  return at.y_m >= window.right_m && at.y_m <= window.left_m && at.z_m >= window.low_m && at.z_m <= window.high_m;
}

/// As if each utility were the only one.
void meet_each_alone(const Run& run, const Flight& flight, std::size_t lane, const std::vector<Obstacle::Shift>& shifts,
                     BlockResult& result) {
  for (std::size_t u = 0; u < run.obstacles.size(); ++u) {
    const Obstacle::Met met = run.obstacles[u].meet(flight, lane, shifts[u], run.course.step_m);
    result.encroachments[u] += met.encroachment ? 1 : 0;
    result.contacts[u] += met.contact ? 1 : 0;
  }
}

/// A bore ends at the first utility it touches; those it came too near to by then are counted.
void meet_utilities(const Run& run, const Flight& flight, std::size_t lane, const std::vector<Obstacle::Shift>& shifts,
                    BlockResult& result, TrialOutcome& outcome) {
  std::vector<Obstacle::Met> met;
  std::optional<std::size_t> struck;
  for (std::size_t u = 0; u < run.obstacles.size(); ++u) {
    met.push_back(run.obstacles[u].meet(flight, lane, shifts[u], run.course.step_m));
    if (met[u].contact && (!struck || *met[u].contact < *met[*struck].contact)) struck = u;
  }
  const std::size_t until = struck ? *met[*struck].contact : flight.points(lane);
  for (std::size_t u = 0; u < met.size(); ++u)
    if (met[u].encroachment && *met[u].encroachment <= until) ++result.encroachments[u];
  if (!struck) return;
  ++result.contacts[*struck];
  const Point3 at = flight.point(lane, until + 1);
  outcome = {TrialEnd::contact, false, at.x_m, at.y_m, at.z_m};
}

void keep_path(const Flight& flight, std::size_t lane, const TrialOutcome& outcome, BlockResult& result) {
  std::vector<Point3>& path = result.paths.emplace_back();
  for (std::size_t i = 0; i < flight.points(lane); ++i) {
    path.push_back(flight.point(lane, i));
    if (outcome.end == TrialEnd::contact && path.back().x_m >= outcome.station_m) return;
  }
}

BlockResult fly(const Run& run, std::size_t block, Flight& flight) {
  const std::size_t first = block * lanes, count = std::min(lanes, run.count - first);
  Draws draws(run.seed, block);
  BlockResult result;
  result.contacts.resize(run.obstacles.size());
  result.encroachments.resize(run.obstacles.size());
  result.outcomes.reserve(count);
  flight.run(run.course, run.terrains[run.terrain_of_block[block]], draws, count);
  std::vector<Obstacle::Shift> shifts(run.obstacles.size());
  for (std::size_t lane = 0; lane < count; ++lane) {
    const Point3 at = flight.point(lane, flight.points(lane) - 1);
    TrialOutcome outcome{flight.end(lane), false, at.x_m, at.y_m, at.z_m};
    if (!run.obstacles.empty()) {
      for (std::size_t u = 0; u < shifts.size(); ++u) shifts[u] = run.obstacles[u].draw(draws);
      if (run.setup.each_alone)
        meet_each_alone(run, flight, lane, shifts, result);
      else
        meet_utilities(run, flight, lane, shifts, result, outcome);
    }
    outcome.inside_window = outcome.end == TrialEnd::arrived && inside(run.setup.window, at);
    if (first + lane < run.setup.paths_kept) keep_path(flight, lane, outcome, result);
    result.outcomes.push_back(outcome);
  }
  return result;
}

/// Mean and standard deviation with their standard errors, from the central moments.
void estimate(const std::vector<double>& values, std::optional<Estimate>& mean, std::optional<Estimate>& sd) {
  if (values.size() < 2) return;
  const auto n = static_cast<double>(values.size());
  const double average = std::accumulate(values.begin(), values.end(), 0.0) / n;
  double second = 0, fourth = 0;
  for (const double v : values) {
    const double q = (v - average) * (v - average);
    second += q;
    fourth += q * q;
  }
  second /= n;
  fourth /= n;
  const double s = std::sqrt(second * n / (n - 1));
  mean = Estimate{average, s / std::sqrt(n)};
  sd = Estimate{s, s > 0 ? std::sqrt(std::max(fourth - second * second, 0.0) / n) / (2 * s) : 0};
}

void count_up(Trials& trials, const Crossing& crossing, const Run& run, std::vector<BlockResult>& results) {
  trials.outcomes.reserve(run.count);
  for (Count* c :
       {&trials.arrived, &trials.inside_window, &trials.daylight, &trials.refused, &trials.contact, &trials.lost})
    c->of = trials.count;
  for (std::size_t u = 0; u < run.obstacles.size(); ++u)
    trials.utilities.push_back(
        {crossing.site.utilities[u].id, run.obstacles[u].depth_unknown(), {0, trials.count}, {0, trials.count}});
  std::vector<double> offsets, elevations;
  for (BlockResult& result : results) {
    for (const TrialOutcome& outcome : result.outcomes) {
      Count& counted = outcome.end == TrialEnd::arrived    ? trials.arrived
                       : outcome.end == TrialEnd::daylight ? trials.daylight
                       : outcome.end == TrialEnd::refused  ? trials.refused
                       : outcome.end == TrialEnd::contact  ? trials.contact
                                                           : trials.lost;
      ++counted.n;
      trials.inside_window.n += outcome.inside_window ? 1 : 0;
      trials.outcomes.push_back(outcome);
      if (outcome.end != TrialEnd::arrived) continue;
      offsets.push_back(outcome.offset_m);
      elevations.push_back(outcome.elevation_m);
    }
    for (std::size_t u = 0; u < trials.utilities.size(); ++u) {
      trials.utilities[u].contact.n += result.contacts[u];
      trials.utilities[u].encroachment.n += result.encroachments[u];
    }
    for (auto& path : result.paths) trials.paths.push_back(std::move(path));
  }
  estimate(offsets, trials.mean_offset_m, trials.sd_offset_m);
  estimate(elevations, trials.mean_elevation_m, trials.sd_elevation_m);
}

}  // namespace

double Count::chance() const {
  return of > 0 ? static_cast<double>(n) / static_cast<double>(of) : 0;
}

double Count::standard_error() const {
  return of > 0 ? std::sqrt(chance() * (1 - chance()) / static_cast<double>(of)) : 0;
}

double Count::upper_95() const {
  if (n >= of) return 1;
  return boost::math::ibeta_inv(static_cast<double>(n + 1), static_cast<double>(of - n), 0.95);
}

double Count::lower_95() const {
  if (n <= 0) return 0;
  return boost::math::ibeta_inv(static_cast<double>(n), static_cast<double>(of - n + 1), 0.05);
}

Count refused_between(const Trials& trials, double from_m, double to_m) {
  const auto n = std::count_if(trials.outcomes.begin(), trials.outcomes.end(), [&](const TrialOutcome& outcome) {
    return outcome.end == TrialEnd::refused && outcome.station_m >= from_m && outcome.station_m < to_m;
  });
  return {n, trials.count};
}

Trials run_trials(const Crossing& crossing, const Tables& tables, const TrialsSetup& setup, const std::stop_token& stop,
                  const std::function<void(double)>& progress, unsigned threads) {
  const Bore& bore = crossing.bore;
  Trials trials;
  trials.seed = *bore.trials.seed;
  const bool flies = bore.exit.station.m > bore.launch.station.m && !too_long_to_follow(bore) && *bore.trials.count > 0;
  if (!flies) return trials;
  if (threads == 0) threads = std::max(1U, std::thread::hardware_concurrency());

  const Tool tool = resolve_tool(bore.tool, tables);
  Run run(setup, Course(bore, tool, setup.step));
  run.course.refusal = setup.refusal;
  run.seed = static_cast<std::uint64_t>(trials.seed);
  run.count = static_cast<std::size_t>(*bore.trials.count);
  const std::size_t blocks = (run.count + lanes - 1) / lanes;
  const auto grounds = grounds_of(crossing.site, tables, run.seed);
  run.terrain_of_block = deal(grounds, blocks);
  trials.grounds = grounds.size();

  std::vector<std::optional<Terrain>> terrains(grounds.size());
  std::vector<double> widest(grounds.size());
  parallel_for(threads, grounds.size(), stop, [&](std::size_t, std::size_t g) {
    const Ground ground(grounds[g].site, tables);
    const Room room = room_for(predict_path(ground, tool, bore), crossing, tool);
    widest[g] = room.widest_m;
    terrains[g].emplace(grounds[g].site, tables, tool, room.extent);
  });
  trials.cancelled = stop.stop_requested();
  if (trials.cancelled) return trials;
  for (auto& terrain : terrains) run.terrains.push_back(std::move(*terrain));

  const BorePath mean = predict_path(Ground(crossing.site, tables), tool, bore);
  const auto clearances = burrow::clearances(mean, tool.diameter, crossing.site.utilities, crossing.site.ground,
                                             setup.rules, tables, crossing.site.test_holes);
  for (std::size_t u = 0; u < clearances.size(); ++u)
    run.obstacles.emplace_back(crossing.site.utilities[u], clearances[u], crossing.site, tables, mean,
                               *std::max_element(widest.begin(), widest.end()));

  // Ground by ground, so that each table stays at hand.
  std::vector<std::size_t> order(blocks);
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return run.terrain_of_block[a] < run.terrain_of_block[b]; });

  std::vector<BlockResult> results(blocks);
  std::vector<Flight> flights(threads);
  parallel_for(
      threads, blocks, stop,
      [&](std::size_t worker, std::size_t piece) { results[order[piece]] = fly(run, order[piece], flights[worker]); },
      [&](std::size_t done) {
        const double share = static_cast<double>(done) / static_cast<double>(blocks);
        if (progress) progress(share_of_tables + (1 - share_of_tables) * share);
      });
  trials.cancelled = stop.stop_requested();
  if (trials.cancelled) return trials;
  trials.count = *bore.trials.count;
  count_up(trials, crossing, run, results);
  if (progress) progress(1);
  return trials;
}

}  // namespace burrow
