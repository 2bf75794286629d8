#pragma once
/// An element of a list by its id.

#include <algorithm>
#include <string_view>

namespace burrow {

/// Null where the list does not hold it; what is found in a list that may be changed may be changed.
template <class List>
auto* find_by_id(List& list, std::string_view id) {
  const auto at = std::find_if(list.begin(), list.end(), [&](const auto& element) { return element.id == id; });
  return at == list.end() ? nullptr : &*at;
}

}  // namespace burrow
