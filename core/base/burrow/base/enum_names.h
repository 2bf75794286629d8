#pragma once
/// The words a file uses for a choice. Each enum of the crossing lists its words once, in `EnumNames<E>::list`;
/// reading, writing, error messages ("lists the known") and pickers all use that list.

#include <optional>
#include <string>
#include <string_view>
#include <utility>

namespace burrow {

template <class E>
struct EnumNames;  // specialised beside each enum: static constexpr std::pair<E, std::string_view> list[]

template <class E>
constexpr std::string_view word_of(E value) {
  for (const auto& [entry, word] : EnumNames<E>::list)
    if (entry == value) return word;
  return "?";
}

template <class E>
constexpr std::optional<E> from_word(std::string_view word) {
  for (const auto& [entry, known] : EnumNames<E>::list)
    if (known == word) return entry;
  return std::nullopt;
}

/// "gas, power, water": the known words, for an error message.
template <class E>
std::string known_words() {
  std::string all;
  for (const auto& [entry, known] : EnumNames<E>::list) {
    if (!all.empty()) all += ", ";
    all += known;
  }
  return all;
}

}  // namespace burrow
