#pragma once
/// Where the parts of an installation lie that the program loads or starts: beside the program or in ../lib/burrowline,
/// and nowhere else, since whoever can write to a place that is searched runs code. Private to this room.

#include <filesystem>
#include <string_view>
#include <vector>

namespace burrow {

/// The places of that file, the nearer one first; those that exist.   Evidence: ReaderProcess.*, Shipped.*
std::vector<std::filesystem::path> beside_program(std::string_view file);

}  // namespace burrow
