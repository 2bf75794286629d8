#pragma once
/// Muting a finding with a reason that is kept in the file. The verdict takes it into account, see `assess()`: a muted
/// caution does not count, a stop or something missing does, and a mute lapses when the measured value gets worse.

#include <string>
#include <string_view>
#include <vector>

#include "burrow/base/finding.h"
#include "burrow/base/result.h"
#include "burrow/crossing/crossing.h"

namespace burrow {

/// Who mutes, when and why.
struct MuteWords {
  std::string reason, by, date;
};

/// `Crossing::muted` with this finding muted at what it measures now. What was said before about the same finding is
/// replaced.   Errors: a reason without a letter or digit.   Evidence: Mute.*
Result<std::vector<Mute>> with_mute(const Crossing& crossing, const Finding& finding, const MuteWords& words);

/// `Crossing::muted` without what mutes, or once muted, this finding.
std::vector<Mute> without_mute(const Crossing& crossing, const Finding& finding);

/// What was said of this finding, whether it still holds or has lapsed; none: nothing was.
const Mute* mute_of(const Crossing& crossing, const Finding& finding);

/// Whether somebody may come to harm over it, so that the headline names it though it is muted: what the tool may hit
/// or lay bare, a pit that may fall in or fill, air under too much pressure. Notes never.
/// Source: our default.
bool can_hurt_people(const Finding& finding);

}  // namespace burrow
