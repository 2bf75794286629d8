#pragma once
/// JSON Schema of the files, for programs that write or read them.

#include <string>

#include "burrow/tables/tables.h"

namespace burrow {

/// What `read_crossing` takes as far as a schema can say it: members, types, ranges, words, what must stand there. Made
/// from the description that the reader itself reads by. Every file that the reader takes fits it; what only the reader
/// knows (stations that increase, ids that nothing else has, references, an exit beyond the launch, a key twice) is
/// not in it. Source: JSON Schema, draft 2020-12 (from memory).   Evidence: Schema.Crossing_*
std::string crossing_schema(const Tables& tables);

/// The lines of `check --json`: an assessment, or why there is none. Members may be added in later versions, so that
/// others are not refused.   Evidence: Schema.Assessment_*
std::string assessment_schema();

}  // namespace burrow
