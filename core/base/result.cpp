#include "burrow/base/result.h"

#include <fmt/format.h>

namespace burrow {

Phrase Error::line() const {
  const Phrase what = !found.empty() && !expected.empty()
                          ? phrase(translatable("found {}, expected {}"), found, expected)
                      : !found.empty()    ? phrase(translatable("found {}"), found)
                      : !expected.empty() ? phrase(translatable("expected {}"), expected)
                                          : Phrase();
  return place.empty() ? what : phrase("{}: {}", place, what);
}

tl::unexpected<Error> out_of_range(Phrase place, double found, Phrase expected) {
  return fail(std::move(place), fmt::format("{}", found), std::move(expected));
}

}  // namespace burrow
