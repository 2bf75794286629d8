#pragma once
/// A value that has a default, and whether the user gave it. A default is shown as *default*, never as *entered*,
/// and is not written to the file.

namespace burrow {

template <class T>
struct Given {
  T value{};
  bool entered = false;

  constexpr Given() = default;
  constexpr Given(const T& default_value) : value(default_value) {}  // NOLINT: a default reads like the value
  static constexpr Given enter(const T& v) {
    Given g(v);
    g.entered = true;
    return g;
  }
  constexpr void set(const T& v) {
    value = v;
    entered = true;
  }
  constexpr const T* operator->() const { return &value; }
  constexpr const T& operator*() const { return value; }
  bool operator==(const Given&) const = default;
};

}  // namespace burrow
