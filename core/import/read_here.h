#pragma once
/// Reads a foreign file in this very process: what `burrowline-reader` does once it is confined. The program itself
/// goes by way of `read_foreign_file`; the tests of single readers come straight here, since a process for each of
/// their files would take most of their time. Private to this room.

#include <string>

#include "burrow/base/result.h"
#include "burrow/import/found.h"

namespace burrow {

/// Errors: as `read_foreign_file`, but for those of the process.   Evidence: ForeignFiles.*, HostileFiles.*
Result<Found> read_here(const std::string& path, const ReadOptions& options);

/// The folder where the path is one of the many files of a file geodatabase, which nobody can choose as a whole in a
/// dialog for files; else the path, without a stroke at its end.
std::string as_one_file(const std::string& path);

/// What is wrong with a path that leads to no file to be read: nothing there, a folder, a device.
std::optional<Error> no_plain_file(const std::string& path);
/// Likewise of one of the files beside it that belong to it, where it is there.
std::optional<Error> no_plain_companion(const std::string& path);

/// Whether the importer library is needed for that file, told by its name and its first bytes.
bool needs_library(const std::string& path);

}  // namespace burrow
