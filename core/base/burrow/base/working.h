#pragma once
/// The record of one calculation: which formula, the numbers put in, what came out. It is filled by the code that
/// computes, so that it cannot drift; its text is made only when somebody opens it.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "burrow/base/source.h"

namespace burrow {

/// One number put into a formula. `symbol` and `unit` point to literals.
struct WorkingInput {
  std::string_view symbol;
  double value = 0;
  std::string_view unit;  ///< SI: "m", "Pa", "rad", "" for a plain ratio
  bool operator==(const WorkingInput&) const = default;
};

struct Working {
  std::string_view code;     ///< the code of the finding or check it belongs to, "utility.separation"
  std::string subject;       ///< id of what is judged
  std::string_view formula;  ///< in symbols, "g = |δ| − R"
  std::vector<WorkingInput> inputs;
  std::string_view symbol;  ///< of the result
  double value = 0;
  std::string_view unit;
  std::optional<double> limit;
  Source source;                         ///< of the formula
  std::optional<Source> limit_source{};  ///< of the limit
  bool operator==(const Working&) const = default;
};

}  // namespace burrow
