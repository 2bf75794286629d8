#pragma once
/// In one sentence: how this crossing stands and what to do first.

#include <string>
#include <string_view>

#include "burrow/base/quantity_text.h"
#include "burrow/check/assessment.h"

namespace burrow {

/// "Stop", "Incomplete", "Caution", "Within limits".
std::string_view verdict_title(Verdict verdict);

/// "2 limits broken; first: 0.31 m clear of gas main, 0.60 m wanted."
std::string headline(const Assessment& assessment, UnitSystem units);

/// What to do about a finding, in plain words: "Expose it, lower the launch or move the pits." May be empty.
std::string_view advice(const Finding& finding);

}  // namespace burrow
