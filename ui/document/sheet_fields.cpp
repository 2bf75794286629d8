#include "burrow/document/sheet_fields.h"

#include "number_field.h"

namespace burrow {

std::vector<Field> sheet_fields(const Crossing& crossing) {
  const auto sheet = [](auto& c) { return &c.sheet; };
  return {number_field(crossing, "scale 1 to", Dimension::ratio, {1, 1e5}, sheet, &SheetSettings::scale),
          number_field(crossing, "heights exaggerated by", Dimension::ratio, {1, 50}, sheet,
                       &SheetSettings::vertical_exaggeration)};
}

}  // namespace burrow
