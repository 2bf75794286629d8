#pragma once
/// Numbers of a day's record that a person may type afterwards.

#include <string>

#include "burrow/document/fields.h"

namespace burrow {

/// Of the pull-in: the most that was read, what the link that breaks first is rated for. Empty: not known.
/// Range: what the file takes.   Evidence: AfterBore.*
std::vector<Field> pull_in_fields(const Crossing& crossing, const std::string& record);

}  // namespace burrow
