#pragma once
/// Times as a crew says them: by the clock, or since the start.

#include <optional>
#include <string>
#include <string_view>

namespace burrow {

/// What of a record a typed time is read against, all in seconds.
struct ClockOfRecord {
  double started_at_s = 0;  ///< since midnight
  double last_s = 0;        ///< of the last reading, since the start
  double now_s = 0;         ///< since the start
};

/// Seconds since the start of "19:58", "7:58 pm", "5:10". Without am or pm both are tried; the one counts that lies
/// between the last reading and now. Where neither does, "5:10" is 5 min 10 s since the start. Empty: no such time.
/// Evidence: ClockTime.*
std::optional<double> seconds_by_clock(std::string_view text, const ClockOfRecord& record);

/// "19:58" of a time since the start; "+1" behind it for each day after the first.   Evidence: ClockTime.*
std::string clock_text(double since_start_s, double started_at_s);

/// Seconds since midnight of "2025-05-03T08:12:00+02:00"; empty where no time of day stands there.
std::optional<double> time_of_day_s(std::string_view started);

}  // namespace burrow
