#pragma once
#include <string_view>

namespace burrow {

/// Text of a file of `resources`, compiled in: embedded_text("tables/soils.json"). Empty: there is no such file.
/// "tables-digest": by which tables an answer is made; "languages": those that have a dictionary, a line each.
std::string_view embedded_text(std::string_view name);

}  // namespace burrow
