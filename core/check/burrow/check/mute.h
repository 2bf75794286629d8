#pragma once
/// Muting a finding with a reason that is kept in the file. The verdict takes it into account, see `assess()`: a muted
/// caution does not count, unless somebody may come to harm over it; a stop or something missing counts all the same.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "burrow/base/date.h"
#include "burrow/base/finding.h"
#include "burrow/base/result.h"
#include "burrow/crossing/crossing.h"

namespace burrow {

/// Who mutes, when and why.
struct MuteWords {
  std::string reason, by, date;
};

/// `Crossing::muted` with this finding muted at what it measures now and for the layout as it is now. What was said
/// before about the same finding is replaced.
/// Errors: a reason or a name without a letter or digit; a date that is no day of the calendar.   Evidence: Mute.*
Result<std::vector<Mute>> with_mute(const Crossing& crossing, const Finding& finding, const MuteWords& words);

/// `Crossing::muted` without what mutes, or once muted, this code of this subject.
std::vector<Mute> without_mute(const Crossing& crossing, const Finding& finding);

/// What was said of this finding, whether it still holds or has lapsed; none: nothing was.
const Mute* mute_of(const Crossing& crossing, const Finding& finding);

/// Why a mute does not count.
enum class MuteFault { no_reason, no_name, no_date, nothing_there, not_kept, worse, changed };

/// Reason, name and date say something, and the day is not after the one judged on; without one no day counts.
/// Evidence: Mute.WithoutReasonNameOrDate_IsVoidAndListed
std::optional<MuteFault> fault_of_words(const Mute& mute, const std::optional<Date>& on);
/// What was measured must not have got worse; where nothing was, layout, location and tool must be the same.
/// Evidence: Mute.WithoutAMeasuredValue_LapsesWithLayoutLocationAndTool, Muting.LapsesWhenItGetsWorse
std::optional<MuteFault> fault_of_matter(const Crossing& crossing, const Mute& mute, const Finding& finding);
/// "no name", "what it was given for has changed".
const char* why_void(MuteFault fault);

/// Mutes each finding that a mute of the crossing holds for; one mute, one finding. What does not hold is given back.
struct VoidMute {
  const Mute* mute = nullptr;
  MuteFault fault = MuteFault::nothing_there;
};
std::vector<VoidMute> apply_mutes(const Crossing& crossing, const std::optional<Date>& on,
                                  std::vector<Finding>& findings);

/// Whether somebody may come to harm over it, so that it counts though it is muted: what the tool may hit or lay bare,
/// anything about a utility that may hurt who strikes it, a pit that may fall in or fill, air under too much pressure.
/// Notes never.   Source: our default.   Evidence: Mute.WhatMayHurt_CountsThoughMuted
bool can_hurt_people(const Finding& finding);

/// Whether the verdict takes it into account: a stop, a gap in the data, a caution that is not muted or may hurt
/// people.
bool counts_in_verdict(const Finding& finding);

}  // namespace burrow
