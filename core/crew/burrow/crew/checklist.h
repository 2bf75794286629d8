#pragma once
/// What the crew does before, during and after, each with what it protects from; when to stop; what to do when a line
/// is struck. For sheet, card and panel alike.

#include <string>
#include <string_view>
#include <vector>

#include "burrow/base/enum_names.h"
#include "burrow/base/phrase.h"
#include "burrow/base/quantity_text.h"
#include "burrow/check/assessment.h"
#include "burrow/crossing/crossing.h"

namespace burrow {

enum class ChecklistPhase { before, during, after };
template <>
struct EnumNames<ChecklistPhase> {
  static constexpr std::pair<ChecklistPhase, std::string_view> list[] = {
      {ChecklistPhase::before, "before"}, {ChecklistPhase::during, "during"}, {ChecklistPhase::after, "after"}};
};

struct ChecklistItem {
  ChecklistPhase phase = ChecklistPhase::before;
  Phrase what;      ///< "Bleed the line before any coupling is opened."
  Phrase protects;  ///< "a hose that whips"
  bool operator==(const ChecklistItem&) const = default;
};

/// The usual cautions always, others where the crossing calls for them: a pit in water, a track, a building.
/// Wording ours; what it rests on: common practice (no source), the owners' and local rules govern.
/// Evidence: Checklist.*
std::vector<ChecklistItem> checklist(const Crossing& crossing, const Assessment& assessment, UnitSystem units);

/// What makes the crew shut the air at once.   Evidence: Checklist.StopSigns_*
std::vector<Phrase> stop_signs(const Crossing& crossing, const Assessment& assessment, UnitSystem units);

/// The same in a few words each, in the same order.   Evidence: Checklist.InShort_*
std::vector<Phrase> stop_signs_in_short(const Crossing& crossing, const Assessment& assessment, UnitSystem units);

/// What everybody does at once, whatever was struck, smelt or heard: what it is is often what nobody drew.
/// Source: common practice (no source).   Evidence: Checklist.FirstSteps_*
std::vector<Phrase> first_steps();

/// What to do when a line is struck, one list for each kind that lies near the bore or a pit and one for whatever else.
struct EmergencySteps {
  UtilityKind kind = UtilityKind::unknown;  ///< unknown: any line that nobody expected
  Phrase title;                             ///< "Gas"
  std::vector<Phrase> steps;
  std::vector<Phrase> in_short;     ///< the same for the front of the card, step by step
  std::vector<std::string> owners;  ///< as entered, to be rung up; may be empty
  bool operator==(const EmergencySteps&) const = default;
};
std::vector<EmergencySteps> emergency_steps(const Crossing& crossing);

/// A task of the run sheet in plain words: "slow down, watch in the test hole".
Phrase words_of_task(MarkTask task);

}  // namespace burrow
