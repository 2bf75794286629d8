#pragma once
/// A number beside its limit: never the same text for two values that differ.

#include "burrow/base/quantity_text.h"

namespace burrow {

/// As `format`, with up to three further digits where it would read like `other`, which it is not: "0.699 m" beside
/// "0.701 m". Kinds of numbers whose digits follow their size stay as they are.   Evidence: QuantityApart.*
std::string format_apart(double value, double other, Dimension dimension, UnitSystem units);

}  // namespace burrow
