#pragma once
/// `Result<T>`: a value, or why there is none. For input outside a method's range and for no convergence;
/// a design that does not comply is a `Finding` instead, and a bug is a `BURROW_ENSURE`.

#include <string>
#include <string_view>
#include <tl/expected.hpp>

#include "burrow/base/phrase.h"

namespace burrow {

/// What was asked for, what stood there, and what would have been accepted.
struct Error {
  Phrase place;     ///< parameter name, or a JSON pointer ("/bore/launch/grade"), or "line 12"
  Phrase found;     ///< the value as it was met
  Phrase expected;  ///< the accepted range, words or type
  /// For who has to tell one error from another: "stopped", "no-hose". Never by the words above.
  std::string_view code = {};
  bool operator==(const Error&) const = default;

  /// One line: "grade: found 2, expected |grade| <= 1".
  [[nodiscard]] Phrase line() const;
  [[nodiscard]] std::string english() const { return line().english(); }
};

template <class T>
using Result = tl::expected<T, Error>;

/// `code`: a literal.
inline tl::unexpected<Error> fail(Phrase place, Phrase found, Phrase expected, std::string_view code = {}) {
  return tl::unexpected<Error>(Error{std::move(place), std::move(found), std::move(expected), code});
}
tl::unexpected<Error> out_of_range(Phrase place, double found, Phrase expected);

}  // namespace burrow
