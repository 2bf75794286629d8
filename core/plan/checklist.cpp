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
  add(reference.empty() ? translated("Call the locating service and wait for its marks; write down the reference.")
                        : say("Check that the locating reference {} still holds and the marks are there.", reference),
      translated("a line that nobody told you of"));
  add(translated("Look around for what no mark shows: meters, covers, posts, fresh patches, house drains."),
      translated("private lines, which are usually not marked"));
  if (const std::string names = to_expose(answer); !names.empty())
    add(say("Dig test holes by hand or suction down to: {}. Measure, and enter what you find.", names),
        translated("boring into a line that lies elsewhere than drawn"));
  add(translated("Slope, shore or shield both pits before anybody goes in; the competent person looks at them."),
      translated("a side that falls in"));
  if (needs(answer.launch_pit_work, "ladder") || needs(answer.exit_pit_work, "ladder"))
    add(translated("Set the ladders."), translated("being caught in a pit without a way out"));
  if (needs(answer.launch_pit_work, "air-test") || needs(answer.exit_pit_work, "air-test"))
    add(translated("Test the air in the pits before going in, and while in."), translated("gas or too little oxygen"));
  const bool power = std::any_of(crossing.site.utilities.begin(), crossing.site.utilities.end(),
                                 [](const Utility& u) { return u.kind == UtilityKind::power; });
  if (power)
    add(translated("Ask the owner of the power cable what somebody in the pit is to do if it is struck."),
        translated("a wrong step with current in the ground"));
  if (has_surface(crossing, SurfaceKind::track))
    add(translated("Have the track's owner on site and agree how trains are told."), translated("a train over ground that moves"));
  if (has_surface(crossing, SurfaceKind::road))
    add(translated("Set up the traffic signs and keep people off the line of the bore."),
        translated("traffic beside pits and over the bore"));
  if (watches_surface(answer))
    add(translated("Level the pegs above the bore and write the levels down."),
        translated("a claim that cannot be answered, heave unseen"));
  if (!answer.structures.empty())
    add(translated("Photograph walls and floors of the buildings nearby."),
        translated("a dispute about cracks that were there before"));
  add(translated("Look over hose, couplings and tool; put a restraint on every coupling and its pin in place."),
      translated("a hose that comes off and whips"));
  add(translated("Blow the hose out before it is joined to the tool, its end held down and pointing away."),
      translated("dirt in the tool, flying dirt in eyes"));
  add(translated("Fill the oil and see that mist comes out of the exhaust."), translated("a tool that seizes in the ground"));
  add(translated("Put the marks on the hose as on the run sheet."), translated("not knowing where the nose is"));
  add(translated("Set line and level, then let a second person check both."), translated("an error that grows all the way"));
  add(translated("Agree who shuts the air, and by which sign."), translated("a tool that runs on when it must stop"));
  add(translated("Eye and ear protection on, loose clothing off."), translated("flying soil, noise"));
}

void add_during(Items& items, const Assessment& answer, UnitSystem units) {
  const auto add = [&](std::string what, std::string protects) {
    items.push_back({ChecklistPhase::during, std::move(what), std::move(protects)});
  };
  add(translated("Nobody in the exit pit, nobody over the bore while air is on."),
      translated("the tool breaking out, ground that lifts"));
  add(translated("Stand beside the hose in the launch pit, never astride it."),
      translated("a hose that whips, a tool that slips back"));
  if (answer.advance.held_until_m)
    add(say("Start with the air half open and hold the tool until {} of it is in the ground.",
            format(*answer.advance.held_until_m, Dimension::length, units)),
        translated("a crooked start, a tool that jumps out"));
  else
    add(translated("Start with the air half open and hold the tool."), translated("a crooked start, a tool that jumps out"));
  add(translated("Stop when the tool is all in the ground; check line and level once more before you go on."),
      translated("a wrong line or level that can be mended now and not later"));
  add(translated("At each mark write down the time; compare with the run sheet."),
      translated("a tool that is stuck or has left its line"));
  add(translated("Do what the run sheet says at each mark: stop, slow down, look, listen, level the surface."),
      translated("passing a line unseen"));
  if (answer.air.oil.look_every)
    add(say("Look at the oil every {}; the exhaust shows a faint mist.",
            format(answer.air.oil.look_every->s, Dimension::duration, units)),
        translated("a dry tool"));
  add(translated("Shut the air and bleed the line before any coupling is opened."), translated("a hose that whips"));
  add(translated("Keep hands off hose and tool while it runs near a power cable."), translated("current along the hose"));
}

