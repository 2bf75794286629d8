#pragma once
/// Names, numbers and units in LandXML. Private to the importer library.

#include <optional>
#include <pugixml.hpp>
#include <string_view>
#include <vector>

#include "burrow/import/file_unit.h"

namespace burrow::landxml {

using Node = pugi::xml_node;

/// Without the prefix of its namespace.
std::string_view local_name(const Node& node);

/// The first child of this local name; an empty node where there is none.
Node child(const Node& node, std::string_view name);

template <class Do>
void each(const Node& node, std::string_view name, Do&& act) {
  for (const Node& inner : node.children())
    if (local_name(inner) == name) act(inner);
}

/// The numbers of a text; stops at the first thing that is none. Not pugixml's own reading, which follows the locale.
std::vector<double> numbers(std::string_view text);

/// One finite number.
std::optional<double> number_in(const Node& node, const char* attribute);

std::optional<FileUnit> unit_from(std::string_view word);

}  // namespace burrow::landxml
