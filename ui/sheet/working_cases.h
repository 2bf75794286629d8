#pragma once
/// The cases of one step below its formula: a table where they are alike, else in lines.

#include <vector>

#include "burrow/base/working.h"
#include "burrow/sheet/sheet.h"
#include "flow.h"

namespace burrow {

/// Steps of one code with one formula and one source; at least one.
using CaseGroup = std::vector<const Working*>;

/// What is the same in all of them stands once.   Evidence: Working.*
void cases_of(Flow& flow, const Sheet& sheet, const CaseGroup& group);

/// As the typeface has it.
QString on_paper(const std::string& text);

}  // namespace burrow
