#include "position_sizes.h"

#include <cpl_vsi.h>

#include <array>
#include <cstddef>

namespace burrow {

bool mixes_position_sizes(const std::string& path) {
  VSILFILE* in = VSIFOpenL(path.c_str(), "rb");  // also within a zipped file
  if (!in) return false;
  std::array<char, 1u << 16u> some{};
  std::string text;  // the last text met, its beginning
  bool in_text = false, escaped = false, numbers = false, positions = false;
  std::size_t commas = 0;
  bool two = false, three = false;
  for (std::size_t got = 0; !(two && three) && (got = VSIFReadL(some.data(), 1, some.size(), in)) > 0;) {
    for (std::size_t i = 0; i < got; ++i) {
      const char c = some[i];
      if (in_text) {
        in_text = escaped || c != '"';
        escaped = !escaped && c == '\\';
        if (in_text && text.size() < 16) text += c;
        continue;
      }
      if (c == '[') {
        numbers = positions;  // until something else than a number is met
        commas = 0;
      } else if (c == ',') {
        ++commas;
      } else if (c == ']') {
        two = two || (numbers && commas == 1);
        three = three || (numbers && commas >= 2);
        numbers = false;
      } else if (c == ':') {
        positions = text == "coordinates";
      } else if (c == '"') {
        in_text = true;
        text.clear();
      }
    }
  }
  VSIFCloseL(in);
  return two && three;
}

}  // namespace burrow
