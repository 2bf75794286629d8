#pragma once
/// The working of a check as text that a person can check by hand.

#include <string>

#include "burrow/base/quantity_text.h"
#include "burrow/base/working.h"
#include "burrow/check/assessment.h"

namespace burrow {

/// One number with its unit as a person reads it; `unit` is the SI unit of the working.
/// A symbol that starts with P is a chance and is shown in per cent.
std::string working_number(double value, std::string_view unit, UnitSystem units, std::string_view symbol = {});

/// What is put into a formula, finer than a result: worked out again from what is printed, the result agrees to its
/// last printed digit.   Evidence: WorkingText.Printed_*
std::string working_input(const WorkingInput& input, UnitSystem units);

/// A limit as a person reads it: as `working_number`, but small lengths in mm or inches.
std::string limit_number(double value, std::string_view unit, UnitSystem units);

/// The formula in symbols, numbers in it with the decimal mark of the language.   Evidence: WorkingText.Formula_*
std::string working_formula(const Working& working);

/// Formula, the numbers put in, the result, the limit, the source and its label, one a line.
std::string working_text(const Working& working, UnitSystem units);

/// The step that gave the number of a finding: of its own code, or the plain one of its kind where several findings
/// share a step. Null: nothing was computed for it.   Evidence: WorkingOf.*
const Working* working_of(const Assessment& assessment, const Finding& finding);

}  // namespace burrow
