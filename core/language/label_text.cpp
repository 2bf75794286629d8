#include "burrow/language/label_text.h"

#include "burrow/language/say.h"

namespace burrow {

namespace {

/// What a person reads; files keep the words of `word_of`.
std::string_view shown_word(SourceLabel label) {
  switch (label) {
    case SourceLabel::from_memory:
      return translatable("unverified");
    case SourceLabel::our_model:
      return translatable("program's model");
    case SourceLabel::our_default:
      return translatable("program default");
    case SourceLabel::owners_setting:
      return translatable("set by owner");
    default:
      return word_of(label);
  }
}

}  // namespace

std::string label_text(SourceLabel label) {
  std::string text(translated(shown_word(label)));
  if (label == SourceLabel::from_memory) text += std::string(": ") + translated("nobody has looked this up");
  return text;
}

}  // namespace burrow
