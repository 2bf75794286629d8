#pragma once
/// The words of the choices on the pages, in the order of their enumerations.

#include <QString>
#include <QStringList>
#include <string_view>

#include "burrow/base/enum_names.h"
#include "burrow/document/text.h"

namespace burrow {

/// Place of a value in the list of words of its enumeration.
template <class E>
int row_of_word(E value) {
  int row = 0;
  for (const auto& [entry, word] : EnumNames<E>::list) {
    if (entry == value) return row;
    ++row;
  }
  return -1;
}
template <class E>
E word_at(int row) {
  return EnumNames<E>::list[row].first;
}
/// The same with a first row for "not said".
template <class E>
int row_of_word(const std::optional<E>& value) {
  return value ? row_of_word(*value) + 1 : 0;
}
template <class E>
std::optional<E> word_or_none_at(int row) {
  return row > 0 ? std::optional<E>(word_at<E>(row - 1)) : std::nullopt;
}

}  // namespace burrow
