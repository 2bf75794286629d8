#include "burrow/crew/checklist.h"

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

bool looks(const Mark& mark) {
  return std::find(mark.tasks.begin(), mark.tasks.end(), MarkTask::look) != mark.tasks.end();
}

bool watches_surface(const Assessment& answer) {
  return std::any_of(answer.marks.begin(), answer.marks.end(), [](const Mark& m) { return !m.under.empty(); });
}

void add_before(Items& items, const Crossing& crossing, const Assessment& answer) {
  const auto add = [&](Phrase what, Phrase protects) {
    items.push_back({ChecklistPhase::before, std::move(what), std::move(protects)});
  };
  const std::string& reference = crossing.site.utility_search.reference;
  add(reference.empty()
          ? Phrase(translatable("Call the locating service and wait for its marks; write down the reference."))
          : phrase(translatable("Check that the locating reference {} still holds and the marks are there."),
                   reference),
      translatable("a line that nobody told you of"));
  add(translatable("Look around for what no mark shows: meters, covers, posts, fresh patches, house drains."),
      translatable("private lines, which are usually not marked"));
  if (const std::string names = to_expose(answer); !names.empty())
    add(phrase(translatable("Dig test holes by hand or suction to below the level of the bore at: {}. Keep them open, "
                            "measure, and enter what you find."),
               names),
        translatable("boring into a line that lies elsewhere than drawn"));
  add(translatable("Slope, shore or shield both pits before anybody goes in; the competent person looks at them."),
      translatable("a side that falls in"));
  if (needs(answer.launch_pit_work, "ladder") || needs(answer.exit_pit_work, "ladder"))
    add(translatable("Set the ladders."), translatable("being caught in a pit without a way out"));
  if (needs(answer.launch_pit_work, "air-test") || needs(answer.exit_pit_work, "air-test"))
    add(translatable("Test the air in the pits before going in, and while in."),
        translatable("gas or too little oxygen"));
  const bool power = std::any_of(crossing.site.utilities.begin(), crossing.site.utilities.end(),
                                 [](const Utility& u) { return u.kind == UtilityKind::power; });
  if (power)
    add(translatable("Ask the owner of the power cable what somebody in the pit is to do if it is struck."),
        translatable("a wrong step with current in the ground"));
  if (has_surface(crossing, SurfaceKind::track))
    add(translatable("Have the track's owner on site and agree how trains are told."),
        translatable("a train over ground that moves"));
  if (has_surface(crossing, SurfaceKind::road))
    add(translatable("Set up the traffic signs and keep people off the line of the bore."),
        translatable("traffic beside pits and over the bore"));
  if (watches_surface(answer))
    add(translatable("Shoot the pegs above the bore and write the levels down."),
        translatable("a claim that cannot be answered, heave unseen"));
  if (!answer.structures.empty())
    add(translatable("Photograph walls and floors of the buildings nearby."),
        translatable("a dispute about cracks that were there before"));
  add(translatable("Look over hose, couplings and tool; put a restraint on every coupling and its pin in place."),
      translatable("a hose that comes off and whips"));
  add(translatable("Blow the hose out before it is joined to the tool, its end held down and pointing away."),
      translatable("dirt in the tool, flying dirt in eyes"));
  add(translatable("Fill the oil and see that mist comes out of the exhaust."),
      translatable("a tool that seizes in the ground"));
  add(translatable("Put the marks on the hose as on the run sheet."), translatable("not knowing where the nose is"));
  add(translatable("Set line and level, then let a second person check both."),
      translatable("an error that grows all the way"));
  add(translatable("Agree who shuts the air, and by which sign."),
      translatable("a tool that runs on when it must stop"));
  add(translatable("Eye and ear protection on, loose clothing off."), translatable("flying soil, noise"));
}

