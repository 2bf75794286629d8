#pragma once
/// The answer on the day: where the tool is, where it is now heading, what to do, and what would change that.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "burrow/base/enum_names.h"
#include "burrow/base/phrase.h"
#include "burrow/bore/path.h"
#include "burrow/check/assessment.h"
#include "burrow/crossing/crossing.h"
#include "burrow/crossing/day_record.h"
#include "burrow/tables/tables.h"

namespace burrow {

/// From mild to grave. `as_taken_on`: it goes on although the verdict is stop or incomplete, because a named person
/// took that on. `record_only`: nothing may be taken on, and so nothing is advised.
enum class Advice {
  go_on,
  as_taken_on,
  do_tasks,
  stop_and_look,
  back_out,
  record_only,
  stop_until_exposed,
  leave_and_expose,
  get_out
};
template <>
struct EnumNames<Advice> {
  static constexpr std::pair<Advice, std::string_view> list[] = {{Advice::go_on, "go-on"},
                                                                 {Advice::as_taken_on, "as-taken-on"},
                                                                 {Advice::do_tasks, "do-tasks"},
                                                                 {Advice::stop_and_look, "stop-and-look"},
                                                                 {Advice::back_out, "back-out"},
                                                                 {Advice::record_only, "record-only"},
                                                                 {Advice::stop_until_exposed, "stop-until-exposed"},
                                                                 {Advice::leave_and_expose, "leave-and-expose"},
                                                                 {Advice::get_out, "get-out"}};
};
/// 0 go on; 1 go on as somebody took on, or after a task; 2 stop and look, back out; 3 no advice at all; 4 stop until
/// it is exposed; 5 leave and expose; 6 everybody out.
int gravity(Advice advice);

/// One number that was looked at, with its limit; `leads_to` is what it asks for where the limit is broken.
struct DayReason {
  std::string_view code;  ///< "day.window", "day.contact", "day.near", "day.odd", "day.rate", "day.cover", …
  Advice leads_to = Advice::go_on;
  bool broken = false;
  std::string subject;                                     ///< id of the utility, or "bore"
  Phrase name;                                             ///< of the same
  std::optional<double> station_m, offset_m, elevation_m;  ///< where
  double measured = 0, limit = 0;
  std::string_view unit;
  bool at_least = true;
  Source source;  ///< of the limit
  bool operator==(const DayReason&) const = default;
};

/// A utility that still lies ahead of the nose.
struct DayUtility {
  std::string id;
  Phrase name;
  bool unexposed = false;  ///< nobody has seen it where the bore passes
  std::optional<double> separation_m, gap_low_m, station_m, required_m, contact_chance, contact_chance_worst;
  std::optional<double> ahead_m;  ///< along the bore from the nose
  ContactBy by = ContactBy::normal;
  bool operator==(const DayUtility&) const = default;
};

/// An unexposed live service within reach of the nose, ahead or behind.
struct NearService {
  std::string id;
  Phrase name;
  double gap_m = 0;  ///< nose to its outside; in plan where its depth is not known
  bool depth_unknown = false;
  bool within_band = false;  ///< its 95 % band takes in the nose
  bool can_hurt = false;     ///< by its kind
  bool too_near = false;     ///< within the gap that is required of it, or nobody knows
  bool operator==(const NearService&) const = default;
};

/// How long the tool took from one mark to the next against what was expected.
struct RatePiece {
  double from_m = 0, to_m = 0;
  double taken_s = 0;     ///< without stops
  double expected_s = 0;  ///< at the median field factor and the pressure read last
  bool operator==(const RatePiece&) const = default;
};

enum class OddRate { as_before, stone, soft_pocket, hollow, lost_grip };
template <>
struct EnumNames<OddRate> {
  static constexpr std::pair<OddRate, std::string_view> list[] = {{OddRate::as_before, "as before"},
                                                                  {OddRate::stone, "a stone"},
                                                                  {OddRate::soft_pocket, "a soft pocket"},
                                                                  {OddRate::hollow, "a void"},
                                                                  {OddRate::lost_grip, "lost grip"}};
};
struct OddRateChance {
  OddRate what = OddRate::as_before;
  double chance = 0;
  bool operator==(const OddRateChance&) const = default;
};
struct RateAnswer {
  std::vector<RatePiece> pieces;
  double factor_ln = 0, factor_ln_sd = 0;        ///< ln of this bore's time over the expected, after all pieces
  std::vector<std::vector<OddRateChance>> odds;  ///< a piece each, likeliest first
  std::optional<double> left_p10_s, left_p50_s, left_p90_s;  ///< to the end of the path
  bool operator==(const RateAnswer&) const = default;
};

/// A reading that lay far from what all before it had led to expect.
struct OddReading {
  std::size_t reading = 0;  ///< number in the record
  double in_sd = 0;
  bool operator==(const OddReading&) const = default;
};

enum class ReadingTrouble { beyond_path, no_nose, no_value, runs_back };
struct ReadingLeftOut {
  std::size_t reading = 0;
  ReadingTrouble trouble = ReadingTrouble::no_value;
  bool operator==(const ReadingLeftOut&) const = default;
};

/// Why a reading is asked about. It was taken down all the same; until somebody confirms it, it moves nothing to the
/// milder side.
enum class QueryWhy { beyond_bore, runs_back, steep, far_off, early_arrival, runs_ahead };
template <>
struct EnumNames<QueryWhy> {
  static constexpr std::pair<QueryWhy, std::string_view> list[] = {{QueryWhy::beyond_bore, "beyond-bore"},
                                                                   {QueryWhy::runs_back, "runs-back"},
                                                                   {QueryWhy::steep, "steep"},
                                                                   {QueryWhy::far_off, "far-off"},
                                                                   {QueryWhy::early_arrival, "early-arrival"},
                                                                   {QueryWhy::runs_ahead, "runs-ahead"}};
};
struct ReadingQuery {
  std::size_t reading = 0;
  QueryWhy why = QueryWhy::far_off;
  double in_sd = 0;  ///< of one that is far off
  bool operator==(const ReadingQuery&) const = default;
};

/// A task of the mark at which the nose is.
struct DayTask {
  MarkTask task = MarkTask::listen;
  bool done = false;
  bool operator==(const DayTask&) const = default;
};

/// What one reading more would be worth, taken now.
enum class NextReadingKind { fix, level, expose };
template <>
struct EnumNames<NextReadingKind> {
  static constexpr std::pair<NextReadingKind, std::string_view> list[] = {
      {NextReadingKind::fix, "fix"}, {NextReadingKind::level, "level"}, {NextReadingKind::expose, "expose"}};
};
struct NextReading {
  NextReadingKind kind = NextReadingKind::fix;
  std::string subject;  ///< what to expose
  Phrase name;
  double sd_lateral_m = 0, sd_vertical_m = 0;  ///< of the arrival after it
  double chance_to_turn = 0;                   ///< that the number which decides crosses its limit
  std::string_view decides;                    ///< code of that number
  bool operator==(const NextReading&) const = default;
};

struct DayAnswer {
  std::string record;
  bool ended = false;
  std::optional<EndHow> how;
  double time_s = 0;                  ///< of the last reading
  double nose_m = 0, furthest_m = 0;  ///< arc length; furthest it has been
  PathPoint nose;                     ///< where that is believed to be, with its spread
  BorePath filtered;                  ///< each point by the readings up to there
  BorePath smoothed;                  ///< by all readings: the as-built line behind the nose, the prediction ahead
  /// c makes more than 30 % of the variance of the arrival, or the 99 % band ahead reaches the surface: the bands are
  /// then not what they say, the random trials are.
  bool bands_in_doubt = false;
  Arrival arrival;                    ///< empty where the path does not reach the exit face
  std::vector<DayUtility> utilities;  ///< ahead of the tool only
  std::vector<NearService> near;
  RateAnswer rate;
  std::vector<OddReading> odd;
  std::vector<ReadingLeftOut> left_out;
  std::vector<ReadingQuery> queried;
  std::optional<std::size_t> mark;  ///< of `Assessment::marks`, the one the nose has reached last
  std::vector<DayTask> tasks;       ///< of that mark
  std::vector<Phrase> to_expose;    ///< utilities that must be exposed before the tool goes on
  bool layout_stands = true;        ///< false: it was changed since; the record is judged by what was bored
  bool with_care = false;           ///< *go on*, but a service that nobody has exposed is near, or there are cautions
  std::optional<Advice> advice;     ///< empty: nothing started, or the bore has ended
  std::vector<DayReason> reasons;   ///< those that decide first
  std::vector<NextReading> next;    ///< best first
  bool may_back_out = false;        ///< no service near, the hole still stands
  double restart_aside_m = 0;       ///< 5 D, from the axis of the old hole
  std::vector<Working> working;
};

/// Practice bores know neither tickets nor run sheets: only what the readings say counts there.
enum class DayPurpose { site, practice };

/// Readings condition the spread of the path (`conditioning.h`): grade and heading the direction at the nose, a fix the
/// place, a peg the depth through the rise of the ground (as uncertain as its low and high estimates lie apart), the
/// arrival the end. Marks, stops and pressures tell the rate. Nothing about what is behind the tool enters the
/// separations.
/// Readings that cannot well be (`QueryWhy`: further in than the bore, behind an earlier mark, a fix, grade or heading
/// more than two marks ahead of the nose, steeper than 20 %, more than 5 sd from what was expected, an arrival or an
/// *arrived* out of the middle) wait for somebody to confirm or strike them.
/// Advice, the gravest that is asked for (limits `day_…`):
///   everybody out: danger was tapped, something was struck, a note says so;
///   leave and expose: an odd reading or rate, or a chance of contact above its stop, with the nose (by what was
///     predicted, by what was read, or where it was furthest) within 1 m of an unexposed live service or within its 95
///     % band; never to be driven back out;
///   stop until exposed: the run sheet says so up to the next mark, or the nose, or up to the next mark the path as it
///     is read, is nearer than is required to a line that can hurt and that nobody has exposed;
///   record only: ticket or marks do not hold, *no-go* was signed, a line is to be exposed, the path as it is read
///   comes
///     that near to one further on, or the verdict is stop or incomplete and nobody took it on (`start_gate.h`);
///   back out: the exit out of reach or daylight ahead, no such service near, and the hole still stands;
///   stop and look: a chance of contact above its stop, an odd or doubtful reading or rate, a pressure outside its
///     band, a peg over its limit, too small a chance to arrive;
///   do the tasks: one of the present mark is open, or a reading waits to be confirmed;
///   go on as taken on; go on.
/// Source: help page Method (advice our model).   Range: any record; what cannot be used is in `left_out`.
/// `crossing`, `assessment`: as it was bored (`as_bored`). Evidence: Day.*, DayAdvice.*, DayRate.*, DayWrong.*
DayAnswer day_answer(const Crossing& crossing, const Tables& tables, const DayRecord& record,
                     const Assessment& assessment, DayPurpose purpose = DayPurpose::site);
/// The same of the crossing as it is now: its assessment serves while the layout stands, else what was bored is judged.
DayAnswer day_of_record(const Crossing& crossing, const Tables& tables, const DayRecord& record,
                        const Assessment& as_it_is);
/// The same, assessing the layout that was bored.
DayAnswer day_answer(const Crossing& crossing, const Tables& tables, const DayRecord& record);

}  // namespace burrow
