#include "burrow/day/permit_lines.h"

#include <algorithm>

#include "burrow/crossing/display_name.h"
#include "burrow/crossing/find.h"
#include "burrow/crossing/statement.h"
#include "burrow/day/start_gate.h"

namespace burrow {

namespace {

Phrase or_none(const std::string& text) {
  return says_something(text) ? Phrase(text) : Phrase(translatable("not entered"));
}

bool that_day(const std::optional<std::string>& date, const std::optional<Date>& on) {
  return date && on && date_of(*date) == *on;
}

/// Something that is under pressure and has a valve in the street.
bool has_valve(UtilityKind kind) {
  switch (kind) {
    case UtilityKind::gas:
    case UtilityKind::water:
    case UtilityKind::steam:
    case UtilityKind::oil:
    case UtilityKind::reclaimed:
      return true;
    default:
      return false;
  }
}

class Lines {
 public:
  Lines(const Crossing& crossing, const Assessment& assessment, const std::optional<Date>& on)
      : crossing_(crossing), permit_(crossing.permit), assessment_(assessment), on_(on) {}

  std::vector<PermitLine> all() {
    ticket();
    for (const std::string& owner : owners_here(crossing_)) of_owner(owner);
    unnamed_owners();
    exposures();
    permissions();
    pits();
    daily();
    phone("permit.emergency-number", translatable("Emergency number"), permit_.emergency_phone);
    phone("permit.locating-number", translatable("Number of the locating service"), permit_.locating_phone);
    phone("permit.air-valve", translatable("At the air valve, with a radio to the watcher"), permit_.at_air_valve);
    phone("permit.watcher", translatable("Watcher at the exit: at the surface, off the line"), permit_.at_exit);
    signature("permit.supervisor", translatable("Go, signed by the supervisor"), permit_.supervisor);
    signature("permit.crew", translatable("Go, signed for the crew"), permit_.crew);
    return std::move(lines_);
  }

 private:
  void add(std::string_view code, Phrase what, Phrase found, PermitState state) {
    lines_.push_back({code, std::move(what), std::move(found), state, {}});
  }
  static PermitState holds(bool it_does) { return it_does ? PermitState::holds : PermitState::open; }

  /// Requested, in force, with its marks: what has run out cannot be taken on.
  void ticket() {
    const UtilitySearch& search = crossing_.site.utility_search;
    const bool force = in_force(search, on_), marks = search.marks_visible.value_or(false);
    Phrase found = phrase(translatable("{}, requested {}, valid {} to {}"), or_none(search.reference),
                          or_none(search.date.value_or("")), or_none(search.valid_from.value_or("")),
                          or_none(search.valid_to.value_or("")));
    if (!force)
      found = phrase(translatable("does not hold on this day: {}"), found);
    else if (!marks)
      found = phrase(translatable("its marks cannot be seen: {}"), found);
    const bool known = says_something(search.reference) && search.date;
    add("permit.ticket", translatable("Locate ticket"), found,
        !force || !marks || !search.done.value_or(false) ? PermitState::blocks : holds(known));
  }

  void of_owner(const std::string& owner) {
    const OwnerContact contact = contact_of(permit_, owner);
    const Statement& answer = contact.answered;
    const bool answered = vouched(answer, on_);
    add("permit.answered", phrase(translatable("Positive response of {}"), owner),
        answered ? phrase("{} ({}, {})", answer.how, answer.by, *answer.date)
                 : Phrase(translatable("nobody has entered what they answered, who, when")),
        holds(answered));
    phone("permit.owner-number", phrase(translatable("Number of {}"), owner), contact.phone);
    const bool valve = std::any_of(crossing_.site.utilities.begin(), crossing_.site.utilities.end(),
                                   [&](const Utility& u) { return u.owner == owner && has_valve(u.kind); });
    if (valve || says_something(contact.valve))
      phone("permit.valve", phrase(translatable("Where {} is shut off"), owner), contact.valve);
  }

  /// A line that is nobody's answers nobody.
  void unnamed_owners() {
    for (const Utility& utility : crossing_.site.utilities)
      if (!says_something(utility.owner) && utility.status.value != UtilityStatus::abandoned)
        add("permit.owner", phrase(translatable("Owner of {}"), display_name(utility)), translatable("not entered"),
            PermitState::open);
  }

  void exposures() {
    for (const UtilityAnswer& utility : assessment_.utilities) {
      const Utility* drawn = find_by_id(crossing_.site.utilities, utility.id);
      const Phrase name = drawn ? display_name(*drawn) : Phrase(utility.id);
      if (to_be_exposed(assessment_, utility))
        add("permit.exposed", phrase(translatable("Exposed: {}"), name),
            translatable("nobody has exposed it where the bore passes"), PermitState::blocks);
    }
    for (const TestHole& hole : crossing_.site.test_holes) {
      const Utility* drawn = find_by_id(crossing_.site.utilities, hole.utility);
      const Phrase what = phrase(translatable("Exposed: {}"), drawn ? display_name(*drawn) : Phrase(hole.id));
      const bool told = says_something(hole.by) && dated(hole.date, on_) && hole.elevation;
      if (!told) {
        add("permit.exposed", what, translatable("who measured it, when, and its level are not all entered"),
            PermitState::open);
        continue;
      }
      const Phrase by = phrase(translatable("measured by {}, {}"), hole.by, *hole.date);
      const bool photo = says_something(hole.photo);
      add("permit.exposed", what,
          photo ? phrase(translatable("{}; photo {}"), by, hole.photo) : phrase(translatable("{}; no photo"), by),
          holds(photo));
      lines_.back().level_m = hole.elevation->m;
    }
  }

