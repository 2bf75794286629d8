#pragma once
/// The JSON of `check --json`: one line a file, always SI.

#include <string>

#include "burrow/base/result.h"
#include "burrow/check/assessment.h"
#include "burrow/check/trials_plan.h"
#include "burrow/crossing/crossing.h"
#include "burrow/day/day.h"

namespace burrow {

/// What made an answer, so that it can be made again. Empty: not known.
struct ProgramVersion {
  std::string version;  ///< "0.1.0"
  std::string commit;   ///< of the source, twelve digits; with "+" where that was changed since
  std::string tables;   ///< twelve digits that change with any byte of the built-in tables
};

struct AssessmentOptions {
  UnitSystem units = UnitSystem::metric;  ///< of the words of findings only
  bool working = false;                   ///< add the list of workings
  const Trials* trials = nullptr;         ///< add what the random trials counted
  const DayAnswer* day = nullptr;         ///< of the open record
  ProgramVersion program = {};
};

/// One line without its end. Every object and list of the contract is there; what is unknown or not finite is null,
/// never 0; of a bore that does not end at the exit face the whole arrival is null. `file` is named as it was given.
/// Evidence: AssessmentFile.*
std::string write_assessment(const Crossing& crossing, const Assessment& assessment, const std::string& file,
                             const AssessmentOptions& options);

/// The same for a file that could not be read.
std::string write_failure(const std::string& file, const Error& error);

}  // namespace burrow
