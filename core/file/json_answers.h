#pragma once
/// Small tools for writing answers as JSON: an unknown number is null, never 0.

#include <optional>
#include <utility>

#include "json_tree.h"

namespace burrow {

inline Json number(const std::optional<double>& value) {
  return value ? Json(*value) : Json();
}

inline Json object(Json::Object members) {
  return Json(std::move(members));
}

template <class List, class One>
Json list_of(const List& list, One one) {
  Json::Array items;
  for (const auto& item : list) items.push_back(one(item));
  return Json(std::move(items));
}

}  // namespace burrow
