#include "burrow/base/source.h"

#include "burrow/base/finding.h"
#include "burrow/base/phrase.h"

namespace burrow {

std::string_view word_of(SourceLabel label) {
  switch (label) {
    case SourceLabel::read:
      return translatable("read");
    case SourceLabel::second_hand:
      return translatable("second-hand");
    case SourceLabel::from_memory:
      return translatable("from memory");
    case SourceLabel::common_practice:
      return translatable("common practice (no source)");
    case SourceLabel::derived:
      return translatable("derived");
    case SourceLabel::our_model:
      return translatable("our model");
    case SourceLabel::our_default:
      return translatable("our default");
    case SourceLabel::owners_setting:
      return translatable("owner's setting");
  }
  return translatable("our default");
}

std::optional<SourceLabel> source_label_from_words(std::string_view text) {
  for (const SourceLabel label : all_source_labels)
    if (word_of(label) == text) return label;
  return std::nullopt;
}

std::string_view word_of(Severity severity) {
  switch (severity) {
    case Severity::stop:
      return translatable("stop");
    case Severity::caution:
      return translatable("caution");
    case Severity::note:
      return translatable("note");
  }
  return translatable("note");
}

}  // namespace burrow
