#pragma once
/// A check of the pipe in words and numbers for people.

#include <string>

#include "burrow/check/assessment.h"

namespace burrow {

/// "34.7 kN", "3.0 %": the value, empty where the check could not be done.   Evidence: PipeText.*
std::string value_text(const PipeCheck& check, UnitSystem units);
/// "14.6 kN at most", "1.15 at least"; empty where nothing is judged.
std::string limit_text(const PipeCheck& check, UnitSystem units);
/// Share of the limit that is used: "98 %"; empty where nothing is judged.
std::string utilisation_text(const PipeCheck& check);

}  // namespace burrow
