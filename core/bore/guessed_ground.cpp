#include "burrow/bore/guessed_ground.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "burrow/soil/guesses.h"

namespace burrow {

namespace {

constexpr PathSteps coarse{Length{0.5}, Length{0.5}};  // only differences are taken from such paths

/// Place and variance of a path at a station; empty beyond its end.
struct At {
  double y_m, z_m, lateral_var_m2, vertical_var_m2;
};

std::optional<At> at_station(const BorePath& path, double x_m) {
  const auto& points = path.points;
  if (points.size() < 2 || x_m > points.back().x_m + 1e-6) return std::nullopt;
  auto right =
      std::lower_bound(points.begin(), points.end(), x_m, [](const PathPoint& p, double x) { return p.x_m < x; });
  if (right == points.end()) --right;
  if (right == points.begin()) ++right;
  const PathPoint &a = *(right - 1), &b = *right;
  const double run = b.x_m - a.x_m;
  const double t = run > 0 ? std::clamp((x_m - a.x_m) / run, 0.0, 1.0) : 1.0;
  const auto between = [t](double from, double to) { return from + t * (to - from); };
  const double lateral = between(a.sd_lateral_m, b.sd_lateral_m);
  const double vertical = between(a.sd_vertical_m, b.sd_vertical_m);
  return At{between(a.y_m, b.y_m), between(a.z_m, b.z_m), lateral * lateral, vertical * vertical};
}

/// Whether a stratum is thick enough somewhere between the surface and two diameters below the path to matter.
bool within_reach(const Ground& ground, const BorePath& path, std::size_t stratum, double reach_m) {
  return std::any_of(path.points.begin(), path.points.end(), [&](const PathPoint& p) {
    const double top = ground.surface_m(p.x_m, p.y_m), low = p.z_m - reach_m;
    for (double z = top - 1e-6; z > low; z -= reach_m / 2)
      if (ground.stratum_at(p.x_m, p.y_m, z) == stratum) return true;
    return ground.stratum_at(p.x_m, p.y_m, low) == stratum;
  });
}

struct Neighbour {
  BorePath path;
  double chance;
};

struct Added {
  double lateral_m2 = 0, vertical_m2 = 0;
};

/// Σ p_k (Var_k + Δ_k² − Var_0) at a station, over the classes that get there.
Added added_at(double x_m, const BorePath& own, double own_chance, const std::vector<Neighbour>& neighbours) {
  Added added;
  const std::optional<At> mine = at_station(own, x_m);
  if (!mine) return added;
  double chance = own_chance;
  for (const Neighbour& other : neighbours) {
    const std::optional<At> at = at_station(other.path, x_m);
    if (!at) continue;
    chance += other.chance;
    const double dy = at->y_m - mine->y_m, dz = at->z_m - mine->z_m;
    added.lateral_m2 += other.chance * (at->lateral_var_m2 + dy * dy - mine->lateral_var_m2);
    added.vertical_m2 += other.chance * (at->vertical_var_m2 + dz * dz - mine->vertical_var_m2);
  }
  // Not knowing must not look safe: a class in which the tool runs straighter does not narrow the band.
  return {std::max(added.lateral_m2 / chance, 0.0), std::max(added.vertical_m2 / chance, 0.0)};
}

}  // namespace

GuessedPath with_guesses(const Site& site, const Tables& tables, const Tool& tool, const Bore& bore, BorePath path) {
  GuessedPath answer;
  std::optional<BorePath> own;  // at the coarse step
  std::vector<Added> added(path.points.size());
  std::optional<Ground> ground;
  for (std::size_t i = 0; i < site.strata.size() && path.points.size() > 1; ++i) {
    if (site.strata[i].known.value != Known::guess) continue;
    const std::vector<SoilGuess> classes = guesses_of(site.strata[i].soil, tables);
    if (!ground) ground.emplace(site, tables);
    if (classes.size() < 2 || !within_reach(*ground, path, i, 2 * tool.diameter.m)) continue;
    if (!own) own = predict_path(*ground, tool, bore, coarse);
    GuessEffect effect;
    effect.stratum = i;
    std::vector<Neighbour> neighbours;
    for (std::size_t k = 1; k < classes.size(); ++k) {
      Site other = site;
      other.strata[i].soil = classes[k].soil;
      neighbours.push_back({predict_path(Ground(other, tables), tool, bore, coarse), classes[k].chance});
      const BorePath& its = neighbours.back().path;
      if (its.ends != own->ends) {
        effect.chance_of_loss += classes[k].chance;
        continue;
      }
      const double shift = its.points.back().z_m - own->points.back().z_m;
      effect.shift_low_m = std::min(effect.shift_low_m, shift);
      effect.shift_high_m = std::max(effect.shift_high_m, shift);
    }
    for (std::size_t p = 0; p < path.points.size(); ++p) {
      const Added more = added_at(path.points[p].x_m, *own, classes.front().chance, neighbours);
      added[p].lateral_m2 += more.lateral_m2;
      added[p].vertical_m2 += more.vertical_m2;
      effect.lateral_var_m2 = more.lateral_m2;
      effect.vertical_var_m2 = more.vertical_m2;
    }
    answer.chance_to_reach *= 1 - effect.chance_of_loss;
    answer.effects.push_back(effect);
  }
  const auto wider = [](double sd, double more) { return std::sqrt(sd * sd + more); };
  for (std::size_t p = 0; p < path.points.size(); ++p) {
    path.points[p].sd_lateral_m = wider(path.points[p].sd_lateral_m, added[p].lateral_m2);
    path.points[p].sd_vertical_m = wider(path.points[p].sd_vertical_m, added[p].vertical_m2);
  }
  answer.path = std::move(path);
  return answer;
}

StopChance::StopChance(const Site& site, const Tables& tables, const Ground& ground, const BorePath& path) {
  std::vector<std::optional<std::size_t>> place(site.strata.size());
  for (std::size_t i = 0; i < site.strata.size(); ++i) {
    const Stratum& stratum = site.strata[i];
    if (stratum.known.value != Known::guess || stratum.values.refusal_rate) continue;
    std::vector<Rate> rates;
    for (const SoilGuess& guess : guesses_of(stratum.soil, tables))
      rates.push_back({guess.chance, find_soil(tables, guess.soil)->refusal_rate.per_m});
    place[i] = guesses_.size();
    guesses_.push_back(std::move(rates));
  }
  for (std::size_t i = 1; i < path.points.size(); ++i) {
    const PathPoint &a = path.points[i - 1], &b = path.points[i];
    const double x = 0.5 * (a.x_m + b.x_m), y = 0.5 * (a.y_m + b.y_m), z = 0.5 * (a.z_m + b.z_m);
    Piece piece{a.s_m, b.s_m, ground.soil_at(x, y, z).refusal_rate.per_m, std::nullopt};
    if (!ground.strip_at(x, y, z)) piece.guessed = place[ground.stratum_at(x, y, z)];
    pieces_.push_back(piece);
  }
}

double StopChance::up_to(Length arc) const {
  double known = 0;
  std::vector<double> lengths(guesses_.size());
  for (const Piece& piece : pieces_) {
    const double length = std::min(piece.to_m, arc.m) - piece.from_m;
    if (!(length > 0)) break;
    if (piece.guessed)
      lengths[*piece.guessed] += length;
    else
      known += piece.rate_1_m * length;
  }
  double log_passes = -known;
  for (std::size_t g = 0; g < guesses_.size(); ++g) {
    double passes = 0;
    for (const Rate& rate : guesses_[g]) passes += rate.chance * std::exp(-rate.rate_1_m * lengths[g]);
    log_passes += std::min(std::log(passes), -guesses_[g].front().rate_1_m * lengths[g]);
  }
  return -std::expm1(log_passes);
}

}  // namespace burrow
