#pragma once
/// One answer to several questions at once: what a person declares of all open ends near the bore, of all lines that
/// are drawn only, of the utility search. Each gives the part as it then is, for one undo step.

#include <string>
#include <vector>

#include "burrow/base/date.h"
#include "burrow/base/finding.h"
#include "burrow/crossing/crossing.h"

namespace burrow {

/// An end of a utility of which nobody said why the line ends there.
struct OpenEnd {
  std::string utility;
  bool first = true;  ///< the first vertex, otherwise the last
  bool operator==(const OpenEnd&) const = default;
};

/// An end so near to the bore in plan may go on into it. Our default, as the check has it.
inline constexpr double near_end_m = 5.0;

/// All of them within `near_end_m` of the line from launch to exit, or asked about by a finding (which knows the pits,
/// too), in the order of the file.   Evidence: UtilitiesEntry.AllOpenEnds_*
std::vector<OpenEnd> open_ends(const Crossing& crossing, const std::vector<Finding>& findings);

/// The site with one meaning declared of those ends; what was declared before stays.
Site with_ends(const Crossing& crossing, const std::vector<OpenEnd>& ends, LineEnd meaning);

/// Lines that are drawn only and of which nobody said, with name and day, that they are no service, in the order of the
/// file.
std::vector<std::string> open_background(const Crossing& crossing, const std::optional<Date>& on);

/// The site with all of those declared to be no service.   Evidence: UtilitiesEntry.NoBackgroundLine*
Site with_no_services(const Crossing& crossing, const Statement& statement, const std::optional<Date>& on);

/// The site with a line drawn only made a utility after all, of its name, one for each of its pieces: of unknown kind,
/// depth and diameter.   Evidence: UtilitiesEntry.BackgroundLine_MadeAUtility
Site with_service(const Crossing& crossing, const std::string& background);

/// Test holes that belong to no utility of the crossing, in the order of the file.   Evidence:
/// UtilitiesEntry.LoneHole_*
std::vector<std::string> lone_holes(const Crossing& crossing);

}  // namespace burrow
