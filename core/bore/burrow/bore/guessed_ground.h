#pragma once
/// How much wider the band is because nobody has seen a stratum.

#include <optional>
#include <vector>

#include "burrow/bore/path.h"
#include "burrow/bore/turn_table.h"

namespace burrow {

/// What the guess of one stratum adds.
struct GuessEffect {
  std::size_t stratum = 0;    ///< number in `Site::strata`
  double shift_low_m = 0;     ///< lowest and highest of the ends of the mean paths in the neighbouring classes,
  double shift_high_m = 0;    ///< against that of the class entered; 0 where they do not get there
  double lateral_var_m2 = 0;  ///< added to the variance at the end of the path
  double vertical_var_m2 = 0;
  double chance_of_loss = 0;  ///< that the ground is of a class in which the path does not end where it should
  bool operator==(const GuessEffect&) const = default;
};

struct GuessedPath {
  BorePath path;                     ///< the mean path of the classes entered, in its wider bands
  std::vector<GuessEffect> effects;  ///< of the strata that are guesses and within reach of the path
  double chance_to_reach = 1;        ///< of the end, over all guesses
};

/// The band with the neighbouring classes of `soil_mistaken_for` in it: second moment about the mean path of the
/// classes entered, Var = Var_0 + Σ_strata Σ_k p_k (max(Var_k − Var_0, 0) + Δ_k²), Δ_k the distance of the mean path in
/// class k at the same station. Strata count as independent (first order). At a station only the classes whose path
/// gets there count, their chances scaled to 1. No stratum narrows the band: not knowing must not look safe. Nothing
/// changes where every stratum was seen or bored. Source: law of total variance (derived), the classes our model.
/// Range: as `predict_path`. Evidence: GuessedGround.*
GuessedPath path_with_mistakes(const Site& site, const Tables& tables, const Tool& tool, const Bore& bore,
                               BorePath path);
/// `ground`: that of the site, made before.
GuessedPath path_with_mistakes(const Site& site, const Tables& tables, const Ground& ground, const Tool& tool,
                               const Bore& bore, BorePath path);

/// The ground with each stratum that nobody has seen in its neighbouring classes, for many paths through it.
class GuessedGrounds {
 public:
  GuessedGrounds(const Site& site, const Tables& tables, const Ground& ground);
  /// Paths follow tables from now on; not where there are strips.
  void tabulate(const Site& site, const Tool& tool, const TurnExtent& extent, double y_m);

  struct Neighbour {
    Ground ground;
    double chance = 0;
    std::optional<TurnTable> turns;
  };
  struct Guess {
    std::size_t stratum = 0;  ///< number in `Site::strata`
    double own_chance = 1;
    std::vector<Neighbour> neighbours;  ///< empty: its class has none
  };
  [[nodiscard]] const std::vector<Guess>& all() const { return all_; }

 private:
  std::vector<Guess> all_;
};

/// The same on grounds that are there already; `turns`: a table of the ground itself, as for `predict_path`.
/// Evidence: GuessedGround.ReadyGrounds_TheSame
GuessedPath path_with_mistakes(const Ground& ground, const GuessedGrounds& guesses, const Tool& tool, const Bore& bore,
                               BorePath path, const TurnTable* turns = nullptr);

/// Chance that something in the ground stops the tool on its way, the classes of guessed strata mixed:
/// 1 − exp(−N) Π_strata Σ_k p_k exp(−r_k L), N = ∫ r ds over ground that is known, L the length in a guessed stratum.
/// A stratum whose neighbours would stop the tool more rarely counts with its own class: not knowing must not look
/// safe. A typed rate is known. The path is that of the classes entered.
/// Source: help page Method (our model).   Evidence: StopChance.*
class StopChance {
 public:
  StopChance(const Site& site, const Tables& tables, const Ground& ground, const BorePath& path);
  [[nodiscard]] double up_to(Length arc) const;
  /// Number of stops to be expected up to there, N in chance = 1 − exp(−N).
  [[nodiscard]] double expected(Length arc) const;
  /// Whether each rate on the way was entered for its stratum or strip, none taken from the table.
  [[nodiscard]] bool all_entered() const { return all_entered_; }

 private:
  struct Piece {
    double from_m = 0, to_m = 0;
    double rate_1_m = 0;                 // where it is known
    std::optional<std::size_t> guessed;  // place in `guesses_`
  };
  struct Rate {
    double chance = 0, rate_1_m = 0;
  };
  std::vector<Piece> pieces_;
  std::vector<std::vector<Rate>> guesses_;  // own class first
  bool all_entered_ = true;
};

}  // namespace burrow