  void permissions() {
    for (const SurfaceFeature& feature : crossing_.site.surface) {
      const bool owned =
          feature.kind == SurfaceKind::road || feature.kind == SurfaceKind::track || feature.kind == SurfaceKind::ditch;
      if (!owned && feature.permission.value == Permission::not_asked) continue;
      const Phrase what = phrase(translatable("Permission of the owner of {}"), display_name(feature));
      if (feature.permission.value == Permission::refused)
        add("permit.permission", what, translatable("refused"), PermitState::open);
      else
        add("permit.permission", what, or_none(feature.permit),
            holds(feature.permission.value == Permission::allowed && says_something(feature.permit)));
    }
  }

  void pits() {
    const Statement& seen = permit_.pits_inspected;
    const bool today = says_something(seen.by) && that_day(seen.date, on_);
    add("permit.pits", translatable("Pits inspected today by the competent person"),
        today             ? phrase("{}, {}", seen.by, *seen.date)
        : seen.by.empty() ? Phrase(translatable("not entered"))
                          : phrase(translatable("{}, but not today"), seen.by),
        holds(today));
  }

  void daily() {
    const DailyCheck& check = permit_.daily;
    const bool today = says_something(check.by) && that_day(check.date, on_);
    for (const auto& [item, word] : EnumNames<DailyItem>::list) {
      const bool done = today && std::find(check.done.begin(), check.done.end(), word) != check.done.end();
      add("permit.daily", words_of_daily(item),
          done ? phrase("{}, {}", check.by, *check.date) : Phrase(translatable("not looked at today")), holds(done));
    }
  }

  void phone(std::string_view code, Phrase what, const std::string& entered) {
    add(code, std::move(what), or_none(entered), holds(says_something(entered)));
  }

  void signature(std::string_view code, Phrase what, const GoSigned& sign) {
    if (sign.decision == GoDecision::no_go && !sign.date)
      return add(code, std::move(what), translatable("NO-GO, without a day"), PermitState::blocks);
    const bool today =
        sign.decision && (says_something(sign.by) || sign.decision == GoDecision::no_go) && that_day(sign.date, on_);
    if (!today) return add(code, std::move(what), translatable("not signed today"), PermitState::open);
    if (*sign.decision == GoDecision::no_go)
      return add(code, std::move(what), phrase(translatable("NO-GO, {}, {}"), sign.by, *sign.date),
                 PermitState::blocks);
    add(code, std::move(what), phrase("{}, {}", sign.by, *sign.date), PermitState::holds);
  }

  const Crossing& crossing_;
  const Permit& permit_;
  const Assessment& assessment_;
  const std::optional<Date>& on_;
  std::vector<PermitLine> lines_;
};

}  // namespace

std::vector<PermitLine> permit_lines(const Crossing& crossing, const Assessment& assessment,
                                     const std::optional<Date>& on) {
  return Lines(crossing, assessment, on).all();
}

int open_lines(const std::vector<PermitLine>& lines) {
  return static_cast<int>(
      std::count_if(lines.begin(), lines.end(), [](const PermitLine& l) { return l.state != PermitState::holds; }));
}

bool signed_no_go(const Permit& permit, const std::optional<Date>& on) {
  const auto against = [&](const GoSigned& sign) {
    return sign.decision == GoDecision::no_go && (!sign.date || that_day(sign.date, on));
  };
  return against(permit.supervisor) || against(permit.crew);
}

std::vector<std::string> owners_here(const Crossing& crossing) {
  std::vector<std::string> all;
  const auto add = [&](const std::string& owner) {
    if (says_something(owner) && std::find(all.begin(), all.end(), owner) == all.end()) all.push_back(owner);
  };
  for (const Utility& utility : crossing.site.utilities) add(utility.owner);
  for (const OwnerContact& contact : crossing.permit.owners) add(contact.owner);
  return all;
}

OwnerContact contact_of(const Permit& permit, const std::string& owner) {
  for (const OwnerContact& contact : permit.owners)
    if (contact.owner == owner) return contact;
  OwnerContact none;
  none.owner = owner;
  return none;
}

Phrase words_of_daily(DailyItem item) {
  switch (item) {
    case DailyItem::compressor:
      return translatable("Compressor: runs, shuts down, stands level and chocked");
    case DailyItem::pressure:
      return translatable("Pressure set at the regulator, read at the gauge");
    case DailyItem::oil:
      return translatable("Oil in the lubricator, drops seen");
    case DailyItem::hoses:
      return translatable("Hoses and couplings: whole, pinned");
    case DailyItem::whip_restraints:
      return translatable("Whip restraint at every coupling");
    case DailyItem::tape_marks:
      return translatable("Tape marks on the hose, counted from the tail");
    case DailyItem::tool:
      break;
  }
  return translatable("Tool: runs free, reverses, nothing cracked");
}

}  // namespace burrow
