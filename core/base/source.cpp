#include "burrow/base/source.h"

#include "burrow/base/finding.h"
#include "burrow/base/say.h"

namespace burrow {

std::string_view words(SourceLabel label) {
  switch (label) {
    case SourceLabel::read:
      return noted("read");
    case SourceLabel::second_hand:
      return noted("second-hand");
    case SourceLabel::from_memory:
      return noted("from memory");
    case SourceLabel::common_practice:
      return noted("common practice (no source)");
    case SourceLabel::derived:
      return noted("derived");
    case SourceLabel::our_model:
      return noted("our model");
    case SourceLabel::our_default:
      return noted("our default");
    case SourceLabel::owners_setting:
      return noted("owner's setting");
  }
  return noted("our default");
}

std::optional<SourceLabel> source_label_from_words(std::string_view text) {
  for (const SourceLabel label : all_source_labels)
    if (words(label) == text) return label;
  return std::nullopt;
}

std::string_view words(Severity severity) {
  switch (severity) {
    case Severity::stop:
      return noted("stop");
    case Severity::caution:
      return noted("caution");
    case Severity::note:
      return noted("note");
  }
  return noted("note");
}

}  // namespace burrow
