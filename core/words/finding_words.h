#pragma once
/// How findings are put into words: one row for each code.

#include <fmt/format.h>

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "burrow/base/decimal_mark.h"
#include "burrow/base/quantity_apart.h"
#include "burrow/check/assessment.h"
#include "burrow/language/say.h"

namespace burrow {

struct FindingPhrases {
  const Finding& f;
  UnitSystem units;
  [[nodiscard]] std::string name() const { return translated_phrase(f.name); }
  /// A number that looks equal to its limit and is not shows further digits, and the limit too.
  [[nodiscard]] std::string measured(Dimension d) const { return text_of(f.measured, f.limit, d); }
  [[nodiscard]] std::string limit(Dimension d) const { return text_of(f.limit, f.measured, d); }
  [[nodiscard]] std::string text_of(const std::optional<double>& value, const std::optional<double>& beside,
                                    Dimension d) const {
    if (!value) return "–";
    return beside ? format_apart(*value, *beside, d, units) : format(*value, d, units);
  }
  [[nodiscard]] std::string limit_base(Dimension d) const {
    return f.limit_base ? format(*f.limit_base, d, units) : "–";
  }
  [[nodiscard]] std::string speed(const std::optional<double>& m_s) const {
    if (!m_s) return "–";
    return units == UnitSystem::us ? say("{} in/s", fixed_text(*m_s / 0.0254, 2))
                                   : say("{} mm/s", fixed_text(*m_s * 1e3, 1));
  }
  [[nodiscard]] static std::string strain(const std::optional<double>& ratio) {
    return ratio ? say("{:.0f} microstrain", *ratio * 1e6) : "–";
  }
};

/// A row says a finding in one sentence, whose {name}, {measured}, {limit} and {limit_base} stand for what it names and
/// for its numbers in that dimension. What cannot be said so has a function of its own.   Evidence: FindingText.*
class FindingWords {
 public:
  using Words = std::string (*)(const FindingPhrases&);

  /// `sentence` and `advice` are marked by `translatable`.
  constexpr FindingWords(std::string_view finding, Dimension numbers, const char* sentence, const char* what_to_do)
      : code(finding), advice(what_to_do), sentence_(sentence), numbers_(numbers) {}
  constexpr FindingWords(std::string_view finding, const char* sentence, const char* what_to_do)
      : code(finding), advice(what_to_do), sentence_(sentence) {}
  constexpr FindingWords(std::string_view finding, Words own, const char* what_to_do)
      : code(finding), advice(what_to_do), own_(own) {}

  [[nodiscard]] std::string text(const FindingPhrases& finding) const;

  std::string_view code;
  const char* advice;

 private:
  const char* sentence_ = nullptr;
  Dimension numbers_ = Dimension::length;
  Words own_ = nullptr;
};

/// Of what was measured before and after the bore.
std::span<const FindingWords> words_of_records();
std::span<const FindingWords> words_of_known();
/// Of the air line.
std::span<const FindingWords> words_of_air();
/// Of limits and mutes as somebody set them, and of the file they stand in.
std::span<const FindingWords> words_of_limits();
std::span<const FindingWords> words_of_owners();  ///< what owners of roads, tracks and lines ask, and makers of shields
/// Of the pits.
std::span<const FindingWords> words_of_pits();
/// Of the pipe and what presses on it.
std::span<const FindingWords> words_of_pipe();

}  // namespace burrow
