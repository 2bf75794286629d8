#pragma once
/// What records of many bores say about the constants of the model, soil class by soil class.

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "burrow/base/phrase.h"
#include "burrow/crossing/crossing.h"
#include "burrow/tables/tables.h"

namespace burrow {

/// A constant known to within a factor: normal in its logarithm.
struct LearnedValue {
  double likeliest = 0;      ///< of the posterior of all three together
  double low = 0, high = 0;  ///< 90 % between them
  double ln_mean = 0, ln_sd = 0;
  bool operator==(const LearnedValue&) const = default;
};

/// Rate at which the ground stops the tool: gamma distributed.
struct LearnedRate {
  double mean_1_m = 0;               ///< of the posterior; it counts in a crossing
  double low_1_m = 0, high_1_m = 0;  ///< 90 % between them
  double shape = 0, length_m = 0;    ///< of the posterior: refusals and metres, those of the prior among them
  bool operator==(const LearnedRate&) const = default;
};

struct LearnedSoil {
  std::string soil;
  std::int64_t bores = 0;        ///< whose path was read
  std::int64_t timed_bores = 0;  ///< whose marks were timed
  LearnedValue steer_constant, wander_rad_sqrt_m, field_factor;
  std::int64_t refusals = 0;  ///< bores that the ground of this class stopped
  double bored_m = 0;         ///< in this class, by all bores whose end is known; 0: nothing is known of its rate
  std::optional<LearnedRate> refusal_rate{};
  std::vector<std::string> records{};  ///< of those bores whose path was read, by name
  bool operator==(const LearnedSoil&) const = default;
};

struct LearnLibrary {
  std::vector<LearnedSoil> soils;  ///< by name
  std::string extra;               ///< JSON members of a later program
  bool operator==(const LearnLibrary&) const = default;
};
const LearnedSoil* find_learned(const LearnLibrary& library, std::string_view soil);

/// The defaults as prior, in logarithms.   Source: our default.
struct LearnPrior {
  double wander_ln_sd = 0.5;              ///< about the σ of the class
  double factor_ln_sd = 0.628;            ///< about F: from 0.1 to 0.5 between 10 and 90 %
  double factor_bore_ln_sd = 0.30;        ///< of one bore about the F of its class
  double factor_piece_ln_sd = 0.25;       ///< of one piece between marks
  double share_in_class = 0.6;            ///< of a bore's length, for it to count for that class
  double refusal_shape = 1;               ///< the rate of the class weighs as much as one refusal would
  double least_refusal_rate_1_m = 0.001;  ///< prior mean of a class whose table says that nothing stops a tool
};

struct PathEvidence;  // burrow/day/path_evidence.h

/// What one bore contributes: its readings, what the model would have them be for each c, and how they scatter.
struct BoreEvidence {
  std::string record;  ///< "Alder Lane, d1"
  std::string soil;
  double wander_class = 0;  ///< σ of the class, before anything is learnt
  double steer_mean = 0, steer_sd = 0;
  std::shared_ptr<const PathEvidence> path;  ///< empty: the path was not read
  double factor_expected = 0;                ///< F the times were expected with
  std::optional<double> time_ln;             ///< mean over the pieces of ln(time taken/expected)
  int pieces = 0;
};

/// What one bore says of the ground of one class that stops tools.
struct StopEvidence {
  std::string soil;
  double rate_class = 0, wander_class = 0;  ///< of the class, before anything is learnt
  double bored_m = 0;                       ///< in it
  bool stopped = false;                     ///< there
};

/// Why a record says nothing.
struct NotLearnt {
  std::string record;
  Phrase why;
};

struct Evidence {
  std::vector<BoreEvidence> bores;
  std::vector<StopEvidence> stops;  ///< of each bore whose end is entered, whatever else was read
  std::vector<NotLearnt> not_learnt;
};

/// Which records are taken. One that was backed out was given up for a reason: only when somebody asks for it.
struct LearnFrom {
  bool backed_out = false;
};

/// The records of a crossing, each with the layout it was bored by.   Evidence: Learn.*
Evidence evidence_of(const Crossing& crossing, const Tables& tables, const LearnPrior& prior = {},
                     const LearnFrom& from = {});

/// Posterior of ln c and ln σ on a grid (twice, the second about the first), of ln F in closed form: the constants of
/// one class are the same in all its bores. c: prior lognormal with the mean and sd of the model; its likelihood takes
/// the path itself for each c, and the spread of the rest about the path of the middle one. Intervals are the 5 and 95
/// % quantiles of each constant alone. Source: our model (conjugate normal, grid; textbook).   Range: any; classes
/// without evidence are left out. Evidence: LearnRecovery.*, Learn.*
LearnLibrary learn(const std::vector<BoreEvidence>& evidence, const LearnPrior& prior = {});

/// The same, and the rate r at which the ground stops tools: prior gamma of shape 1 with the rate of the class as its
/// mean, n refusals over L metres a Poisson count: posterior gamma of shape 1 + n, over 1/r_0 + L metres. Its mean
/// counts, not its top: the top of a class in which nothing stopped yet is zero. Source: conjugate gamma (textbook),
/// prior our default.   Evidence: LearnRefusal.*
LearnLibrary learn(const Evidence& evidence, const LearnPrior& prior = {});

/// Whether records say more of the rate than the table: L not less than the metres of the prior. Until then it stays
/// out of a crossing, and does not pass for calibrated.   Evidence: LearnRefusal.TooLittle_*
bool outweighs_table(const std::optional<LearnedRate>& rate, double bored_m);

/// The crossing with what was learnt for the soil at the launch in its model, and the wander and refusal rate of each
/// stratum whose class was learnt. Typed values stay, and so does the rate of a stratum that is only guessed: it may be
/// of another class. Unchanged where nothing was learnt of that soil.   Evidence: Learn.Library_*, LearnRefusal.*
Crossing with_library(const Crossing& crossing, const Tables& tables, const LearnLibrary& library);

}  // namespace burrow