void add_during(Items& items, const Assessment& answer, UnitSystem units) {
  const auto add = [&](Phrase what, Phrase protects) {
    items.push_back({ChecklistPhase::during, std::move(what), std::move(protects)});
  };
  add(translatable("Nobody in the exit pit, nobody over the bore while air is on."),
      translatable("the tool breaking out, ground that lifts"));
  add(translatable(
          "From 2 m before its face the exit pit is empty: the watcher stands at the surface, off the line; the "
          "ladder stays."),
      translatable("somebody in front of the tool"));
  if (std::any_of(answer.marks.begin(), answer.marks.end(), looks))
    add(translatable("Where a test hole stands open, watch the tool pass and write the gap down."),
        translatable("a line that is touched unseen"));
  add(translatable("Stand beside the hose in the launch pit, never astride it."),
      translatable("a hose that whips, a tool that slips back"));
  if (answer.advance.held_until_m)
    add(phrase(translatable("Start with the air half open and hold the tool until {} of it is in the ground."),
               format(*answer.advance.held_until_m, Dimension::length, units)),
        translatable("a crooked start, a tool that jumps out"));
  else
    add(translatable("Start with the air half open and hold the tool."),
        translatable("a crooked start, a tool that jumps out"));
  add(translatable("Stop when the tool is all in the ground; check line and level once more before you go on."),
      translatable("a wrong line or level that can be mended now and not later"));
  add(translatable("At each mark write down the time; compare with the run sheet."),
      translatable("a tool that is stuck or has left its line"));
  add(translatable("Do what the run sheet says at each mark: stop, slow down, look, listen, shoot the pegs."),
      translatable("passing a line unseen"));
  if (answer.air.oil.look_every)
    add(phrase(translatable("Look at the oil every {}; the exhaust shows a faint mist."),
               format(answer.air.oil.look_every->s, Dimension::duration, units)),
        translatable("a dry tool"));
  add(translatable("Shut the air and bleed the line before any coupling is opened."),
      translatable("a hose that whips"));
  add(translatable("Keep hands off hose and tool while it runs near a power cable."),
      translatable("current along the hose"));
}

void add_after(Items& items, const Crossing& crossing, const Assessment& answer) {
  const auto add = [&](Phrase what, Phrase protects) {
    items.push_back({ChecklistPhase::after, std::move(what), std::move(protects)});
  };
  add(translatable("Shut the air, bleed the line, then uncouple."), translatable("a hose that whips"));
  add(translatable("Cap the tool and the hose ends at once."),
      translatable("dirt that wears the tool at its next start"));
  add(translatable("Measure where it came out and write it down."),
      translatable("drawing the pipe where it is not; a model that never learns"));
  if (crossing.pipe && crossing.pipe->insertion.value != Insertion::towed)
    add(translatable("Bring the pipe in before the hole closes."), translatable("boring the hole twice"));
  add(translatable("Close the ends of the hole around the pipe."), translatable("water and gas that follow the pipe"));
  if (watches_surface(answer))
    add(translatable("Shoot the pegs again now, and when the ground has settled."),
        translatable("a road that sinks weeks later"));
  const bool sewer = std::any_of(crossing.site.utilities.begin(), crossing.site.utilities.end(),
                                 [](const Utility& u) { return u.kind == UtilityKind::sewer; });
  if (sewer)
    add(translatable("Send a camera through the sewers that were crossed."),
        translatable("a pipe bored through a drain, found years later"));
  add(translatable("Fill the pits in layers and compact them."), translatable("a surface that sinks"));
}

struct StepsFor {
  UtilityKind kind;
  const char* title;
  std::vector<Phrase> steps;
  std::vector<Phrase> in_short{};  ///< empty: the steps are short
};

