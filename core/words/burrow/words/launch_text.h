#pragma once
/// The answer of the search in words.

#include <string>
#include <vector>

#include "burrow/base/quantity_text.h"
#include "burrow/search/launch_choice.h"
#include "burrow/search/launch_map.h"

namespace burrow {

/// What a limit is about, without numbers: "clear gap to gas main", "cover under Alder Lane". A code without words of
/// its own is spelt out.   Evidence: LaunchText.*
std::string limit_title(const Finding& limit);

/// "1.42 m deep at −1.20 %" or "station 0.50 m, offset 0.20 m".
std::string place_text(MapOver over, const MapPlace& place, UnitSystem units);

/// The limit that binds at a launch, with its numbers: "0.31 m clear of gas main, 0.60 m wanted". Empty: none.
std::string binding_text(const LaunchMap& map, const LaunchCell& cell, UnitSystem units);

/// "margin 12 %"; a broken limit: "12 % short"; by all of it "far short".
std::string margin_text(double margin);
/// The same of a launch: "does not arrive" where the path ends early, "not kept" of what has no measure.
/// Evidence: LaunchText.*
std::string margin_text(const LaunchCell& cell);

/// The verdict of `assess()` on the crossing with this launch: "stop", "incomplete (2 things not known)", "caution",
/// "within limits"; and where only the same limit at every launch makes it so, that.   Evidence: LaunchStory.*
std::string verdict_text(const LaunchCell& cell);

/// On which edge of the map the best launch lies, and what lies beyond. Empty: on none.   Evidence: MapEdges.*
std::string edge_text(const LaunchMap& map);

/// In a few sentences: what the best launch is, or that none works; what is not known; whether it lies on the edge of
/// the map; what would be better but for the chance of a clean bore.
std::string search_headline(const LaunchMap& map, UnitSystem units);

/// Which limits stand against one another, where none works: "clear gap to gas main; clear gap to sewer". Empty where
/// one alone is in the way.
std::string conflict_text(const LaunchMap& map);

/// By how much a limit would have to give way: "0.18 m less"; empty for what has no measure.
std::string gives_text(const Finding& limit, UnitSystem units);

/// One line for each limit of a relaxation: "0.42 m clear of gas main, 0.60 m wanted: 0.18 m less".
std::vector<std::string> relaxation_lines(const Relaxation& relaxation, UnitSystem units);

/// "expose gas main: then 1.42 m deep at 0 % works", or that it alone does not help.
std::string exposure_text(const Exposure& exposure, MapOver over, UnitSystem units);

/// Why a tool does not do, or what binds where it does.
std::string tool_text(const ToolRow& row, UnitSystem units);

/// "pulled after", "towed behind the tool", "pushed behind the tool": as in the pipe's own fields.
std::string insertion_words(Insertion insertion);

}  // namespace burrow
