#pragma once
/// Several things of the site that are picked at once: what they share, and what is done to all of them as one step.

#include <string>
#include <vector>

#include "burrow/document/fields.h"
#include "burrow/document/item.h"
#include "burrow/tables/tables.h"

namespace burrow {

/// Utilities, things on top, strata, test holes (`test_holes` with the id of one), boundaries, trees, machines and
/// trenches; nothing else is picked with others.
bool may_be_several(const ItemRef& part);

/// Whether the crossing holds it, a test hole by its id.
bool there_is(const Crossing& crossing, const ItemRef& part);

/// All that may be picked together.
std::vector<ItemRef> all_items(const Crossing& crossing);

/// Whether both are of one kind: utilities of one kind, things on top of one kind.
bool same_kind(const Crossing& crossing, const ItemRef& one, const ItemRef& other);

/// "4 utilities, 1 road": kinds and how many.
std::string several_name(const Crossing& crossing, const std::vector<ItemRef>& parts);

/// The values that all of them have, in the order of the first; `mixed` where they differ. Their places are not
/// among them: they would come to lie on one another. What is set is set for all of them, or for none.
/// Evidence: Several.*
std::vector<Field> shared_fields(const Crossing& crossing, const std::vector<ItemRef>& parts, const Tables& tables);

/// The site without them; a utility takes its test holes along. At least one stratum stays.
Site site_without(const Crossing& crossing, const std::vector<ItemRef>& parts);

/// Those things alone; a utility takes its test holes along.
Site clip_of(const Crossing& crossing, const std::vector<ItemRef>& parts);

struct Copies {
  Site site;
  std::vector<ItemRef> parts;  ///< the new ones
};
/// The site with each of them once more, half a metre further along; a stratum half a metre deeper.
/// None has what was established of the old one: how it was located, measured, seen, agreed or permitted.
/// Evidence: Several.Duplicated_*
Copies site_with_copies(const Crossing& crossing, const std::vector<ItemRef>& parts);

/// The site with things from elsewhere, moved along; their ids become free ones, and what has the name of something
/// that is there is called a copy. A stratum goes between those it lies between.   Evidence: Clipboard.*
Copies site_with_clip(const Crossing& crossing, const Site& clip, double along_m);

}  // namespace burrow
