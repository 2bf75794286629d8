#pragma once
/// Which program this is: told by --version and in every assessment.

#include "burrow/file/assessment_file.h"

namespace burrow {

/// Version of the project, commit of the source where it was built from a git tree (or told to the build), digest of
/// the built-in tables.   Evidence: Process.Version_*
ProgramVersion program_version();

/// The commit alone; a source of its own, which the build writes (commit.cmake).
const char* source_commit();

/// "burrowline 0.1.0, commit 0123456789ab, tables 0123456789ab"
std::string version_line();

}  // namespace burrow
