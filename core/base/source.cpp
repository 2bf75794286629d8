#include "burrow/base/source.h"

#include "burrow/base/finding.h"

namespace burrow {

std::string_view words(SourceLabel label) {
  switch (label) {
    case SourceLabel::read:
      return "read";
    case SourceLabel::second_hand:
      return "second-hand";
    case SourceLabel::from_memory:
      return "from memory";
    case SourceLabel::common_practice:
      return "common practice (no source)";
    case SourceLabel::derived:
      return "derived";
    case SourceLabel::our_model:
      return "our model";
    case SourceLabel::our_default:
      return "our default";
    case SourceLabel::owners_setting:
      return "owner's setting";
  }
  return "our default";
}

std::optional<SourceLabel> source_label_from_words(std::string_view text) {
  for (const SourceLabel label : all_source_labels)
    if (words(label) == text) return label;
  return std::nullopt;
}

std::string_view words(Severity severity) {
  switch (severity) {
    case Severity::stop:
      return "stop";
    case Severity::caution:
      return "caution";
    case Severity::note:
      return "note";
  }
  return "note";
}

}  // namespace burrow
