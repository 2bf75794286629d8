#include "burrow/base/result.h"

#include <fmt/format.h>

#include "burrow/base/say.h"

namespace burrow {

std::string Error::text() const {
  const std::string what = translated_phrase(found), wanted = translated_phrase(expected);
  const std::string line = !what.empty() && !wanted.empty() ? say("found {}, expected {}", what, wanted)
                           : !what.empty()                  ? say("found {}", what)
                           : !wanted.empty()                ? say("expected {}", wanted)
                                                            : std::string();
  return place.empty() ? line : fmt::format("{}: {}", translated_phrase(place), line);
}

tl::unexpected<Error> out_of_range(Phrase place, double found, Phrase expected) {
  return fail(std::move(place), fmt::format("{}", found), std::move(expected));
}

}  // namespace burrow
