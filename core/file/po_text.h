#pragma once
/// A gettext catalogue as text (`.po`): its entries in their order. Source: GNU gettext manual, "The Format of PO
/// Files" (read). Comments, references, earlier texts (`#|`) and retired entries (`#~`) are passed over, of flags
/// `fuzzy` counts alone. Errors: a line that is none of that, with its number; an escape other than \n \t \" \\.
/// Evidence: DictionaryFile.*

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "burrow/base/result.h"

namespace burrow {

struct PoEntry {
  std::optional<std::string> context;
  std::string text;                   ///< msgid; of the header it is empty
  std::optional<std::string> plural;  ///< msgid_plural
  std::vector<std::string> forms;     ///< msgstr, or msgstr[0], msgstr[1] …
  bool fuzzy = false;                 ///< a translator has to look at it yet
  int line = 0;                       ///< of its first keyword, from 1
};

Result<std::vector<PoEntry>> read_po(std::string_view text);

/// "line 12"
std::string po_place(int line);

}  // namespace burrow
