#pragma once
/// In one sentence: how this crossing stands and what to do first.

#include <string>
#include <string_view>

#include "burrow/base/quantity_text.h"
#include "burrow/check/assessment.h"

namespace burrow {

/// "Stop", "Incomplete", "Caution", "Within limits".
std::string_view verdict_title(Verdict verdict);

/// "2 limits broken; first: 0.31 m clear of gas main, 0.60 m wanted.", and what was muted and loosened.
/// Evidence: Headline.*
std::string headline(const Assessment& assessment, UnitSystem units);

/// The sentence of the best verdict: "Layout within limits: not a permit to bore."
std::string no_permit();

/// For a card: "2 muted, may hurt people: gas main. Limits loosened: cover in tool diameters." Empty: nothing was.
/// Evidence: Headline.EasedInShort_NamesMutesAndLimits
std::string eased_in_short(const Assessment& assessment);

/// What to do about a finding, in plain words: "Expose it, lower the launch or move the pits." May be empty.
std::string_view advice(const Finding& finding);

}  // namespace burrow
