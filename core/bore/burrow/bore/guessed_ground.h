#pragma once
/// How much wider the band is because nobody has seen a stratum.

#include <vector>

#include "burrow/bore/path.h"

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

/// The band with the neighbouring classes of `guesses_of` in it: second moment about the mean path of the classes
/// entered, Var = Var_0 + Σ_strata Σ_k p_k (Var_k + Δ_k² − Var_0), Δ_k the distance of the mean path in class k at the
/// same station. Strata count as independent (first order). At a station only the classes whose path gets there count,
/// their chances scaled to 1. Nothing changes where every stratum was seen or bored.
/// Source: law of total variance (derived), the classes our model.   Range: as `predict_path`.
/// Evidence: GuessedGround.*
GuessedPath with_guesses(const Site& site, const Tables& tables, const Tool& tool, const Bore& bore, BorePath path);

}  // namespace burrow
