#pragma once
/// A key of a file that nobody knows: a foreign one, or a known one misspelt?

#include <string_view>
#include <vector>

namespace burrow {

/// The known key that this one looks like, letters' case, blanks, "_" and "-" aside: the same word, one with a letter
/// more, fewer, changed or two swapped (two such slips in words of eight letters and more), or a known one without its
/// unit
/// ("elevation" for "elevation_m"). Empty: none; it is foreign.
/// Source: optimal string alignment distance (textbook).   Evidence: UnknownKeys.*
std::string_view looks_like(std::string_view key, const std::vector<std::string_view>& known);

}  // namespace burrow
