/// One map of launches: its cells judged, its limits told apart, the best launch found and settled.

#include <algorithm>
#include <cmath>
#include <thread>
#include <tuple>

#include "burrow/base/parallel_for.h"
#include "launch_follow.h"
#include "launch_grow.h"
#include "launch_settle.h"
#include "launch_weigh.h"

namespace burrow {

namespace {

using namespace launch;

/// Everything judged, with the numbers of its limits made the same whatever thread met them.
struct Judgements {
  std::vector<Judged> launches;  ///< the cells, then the launch as it stands
  Limits limits;
  std::vector<int> missing;
};

/// Numbers in the order in which the limits are met from launch to launch.
class Renumbering {
 public:
  explicit Renumbering(const std::vector<LaunchJudge>& judges) : judges_(judges), to_(judges.size()) {}

  int operator()(std::size_t judge, int number) {
    std::vector<int>& to = to_[judge];
    const auto place = static_cast<std::size_t>(number);
    if (place >= to.size()) to.resize(judges_[judge].keys().limits().size(), -1);
    if (to[place] < 0) to[place] = keys.of(judges_[judge].keys().limits()[place]);
    return to[place];
  }
  Keys keys;

 private:
  const std::vector<LaunchJudge>& judges_;
  std::vector<std::vector<int>> to_;
};

/// A limit is the same everywhere if every launch met it with one margin.
std::vector<bool> same_everywhere(const std::vector<Seen>& seen, std::int64_t launches) {
  constexpr double hair = 1e-9;
  std::vector<bool> same(seen.size(), false);
  for (std::size_t i = 0; i < seen.size() && launches > 1; ++i)
    same[i] = seen[i].times == launches && (seen[i].broken == launches || seen[i].broken == 0) &&
              seen[i].greatest - seen[i].least <= hair * (1 + std::abs(seen[i].greatest));
  return same;
}

Judgements number_anew(std::vector<Judged> launches, const std::vector<std::size_t>& judge_of,
                       const std::vector<LaunchJudge>& judges) {
  Judgements all;
  Renumbering number(judges);
  for (std::size_t i = 0; i < launches.size(); ++i) {
    for (Entry& entry : launches[i].entries) entry.key = number(judge_of[i], entry.key);
    for (int& missing : launches[i].missing) {
      missing = number(judge_of[i], missing);
      if (std::find(all.missing.begin(), all.missing.end(), missing) == all.missing.end())
        all.missing.push_back(missing);
    }
  }
  std::vector<Seen> seen;
  for (std::size_t j = 0; j < judges.size(); ++j)
    for (std::size_t n = 0; n < judges[j].seen().size(); ++n) {
      if (judges[j].seen()[n].times == 0) continue;
      const auto place = static_cast<std::size_t>(number(j, static_cast<int>(n)));
      if (place >= seen.size()) seen.resize(place + 1);
      seen[place].take(judges[j].seen()[n]);
    }
  seen.resize(number.keys.limits().size());
  all.limits.everywhere = same_everywhere(seen, static_cast<std::int64_t>(launches.size()));
  all.limits.keys = std::move(number.keys);
  all.launches = std::move(launches);
  return all;
}

/// Limits that are broken alike at every launch, stops first.
std::vector<Finding> broken_everywhere(const Judgements& all) {
  std::vector<Finding> broken;
  for (const Entry& entry : all.launches.back().entries)
    if (entry.broken && !all.limits.counts(entry)) {
      Finding finding = all.limits.of(entry.key);
      finding.measured = entry.measured;
      finding.limit = entry.limit;
      broken.push_back(std::move(finding));
    }
  std::stable_sort(broken.begin(), broken.end(),
                   [](const Finding& a, const Finding& b) { return a.severity < b.severity; });
  return broken;
}

/// What a limit is, without what it came to at the launch where it happened to be met first.
Finding named(const Finding& met) {
  Finding limit;
  limit.code = met.code;
  limit.severity = met.severity;
  limit.subject = met.subject;
  limit.name = met.name;
  limit.unit = met.unit;
  limit.at_least = met.at_least;
  return limit;
}

/// Only the limits that a cell names, numbered by how often they bind, the most frequent first.
void name_limits(LaunchMap& map, const Limits& limits) {
  std::vector<std::int64_t> times(limits.keys.limits().size(), 0);
  const auto each = [&](auto&& take) {
    for (LaunchCell& cell : map.cells) take(cell);
    take(map.here);
    if (map.best) take(*map.best);
    if (map.best_by_limits) take(*map.best_by_limits);
  };
  each([&](const LaunchCell& cell) {
    if (cell.binds >= 0) times[static_cast<std::size_t>(cell.binds)] += 1000;
    if (cell.also >= 0) ++times[static_cast<std::size_t>(cell.also)];
  });
  std::vector<int> order;
  for (std::size_t i = 0; i < times.size(); ++i)
    if (times[i] > 0) order.push_back(static_cast<int>(i));
  std::stable_sort(order.begin(), order.end(), [&](int a, int b) {
    return times[static_cast<std::size_t>(a)] > times[static_cast<std::size_t>(b)];
  });
  std::vector<int> number(limits.keys.limits().size(), -1);
  for (std::size_t i = 0; i < order.size(); ++i) {
    number[static_cast<std::size_t>(order[i])] = static_cast<int>(i);
    map.limits.push_back(named(limits.of(order[i])));
  }
  each([&](LaunchCell& cell) {
    if (cell.binds >= 0) cell.binds = number[static_cast<std::size_t>(cell.binds)];
    if (cell.also >= 0) cell.also = number[static_cast<std::size_t>(cell.also)];
  });
}

/// Where the paths of a map run.
TurnExtent extent_of(const Crossing& crossing, const LaunchMap& map) {
  constexpr double deeper_m = 1.0;  // than a straight bore
  const double exit = crossing.bore.exit.station.m;
  const double ground = elevation_at(crossing.site.ground, crossing.bore.launch.station.m);
  double highest = ground;
  for (const LevelPoint& p : crossing.site.ground) highest = std::max(highest, p.elevation_m);
  const bool depths = map.over == MapOver::depth_and_grade;
  const double grade = depths ? std::min(map.across.from, map.across.to) : crossing.bore.launch.grade.v;
  const double deepest = depths ? std::max(map.down.from, map.down.to) : ground - crossing.bore.launch.elevation.m;
  const double from = depths ? crossing.bore.launch.station.m : std::min(map.across.from, map.across.to);
  return {from, exit, deepest + highest - ground + std::max(-grade, 0.0) * (exit - from) + deeper_m};
}

unsigned threads_of(const LaunchMapOptions& options) {
  return options.threads > 0 ? options.threads : std::max(1U, std::thread::hardware_concurrency());
}

/// Every cell of a map and the launch as it stands, on as many threads as are wished for.
struct Judging {
  std::vector<LaunchJudge> judges;
  std::vector<Judged> launches;
  std::vector<std::size_t> judge_of;