std::vector<StepsFor> known_steps() {
  return {
      {UtilityKind::gas,
       translatable("Gas"),
       {translatable("Leave tool and hose; out of the pit, upwind, and take everybody with you."),
        translatable("No flame, no switch, no phone near it. Do not go back to stop an engine or the compressor."),
        translatable("Stop traffic and tell the houses around."),
        translatable("From a safe place ring the emergency number and the owner."),
        translatable("Do not try to close the leak; do not fill the pit. Nobody goes back until the owner says so.")},
       {translatable("Leave all; out, upwind."), translatable("No flame, no switch, no phone."),
        translatable("Stop traffic, warn the houses."), translatable("Ring from afar; stay away.")}},
      {UtilityKind::power,
       translatable("Power"),
       {translatable("Take it as live, even when nothing is seen and the fuse has gone."),
        translatable(
            "Touch nothing: neither tool, hose, compressor nor pipe. Who sits on a machine stays there unless it "
            "burns."),
        translatable("Who is in the pit does what was agreed with the owner of the cable before the start."),
        translatable("Stay away from the pit and keep everybody away. Ring the emergency number and the owner."),
        translatable("Nobody comes near until the owner says it is dead.")},
       {translatable("Live, whatever it looks like."),
        translatable("Touch nothing. On a machine: stay unless it burns."), translatable("In the pit: do as agreed."),
        translatable("All away; ring the owner.")}},
      {UtilityKind::steam,
       translatable("Steam"),
       {translatable("Shut the air and get out of the pit."),
        translatable("Keep everybody away from the steam and from the ground around it."),
        translatable("Ring the owner.")}},
      {UtilityKind::water,
       translatable("Water"),
       {translatable("Shut the air and get out of the pit: it fills and its sides wash away."),
        translatable("Keep people and machines off the edge."), translatable("Ring the owner.")}},
      {UtilityKind::sewer,
       translatable("Sewer or drain"),
       {translatable("Shut the air. Nobody into the pit: bad air, infection."),
        translatable("Ring the owner; have it looked at by camera.")}},
      {UtilityKind::telecom,
       translatable("Cable or fibre"),
       {translatable("Shut the air. Do not look into the ends of a fibre."),
        translatable("Ring the owner; do not join it yourself.")}},
      {UtilityKind::unknown,
       translatable("Whatever it is"),
       {translatable("Shut the air. Do not reverse: leave tool and hose."),
        translatable("Take it as live, full and dangerous until its owner is "
                     "known."),
        translatable("Everybody away; ring the emergency services if anything escapes, else the locating service.")},
       {translatable("Air off, do not reverse, all away, ring.")}}};
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

std::vector<Phrase> stop_signs(const Crossing& crossing, const Assessment& assessment, UnitSystem units) {
  std::vector<Phrase> signs{
      translatable("The hose stops going in, or goes in much faster or slower than the run sheet says."),
      translatable("The sound or the shaking changes: metal, plastic, hollow."),
      translatable("Water, gas, smell or smoke from either pit or along the line."),
      translatable("Anything at the surface lifts, cracks or sinks."),
      translatable("Lights, phones or water nearby fail."),
      translatable("Anybody steps into the exit pit or over the bore, or is no longer in sight.")};
  if (const std::string names = to_expose(assessment); !names.empty())
    signs.insert(signs.begin(),
                 phrase(translatable("The next mark passes a utility that nobody has exposed: {}."), names));
  if (const auto& limit = assessment.surface.limit_m; limit && !crossing.site.surface.empty())
    signs.push_back(phrase(translatable("A peg has risen by {}."), format(*limit, Dimension::small_length, units)));
  return signs;
}

std::vector<Phrase> stop_signs_in_short(const Crossing& crossing, const Assessment& assessment, UnitSystem units) {
  std::vector<Phrase> signs{translatable("hose stops, races, drags"), translatable("new sound or shaking"),
                            translatable("water, gas, smell, smoke"), translatable("ground lifts or sinks"),
                            translatable("lights or phones fail"),    translatable("anyone in the way")};
  if (!to_expose(assessment).empty()) signs.insert(signs.begin(), translatable("utility ahead not exposed"));
  if (const auto& limit = assessment.surface.limit_m; limit && !crossing.site.surface.empty())
    signs.push_back(phrase(translatable("peg up {}"), format(*limit, Dimension::small_length, units)));
  return signs;
}

std::vector<Phrase> first_steps() {
  return {translatable("Everybody out of the pits and upwind; count heads."),
          translatable("Take it as gas and as live power, whatever it looks like."),
          translatable("Touch nothing of metal: neither hose nor tool, fence, compressor or pipe."),
          translatable("Do not go back for valve, compressor or laptop."),
          translatable("Ring the emergency number, then the owners of all lines here.")};
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

Phrase words_of_task(MarkTask task) {
  switch (task) {
    case MarkTask::check_alignment:
      return translatable("stop: the tool is in, check line and level");
    case MarkTask::stop_until_exposed:
      return translatable("stop until it is exposed");
    case MarkTask::slow_down:
      return translatable("slow down");
    case MarkTask::look:
      return translatable("watch it pass in the open hole, write the gap down");
    case MarkTask::listen:
      return translatable("listen");
    case MarkTask::check_heave:
      return translatable("shoot the pegs");
    case MarkTask::prepare_arrival:
      break;
  }
  return translatable("exit pit empty, the ladder stays; watcher at the surface, off the line");
}

}  // namespace burrow
