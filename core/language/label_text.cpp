#include "burrow/language/label_text.h"

#include "burrow/language/say.h"

namespace burrow {

std::string label_text(SourceLabel label) {
  std::string text(translated(word_of(label)));
  if (label == SourceLabel::from_memory) text += std::string(": ") + translated("nobody has looked this up");
  return text;
}

}  // namespace burrow
