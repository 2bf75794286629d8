#pragma once
/// Where a number comes from, as people read it.

#include <string>

#include "burrow/base/source.h"

namespace burrow {

/// "DIN 4150-3 (1999) Table 1 [read]".
std::string source_text(const Source& source);

/// The same of a limit. One that nobody looked up is no limit to rely on: "… [unverified: confirm with the owner]".
/// Evidence: SourceText.*
std::string limit_source_text(const Source& source);

}  // namespace burrow
