#pragma once
/// The words of the choices on the pages, in the order of their enumerations.

#include <QString>
#include <QStringList>
#include <algorithm>
#include <initializer_list>
#include <optional>
#include <string_view>
#include <utility>

#include "burrow/base/enum_names.h"
#include "burrow/document/text.h"

namespace burrow {

/// The labels of a choice in the order of its enumeration, with a first row for "not said" where there is one. A value
/// without a label, or with two, is a bug, and seen as soon as the page is made.   Evidence: ChoiceWords.*
template <class E>
QStringList labels_of(std::initializer_list<std::pair<E, QString>> labels, const QString& not_said = {}) {
  QStringList rows;
  if (!not_said.isEmpty()) rows << not_said;
  for (const auto& [value, word] : EnumNames<E>::list) {
    const auto is_it = [entry = value](const auto& label) { return label.first == entry; };
    if (std::count_if(labels.begin(), labels.end(), is_it) != 1) qFatal("a choice has no label for its value, or two");
    rows << std::find_if(labels.begin(), labels.end(), is_it)->second;
  }
  return rows;
}

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
