#pragma once
/// Where a number comes from: a short citation and one of eight labels.

#include <array>
#include <optional>
#include <string>
#include <string_view>

#include "burrow/base/phrase.h"

namespace burrow {

enum class SourceLabel {
  read,             ///< the figure itself was seen in the named source
  second_hand,      ///< seen on a page that restates the source
  from_memory,      ///< nobody looked it up
  common_practice,  ///< a rule of the trade, no source
  derived,          ///< follows by mathematics, checked by a second route
  our_model,        ///< a modelling choice of this program
  our_default,      ///< a starting value of this program
  owners_setting    ///< set by the owner of the road, track or utility, or by the user
};

inline constexpr std::array<SourceLabel, 8> all_source_labels{
    SourceLabel::read,    SourceLabel::second_hand, SourceLabel::from_memory, SourceLabel::common_practice,
    SourceLabel::derived, SourceLabel::our_model,   SourceLabel::our_default, SourceLabel::owners_setting};

/// The words shown on screen, in the working and in JSON: "read", "second-hand", "from memory",
/// "common practice (no source)", "derived", "our model", "our default", "owner's setting".
std::string_view word_of(SourceLabel label);
std::optional<SourceLabel> source_label_from_words(std::string_view words);

struct Source {
  Phrase text;  ///< author, year, equation or clause; empty only for the labels that have none
  SourceLabel label = SourceLabel::our_default;
  bool operator==(const Source&) const = default;
};

}  // namespace burrow
