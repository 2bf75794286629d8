#include "burrow/bore/guessed_ground.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "burrow/soil/mistaken_soils.h"

namespace burrow {

namespace {

constexpr double most_looks = 2000;  // down from the surface: a needle of a tool at the bottom of a shaft
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
    const double step = std::max(reach_m / 2, (top - low) / most_looks);
    for (double z = top - 1e-6; z > low; z -= step)
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

/// Σ p_k (max(Var_k − Var_0, 0) + Δ_k²) at a station, over the classes that get there.
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
    // Not knowing must not look safe: a class in which the tool runs straighter gets no credit for that, only its
    // distance counts.
    added.lateral_m2 += other.chance * (std::max(at->lateral_var_m2 - mine->lateral_var_m2, 0.0) + dy * dy);
    added.vertical_m2 += other.chance * (std::max(at->vertical_var_m2 - mine->vertical_var_m2, 0.0) + dz * dz);
  }
  return {added.lateral_m2 / chance, added.vertical_m2 / chance};
}

}  // namespace

namespace {

/// Nothing where the stratum was seen or its class has no neighbours.
std::optional<GuessedGrounds::Guess> guess_of(const Site& site, const Tables& tables, const Ground& ground,
                                              std::size_t stratum) {
  if (site.strata[stratum].known.value != StratumEvidence::guess) return std::nullopt;
  const std::vector<SoilGuess> classes = soil_mistaken_for(site.strata[stratum].soil, tables);
  if (classes.size() < 2) return std::nullopt;
  GuessedGrounds::Guess guess;
  guess.stratum = stratum;
  guess.own_chance = classes.front().chance;
  for (std::size_t k = 1; k < classes.size(); ++k)
    guess.neighbours.push_back(
        {ground.with_class(site, tables, stratum, classes[k].soil), classes[k].chance, std::nullopt});
  return guess;
}

}  // namespace

GuessedGrounds::GuessedGrounds(const Site& site, const Tables& tables, const Ground& ground) {
  for (std::size_t i = 0; i < site.strata.size(); ++i)
    if (auto guess = guess_of(site, tables, ground, i)) all_.push_back(std::move(*guess));
}

void GuessedGrounds::tabulate(const Site& site, const Tool& tool, const TurnExtent& extent, double y_m) {
  if (!site.strips.empty()) return;
  for (Guess& guess : all_)
    for (Neighbour& other : guess.neighbours)
      other.turns.emplace(site, other.ground, Steering(other.ground, tool), tool, extent, y_m);
}

namespace {

/// Adds up what the guesses do to one path.
class Widening {
 public:
  Widening(const Ground& ground, const Tool& tool, const Bore& bore, BorePath path, const TurnTable* turns = nullptr)
      : ground_(ground), tool_(tool), bore_(bore), path_(std::move(path)), turns_(turns), added_(path_.points.size()) {}

  [[nodiscard]] bool reaches(std::size_t stratum) const {
    return path_.points.size() > 1 && within_reach(ground_, path_, stratum, 2 * tool_.diameter.m);
  }

  void take(const GuessedGrounds::Guess& guess) {
    if (!own_) own_ = predict_path(ground_, tool_, bore_, coarse, turns_);
    GuessEffect effect;
    effect.stratum = guess.stratum;
    std::vector<Neighbour> neighbours;
    for (const GuessedGrounds::Neighbour& other : guess.neighbours) {
      neighbours.push_back(
          {predict_path(other.ground, tool_, bore_, coarse, other.turns ? &*other.turns : nullptr), other.chance});
      const BorePath& its = neighbours.back().path;
      if (its.ends != own_->ends) {
        effect.chance_of_loss += other.chance;
        continue;
      }
      const double shift = its.points.back().z_m - own_->points.back().z_m;
      effect.shift_low_m = std::min(effect.shift_low_m, shift);
      effect.shift_high_m = std::max(effect.shift_high_m, shift);
    }
    for (std::size_t p = 0; p < path_.points.size(); ++p) {
      const Added more = added_at(path_.points[p].x_m, *own_, guess.own_chance, neighbours);
      added_[p].lateral_m2 += more.lateral_m2;
      added_[p].vertical_m2 += more.vertical_m2;
      effect.lateral_var_m2 = more.lateral_m2;
      effect.vertical_var_m2 = more.vertical_m2;
    }
    answer_.chance_to_reach *= 1 - effect.chance_of_loss;
    answer_.effects.push_back(effect);
  }

