#pragma once
/// What reads and changes a crossing from outside.

#include <functional>

#include "burrow/crossing/crossing.h"

namespace burrow {

/// A change: it gets a crossing and leaves it changed. An empty one changes nothing and says that it cannot be done.
using Edit = std::function<void(Crossing&)>;

/// Where something stands in a crossing, to be read there and to be changed there; null: there is no such thing now.
/// Made from one function of `auto&`: `[](auto& c) { return &c.site.nothing_above; }`.
template <class T>
class Lens {
 public:
  template <class Find>
  Lens(Find find) : read_(find), change_(find) {}  // NOLINT: the function reads like the lens
  const T* operator()(const Crossing& crossing) const { return read_(crossing); }
  T* operator()(Crossing& crossing) const { return change_(crossing); }

 private:
  std::function<const T*(const Crossing&)> read_;
  std::function<T*(Crossing&)> change_;
};

}  // namespace burrow
