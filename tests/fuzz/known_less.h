#pragma once
/// What may be taken from any crossing, however odd, so that less is known of it: the verdict must not get better.
/// tests/support/property_for_tests.h asks more of crossings laid out as crews do; here only what is an open
/// question wherever it is not answered.

#include <span>
#include <string_view>

#include "burrow/check/assessment.h"
#include "burrow/crossing/crossing.h"

namespace burrow::test {

struct Less {
  std::string_view what;
  /// False: it is not there. `draw` chooses where there are several.
  bool (*take)(Crossing& crossing, unsigned draw);
};

std::span<const Less> all_less();

/// What nobody can judge is as bad as what must not be done.
int badness(Verdict verdict);

}  // namespace burrow::test
