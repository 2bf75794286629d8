#pragma once
/// Random trials: many bores drawn from what is not known, followed through the ground, and what became of them
/// counted. They stand beside the closed forms and never replace them.

#include <cstdint>
#include <functional>
#include <optional>
#include <stop_token>
#include <string>
#include <vector>

#include "burrow/base/enum_names.h"
#include "burrow/base/geometry.h"
#include "burrow/clearance/clearance.h"
#include "burrow/crossing/crossing.h"
#include "burrow/tables/tables.h"

namespace burrow {

/// How a trial ended. `lost`: longer than any path is followed without reaching the exit face.
enum class TrialEnd : std::uint8_t { arrived, daylight, refused, contact, lost };
template <>
struct EnumNames<TrialEnd> {
  static constexpr std::pair<TrialEnd, std::string_view> list[] = {{TrialEnd::arrived, "arrived"},
                                                                   {TrialEnd::daylight, "daylight"},
                                                                   {TrialEnd::refused, "refused"},
                                                                   {TrialEnd::contact, "contact"},
                                                                   {TrialEnd::lost, "lost"}};
};

/// Where an arriving bore is wanted, on the exit face.
struct ExitWindow {
  double right_m = 0, left_m = 0;  ///< offsets, increasing
  double low_m = 0, high_m = 0;    ///< elevations
};

struct TrialsSetup {
  ExitWindow window;
  ClearanceRules rules;
  std::size_t paths_kept = 200;
  Length step{0.10};
  /// Each utility as if it were the only one: a bore that touches one goes on, and is counted as what it became then.
  bool each_alone = false;
  bool refusal = true;  ///< off: the ground stops no bore
};

/// How often something happened, with what chance that speaks for.
struct Count {
  std::int64_t n = 0;
  std::int64_t of = 0;
  [[nodiscard]] double chance() const;          ///< n / of
  [[nodiscard]] double standard_error() const;  ///< √(p (1 − p) / of)
  /// With 95 % confidence the chance is not above this; never 0 (3/of for none seen). Source: Clopper & Pearson 1934.
  /// Evidence: Count.ClopperPearson1934_Bounds
  [[nodiscard]] double upper_95() const;
  /// With 95 % confidence the chance is not below this; 0 for none seen.
  [[nodiscard]] double lower_95() const;
  bool operator==(const Count&) const = default;
};

struct Estimate {
  double value = 0;
  double standard_error = 0;
  bool operator==(const Estimate&) const = default;
};

struct UtilityTrials {
  std::string id;
  bool depth_unknown = false;  ///< a stretch without elevation was left out: the counts are lower bounds
  Count contact, encroachment;
  bool operator==(const UtilityTrials&) const = default;
};

struct TrialOutcome {
  TrialEnd end = TrialEnd::lost;
  bool inside_window = false;
  double station_m = 0, offset_m = 0, elevation_m = 0;  ///< where it ended
  bool operator==(const TrialOutcome&) const = default;
};

struct Trials {
  bool cancelled = false;  ///< then nothing is counted
  std::int64_t count = 0;
  std::int64_t seed = 0;
  std::size_t grounds = 1;  ///< grounds drawn for strata that are guesses
  Count arrived, inside_window, daylight, refused, contact, lost;
  std::vector<UtilityTrials> utilities;
  /// Of those that arrive; empty where fewer than two do.
  std::optional<Estimate> mean_offset_m, sd_offset_m, mean_elevation_m, sd_elevation_m;
  std::vector<TrialOutcome> outcomes;      ///< one a trial
  std::vector<std::vector<Point3>> paths;  ///< of the first trials, for the drawing
  bool operator==(const Trials&) const = default;
};

/// Those that a stone or hard ground stopped between two stations.
Count refused_between(const Trials& trials, double from_m, double to_m);

/// `bore.trials.count` bores with the seed `bore.trials.seed`. Each draws: position at the start (across and up), level
/// and aim (normal), c (lognormal, mean and sd of the model), wander in grade and heading at each step, stones (Poisson
/// along the bore, each kicking grade and heading independently), refusal (Poisson along the bore, the first one ends
/// it), the place of each utility (across its line and up, normal, the same along its length), and the soil class of
/// each stratum that is a guess: its own with ½, the next weaker and the next stiffer with ¼ each; typed values stay.
/// The path is that of `Steering` through `TurnTable`, followed from the launch face to the exit face.
/// A bore that touches a utility ends there, and comes too near only to those it has passed by then. `refused`,
/// `contact`, `daylight` and `lost` do not arrive. `progress` is called on this thread with the share done. `threads`
/// 0: as many as the machine has. Source: help page Method (our model).   Range: an exit at or behind the launch face
/// gives no trials. Accuracy: step 0.10 m moves the arrival by less than 1 mm. The same seed gives the same answer at
/// any `threads`. Evidence: Trials.*, TurnTable.*
Trials run_trials(const Crossing& crossing, const Tables& tables, const TrialsSetup& setup,
                  const std::stop_token& stop = {}, const std::function<void(double)>& progress = {},
                  unsigned threads = 0);

}  // namespace burrow
