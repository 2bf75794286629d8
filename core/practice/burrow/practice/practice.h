#pragma once
/// Practice bores: a truth that only the trainer knows, a bore in it, what a crew sees of it, and the debrief.

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "burrow/base/enum_names.h"
#include "burrow/base/phrase.h"
#include "burrow/bore/playback.h"
#include "burrow/bore/tool.h"
#include "burrow/crossing/crossing.h"
#include "burrow/day/day.h"
#include "burrow/practice/true_bore.h"
#include "burrow/tables/tables.h"

namespace burrow {

/// A stratum that is another soil than drawn.
struct TrueSoil {
  std::string stratum;  ///< its id
  std::string soil;     ///< a class
  bool operator==(const TrueSoil&) const = default;
};

/// A service that does not lie where it was marked: moved level across its line (positive left of its own direction)
/// and up.
struct MovedService {
  std::string utility;  ///< its id
  double across_m = 0, up_m = 0;
  bool operator==(const MovedService&) const = default;
};

/// What is true though nobody at the pit knows it.
struct PracticeTruth {
  std::uint64_t seed = 1;
  SetErrors errors;
  double steer_constant = 0.04, field_factor = 0.3;
  bool wander = true;
  bool soil_stones = true;  ///< as often as the soil has them, beside those of `stones`
  std::vector<TrueSoil> soils;
  std::vector<Strip> trenches;
  std::vector<StoneHit> stones;
  std::vector<MovedService> services;
  bool operator==(const PracticeTruth&) const = default;
};

/// A row of the class table.
struct PracticeResult {
  std::string name, end;  ///< of the person; "arrived", "struck", …
  double miss_left_m = 0, miss_up_m = 0;
  std::int64_t right = 0, decisions = 0;
  bool operator==(const PracticeResult&) const = default;
};

struct Practice {
  std::string title, aim, question;
  std::string rule;   ///< what is to be taken home; told once the true bore has been shown
  bool sonde = true;  ///< the tool can be found from above
  PracticeTruth truth;
  std::vector<PracticeResult> results;
  std::string extra;  ///< JSON members of a later program
  bool operator==(const Practice&) const = default;
};

/// A truth drawn for a crossing: set-up errors as large as its own sds say, c and the field factor from their spreads,
/// one time in three each a stratum of the next class, an old trench, a stone, a service marked 0.3 m off.
/// Source: our model.   Evidence: Practice.Draw_*
PracticeTruth draw_truth(const Crossing& crossing, const Tables& tables, std::uint64_t seed);

/// The crossing as it really is.
Crossing true_crossing(const Crossing& crossing, const PracticeTruth& truth);

enum class PracticeEnd { arrived, daylight, struck, stuck, lost, stopped };
template <>
struct EnumNames<PracticeEnd> {
  static constexpr std::pair<PracticeEnd, std::string_view> list[] = {
      {PracticeEnd::arrived, "arrived"}, {PracticeEnd::daylight, "daylight"}, {PracticeEnd::struck, "struck"},
      {PracticeEnd::stuck, "stuck"},     {PracticeEnd::lost, "lost"},         {PracticeEnd::stopped, "stopped"}};
};

/// What the crew sees and hears at one stop: a third and a half of the tool in, the tool in, then the marks of the hose
/// as the run sheet has them.
struct PracticeMark {
  double nose_m = 0, time_s = 0;
  Phrase sound;
  bool operator==(const PracticeMark&) const = default;
};

/// The whole bore, made at once when the tool is started; the crew gets it mark by mark.
struct PracticeBore {
  TrueBore bore;  ///< cut off where it ended
  PracticeEnd end = PracticeEnd::lost;
  std::string struck;  ///< id of the service
  double end_time_s = 0;
  std::vector<PracticeMark> marks;
};

/// `layout`: the crossing as the apprentice laid it out. A service is struck where the axes come within the two radii.
/// Source: our model.   Evidence: Practice.*
PracticeBore practice_bore(const Crossing& layout, const Tables& tables, const PracticeTruth& truth);

/// The bore that really was, as it happened: straight in time between its marks. Empty where it never got going.
/// Evidence: Practice.Played_*
Playback true_playback(const PracticeBore& bore, const Tool& tool);

/// One cause of the miss and its share, across (left) and up.
struct MissShare {
  std::string_view cause;  ///< "level", "sight", "start", "ground", "stones", "wander"
  double left_m = 0, up_m = 0;
};

struct Debrief {
  double miss_left_m = 0, miss_up_m = 0;  ///< true place on the exit face less that of the prediction
  bool prolonged = false;                 ///< one of the two did not get there: carried on straight
  std::vector<MissShare> shares;          ///< add up to the miss
};

/// Each cause gets the mean, over all orders in which the causes could have come about, of what it adds when it joins
/// those before it. So the shares add up to the miss, whatever the causes do to each other, and none depends on the
/// order they are listed in.
/// Source: Shapley 1953 (from memory).   Evidence: Practice.Shares_*
Debrief debrief(const Crossing& layout, const Tables& tables, const PracticeTruth& truth);

/// `turn_level`: on the cradle, before there is air. What it shows of the level's own error is taken out.
enum class PracticeChoice { go_on, fix, level, stop_and_look, leave_and_expose, back_out, turn_level };
template <>
struct EnumNames<PracticeChoice> {
  static constexpr std::pair<PracticeChoice, std::string_view> list[] = {
      {PracticeChoice::go_on, "go on"},
      {PracticeChoice::fix, "take a fix"},
      {PracticeChoice::level, "lay the level on"},
      {PracticeChoice::stop_and_look, "stop and look"},
      {PracticeChoice::leave_and_expose, "leave and expose"},
      {PracticeChoice::back_out, "back out"},
      {PracticeChoice::turn_level, "turn the level end for end"}};
};

/// Why something else than going on was asked for, the gravest first.
enum class PracticeReason { none, run_sheet, advice, verdict, pace, level_not_turned };

/// One decision, and what verdict, run sheet, pace and the numbers the crew had seen would have asked for.
struct PracticeDecision {
  double nose_m = 0;
  PracticeChoice choice = PracticeChoice::go_on;
  Advice advised = Advice::go_on;
  PracticeReason reason = PracticeReason::none;
  [[nodiscard]] bool right() const;
};

/// A practice bore under way. Only `record` is what a crew would know.
class PracticeRun {
 public:
  PracticeRun(Crossing layout, const Tables& tables, PracticeTruth truth);

