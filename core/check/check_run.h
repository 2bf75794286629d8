#pragma once
/// What every check of this room works with: the values read, the answer written, findings and working collected.

#include <algorithm>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "burrow/base/ensure.h"
#include "burrow/bore/path_fans.h"
#include "burrow/bore/tool.h"
#include "burrow/check/assessment.h"
#include "burrow/check/limits.h"
#include "burrow/check/mute.h"
#include "burrow/crossing/calibration.h"
#include "burrow/crossing/crossing.h"
#include "burrow/crossing/display_name.h"
#include "burrow/soil/ground.h"
#include "burrow/tables/tables.h"

namespace burrow {

struct LaunchCache;

/// What was measured and what is wanted; of an infinite or no number, nothing.
void set_numbers(Finding& finding, double value, const Limit& limit);

struct CheckRun {
  const Crossing& crossing;
  const Tables& tables;
  const Ground& ground;
  const Tool& tool;
  const StopChance& stopping;
  const PathFans& fans;  ///< the bore for every steering constant; empty where there is no path
  const LimitsInForce& limits;
  Assessment& answer;
  /// Where the search asks: limits that are kept, each with its margin. No working is made then.
  std::vector<Finding>* passed = nullptr;
  /// Where launches are judged one after the other that differ in nothing but grade.
  LaunchCache* memory = nullptr;

  [[nodiscard]] const Limit& limit(std::string_view id) const { return limits.of(id); }
  [[nodiscard]] bool wants_working() const { return passed == nullptr; }

  /// Remembers a limit that is kept, where somebody asks for them; without its source.
  void note_passed(Finding finding, double value, const Limit& limit) {
    if (!passed) return;
    set_numbers(finding, value, limit);
    finding.margin = std::max(margin_of(value, limit), 0.0);
    passed->push_back(std::move(finding));
  }

  /// Adds a finding where the limit is broken, at least a caution; gives its margin either way. A value or a limit that
  /// is not a number breaks it: nothing is measured then.   Evidence: Require.*
  double require(Finding finding, double value, const Limit& limit) {
    const double margin = margin_of(value, limit);
    if (margin >= 0) {
      note_passed(std::move(finding), value, limit);
      return margin;
    }
    BURROW_ENSURE(finding.severity != Severity::note);  // a number over its limit counts
    set_numbers(finding, value, limit);
    finding.source = limit.source;
    finding.margin = margin;
    answer.findings.push_back(std::move(finding));
    return margin;
  }

  void add(Finding finding) { answer.findings.push_back(std::move(finding)); }

  /// Data that were not entered: named, and the verdict is incomplete.
  Finding& missing(std::string_view what, std::string subject, Phrase name) {
    Finding finding;
    finding.code = "missing." + std::string(what);
    finding.severity = Severity::caution;
    finding.subject = std::move(subject);
    finding.name = std::move(name);
    finding.missing = true;
    answer.findings.push_back(std::move(finding));
    return answer.findings.back();
  }

  /// The path model and the blow balance are from records: until then they stop nobody.
  [[nodiscard]] bool calibrated() const { return burrow::calibrated(crossing.bore.model); }

  void add_working(Working working) {
    if (!passed) answer.working.push_back(std::move(working));  // nobody reads how a search came to its numbers
  }
};

/// What a chance over all steering constants is summed from: each ground with its share and chance; with `scores` also
/// the followed bores in the ground as entered.
std::vector<WorkingInput> inputs_of(const PathFans& fans, const FanChance& chance, bool scores);

Finding finding_at(std::string_view code, Severity severity, std::string subject, Phrase name, double station_m,
                   double offset_m, double elevation_m);

/// A run of stations, from ≤ to.
struct Stretch {
  double from_m = 0, to_m = 0;
};

/// What a road, track, drive or footway bears: the owner's values, else those of the table. A limit typed for the
/// crossing has no caution before it; where it is looser than those and nobody gave a reason, it does not count.
struct HeaveLimits {
  std::optional<Limit> caution;
  std::optional<Limit> stop;
};
HeaveLimits heave_limits(const CheckRun& run, const SurfaceFeature& feature);
HeaveLimits heave_limits(const LimitsInForce& limits, const Tables& tables, const SurfaceFeature& feature);
/// Cover that its owner wants, by the same rule; none where nobody said.
std::optional<Limit> cover_limit(const CheckRun& run, const SurfaceFeature& feature);
/// Whether heave and settlement of a thing on top are judged.
bool moves_with_ground(const SurfaceFeature& feature);

/// Threads for so many utilities: a second one pays from some dozens on. A search has its launches to share out.
unsigned threads_for(const CheckRun& run, std::size_t utilities);

/// One note for all utilities that share a trouble which no form at hand can judge: the worst of them, how many more.
struct WorstOfMany {
  std::size_t count = 0;
  double margin = 0;
  const Utility* utility = nullptr;
  Point3 at;
  double value = 0;
  const Limit* limit = nullptr;  ///< outlives this