  GuessedPath finish() {
    const auto wider = [](double sd, double more) { return std::sqrt(sd * sd + more); };
    for (std::size_t p = 0; p < path_.points.size(); ++p) {
      path_.points[p].sd_lateral_m = wider(path_.points[p].sd_lateral_m, added_[p].lateral_m2);
      path_.points[p].sd_vertical_m = wider(path_.points[p].sd_vertical_m, added_[p].vertical_m2);
    }
    answer_.path = std::move(path_);
    return std::move(answer_);
  }

 private:
  const Ground& ground_;
  const Tool& tool_;
  const Bore& bore_;
  BorePath path_;
  const TurnTable* turns_;
  std::optional<BorePath> own_;  // at the coarse step
  std::vector<Added> added_;
  GuessedPath answer_;
};

}  // namespace

GuessedPath path_with_mistakes(const Ground& ground, const GuessedGrounds& guesses, const Tool& tool, const Bore& bore,
                               BorePath path, const TurnTable* turns) {
  Widening widening(ground, tool, bore, std::move(path), turns);
  for (const GuessedGrounds::Guess& guess : guesses.all())
    if (widening.reaches(guess.stratum)) widening.take(guess);
  return widening.finish();
}

GuessedPath path_with_mistakes(const Site& site, const Tables& tables, const Ground& ground, const Tool& tool,
                               const Bore& bore, BorePath path) {
  const bool any = std::any_of(site.strata.begin(), site.strata.end(),
                               [](const Stratum& stratum) { return stratum.known.value == StratumEvidence::guess; });
  if (!any || path.points.size() < 2) return {std::move(path), {}, 1};
  Widening widening(ground, tool, bore, std::move(path));
  for (std::size_t i = 0; i < site.strata.size(); ++i)
    if (site.strata[i].known.value == StratumEvidence::guess && widening.reaches(i))  // made only where it matters
      if (const auto guess = guess_of(site, tables, ground, i)) widening.take(*guess);
  return widening.finish();
}

GuessedPath path_with_mistakes(const Site& site, const Tables& tables, const Tool& tool, const Bore& bore,
                               BorePath path) {
  return path_with_mistakes(site, tables, Ground(site, tables), tool, bore, std::move(path));
}

StopChance::StopChance(const Site& site, const Tables& tables, const Ground& ground, const BorePath& path) {
  std::vector<std::optional<std::size_t>> place(site.strata.size());
  for (std::size_t i = 0; i < site.strata.size(); ++i) {
    const Stratum& stratum = site.strata[i];
    if (stratum.known.value != StratumEvidence::guess || stratum.values.refusal_rate) continue;
    std::vector<Rate> rates;
    for (const SoilGuess& guess : soil_mistaken_for(stratum.soil, tables))
      rates.push_back({guess.chance, find_soil(tables, guess.soil)->refusal_rate.per_m});
    place[i] = guesses_.size();
    guesses_.push_back(std::move(rates));
  }
  for (std::size_t i = 1; i < path.points.size(); ++i) {
    const PathPoint &a = path.points[i - 1], &b = path.points[i];
    const double x = 0.5 * (a.x_m + b.x_m), y = 0.5 * (a.y_m + b.y_m), z = 0.5 * (a.z_m + b.z_m);
    Piece piece{a.s_m, b.s_m, ground.soil_at(x, y, z).refusal_rate.per_m, std::nullopt};
    if (const std::optional<std::size_t> strip = ground.strip_at(x, y, z)) {
      all_entered_ = all_entered_ && site.strips[*strip].values.refusal_rate;
    } else {
      const std::size_t stratum = ground.stratum_at(x, y, z);
      piece.guessed = place[stratum];
      all_entered_ = all_entered_ && site.strata[stratum].values.refusal_rate;
    }
    pieces_.push_back(piece);
  }
}

double StopChance::up_to(Length arc) const {
  return -std::expm1(-expected(arc));
}

double StopChance::expected(Length arc) const {
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
  return -log_passes;
}

}  // namespace burrow
