#pragma once
/// What a person calls a thing of the crossing: the name entered, else its kind and id.

#include "burrow/base/phrase.h"
#include "burrow/crossing/site.h"

namespace burrow {

/// Evidence: DisplayName.*
Phrase display_name(const SurfaceFeature& feature);
Phrase display_name(const Utility& utility);
/// Of whatever carries a utility's name, kind and id.
Phrase display_name(const std::string& name, UtilityKind kind, const std::string& id);

}  // namespace burrow
