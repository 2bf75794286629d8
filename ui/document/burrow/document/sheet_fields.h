#pragma once
/// Numbers of the paper that a person may type.

#include "burrow/document/fields.h"

namespace burrow {

/// Scale, as "1 : 50" by its second number, and how much heights are exaggerated. Empty: the largest scale of the usual
/// series that fits, heights as lengths.   Range: what the file takes.   Evidence: SheetPage.*
std::vector<Field> sheet_fields(const Crossing& crossing);

}  // namespace burrow
