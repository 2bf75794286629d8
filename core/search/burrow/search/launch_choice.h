#pragma once
/// The same question over things that are chosen rather than measured: tools, ways of putting the pipe in, and which
/// utility to expose.

#include <functional>
#include <optional>
#include <stop_token>
#include <string>
#include <vector>

#include "burrow/base/phrase.h"
#include "burrow/search/launch_map.h"

namespace burrow {

/// The best launch with one tool class and one way of putting the pipe in.
struct ToolRow {
  std::string tool;  ///< id of its class
  double diameter_m = 0;
  Insertion insertion = Insertion::pulled_after;
  bool in_force = false;  ///< as entered for the crossing, plate values apart
  bool pipe_fits = true;  ///< the pipes lie in the hole
  bool works = false;
  std::optional<LaunchCell> best;
  MapOver over = MapOver::depth_and_grade;
  std::optional<Finding> binds;  ///< the limit with the least margin at the best launch, with its numbers there
  std::vector<Finding> why;      ///< stops that keep it from working, of the smallest relaxation
  bool operator==(const ToolRow&) const = default;
};

struct ToolTableOptions {
  int cells = 14;
  unsigned threads = 0;
};

/// One row for each class of the table and each way; without a pipe only the way entered. Values of a maker's plate
/// do not go over to another class. Rows that are not judged because the search was stopped are left out.
/// Evidence: ToolTable.*
std::vector<ToolRow> choose_tool(const Crossing& crossing, const Tables& tables, const ToolTableOptions& options = {},
                                 const std::stop_token& stop = {}, const std::function<void(double)>& progress = {});

/// What exposing one utility by hand would do, if it is found where it is drawn: it counts as exposed, known as well
/// as a test hole tells.
struct Exposure {
  std::string utility;
  Phrase name;
  bool works = false;
  LaunchCell best;
  bool operator==(const Exposure&) const = default;
};

/// For each utility not exposed that stands in a relaxation of the map; those that open a launch first.
/// Evidence: Relaxations.Exposing_*
std::vector<Exposure> exposures(const Crossing& crossing, const Tables& tables, const LaunchMap& map,
                                const ToolTableOptions& options = {}, const std::stop_token& stop = {});

}  // namespace burrow
