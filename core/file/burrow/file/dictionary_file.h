#pragma once
/// The dictionary of another language: JSON, UTF-8.

#include <optional>
#include <string_view>

#include "burrow/base/result.h"
#include "burrow/base/say.h"

namespace burrow {

/// `{"language":"de","texts":{"English as in the code":"Deutsch", …}}`. Errors: not such an object; a text given twice;
/// an empty translation. Evidence: tests/core/file/dictionary_file_test.cpp
Result<Dictionary> read_dictionary(std::string_view json_text);

/// The dictionary that comes with the program; nothing for a language it has none of ("en").
std::optional<Dictionary> dictionary_of(std::string_view language);

}  // namespace burrow
