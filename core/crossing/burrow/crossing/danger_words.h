#pragma once
/// Words of danger in what a crew writes down.

#include <string_view>

namespace burrow {

/// `maybe`: "hit", "metal", "water" may be a stone, a tin, a puddle: somebody looks and says so.
enum class DangerWords { none, maybe, surely };

/// English, German and Spanish words, also within a word, in any case: "smell of gas", "Gasgeruch", "huele a gas", "it
/// hisses". What says of a line that it was hit or broken surely is one: "broke the main".
/// Source: our default.   Evidence: DangerWords.*
DangerWords danger_in(std::string_view text);

}  // namespace burrow
