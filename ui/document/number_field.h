#pragma once
/// Fields made from where their number stands in a crossing: a lens that gives the owner, and a member of the owner.
/// What is plain must be typed, what is optional may be left empty, what is given goes back to the default of its
/// owner.

#include <cmath>
#include <optional>
#include <string>
#include <type_traits>
#include <utility>

#include "burrow/base/given.h"
#include "burrow/document/fields.h"

namespace burrow {

using Typed = std::optional<double>;

/// SI, both ends accepted.
struct FieldRange {
  double low = 0, high = 0;
};

// What the file format accepts.
inline constexpr double farthest_m = 1e5, highest_m = 1e4;

/// A field that is put back in a way of its own. It may not be left empty unless the caller says so.
inline Field typed_field(std::string label, Dimension dimension, FieldRange range, Typed value,
                         std::function<void(Crossing&, Typed)> apply) {
  Field field;
  field.label = std::move(label);
  field.dimension = dimension;
  field.value = value;
  field.low = range.low;
  field.high = range.high;
  field.apply = std::move(apply);
  return field;
}

/// The one number of a quantity, or a number itself; and back.
template <class Q>
double number_in(const Q& quantity) {
  if constexpr (std::is_arithmetic_v<Q>) {
    return static_cast<double>(quantity);
  } else {
    const auto& [number] = quantity;
    return number;
  }
}
template <class Q>
Q quantity_of(double number) {
  if constexpr (std::is_integral_v<Q>)
    return static_cast<Q>(std::llround(number));
  else
    return Q{number};
}

/// How the members of a crossing stand and take what is typed. `untyped`: the member of an owner just made.
template <class V>
struct Member {
  static Typed number(const V& now) { return number_in(now); }
  static void set(V& now, Typed typed, const V&) {
    if (typed) now = quantity_of<V>(*typed);
  }
  static void describe(Field&, const V&, const V&, Typed) {}
};
template <class Q>
struct Member<std::optional<Q>> {
  static Typed number(const std::optional<Q>& now) { return now ? Typed(number_in(*now)) : std::nullopt; }
  static void set(std::optional<Q>& now, Typed typed, const std::optional<Q>&) {
    now = typed ? std::optional<Q>(quantity_of<Q>(*typed)) : std::nullopt;
  }
  static void describe(Field& field, const std::optional<Q>& now, const std::optional<Q>&, Typed stands) {
    field.may_be_empty = true;
    field.default_value = stands;
    field.entered = now || !stands;
  }
};
template <class Q>
struct Member<Given<Q>> {
  static Typed number(const Given<Q>& now) { return number_in(*now); }
  static void set(Given<Q>& now, Typed typed, const Given<Q>& untyped) {
    now = untyped;
    if (typed) now.set(quantity_of<Q>(*typed));
  }
  static void describe(Field& field, const Given<Q>& now, const Given<Q>& untyped, Typed) {
    field.may_be_empty = true;
    field.default_value = number_in(*untyped);
    field.entered = now.entered;
  }
};

/// The field of a number, an optional one or a given one. `owner` is a function of `auto&`, a crossing: a pointer, null
/// where the owner is not there. `stands`: what counts where an optional one is left empty.
template <class Find, class Owner, class V>
Field number_field(const Crossing& crossing, std::string label, Dimension dimension, FieldRange range, Find owner,
                   V Owner::*member, Typed stands = std::nullopt) {
  const Owner untyped;
  const Owner* now = owner(crossing);
  const V& value = (now ? *now : untyped).*member;
  Field field = typed_field(std::move(label), dimension, range, Member<V>::number(value),
                            [owner, member](Crossing& c, Typed typed) {
                              if (Owner* whole = owner(c)) Member<V>::set(whole->*member, typed, Owner{}.*member);
                            });
  Member<V>::describe(field, value, untyped.*member, stands);
  return field;
}

/// The same field with `per` of its number shown as one: "stops in 100 m". The range is that of what is shown.
inline Field times(Field field, double per) {
  for (Typed* number : {&field.value, &field.default_value})
    if (*number) *number = **number * per;
  field.apply = [apply = std::move(field.apply), per](Crossing& c, Typed typed) {
    apply(c, typed ? Typed(*typed / per) : typed);
  };
  return field;
}

}  // namespace burrow
