#pragma once
/// How far the numbers that decide verdicts can be trusted, as a page shows it.

#include <string>

#include "burrow/tables/label_counts.h"

namespace burrow {

/// `label_counts` as a table in Markdown, a line a label, in the language in force.   Evidence: LabelTable.*
std::string label_table(const Tables& tables);

}  // namespace burrow
