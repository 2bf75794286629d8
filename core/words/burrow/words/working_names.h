#pragma once
/// What the steps of the working are called: headings instead of codes, the meaning of symbols, names instead of ids.

#include <string>
#include <string_view>
#include <vector>

#include "burrow/base/working.h"
#include "burrow/crossing/crossing.h"

namespace burrow {

/// "Clear gap to the utility". A code without words of its own is spelt out.   Evidence: WorkingNames.*
std::string working_title(std::string_view code);

/// "least distance axis to axis"; empty where nobody wrote it down.   Evidence: WorkingNames.*
std::string symbol_meaning(std::string_view code, std::string_view symbol);

struct SymbolMeaning {
  std::string symbol, meaning;
};
/// Of the result, of all that is put in, and of what the formula has besides; each once.
std::vector<SymbolMeaning> symbols_of(const Working& working);

/// "gas main", "launch pit": the name of what is judged; what has none is called by its kind and id.
std::string working_place(const Crossing& crossing, std::string_view subject);

}  // namespace burrow
