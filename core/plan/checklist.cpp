#include "burrow/plan/checklist.h"
#include "burrow/base/say.h"

#include <fmt/format.h>

#include <algorithm>

namespace burrow {

namespace {

using Items = std::vector<ChecklistItem>;

bool has_surface(const Crossing& crossing, SurfaceKind kind) {
  return std::any_of(crossing.site.surface.begin(), crossing.site.surface.end(),
                     [&](const SurfaceFeature& f) { return f.kind == kind; });
}

bool needs(const PitAnswer& work, std::string_view duty) {
  return std::any_of(work.duties.begin(), work.duties.end(),
                     [&](const PitDuty& d) { return d.applies && d.code == duty; });
}

std::string named(const UtilityAnswer& u) {
  return u.name.empty() ? u.id : u.name;
}

std::string to_expose(const Assessment& answer) {
  std::string names;
  for (const UtilityAnswer& u : answer.utilities)
    if (u.expose) names += (names.empty() ? "" : ", ") + named(u);
  return names;
}

bool watches_surface(const Assessment& answer) {
  return std::any_of(answer.marks.begin(), answer.marks.end(), [](const Mark& m) { return !m.under.empty(); });
}

void add_before(Items& items, const Crossing& crossing, const Assessment& answer) {
  const auto add = [&](std::string what, std::string protects) {
    items.push_back({ChecklistPhase::before, std::move(what), std::move(protects)});
  };
  const std::string& reference = crossing.site.utility_search.reference;
  add(reference.empty() ? said("Call the locating service and wait for its marks; write down the reference.")
                        : say("Check that the locating reference {} still holds and the marks are there.", reference),
      said("a line that nobody told you of"));
  add(said("Look around for what no mark shows: meters, covers, posts, fresh patches, house drains."),
      said("private lines, which are usually not marked"));
  if (const std::string names = to_expose(answer); !names.empty())
    add(say("Dig test holes by hand or suction down to: {}. Measure, and enter what you find.", names),
        said("boring into a line that lies elsewhere than drawn"));
  add(said("Slope, shore or shield both pits before anybody goes in; the competent person looks at them."),
      said("a side that falls in"));
  if (needs(answer.launch_pit_work, "ladder") || needs(answer.exit_pit_work, "ladder"))
    add(said("Set the ladders."), said("being caught in a pit without a way out"));
  if (needs(answer.launch_pit_work, "air-test") || needs(answer.exit_pit_work, "air-test"))
    add(said("Test the air in the pits before going in, and while in."), said("gas or too little oxygen"));
  const bool power = std::any_of(crossing.site.utilities.begin(), crossing.site.utilities.end(),
                                 [](const Utility& u) { return u.kind == UtilityKind::power; });
  if (power)
    add(said("Ask the owner of the power cable what somebody in the pit is to do if it is struck."),
        said("a wrong step with current in the ground"));
  if (has_surface(crossing, SurfaceKind::track))
    add(said("Have the track's owner on site and agree how trains are told."), said("a train over ground that moves"));
  if (has_surface(crossing, SurfaceKind::road))
    add(said("Set up the traffic signs and keep people off the line of the bore."),
        said("traffic beside pits and over the bore"));
  if (watches_surface(answer))
    add(said("Level the pegs above the bore and write the levels down."),
        said("a claim that cannot be answered, heave unseen"));
  if (!answer.structures.empty())
    add(said("Photograph walls and floors of the buildings nearby."),
        said("a dispute about cracks that were there before"));
  add(said("Look over hose, couplings and tool; put a restraint on every coupling and its pin in place."),
      said("a hose that comes off and whips"));
  add(said("Blow the hose out before it is joined to the tool, its end held down and pointing away."),
      said("dirt in the tool, flying dirt in eyes"));
  add(said("Fill the oil and see that mist comes out of the exhaust."), said("a tool that seizes in the ground"));
  add(said("Put the marks on the hose as on the run sheet."), said("not knowing where the nose is"));
  add(said("Set line and level, then let a second person check both."), said("an error that grows all the way"));
  add(said("Agree who shuts the air, and by which sign."), said("a tool that runs on when it must stop"));
  add(said("Eye and ear protection on, loose clothing off."), said("flying soil, noise"));
}

void add_during(Items& items, const Assessment& answer, UnitSystem units) {
  const auto add = [&](std::string what, std::string protects) {
    items.push_back({ChecklistPhase::during, std::move(what), std::move(protects)});
  };
  add(said("Nobody in the exit pit, nobody over the bore while air is on."),
      said("the tool breaking out, ground that lifts"));
  add(said("Stand beside the hose in the launch pit, never astride it."),
      said("a hose that whips, a tool that slips back"));
  if (answer.advance.held_until_m)
    add(say("Start with the air half open and hold the tool until {} of it is in the ground.",
            format(*answer.advance.held_until_m, Dimension::length, units)),
        said("a crooked start, a tool that jumps out"));
  else
    add(said("Start with the air half open and hold the tool."), said("a crooked start, a tool that jumps out"));
  add(said("Stop when the tool is all in the ground; check line and level once more before you go on."),
      said("a wrong line or level that can be mended now and not later"));
  add(said("At each mark write down the time; compare with the run sheet."),
      said("a tool that is stuck or has left its line"));
  add(said("Do what the run sheet says at each mark: stop, slow down, look, listen, level the surface."),
      said("passing a line unseen"));
  if (answer.air.oil.look_every)
    add(say("Look at the oil every {}; the exhaust shows a faint mist.",
            format(answer.air.oil.look_every->s, Dimension::duration, units)),
        said("a dry tool"));
  add(said("Shut the air and bleed the line before any coupling is opened."), said("a hose that whips"));
  add(said("Keep hands off hose and tool while it runs near a power cable."), said("current along the hose"));
}

void add_after(Items& items, const Crossing& crossing, const Assessment& answer) {
  const auto add = [&](std::string what, std::string protects) {
    items.push_back({ChecklistPhase::after, std::move(what), std::move(protects)});
  };
  add(said("Shut the air, bleed the line, then uncouple."), said("a hose that whips"));
  add(said("Cap the tool and the hose ends at once."), said("dirt that wears the tool at its next start"));
  add(said("Measure where it came out and write it down."),
      said("drawing the pipe where it is not; a model that never learns"));
  if (crossing.pipe && crossing.pipe->insertion.value != Insertion::towed)
    add(said("Bring the pipe in before the hole closes."), said("boring the hole twice"));
  add(said("Close the ends of the hole around the pipe."), said("water and gas that follow the pipe"));
  if (watches_surface(answer))
    add(said("Level the pegs again now, and when the ground has settled."), said("a road that sinks weeks later"));
  const bool sewer = std::any_of(crossing.site.utilities.begin(), crossing.site.utilities.end(),
                                 [](const Utility& u) { return u.kind == UtilityKind::sewer; });
  if (sewer)
    add(said("Send a camera through the sewers that were crossed."),
        said("a pipe bored through a drain, found years later"));
  add(said("Fill the pits in layers and compact them."), said("a surface that sinks"));
}

struct StepsFor {
  UtilityKind kind;
  const char* title;
  std::vector<std::string> steps;
  std::vector<std::string> in_short{};  ///< empty: the steps are short
};

std::vector<StepsFor> known_steps() {
  return {
      {UtilityKind::gas,
       said("Gas"),
       {said("Leave tool and hose; out of the pit, upwind, and take everybody with you."),
        said("No flame, no switch, no phone near it. Do not go back to stop an engine or the compressor."),
        said("Stop traffic and tell the houses around."),
        said("From a safe place ring the emergency number and the owner."),
        said("Do not try to close the leak; do not fill the pit. Nobody goes back until the owner says so.")},
       {said("Leave all; out, upwind."), said("No flame, no switch, no phone."), said("Stop traffic, warn the houses."),
        said("Ring from afar; stay away.")}},
      {UtilityKind::power,
       said("Power"),
       {said("Take it as live, even when nothing is seen and the fuse has gone."),
        said("Touch nothing: neither tool, hose, compressor nor pipe. Who sits on a machine stays there unless it "
             "burns."),
        said("Who is in the pit does what was agreed with the owner of the cable before the start."),
        said("Stay away from the pit and keep everybody away. Ring the emergency number and the owner."),
        said("Nobody comes near until the owner says it is dead.")},
       {said("Live, whatever it looks like."), said("Touch nothing. On a machine: stay unless it burns."),
        said("In the pit: do as agreed."), said("All away; ring the owner.")}},
      {UtilityKind::steam,
       said("Steam"),
       {said("Shut the air and get out of the pit."),
        said("Keep everybody away from the steam and from the ground around it."), said("Ring the owner.")}},
      {UtilityKind::water,
       said("Water"),
       {said("Shut the air and get out of the pit: it fills and its sides wash away."),
        said("Keep people and machines off the edge."), said("Ring the owner.")}},
      {UtilityKind::sewer,
       said("Sewer or drain"),
       {said("Shut the air. Nobody into the pit: bad air, infection."),
        said("Ring the owner; have it looked at by camera.")}},
      {UtilityKind::telecom,
       said("Cable or fibre"),
       {said("Shut the air. Do not look into the ends of a fibre."), said("Ring the owner; do not join it yourself.")}},
      {UtilityKind::unknown,
       said("Whatever it is"),
       {said("Shut the air. Do not reverse: leave tool and hose."),
        said("Take it as live, full and dangerous until its owner is "
             "known."),
        said("Everybody away; ring the emergency services if anything escapes, else the locating service.")},
       {said("Air off, do not reverse, all away, ring.")}}};
}

UtilityKind treated_as(UtilityKind kind) {
  if (kind == UtilityKind::oil) return UtilityKind::gas;  // no flame, stay away, the owner closes it
  return kind == UtilityKind::reclaimed ? UtilityKind::water : kind;
}

}  // namespace

std::vector<ChecklistItem> checklist(const Crossing& crossing, const Assessment& assessment, UnitSystem units) {
  Items items;
  add_before(items, crossing, assessment);
  add_during(items, assessment, units);
  add_after(items, crossing, assessment);
  return items;
}

std::vector<std::string> stop_signs(const Crossing& crossing, const Assessment& assessment, UnitSystem units) {
  std::vector<std::string> signs{
      said("The hose stops going in, or goes in much faster or slower than the run sheet says."),
      said("The sound or the shaking changes: metal, plastic, hollow."),
      said("Water, gas, smell or smoke from either pit or along the line."),
      said("Anything at the surface lifts, cracks or sinks."),
      said("Lights, phones or water nearby fail."),
      said("Anybody steps into the exit pit or over the bore, or is no longer in sight.")};
  if (const std::string names = to_expose(assessment); !names.empty())
    signs.insert(signs.begin(), say("The next mark passes a utility that nobody has exposed: {}.", names));
  if (const auto& limit = assessment.surface.limit_m; limit && !crossing.site.surface.empty())
    signs.push_back(say("A peg has risen by {}.", format(*limit, Dimension::small_length, units)));
  return signs;
}

std::vector<std::string> stop_signs_in_short(const Crossing& crossing, const Assessment& assessment, UnitSystem units) {
  std::vector<std::string> signs{said("hose stops, races, drags"), said("new sound or shaking"),
                                 said("water, gas, smell, smoke"), said("ground lifts or sinks"),
                                 said("lights or phones fail"),    said("anyone in the way")};
  if (!to_expose(assessment).empty()) signs.insert(signs.begin(), said("utility ahead not exposed"));
  if (const auto& limit = assessment.surface.limit_m; limit && !crossing.site.surface.empty())
    signs.push_back(say("peg up {}", format(*limit, Dimension::small_length, units)));
  return signs;
}

std::vector<EmergencySteps> emergency_steps(const Crossing& crossing) {
  std::vector<EmergencySteps> all;
  for (const StepsFor& known : known_steps()) {
    EmergencySteps steps{
        known.kind, known.title, known.steps, known.in_short.empty() ? known.steps : known.in_short, {}};
    bool near =
        known.kind == UtilityKind::unknown || known.kind == UtilityKind::gas || known.kind == UtilityKind::power;
    for (const Utility& u : crossing.site.utilities) {
      if (treated_as(u.kind) != known.kind) continue;
      near = true;
      if (!u.owner.empty() && std::find(steps.owners.begin(), steps.owners.end(), u.owner) == steps.owners.end())
        steps.owners.push_back(u.owner);
    }
    if (near) all.push_back(std::move(steps));
  }
  return all;
}

std::string_view words_of_task(MarkTask task) {
  switch (task) {
    case MarkTask::check_alignment:
      return said("stop: the tool is in, check line and level");
    case MarkTask::stop_until_exposed:
      return said("stop until it is exposed");
    case MarkTask::slow_down:
      return said("slow down");
    case MarkTask::look:
      return said("look in the test hole");
    case MarkTask::listen:
      return said("listen");
    case MarkTask::check_heave:
      return said("level the surface");
    case MarkTask::prepare_arrival:
      break;
  }
  return said("clear the exit pit");
}

}  // namespace burrow
