#pragma once
/// Reads survey points, one a line, from text as instruments and spreadsheets write it.

#include <string_view>

#include "burrow/base/result.h"
#include "burrow/import/found.h"

namespace burrow {

/// The usual order where nothing tells it: point number, north, east, height, description (common practice, no source).
inline constexpr std::string_view usual_order = "pnezd";

/// Checks the letters of an order: p point, n north (or y), e east (or x), z height, d description, - a column to pass
/// over; n and e wanted, none twice. Gives it in small letters with n and e.   Evidence: SurveyCsv.Order_*
Result<std::string> survey_order(std::string_view letters);

/// The layer of a point is the first word of its description, its code. Delimiter: whichever of comma, semicolon, tab
/// and spaces gives numbers in most lines; a decimal comma is understood but between commas. "#", "//" and "!" at the
/// start of a line begin a comment. A quote opens only at the start of a field: an inch mark swallows nothing. The last
/// column, if it is the description, takes the rest of the line. Order: that of `options`, else a header's (north,
/// northing, y · east, easting, x · height, elevation, level, z, rl · point, number · code, description), else the
/// usual one; which of these cannot be told from the syntax, so `order_is_known` says whether to ask.
/// Left out, each with its line: no number where one belongs, too few columns, numbers that are not finite.
/// Errors: not text, over 512 MB, nothing to read, a wrong order, not one point.   Evidence: SurveyCsv.*
Result<Found> read_survey_csv(std::string_view text, const ReadOptions& options);

}  // namespace burrow