  /// What can be decided now.
  [[nodiscard]] std::vector<PracticeChoice> choices(bool sonde) const;
  /// Does it: going on brings the next mark or the end, a fix or a level its reading; the others end the bore.
  void choose(PracticeChoice choice);

  [[nodiscard]] bool over() const { return end_.has_value(); }
  [[nodiscard]] std::optional<PracticeEnd> end() const { return end_; }
  [[nodiscard]] double nose_m() const { return nose_m_; }
  [[nodiscard]] double time_s() const { return time_s_; }
  [[nodiscard]] const Phrase& sound() const { return sound_; }
  [[nodiscard]] const DayRecord& record() const { return record_; }
  [[nodiscard]] const std::vector<PracticeDecision>& decisions() const { return decisions_; }
  [[nodiscard]] const Crossing& layout() const { return layout_; }
  /// What the crew's own numbers say now.
  [[nodiscard]] const DayAnswer& day() const { return day_; }
  /// The level turned end for end on the cradle: twice its own error; empty before somebody has turned it.
  [[nodiscard]] std::optional<double> level_shown_rad() const { return level_shown_rad_; }
  /// How the last stretch went against what was expected: taken over expected. Empty before the first.
  [[nodiscard]] std::optional<double> pace() const;
  /// Whether the layout's verdict lets nobody start: on site this bore would not be begun.
  [[nodiscard]] bool must_not_start() const { return assessment_.verdict == Verdict::stop; }

  /// For the reveal; only once it is over. The hidden conditions are those that this bore was made with.
  [[nodiscard]] const PracticeBore& truth() const;
  [[nodiscard]] const PracticeTruth& conditions() const;
  [[nodiscard]] PracticeResult result(std::string name, const Debrief& debrief) const;

 private:
  void next_mark();
  void read(PracticeChoice choice);
  void finish(PracticeEnd end);
  void turn_level();
  void look();
  [[nodiscard]] PracticeDecision asked(PracticeChoice choice) const;

  Crossing layout_;
  const Tables* tables_;
  PracticeTruth truth_;
  PracticeBore bore_;
  DayRecord record_;
  DayAnswer day_;
  std::vector<PracticeDecision> decisions_;
  std::size_t next_ = 0;
  double nose_m_ = 0, time_s_ = 0;
  Phrase sound_;
  std::optional<PracticeEnd> end_;
  std::optional<double> level_shown_rad_;
  Assessment assessment_;
};

}  // namespace burrow
