#include "burrow/base/result.h"

#include <fmt/format.h>

#include "burrow/base/say.h"

namespace burrow {

std::string Error::text() const {
  std::string line = place.empty() ? std::string() : place + ": ";
  if (!found.empty()) line += said("found ") + found;
  if (!expected.empty()) line += (found.empty() ? said("expected ") : said(", expected ")) + expected;
  return line;
}

tl::unexpected<Error> out_of_range(std::string place, double found, std::string expected) {
  return fail(std::move(place), fmt::format("{}", found), std::move(expected));
}

}  // namespace burrow
