#include "launch_follow.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>

#include "burrow/base/parallel_for.h"
#include "burrow/check/limits.h"

namespace burrow::launch {

namespace {

constexpr int halvings = 6;       // to a 64th of a cell
constexpr int most_squares = 24;  // on one way
constexpr std::size_t most_starts = 2, most_relaxations = 4;
constexpr double near_the_best = 0.05;  // margin within which a second top is followed too
constexpr double lost = -std::numeric_limits<double>::infinity();

/// Cells that none of their neighbours betters, the best first.
std::vector<std::size_t> tops(const LaunchMap& map, const LeastClean& least) {
  std::vector<std::size_t> all;
  const int width = map.across.count, height = map.down.count;
  for (int row = 0; row < height; ++row)
    for (int column = 0; column < width; ++column) {
      const LaunchCell& cell = map.cell(column, row);
      bool top = true;
      for (int dy = -1; dy <= 1 && top; ++dy)
        for (int dx = -1; dx <= 1 && top; ++dx) {
          const int x = column + dx, y = row + dy;
          if (x < 0 || y < 0 || x >= width || y >= height) continue;
          top = !better(map.cell(x, y), cell, least);
        }
      if (top)
        all.push_back(static_cast<std::size_t>(row) * static_cast<std::size_t>(width) +
                      static_cast<std::size_t>(column));
    }
  std::stable_sort(all.begin(), all.end(),
                   [&](std::size_t a, std::size_t b) { return better(map.cells[a], map.cells[b], least); });
  return all;
}

}  // namespace

Follower::Follower(std::vector<LaunchJudge>& judges, Limits& limits, const LaunchMap& map, std::stop_token stop)
    : judges_(judges), limits_(limits), map_(map), stop_(std::move(stop)) {
  for (LaunchJudge& judge : judges_) judge.number_as(limits_.keys);
}

std::vector<Judged> Follower::judge(const std::vector<MapPlace>& places) {
  std::vector<Judged> all(places.size());
  std::vector<std::size_t> by(places.size(), 0);
  parallel_for(static_cast<unsigned>(std::min(judges_.size(), places.size())), places.size(), stop_,
               [&](std::size_t worker, std::size_t i) {
                 all[i] = judges_[worker].at(places[i]);
                 by[i] = worker;
               });
  judged_ += static_cast<std::int64_t>(places.size());
  const std::size_t known = limits_.keys.limits().size();
  bool grown = false;
  for (std::size_t i = 0; i < all.size(); ++i)
    for (Entry& entry : all[i].entries) {
      if (static_cast<std::size_t>(entry.key) < known) continue;
      entry.key = limits_.keys.of(judges_[by[i]].keys().limits()[static_cast<std::size_t>(entry.key)]);
      grown = true;
    }
  if (grown)
    for (LaunchJudge& one : judges_) one.number_as(limits_.keys);
  return all;
}

Judged Follower::follow(Judged from, const Worth& worth, const std::function<void(const Judged&)>& take) {
  Judged best = std::move(from);
  double value = worth(best);
  double across = map_.across.step() / 2, down = map_.down.step() / 2;
  const auto low_high = [](const MapAxis& axis) { return std::minmax(axis.from, axis.to); };
  int halved = 0;
  for (int square = 0; square < most_squares && halved < halvings && !stop_.stop_requested(); ++square) {
    std::vector<MapPlace> places;
    for (int i = -2; i <= 2; ++i)
      for (int k = -2; k <= 2; ++k) {
        if ((i == 0 && k == 0) || (i != 0 && across == 0) || (k != 0 && down == 0)) continue;
        const MapPlace place{best.place.across + i * across, best.place.down + k * down};
        const auto [left, right] = low_high(map_.across);
        const auto [top, bottom] = low_high(map_.down);
        if (place.across < left || place.across > right || place.down < top || place.down > bottom) continue;
        places.push_back(place);
      }
    const MapPlace centre = best.place;
    for (Judged& judged : judge(places)) {
      if (stop_.stop_requested()) return best;
      if (take) take(judged);
      if (const double its = worth(judged); its > value) {
        value = its;
        best = std::move(judged);
      }
    }
    const bool at_rim = std::abs(best.place.across - centre.across) > 1.5 * across ||
                        std::abs(best.place.down - centre.down) > 1.5 * down;
    if (!at_rim || (across == 0 && down == 0)) {
      across /= 2;
      down /= 2;
      ++halved;
    }
  }
  return best;
}

void Follower::climb(std::vector<LaunchCell>& cells, const LeastClean& least) {
  const std::vector<std::size_t> starts = tops(map_, least);
  const Worth worth = [&](const Judged& judged) { return launch::worth(weigh(judged, limits_), least); };
  for (std::size_t i = 0; i < std::min(starts.size(), most_starts); ++i) {
    const LaunchCell &start = map_.cells[starts[i]], &first = map_.cells[starts[0]];
    if (launch::worth(start, least) < launch::worth(first, least) - near_the_best) break;
    Judged from = judge({start.place}).front();
    if (stop_.stop_requested()) return;
    follow(std::move(from), worth, [&](const Judged& judged) { cells.push_back(weigh(judged, limits_)); });
  }
}

std::vector<std::string> Follower::broken_units(const Judged& judged) const {
  std::vector<std::string> units;
  for (const Entry& entry : judged.entries)
    if (entry.broken && entry.stop) units.push_back(unit_of(limits_.of(entry.key)));
  std::sort(units.begin(), units.end());
  units.erase(std::unique(units.begin(), units.end()), units.end());
  return units;
}

Relaxation Follower::relaxation_at(const Judged& judged) const {
  Relaxation relaxation;
  relaxation.place = judged.place;
  for (const Entry& entry : judged.entries) {
    if (!entry.broken || !entry.stop) continue;
    Finding finding = limits_.of(entry.key);
    finding.measured = entry.measured;
    finding.limit = entry.limit;
    finding.limit_base = entry.limit_base;
    finding.margin = entry.margin;
    relaxation.worst_margin = std::min(relaxation.worst_margin, bounded_margin(entry.margin));
    relaxation.limits.push_back(std::move(finding));
  }
  std::stable_sort(relaxation.limits.begin(), relaxation.limits.end(),
                   [](const Finding& a, const Finding& b) { return a.margin < b.margin; });
  return relaxation;
}

std::vector<Relaxation> Follower::relaxations(const std::vector<Judged>& launches, bool refine) {
  struct Candidate {
    const Judged* at = nullptr;
    double worst = lost;
  };
  const auto worst_of = [](const Judged& judged) {
    double worst = 0;
    for (const Entry& entry : judged.entries)
      if (entry.broken && entry.stop) worst = std::min(worst, entry.margin);
    return worst;
  };
  std::map<std::vector<std::string>, Candidate> sets;
  for (const Judged& judged : launches) {
    if (!judged.arrives) continue;
    Candidate& candidate = sets[broken_units(judged)];
    const double worst = worst_of(judged);
    if (!candidate.at || worst > candidate.worst) candidate = {&judged, worst};
  }
  std::vector<std::pair<std::vector<std::string>, Candidate>> order(sets.begin(), sets.end());
  std::stable_sort(order.begin(), order.end(), [](const auto& a, const auto& b) {
    if (a.first.size() != b.first.size()) return a.first.size() < b.first.size();
    return a.second.worst > b.second.worst;
  });
  std::vector<Relaxation> all;
  for (const auto& [units, candidate] : order) {
    if (all.size() == most_relaxations || (!all.empty() && units.size() > order.front().first.size())) break;
    const Worth worth = [&, &wanted = units](const Judged& judged) {
      if (!judged.arrives) return lost;
      const std::vector<std::string> broken = broken_units(judged);
      return std::includes(wanted.begin(), wanted.end(), broken.begin(), broken.end()) ? worst_of(judged) : lost;
    };
    all.push_back(relaxation_at(refine ? follow(*candidate.at, worth) : *candidate.at));
    if (stop_.stop_requested()) break;
  }
  std::stable_sort(all.begin(), all.end(),
                   [](const Relaxation& a, const Relaxation& b) { return a.worst_margin > b.worst_margin; });
  return all;
}

}  // namespace burrow::launch
