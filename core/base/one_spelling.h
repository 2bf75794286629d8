#pragma once
/// Typed text in one spelling.

#include <string>
#include <string_view>

namespace burrow {

/// One spelling for what keyboards, phones and documents write in many ways; ASCII letters in lower case.
std::string one_spelling(std::string_view typed);

}  // namespace burrow
