#pragma once
/// The text of one crossing, read, judged and told: what `check` does with each.

#include <string>

#include "burrow/base/date.h"
#include "burrow/base/quantity_text.h"
#include "burrow/base/result.h"
#include "burrow/tables/tables.h"
#include "workers.h"

namespace burrow {

enum class Told { words, json, csv };

struct CheckOptions {
  UnitSystem units = UnitSystem::metric;
  Told told = Told::words;
  bool working = false;
  bool trials = false;
  unsigned threads_each = 0;  ///< of the trials of one file
  std::string alternative;
  Date on;  ///< the day to judge for
};

/// The answer for a text that stands under that name. One that cannot be judged is told as such, with exit code 2.
Answer judged_text(const std::string& name, const std::string& text, const Tables& tables, const CheckOptions& asked);
Answer not_judged(const std::string& name, const Error& error, const CheckOptions& asked);

/// The first line of a table of many: what its columns are. Always SI; what is not known is empty, never 0; a file that
/// could not be judged is a line with the verdict "not-judged" and why.   Evidence: CheckCsv.*
std::string csv_heading();

}  // namespace burrow
