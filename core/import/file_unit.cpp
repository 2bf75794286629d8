#include "burrow/import/file_unit.h"
#include "burrow/language/say.h"

#include "csv_fields.h"

namespace burrow {

double metres_in(FileUnit unit) {
  switch (unit) {
    case FileUnit::metre:
      return 1.0;
    case FileUnit::foot:
      return 0.3048;
    case FileUnit::us_survey_foot:
      return 1200.0 / 3937.0;
    case FileUnit::millimetre:
      return 1e-3;
    case FileUnit::centimetre:
      return 1e-2;
    case FileUnit::inch:
      return 0.0254;
  }
  return 1.0;
}

std::optional<FileUnit> unit_named_in(std::string_view heading) {
  const std::string text = csv::lower(heading);
  const auto says = [&](std::string_view word) {
    for (std::size_t at = text.find(word); at != std::string::npos; at = text.find(word, at + 1)) {
      const auto letter = [](char c) { return (c >= 'a' && c <= 'z') || c == '-'; };
      const std::size_t end = at + word.size();
      if ((at == 0 || !letter(text[at - 1])) && (end == text.size() || !letter(text[end]))) return true;
    }
    return false;
  };
  if (says("us-ft") || says("usft") || says("ftus") || says(translated("us survey feet")) ||
      says(translated("us survey foot")))
    return FileUnit::us_survey_foot;
  if (says("ft") || says("feet") || says("foot")) return FileUnit::foot;
  if (says("m") || says("metre") || says("metres") || says("meter") || says("meters")) return FileUnit::metre;
  return std::nullopt;
}

}  // namespace burrow
