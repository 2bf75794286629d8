#pragma once
/// What the parts of the day's answer share.

#include <optional>
#include <vector>

#include "burrow/bore/conditioning.h"
#include "burrow/bore/guessed_ground.h"
#include "burrow/check/limits.h"
#include "burrow/clearance/clearance.h"
#include "burrow/day/day.h"
#include "burrow/pit/pit_shapes.h"
#include "timeline.h"

namespace burrow {

/// A reading counts as one about here while the nose has gone no further than this beyond it (our default).
inline constexpr double still_here_m = 1.5;

/// A reading made ready, with its number in the record.
struct TakenReading {
  std::size_t reading = 0;
  PathReading taken;
};

/// How good a reading is where nobody said.   Source: our default.
struct ReadingErrors {
  double level_rad = 0.002, heading_rad = 0.003, lateral_m = 0.05, vertical_m = 0.06, arrival_m = 0.01, peg_m = 0.001;
};

/// Where a fix says that the nose was.
struct ReadPlace {
  std::size_t reading = 0;
  PathPoint at;
};

struct TakenReadings {
  std::vector<TakenReading> taken;
  std::vector<ReadPlace> places;
};

struct DayWork {
  const Crossing& crossing;
  const Tables& tables;
  const Assessment& assessment;
  const DayRecord& record;
  const Ground& ground;
  const Tool& tool;
  Timeline timeline;
  SpreadChain chain;
  std::vector<TakenReading> taken;
  std::vector<ReadPlace> places;
  Conditioned conditioned;
  BorePath ahead;                   ///< from the nose on
  std::vector<Clearance> clearing;  ///< of the utilities along `ahead`
  double arrives = 1;               ///< chance that no guessed ground still ahead ends the path
  DayAnswer answer;
  DayPurpose purpose = DayPurpose::site;

  [[nodiscard]] Limit limit(std::string_view id) const { return limit_of(crossing, tables, id); }
  [[nodiscard]] std::vector<PathReading> readings() const;
};

/// Readings that count, but for those that wait to be confirmed. Evidence: DayWrong.*
TakenReadings taken_readings(const Crossing& crossing, const DayRecord& record, const Ground& ground, const Tool& tool,
                             const BorePath& path, Timeline& timeline);
/// The bore is through once an arrival is taken.
void note_arrival(const std::vector<TakenReading>& taken, const DayRecord& record, const BorePath& path,
                  Timeline& timeline);

/// Chance to come out in the exit opening, given where and how surely.
double window_chance(const DayWork& work, const ArrivalSpread& arrival);

/// Live, or nobody knows.
bool may_hurt(const Clearance& clearance);
bool unexposed(const Clearance& clearance);

/// Adds a number with its limit to the reasons.
DayReason& add_reason(DayWork& work, std::string_view code, double measured, const Limit& limit,
                      std::string_view unit = "");
/// What is graver where an unexposed service is near.
Advice if_near(const DayWork& work, Advice otherwise);

void look_ahead(DayWork& work);      ///< utilities, near services, arrival
void find_near(DayWork& work);       ///< called by it
void weigh_gate(DayWork& work);      ///< verdict, ticket, exposures, tasks of the present mark
void weigh_signs(DayWork& work);     ///< danger, doubtful readings, pegs, pressure
void advise(DayWork& work);          ///< reasons, advice
void weigh_readings(DayWork& work);  ///< what one reading more would be worth

}  // namespace burrow
