#include "burrow/crossing/display_name.h"

namespace burrow {

Phrase display_name(const SurfaceFeature& feature) {
  return feature.name.empty() ? phrase_of_word(feature.kind) : Phrase(feature.name);
}

Phrase display_name(const Utility& utility) {
  return display_name(utility.name, utility.kind, utility.id);
}

Phrase display_name(const std::string& name, UtilityKind kind, const std::string& id) {
  return name.empty() ? phrase("{} {}", phrase_of_word(kind), id) : Phrase(name);
}

}  // namespace burrow
