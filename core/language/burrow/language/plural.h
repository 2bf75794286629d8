#pragma once
/// Which form of a counted text a language uses for a number: the `Plural-Forms` line of a gettext catalogue,
/// `nplurals=3; plural=(n==1 ? 0 : n%10>=2 && n%10<=4 ? 1 : 2);`, a C expression of n.
/// Source: GNU gettext manual, "Additional functions for plural forms" (read).   Range: up to 16 forms.
/// Errors: no such line; an expression that asks for a form beyond `nplurals` or divides by nothing for any n up to
/// 1,000 (the same numbers `msgfmt --check` tries).   Why not Boost.Locale: it brings ICU and wants compiled
/// catalogues, for this and a reader of a page.   Evidence: Plural.*

#include <cstddef>
#include <string_view>
#include <vector>

#include "burrow/base/result.h"

namespace burrow {

class PluralRule {
 public:
  /// That of English and German: the first form for one, the second for all else.
  PluralRule();
  static Result<PluralRule> read(std::string_view line);

  [[nodiscard]] std::size_t forms() const { return forms_; }
  /// Less than `forms()` for each n.
  [[nodiscard]] std::size_t form_of(unsigned long long n) const;

  /// One operation; those it works on stand before it in the list.
  struct Step {
    enum class Kind {
      number,
      n,
      negate,
      choose,
      any,
      both,
      equal,
      unequal,
      less,
      greater,
      at_most,
      at_least,
      plus,
      minus,
      times,
      over,
      rest
    };
    Kind kind = Kind::number;
    unsigned long long number = 0;
    std::size_t a = 0, b = 0, c = 0;
  };

 private:
  std::size_t forms_ = 2;
  std::vector<Step> steps_;  ///< the last one is the answer
};

}  // namespace burrow
