#include "arity.h"

#include <array>
#include <cstddef>
#include <fstream>

namespace burrow {

bool mixes_arity(const std::string& path) {
  std::ifstream in(path, std::ios::binary);
  std::array<char, 1u << 16u> some{};
  std::string text;  // the last text met, its beginning
  bool in_text = false, escaped = false, numbers = false, positions = false;
  std::size_t commas = 0;
  bool two = false, three = false;
  while (in.read(some.data(), some.size()), in.gcount() > 0) {
    for (std::streamsize i = 0; i < in.gcount(); ++i) {
      const char c = some[static_cast<std::size_t>(i)];
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
    if (two && three) return true;
  }
  return two && three;
}

}  // namespace burrow
