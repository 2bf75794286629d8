#pragma once
/// Texts of the core as Qt wants them. What somebody entered stays as it is; a phrase is put into the language of the
/// screen.

#include <QString>
#include <cmath>
#include <string>
#include <string_view>

#include "burrow/base/decimal_mark.h"
#include "burrow/base/phrase.h"
#include "burrow/language/say.h"

namespace burrow {

inline QString text_from(std::string_view s) {
  return QString::fromUtf8(s.data(), static_cast<qsizetype>(s.size()));
}
inline QString text_from(const std::string& s) {
  return text_from(std::string_view(s));
}
inline QString text_from(const char* s) {
  return QString::fromUtf8(s);
}
inline QString text_from(const Phrase& phrase) {
  return text_from(translated_phrase(phrase));
}

/// A number with so many decimals, its mark as people write it.
inline QString decimals(double value, int digits) {
  return text_from(fixed_text(value, digits));
}

/// How many times: "2", "1.5".
inline QString times_text(double times) {
  return decimals(times, times == std::floor(times) ? 0 : 1);
}

}  // namespace burrow
