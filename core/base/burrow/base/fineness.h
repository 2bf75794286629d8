#pragma once
/// How finely lengths, levels, grades and angles are shown. Only what people read changes: what is computed, saved,
/// judged and exported is the same, and nothing is ever shown more coarsely than the usual, so that a broken limit
/// cannot look kept.   Evidence: Fineness.*

#include "burrow/base/words.h"

namespace burrow {

enum class Fineness {
  usual,  ///< 10 mm, 0.1 in, 0.01 ft, 0.01 %, 0.01°; small sizes 0.1 mm, 0.01 in
  fine    ///< one digit more
};
template <>
struct Words<Fineness> {
  static constexpr std::pair<Fineness, std::string_view> list[] = {{Fineness::usual, "usual"},
                                                                   {Fineness::fine, "fine"}};
};

/// From now on, for all texts of `format`; other threads may make texts meanwhile.
void show_quantities(Fineness fineness);
Fineness shown_fineness();

}  // namespace burrow