  void take(const Utility& one, const Point3& where, double its_value, const Limit& its_limit);
  /// The number without a limit beside it. Says nothing when there was none.
  void add_not_judged(CheckRun& run, std::string_view code, std::string_view unit) const;
};

/// The answer about a building, footing or wall; made when first asked for.
StructureAnswer& structure_answer(Assessment& answer, const SurfaceFeature& feature);

/// Where the bore meets a thing on top: the stations entered, in either order, else those of the path under its
/// outline.
std::optional<Stretch> stretch_of(const SurfaceFeature& feature, const std::vector<PathPoint>& points);
/// Width of a carriageway as its lanes are counted by: the stations entered, and of an outline the longest straight
/// line along the crossing that lies in it, whichever is more. A skewed road counts wider than it is, which is safe;
/// where the bore ends under it all of it counts.   Evidence: RoadWidth.*
double road_width_m(const SurfaceFeature& feature, const Stretch& stretch);
/// Whether somebody said where it lies.
bool place_known(const SurfaceFeature& feature);
/// The path within a stretch; between two points of the path, the nearer one. Empty: the bore does not meet it.
std::vector<const PathPoint*> points_within(const std::vector<PathPoint>& points, const Stretch& stretch);

/// A building or a sewer beside the bore: house connections may be there that nobody marked.
bool house_connections_expected(const Crossing& crossing);

// One function a subject; each fills its part of the answer.
void check_missing(CheckRun& run);
void check_search(CheckRun& run);     ///< called by check_missing
void check_plausible(CheckRun& run);  ///< after check_utilities
void check_bore(CheckRun& run);
void check_too_long(CheckRun& run);  ///< instead of it, where no path is followed
void check_advance(CheckRun& run);
void check_cover(CheckRun& run);
void check_drift(CheckRun& run);  ///< climb and sag
void check_utilities(CheckRun& run);
/// Where another soil lies within the band or within 0.8 m of the axis, the closed forms came out up to 3.3 times too
/// low (trials of 150 crossings): a chance that four times would lift over its limit is a caution. After
/// check_utilities.   Source: our model.   Evidence: Boundary.*, TailLong.Trials_BoundariesInTheBand
void check_boundary(CheckRun& run);
void check_surface(CheckRun& run);
void check_records(CheckRun& run);
/// Records of the day: what was struck, lost or given up stops until it is released, the old hole stays where it is.
/// Evidence: Bored.*
void check_bored(CheckRun& run);
void check_settlement(CheckRun& run);
void check_movement(CheckRun& run);
void check_plastic_zone(CheckRun& run);
void check_vibration(CheckRun& run);
void check_footing(CheckRun& run);
void check_rules(CheckRun& run);
void check_pits(CheckRun& run);
void check_loads(CheckRun& run);  ///< and the pipe under them
void check_air(CheckRun& run);
void check_marks(CheckRun& run);
void check_mark_spacing(CheckRun& run);  ///< which the one before takes in
void check_typed_limits(CheckRun& run);  ///< looser than the table

/// Mutes and verdict; gives the mutes that do not count.
std::vector<VoidMute> give_verdict(const Crossing& crossing, const Tables& tables, Assessment& answer);
/// The same, with a note of each mute that does not count and the findings in order, worst first.
void conclude(const Crossing& crossing, const Tables& tables, Assessment& answer);

}  // namespace burrow
