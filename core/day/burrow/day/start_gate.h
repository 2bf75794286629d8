#pragma once
/// Whether a bore may start, by the verdict and the run sheet.

#include <optional>
#include <string>
#include <vector>

#include "burrow/base/date.h"
#include "burrow/base/enum_names.h"
#include "burrow/base/phrase.h"
#include "burrow/check/assessment.h"
#include "burrow/crossing/crossing.h"
#include "burrow/tables/tables.h"

namespace burrow {

/// `take_on`: only if a named person takes it on. `record_only`: nobody can; what is done all the same is written down.
enum class Gate { open, take_on, record_only };
template <>
struct EnumNames<Gate> {
  static constexpr std::pair<Gate, std::string_view> list[] = {
      {Gate::open, "open"}, {Gate::take_on, "take-on"}, {Gate::record_only, "record-only"}};
};

struct StartGate {
  Gate gate = Gate::record_only;
  bool ticket_holds = false;
  std::vector<Phrase> to_expose;           ///< utilities; while there is one, nobody can take it on
  std::vector<TakenOnFinding> to_take_on;  ///< findings, stop or missing
  bool no_go = false;                      ///< signed for that day
  int permit_open = 0;                     ///< lines of the permit to bore that do not hold
  bool operator==(const StartGate&) const = default;
};

/// What stands against a start. `days`: all the days on which the ticket must hold; without one none does.
/// Not to be taken on: a ticket that does not hold or whose marks have gone, a line to be exposed (live, not exposed,
/// met by the band or nearer than required, or of unknown depth), a *no-go* that somebody signed, no path. What else of
/// the permit is open (`permit_lines.h`) does not stop the start; it is never green.
/// Source: our default.   Evidence: StartGate.*
StartGate start_gate(const Crossing& crossing, const Assessment& assessment, const std::vector<Date>& days);

/// To be exposed before anybody bores there: as the assessment says, and where nobody knows how well it is located or
/// how wide it is, within a metre of the gap that is required.   Evidence: StartGate.*
bool to_be_exposed(const Assessment& assessment, const UtilityAnswer& utility);

/// The days on which a record is bored: its first, that of its last reading, and `today` while it is open.
std::vector<Date> days_of(const DayRecord& record, const std::optional<Date>& today);

/// Named, with a reason, for every finding that stands there now, and none of them worse than it was then.   Evidence:
/// StartGate.TakenOn_*
bool taken_on(const std::optional<TakenOn>& by, const StartGate& gate);

}  // namespace burrow
