#include "burrow/words/source_text.h"

#include <fmt/format.h>

#include "burrow/language/label_text.h"
#include "burrow/language/say.h"

namespace burrow {

namespace {
std::string with_label(const Source& source, const std::string& label) {
  const std::string in_brackets = fmt::format("[{}]", label);
  return source.text.empty() ? in_brackets : translated_phrase(source.text) + " " + in_brackets;
}
}  // namespace

std::string source_text(const Source& source) {
  return with_label(source, label_text(source.label));
}

std::string limit_source_text(const Source& source) {
  return with_label(source, source.label == SourceLabel::from_memory
                                ? std::string(translated("unverified: confirm with the owner"))
                                : label_text(source.label));
}

}  // namespace burrow
