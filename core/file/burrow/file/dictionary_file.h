#pragma once
/// The dictionary of another language: a gettext catalogue (`resources/words/de.po`), UTF-8. It is read as the text
/// that translators edit, so that the build needs no gettext and each error has its line.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "burrow/base/result.h"
#include "burrow/language/say.h"

namespace burrow {

/// The language, the plural rule, the decimal mark ("X-Decimal-Mark: ,"; without one the point) and whether nobody read
/// it a second time ("X-Second-Reader: none") are those of its header; entries without a translation and those marked
/// `fuzzy` are left out, so that the text stays English. Errors (in English, for the translator): what `read_po`
/// refuses; no header, no language or no plural rule in it; another character set; a text given twice; a counted text
/// with more or fewer forms than the rule has; a mark that is neither. Evidence: DictionaryFile.*
Result<Dictionary> read_dictionary(std::string_view po_text);

/// The dictionary that comes with the program; nothing for a language it has none of. That of English ("en") holds the
/// forms of the pages' counted texts alone, since Qt's tr() takes one text for all counts.
std::optional<Dictionary> dictionary_of(std::string_view language);

/// The languages that come with the program, ISO 639-1, English first.
std::vector<std::string> languages_known();

}  // namespace burrow
