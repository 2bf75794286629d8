#pragma once
/// How finely lengths, levels, grades and angles are shown. Only what people read changes: what is computed, saved,
/// judged and exported is the same, and nothing is ever shown more coarsely than the usual, so that a broken limit
/// cannot look kept.   Evidence: DisplayPrecision.*

#include "burrow/base/enum_names.h"

namespace burrow {

enum class DisplayPrecision {
  usual,  ///< 10 mm, 0.1 in, 0.01 ft, 0.01 %, 0.01°; small sizes 0.1 mm, 0.01 in
  fine    ///< one digit more
};
template <>
struct EnumNames<DisplayPrecision> {
  static constexpr std::pair<DisplayPrecision, std::string_view> list[] = {{DisplayPrecision::usual, "usual"},
                                                                           {DisplayPrecision::fine, "fine"}};
};

/// From now on, for all texts of `format`; other threads may make texts meanwhile.
void set_display_precision(DisplayPrecision fineness);
DisplayPrecision shown_fineness();

}  // namespace burrow
