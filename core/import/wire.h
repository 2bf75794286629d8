#pragma once
/// Values as bytes between the program and the process that reads foreign files. One description of each struct
/// (`each_part`) serves counting, packing and unpacking, so that the two ends cannot differ. Both run on one machine:
/// numbers stand as they do in memory. Unpacking trusts nothing: no more is allocated than the bytes that are there
/// can fill, a choice must be a known one. Private to this room.   Evidence: Answer.*

#include <array>
#include <cstdint>
#include <cstring>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>
#include <vector>

#include "burrow/base/enum_names.h"

namespace burrow::wire {

/// How many bytes a value takes.
class Counter {
 public:
  void bytes(const void*, std::size_t count) { size += count; }
  std::size_t size = 0;
};

class Packer {
 public:
  void bytes(const void* from, std::size_t count) { text.append(static_cast<const char*>(from), count); }
  std::string text;
};

class Unpacker {
 public:
  static constexpr bool unpacks = true;
  explicit Unpacker(std::string_view text) : rest(text) {}
  void bytes(void* into, std::size_t count) {
    good = good && count <= rest.size();
    if (!good) return;
    std::memcpy(into, rest.data(), count);
    rest.remove_prefix(count);
  }
  std::string_view rest;
  bool good = true;
};

template <class Io>
concept Unpacks = requires {
  Io::unpacks;
};

template <class T>
struct IsVector : std::false_type {};
template <class T>
struct IsVector<std::vector<T>> : std::true_type {};
template <class T>
struct IsOptional : std::false_type {};
template <class T>
struct IsOptional<std::optional<T>> : std::true_type {};
template <class T>
struct IsArray : std::false_type {};
template <class T, std::size_t N>
struct IsArray<std::array<T, N>> : std::true_type {};

template <class Io, class T>
void part(Io& io, T& value);

/// The fewest bytes a value can take: that of an empty one.
template <class T>
std::size_t least_size() {
  static const std::size_t size = [] {
    Counter counter;
    const T empty{};
    part(counter, empty);
    return counter.size;
  }();
  return size;
}

/// Whether a choice has that number: one with words is in their list, another says so by a specialisation.
template <class Choice>
bool is_known(std::uint8_t number) {
  for (const auto& [entry, word] : EnumNames<Choice>::list)
    if (static_cast<std::uint8_t>(entry) == number) return true;
  return false;
}

template <class Io, class Choice>
void choice_part(Io& io, Choice& value) {
  auto number = static_cast<std::uint8_t>(value);
  io.bytes(&number, sizeof number);
  if constexpr (Unpacks<Io>) {
    io.good = io.good && is_known<std::remove_const_t<Choice>>(number);
    if (io.good) value = static_cast<Choice>(number);
  }
}

template <class Io, class Text>
void text_part(Io& io, Text& value) {
  std::uint64_t size = value.size();
  part(io, size);
  if constexpr (Unpacks<Io>) {
    io.good = io.good && size <= io.rest.size();
    if (!io.good) return;
    value.assign(io.rest.substr(0, size));
    io.rest.remove_prefix(size);
  } else {
    io.bytes(value.data(), size);
  }
}

template <class Io, class List>
void list_part(Io& io, List& list) {
  std::uint64_t size = list.size();
  part(io, size);
  if constexpr (Unpacks<Io>) {
    using Element = typename List::value_type;
    io.good = io.good && size <= io.rest.size() / least_size<Element>();
    if (!io.good) return;
    list.clear();
    list.reserve(size);
    for (std::uint64_t i = 0; i < size && io.good; ++i) part(io, list.emplace_back());
  } else {
    for (auto& element : list) part(io, element);
  }
}

template <class Io, class Optional>
void optional_part(Io& io, Optional& value) {
  bool there = value.has_value();
  part(io, there);
  if constexpr (Unpacks<Io>) {
    value.reset();
    if (there && io.good) part(io, value.emplace());
  } else if (there) {
    part(io, *value);
  }
}

/// Any value; a struct by its own `each_part`, found beside it.
template <class Io, class T>
void part(Io& io, T& value) {
  using Plain = std::remove_const_t<T>;
  if constexpr (std::is_same_v<Plain, bool>) {
    auto byte = static_cast<std::uint8_t>(value);
    io.bytes(&byte, sizeof byte);
    if constexpr (Unpacks<Io>) {
      io.good = io.good && byte <= 1;
      value = byte == 1;
    }
  } else if constexpr (std::is_arithmetic_v<Plain>) {
    io.bytes(&value, sizeof value);
  } else if constexpr (std::is_enum_v<Plain>) {
    choice_part(io, value);
  } else if constexpr (std::is_same_v<Plain, std::string>) {
    text_part(io, value);
  } else if constexpr (IsVector<Plain>::value) {
    list_part(io, value);
  } else if constexpr (IsOptional<Plain>::value) {
    optional_part(io, value);
  } else if constexpr (IsArray<Plain>::value) {
    for (auto& element : value) part(io, element);
  } else {
    each_part(value, [&io](auto&... members) { (part(io, members), ...); });
  }
}

}  // namespace burrow::wire
