#pragma once
/// What the symbols of a working stand for, by the codes in whose steps they do.

#include <span>
#include <string_view>

namespace burrow {

struct SymbolRow {
  std::string_view symbol;
  const char* meaning;  ///< marked by `translatable`
};
struct SymbolGroup {
  std::string_view codes;  ///< with a blank between them; "*": of every step that has no row of its own
  std::span<const SymbolRow> rows;
};

std::span<const SymbolGroup> symbols_of_bore();   ///< and of utilities and the surface
std::span<const SymbolGroup> symbols_of_works();  ///< pits, pipe, air

}  // namespace burrow
