#pragma once
/// Whether the unit of a plan can be believed: unit, extent and the length of the crossing line beside each other.

#include <optional>
#include <string>
#include <vector>

#include "burrow/import/into_crossing.h"

namespace burrow {

/// What a person compares with what he knows of the place.
struct ScaleView {
  FileUnit unit = FileUnit::metre;  ///< taken for the plan
  bool is_said = false;             ///< by the person, or confirmed
  bool is_stated = false;           ///< by the file
  Length wide;                      ///< of the plan, west to east
  Length high;
  std::optional<Length> line;  ///< the crossing line in the numbers of this file; the first file's alone
  bool operator==(const ScaleView&) const = default;
};
ScaleView scale_of(const ImportFile& file, const std::optional<CrossingLine>& line);

/// Lengths that an unsteered bore has where no crossing is open to compare with (our default).
inline constexpr Length usual_shortest{5.0}, usual_longest{30.0};

/// The first file, beside which the others are laid.
struct FirstPlan {
  Length wide;                     ///< the longer of its two sides; 0 where degrees
  std::optional<Length> crossing;  ///< length of the crossing line
};
FirstPlan first_plan(const ImportFile& first, const std::optional<CrossingLine>& line);

/// Why a unit must be confirmed before anything is taken over: it was neither said by the person nor is it that of a
/// coordinate system which the file states, and in it the crossing line is more than three times longer or shorter than
/// the open crossing (without one: than the usual lengths), or the plan is less than a third of the crossing, wider
/// than 50 km or, where nothing states its unit, ten times as wide as that of the first file; or it looks like degrees,
/// or the file states a unit that is not known here. `line` of the first file alone, `beside` of the others. Empty: it
/// need not. Source: our default.   Evidence: Scale.*
std::optional<std::string> scale_doubt(const ImportFile& file, const std::optional<CrossingLine>& line,
                                       const std::optional<Length>& open_crossing,
                                       const std::optional<FirstPlan>& beside = {});

/// Of one of several files, the first of which has the line.
std::optional<std::string> scale_doubt(const std::vector<ImportFile>& files, std::size_t which,
                                       const std::optional<CrossingLine>& line,
                                       const std::optional<Length>& open_crossing);

/// Heights that count, of which nobody says the unit, on a plan in another unit than metres: what they are must be said
/// before anything is taken over.   Evidence: Scale.HeightsOfAPlanInFeet_MustBeSaid
bool heights_in_doubt(const ImportFile& file);

}  // namespace burrow
