#pragma once
/// Small tools for writing answers as JSON: an unknown number is null, never 0.

#include <initializer_list>
#include <optional>
#include <string_view>
#include <utility>

#include "json_tree.h"

namespace burrow {

inline Json number(const std::optional<double>& value) {
  return value ? Json(*value) : Json();
}

/// A member on its way into an object: what a list in braces holds can else only be copied, the whole tree below it.
struct NewMember {
  std::string_view key;
  mutable Json value;
};

inline Json::Object members_of(std::initializer_list<NewMember> members) {
  Json::Object all;
  all.reserve(members.size());
  for (const NewMember& member : members) all.push_back({std::string(member.key), std::move(member.value)});
  return all;
}

inline Json object(std::initializer_list<NewMember> members) {
  return Json(members_of(members));
}
inline Json object(Json::Object members) {
  return Json(std::move(members));
}

template <class List, class One>
Json list_of(const List& list, One one) {
  Json::Array items;
  items.reserve(list.size());
  for (const auto& item : list) items.push_back(one(item));
  return Json(std::move(items));
}

}  // namespace burrow