  Judging(const Crossing& crossing, const Tables& tables, const PreparedSite& groundwork, const LaunchMap& map,
          unsigned threads) {
    judges.reserve(threads);
    for (unsigned i = 0; i < threads; ++i) judges.emplace_back(crossing, tables, groundwork, map.over);
    launches.resize(static_cast<std::size_t>(map.across.count) * static_cast<std::size_t>(map.down.count) + 1);
    judge_of.resize(launches.size());
  }

  void run(const LaunchMap& map, const MapPlace& here, const std::stop_token& stop,
           const std::function<void(double)>& progress) {
    const auto width = static_cast<std::size_t>(map.across.count), height = static_cast<std::size_t>(map.down.count);
    parallel_for(
        static_cast<unsigned>(judges.size()), height + 1, stop,
        [&](std::size_t worker, std::size_t row) {
          const auto judge = [&](std::size_t i, const MapPlace& place) {
            launches[i] = judges[worker].at(place);
            judge_of[i] = worker;
          };
          if (row == height) return judge(width * height, here);
          for (std::size_t column = 0; column < width && !stop.stop_requested(); ++column)
            judge(row * width + column, {map.across.at(static_cast<int>(column)), map.down.at(static_cast<int>(row))});
        },
        [&](std::size_t rows) {
          if (progress) progress(static_cast<double>(rows) / static_cast<double>(height + 1));
        });
  }
};

/// The best launch, and the one by the limits alone where it has less chance of a clean bore than the one that stands.
void find_best(LaunchMap& map, Follower& follower, Settler& settler, const std::vector<MapPlace>& also, bool refine) {
  std::vector<LaunchCell> candidates = map.cells, settled{map.here};
  candidates.push_back(map.here);
  for (const MapPlace& place : also) settled.push_back(settler.at(place));
  const LaunchMap* settable = refine ? &map : nullptr;
  if (refine) follower.climb(candidates, {});
  map.best = settler.best(candidates, settled, {}, settable);
  if (!map.best || !map.here.arrives || !map.here.chance_clean) return;
  const LeastClean least = map.here.chance_clean;
  if (map.best->chance_clean && *map.best->chance_clean >= *least) return;
  if (refine) follower.climb(candidates, least);
  const std::optional<LaunchCell> by_limits = map.best;
  map.best = settler.best(candidates, settled, least, settable);
  // A difference too small to be shown does not outweigh a better verdict.
  const std::optional<LaunchCell> as_shown =
      settler.best(std::move(candidates), std::move(settled), *least - half_shown_chance, settable);
  if (as_shown && tier(*as_shown, {}) < tier(*map.best, {})) map.best = as_shown;
  if (!(map.best->place == by_limits->place)) map.best_by_limits = by_limits;
}

}  // namespace

LaunchMap launch::search_within(const Crossing& crossing, const Tables& tables, const LaunchMapOptions& options,
                                const std::pair<MapAxis, MapAxis>& axes, const std::vector<MapPlace>& also,
                                const std::stop_token& stop, const std::function<void(double)>& progress) {
  LaunchMap map;
  map.over = options.over;
  std::tie(map.across, map.down) = axes;
  const PreparedSite groundwork(crossing, tables, extent_of(crossing, map));
  const auto threads =
      static_cast<unsigned>(std::min<std::size_t>(threads_of(options), static_cast<std::size_t>(map.down.count) + 1));
  Judging judging(crossing, tables, groundwork, map, threads);
  const MapPlace here = place_of(crossing, options.over);
  judging.run(map, here, stop, progress);
  LaunchMap cancelled;
  cancelled.over = options.over;
  std::tie(cancelled.across, cancelled.down) = axes;
  cancelled.cancelled = true;
  if (stop.stop_requested()) return cancelled;

  map.judged = static_cast<std::int64_t>(judging.launches.size());
  Judgements all = number_anew(std::move(judging.launches), judging.judge_of, judging.judges);
  map.cells.reserve(all.launches.size() - 1);
  for (std::size_t i = 0; i + 1 < all.launches.size(); ++i) map.cells.push_back(weigh(all.launches[i], all.limits));
  map.everywhere = broken_everywhere(all);
  for (const int missing : all.missing) map.missing.push_back(all.limits.of(missing));

  Settler settler(crossing, tables, all.limits, options.over);
  map.here = settler.at(here);
  Follower follower(judging.judges, all.limits, map, stop);
  find_best(map, follower, settler, also, options.refine);
  const std::optional<LaunchCell>& by_limits = map.best_by_limits ? map.best_by_limits : map.best;
  const bool blocked = !map.everywhere.empty() && map.everywhere.front().severity == Severity::stop;
  map.works = by_limits && by_limits->verdict != Verdict::stop && !blocked;
  if (!map.works) map.relaxations = follower.relaxations(all.launches, options.refine);
  map.judged += follower.judged();
  if (stop.stop_requested()) return cancelled;
  name_limits(map, all.limits);
  return map;
}

}  // namespace burrow
