#pragma once
/// What the wall of a utility is made of, as far as strain and vibration ask.

#include <string_view>

namespace burrow {

enum class UtilityWall { grey_iron, ductile_iron, steel, plastic, rigid, cable, unknown };

/// By the words of the free text that a locator's record carries: "DN 150 cast iron", "pe100", "clay". What is not
/// recognised is `unknown`. Source: our model.   Evidence: UtilityWall.*
UtilityWall wall_of(std::string_view material);

}  // namespace burrow
