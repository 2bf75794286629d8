#pragma once
/// The day's answer in words.

#include <string>
#include <vector>

#include "burrow/base/quantity_text.h"
#include "burrow/day/day.h"

namespace burrow {

/// "go on", "stop and look", …: the advice as a heading.
std::string advice_title(Advice advice);
/// The same of a day: *go on* says with it that the permit is open. Empty: no advice.   Evidence: DayText.*
std::string advice_title(const DayAnswer& day);
/// What the crew does then, in full sentences.
std::string advice_text(const DayAnswer& day, UnitSystem units);
/// One number with its limit: "chance to touch gas main 1.8 %, 1 % at most".
std::string reason_text(const DayReason& reason, UnitSystem units);
/// "a fix here narrows the arrival to 0.11 m across and 0.13 m up; one in five that it turns the advice".
std::string next_text(const NextReading& next, UnitSystem units);
/// Why a reading was not used.
std::string left_out_text(const ReadingLeftOut& left_out, const DayRecord& record);

struct DayLine {
  std::string what, value;
  bool operator==(const DayLine&) const = default;
};
/// All of it, line by line.   Evidence: DayText.*
std::vector<DayLine> day_lines(const DayAnswer& day, const Crossing& crossing, UnitSystem units);

/// What an odd rate may mean, likeliest first: "a stone 71 %, lost grip 20 %"; empty where it is as before.
std::string odd_rate_text(const std::vector<OddRateChance>& odds, UnitSystem units);

}  // namespace burrow
