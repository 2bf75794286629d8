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

/// A reading made ready, with its number in the record.
struct TakenReading {
  std::size_t reading = 0;
  PathReading taken;
};

/// How good a reading is where nobody said.   Source: our default.
struct ReadingErrors {
  double level_rad = 0.002, heading_rad = 0.003, lateral_m = 0.05, vertical_m = 0.06, arrival_m = 0.01, peg_m = 0.001;
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
  Conditioned conditioned;
  BorePath ahead;                   ///< from the nose on
  std::vector<Clearance> clearing;  ///< of the utilities along `ahead`
  double arrives = 1;               ///< chance that no guessed ground still ahead ends the path
  DayAnswer answer;

  [[nodiscard]] Limit limit(std::string_view id) const { return limit_of(crossing, tables, id); }
  [[nodiscard]] std::vector<PathReading> readings() const;
};

std::vector<TakenReading> taken_readings(const Crossing& crossing, const DayRecord& record, const Ground& ground,
                                         const Tool& tool, const BorePath& path, Timeline& timeline);

/// Chance to come out in the exit opening, given where and how surely.
double window_chance(const DayWork& work, const ArrivalSpread& arrival);

/// Live, or nobody knows.
bool may_hurt(const Clearance& clearance);
bool unexposed(const Clearance& clearance);

void look_ahead(DayWork& work);      ///< utilities, near services, arrival
void advise(DayWork& work);          ///< reasons, advice
void weigh_readings(DayWork& work);  ///< what one reading more would be worth

}  // namespace burrow
