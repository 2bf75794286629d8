#pragma once
/// What the random trials say, in words: each count with its own uncertainty, the closed form beside it.

#include <string>
#include <vector>

#include "burrow/base/quantity_text.h"
#include "burrow/check/assessment.h"
#include "burrow/trials/trials.h"

namespace burrow {

struct TrialsLine {
  std::string what;        ///< "arrive in the exit pit"
  std::string value;       ///< "91.3 % ± 0.2 %"; where none was seen "none seen, below 0.02 %" (with 95 % confidence)
  std::string closed;      ///< the same by the closed form, empty where there is none
  std::string id;          ///< of the utility, empty for the bore
  bool none_seen = false;  ///< the value is a bound, at 95 % confidence
};

/// Evidence: TrialsText.*
std::vector<TrialsLine> trials_lines(const Trials& trials, const Assessment& assessment, UnitSystem units);

/// "model not calibrated" or "calibrated from 12 bores": stands wherever a result of the path model stands.
std::string model_status(const ModelConstants& model);

}  // namespace burrow