void add_after(Items& items, const Crossing& crossing, const Assessment& answer) {
  const auto add = [&](std::string what, std::string protects) {
    items.push_back({ChecklistPhase::after, std::move(what), std::move(protects)});
  };
  add(translated("Shut the air, bleed the line, then uncouple."), translated("a hose that whips"));
  add(translated("Cap the tool and the hose ends at once."), translated("dirt that wears the tool at its next start"));
  add(translated("Measure where it came out and write it down."),
      translated("drawing the pipe where it is not; a model that never learns"));
  if (crossing.pipe && crossing.pipe->insertion.value != Insertion::towed)
    add(translated("Bring the pipe in before the hole closes."), translated("boring the hole twice"));
  add(translated("Close the ends of the hole around the pipe."), translated("water and gas that follow the pipe"));
  if (watches_surface(answer))
    add(translated("Level the pegs again now, and when the ground has settled."), translated("a road that sinks weeks later"));
  const bool sewer = std::any_of(crossing.site.utilities.begin(), crossing.site.utilities.end(),
                                 [](const Utility& u) { return u.kind == UtilityKind::sewer; });
  if (sewer)
    add(translated("Send a camera through the sewers that were crossed."),
        translated("a pipe bored through a drain, found years later"));
  add(translated("Fill the pits in layers and compact them."), translated("a surface that sinks"));
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
       translated("Gas"),
       {translated("Leave tool and hose; out of the pit, upwind, and take everybody with you."),
        translated("No flame, no switch, no phone near it. Do not go back to stop an engine or the compressor."),
        translated("Stop traffic and tell the houses around."),
        translated("From a safe place ring the emergency number and the owner."),
        translated("Do not try to close the leak; do not fill the pit. Nobody goes back until the owner says so.")},
       {translated("Leave all; out, upwind."), translated("No flame, no switch, no phone."), translated("Stop traffic, warn the houses."),
        translated("Ring from afar; stay away.")}},
      {UtilityKind::power,
       translated("Power"),
       {translated("Take it as live, even when nothing is seen and the fuse has gone."),
        translated("Touch nothing: neither tool, hose, compressor nor pipe. Who sits on a machine stays there unless it "
             "burns."),
        translated("Who is in the pit does what was agreed with the owner of the cable before the start."),
        translated("Stay away from the pit and keep everybody away. Ring the emergency number and the owner."),
        translated("Nobody comes near until the owner says it is dead.")},
       {translated("Live, whatever it looks like."), translated("Touch nothing. On a machine: stay unless it burns."),
        translated("In the pit: do as agreed."), translated("All away; ring the owner.")}},
      {UtilityKind::steam,
       translated("Steam"),
       {translated("Shut the air and get out of the pit."),
        translated("Keep everybody away from the steam and from the ground around it."), translated("Ring the owner.")}},
      {UtilityKind::water,
       translated("Water"),
       {translated("Shut the air and get out of the pit: it fills and its sides wash away."),
        translated("Keep people and machines off the edge."), translated("Ring the owner.")}},
      {UtilityKind::sewer,
       translated("Sewer or drain"),
       {translated("Shut the air. Nobody into the pit: bad air, infection."),
        translated("Ring the owner; have it looked at by camera.")}},
      {UtilityKind::telecom,
       translated("Cable or fibre"),
       {translated("Shut the air. Do not look into the ends of a fibre."), translated("Ring the owner; do not join it yourself.")}},
      {UtilityKind::unknown,
       translated("Whatever it is"),
       {translated("Shut the air. Do not reverse: leave tool and hose."),
        translated("Take it as live, full and dangerous until its owner is "
             "known."),
        translated("Everybody away; ring the emergency services if anything escapes, else the locating service.")},
       {translated("Air off, do not reverse, all away, ring.")}}};
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
      translated("The hose stops going in, or goes in much faster or slower than the run sheet says."),
      translated("The sound or the shaking changes: metal, plastic, hollow."),
      translated("Water, gas, smell or smoke from either pit or along the line."),
      translated("Anything at the surface lifts, cracks or sinks."),
      translated("Lights, phones or water nearby fail."),
      translated("Anybody steps into the exit pit or over the bore, or is no longer in sight.")};
  if (const std::string names = to_expose(assessment); !names.empty())
    signs.insert(signs.begin(), say("The next mark passes a utility that nobody has exposed: {}.", names));
  if (const auto& limit = assessment.surface.limit_m; limit && !crossing.site.surface.empty())
    signs.push_back(say("A peg has risen by {}.", format(*limit, Dimension::small_length, units)));
  return signs;
}

std::vector<std::string> stop_signs_in_short(const Crossing& crossing, const Assessment& assessment, UnitSystem units) {
  std::vector<std::string> signs{translated("hose stops, races, drags"), translated("new sound or shaking"),
                                 translated("water, gas, smell, smoke"), translated("ground lifts or sinks"),
                                 translated("lights or phones fail"),    translated("anyone in the way")};
  if (!to_expose(assessment).empty()) signs.insert(signs.begin(), translated("utility ahead not exposed"));
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
      return translated("stop: the tool is in, check line and level");
    case MarkTask::stop_until_exposed:
      return translated("stop until it is exposed");
    case MarkTask::slow_down:
      return translated("slow down");
    case MarkTask::look:
      return translated("look in the test hole");
    case MarkTask::listen:
      return translated("listen");
    case MarkTask::check_heave:
      return translated("level the surface");
    case MarkTask::prepare_arrival:
      break;
  }
  return translated("clear the exit pit");
}

}  // namespace burrow
