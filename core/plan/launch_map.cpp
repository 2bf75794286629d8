#include "burrow/plan/launch_map.h"

#include <algorithm>
#include <cmath>
#include <thread>
#include <tuple>

#include "burrow/base/share_out.h"
#include "launch_follow.h"
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

unsigned threads_of(const LaunchMapWish& wish) {
  return wish.threads > 0 ? wish.threads : std::max(1U, std::thread::hardware_concurrency());
}

}  // namespace

LaunchMap search_launches(const Crossing& crossing, const Tables& tables, const LaunchMapWish& wish,
                          const std::stop_token& stop, const std::function<void(double)>& progress) {
  LaunchMap map;
  map.over = wish.over;
  std::tie(map.across, map.down) = map_axes(crossing, tables, wish);
  const Groundwork groundwork(crossing, tables, extent_of(crossing, map));
  const auto width = static_cast<std::size_t>(map.across.count), height = static_cast<std::size_t>(map.down.count);
  const auto threads = static_cast<unsigned>(std::min<std::size_t>(threads_of(wish), height + 1));
  std::vector<LaunchJudge> judges;
  judges.reserve(threads);
  for (unsigned i = 0; i < threads; ++i) judges.emplace_back(crossing, tables, groundwork, wish.over);

  std::vector<Judged> launches(width * height + 1);
  std::vector<std::size_t> judge_of(launches.size());
  const MapPlace here = place_of(crossing, wish.over);
  share_out(
      threads, height + 1, stop,
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
  if (stop.stop_requested()) {
    map.cancelled = true;
    return map;
  }

  map.judged = static_cast<std::int64_t>(launches.size());
  Judgements all = number_anew(std::move(launches), judge_of, judges);
  map.cells.reserve(width * height);
  for (std::size_t i = 0; i < width * height; ++i) map.cells.push_back(weigh(all.launches[i], all.limits));
  map.here = weigh(all.launches.back(), all.limits);
  map.everywhere = broken_everywhere(all);
  for (const int missing : all.missing) map.missing.push_back(all.limits.of(missing));

  Follower follower(judges, all.limits, map, stop);
  std::vector<LaunchCell> candidates = map.cells;
  candidates.push_back(map.here);
  if (wish.refine) follower.climb(candidates);
  if (const LaunchCell* best = best_of(candidates)) map.best = *best;
  const bool blocked = !map.everywhere.empty() && map.everywhere.front().severity == Severity::stop;
  map.works = map.best && map.best->verdict != Verdict::stop && !blocked;
  if (!map.works) map.relaxations = follower.relaxations(all.launches, wish.refine);
  map.judged += follower.judged();
  if (stop.stop_requested()) {
    LaunchMap cancelled;
    cancelled.cancelled = true;
    return cancelled;
  }
  name_limits(map, all.limits);
  return map;
}

}  // namespace burrow
