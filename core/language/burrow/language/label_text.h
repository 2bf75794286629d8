#pragma once
/// How a label of a source is read by a person.

#include <string>

#include "burrow/base/source.h"

namespace burrow {

/// The label in words, in the language in force; of a number from memory also that nobody has looked it up.
/// In JSON and in other files a label stays as `words` has it.   Evidence: LabelText.*
std::string label_text(SourceLabel label);

}  // namespace burrow
