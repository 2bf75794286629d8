#pragma once
/// A crossing from the few things a person knows when they stand at the road for the first time.

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "burrow/base/result.h"
#include "burrow/crossing/crossing.h"
#include "burrow/tables/tables.h"

namespace burrow {

/// A line as the marks on the ground tell it.
struct MarkedLine {
  UtilityKind kind = UtilityKind::unknown;
  Length along;                 ///< from the launch face, where it is crossed
  std::optional<Length> depth;  ///< of its crown; empty: not known
  std::optional<Length> outside_diameter;
  LocatedHow how = LocatedHow::traced;
  bool operator==(const MarkedLine&) const = default;
};

/// Six questions: what is crossed, how long and how level, which ground, which lines, which pipe, how deep.
struct FirstAnswers {
  std::string name;
  std::optional<SurfaceKind> crossed = SurfaceKind::road;  ///< empty: nothing but ground
  Length crossed_width{7.0};
  std::string rule;  ///< of the owner; empty: not asked yet
  Permission permission = Permission::not_asked;
  std::string permit;
  StuckPlan rescue;         ///< of a tool stuck under what is crossed
  Statement nothing_above;  ///< who says so where nothing is crossed

  Length length{12.0};  ///< from launch face to exit face
  Length rise;          ///< of the ground at the exit over that at the launch

  std::string soil = "firm-clay";
  StratumEvidence known = StratumEvidence::guess;
  std::optional<Length> water_depth;  ///< below the ground: where it stands, or down to where none was met

  bool searched = false;  ///< asked for and located
  std::string reference;
  std::optional<std::string> search_date, valid_from, valid_to;  ///< of the locating service's answer
  std::optional<bool> marks_visible;
  std::vector<MarkedLine> lines;
  std::string measured_by;                 ///< who measured the exposed ones, where the bore passes
  std::optional<std::string> measured_on;  ///< and when
  Laterals laterals = Laterals::not_checked;

  std::string material = "pe100";
  std::optional<Length> pipe_diameter = Length{0.063};  ///< outside; empty: not decided
  std::optional<Ratio> sdr = Ratio{11};
  std::string tool;  ///< class; empty: the smallest that leaves room for the pipe

  std::optional<Length>
      depth;  ///< of the axis at the launch; empty: the owner's cover or ten diameters, at least 1.2 m
  bool operator==(const FirstAnswers&) const = default;
};

/// The smallest class whose hole is wider than the pipe by the least share of the limits; the largest class where none
/// is. Source: limit `pipe_hole_low`.   Evidence: FirstLayout.Tool_*
std::string tool_for(const Tables& tables, const std::optional<Length>& pipe_diameter);

/// Puts a text of the program into the words in which the names of a new crossing are written: they are entered then.
using InWords = std::function<std::string(const Phrase&)>;

/// The whole crossing: the thing crossed in the middle of the bore, ground straight from pit to pit and level beyond at
/// 100 m for the launch, one stratum, lines square to the bore 8 m to either side, their errors by how they were found
/// (PAS 128), a level bore; an exposed line of known depth has its test hole on the bore, as measured. What was not
/// answered stays missing. Errors (place: the question): a length, width, depth
/// or diameter that is none, what is crossed wider than the bore is long, a line beside the bore, a soil, material or
/// tool nobody knows.   Evidence: FirstLayout.*
Result<Crossing> first_layout(const FirstAnswers& answers, const Tables& tables,
                              const InWords& in_words = &Phrase::english);

}  // namespace burrow
