#include "burrow/words/day_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "burrow/base/decimal_mark.h"
#include "burrow/crew/checklist.h"
#include "burrow/language/say.h"
#include "burrow/words/working_text.h"

namespace burrow {

namespace {

std::string length(double value, UnitSystem units) {
  return format(value, Dimension::length, units);
}
std::string chance(double value, UnitSystem units) {
  return format(value, Dimension::chance, units);
}

/// Who is near, for a sentence: "the gas main", "the gas main and 2 more".
std::string near_names(const DayAnswer& day) {
  if (day.near.empty()) return translated("a service");
  std::string first = translated_phrase(day.near.front().name);
  if (day.near.size() == 1) return first;
  return say_count("{1} and {0} more", "{1} and {0} more", day.near.size() - 1, first);
}

std::string listed(const std::vector<Phrase>& names) {
  std::string all;
  for (const Phrase& name : names) all += (all.empty() ? "" : ", ") + translated_phrase(name);
  return all;
}

bool broken(const DayAnswer& day, std::string_view code) {
  return std::any_of(day.reasons.begin(), day.reasons.end(),
                     [&](const DayReason& r) { return r.broken && r.code == code; });
}

std::string open_tasks(const DayAnswer& day) {
  std::string all;
  for (const DayTask& task : day.tasks)
    if (!task.done && task.task != MarkTask::stop_until_exposed)
      all += (all.empty() ? "" : "; ") + translated_phrase(words_of_task(task.task));
  return all;
}

std::string stop_and_look_text(const DayAnswer& day) {
  if (!day.near.empty())
    return say("Shut the air and look. Do not drive back: {} is near and nobody has exposed it.", near_names(day));
  if (broken(day, "day.heave"))
    return translated("Shut the air. Keep people and traffic off the ground that rose, and tell its owner.");
  if (broken(day, "day.pressure-low"))
    return translated("Shut the air. Look at compressor, hose and couplings before the tool runs on.");
  return translated("Shut the air and look: locate the tool, look at the hose and the ground, then decide.");
}

std::string go_on_text(const DayAnswer& day) {
  if (!day.near.empty())
    return say("Go slowly and listen: {} is near and nobody has exposed it. Read the next mark.", near_names(day));
  if (const auto open = std::find_if(day.reasons.begin(), day.reasons.end(),
                                     [](const DayReason& r) { return r.broken && r.code == "day.permit"; });
      open != day.reasons.end())
    return say_count(
        "{} line of the permit to bore is open: fill it in now. Nothing read so far speaks against going on.",
        "{} lines of the permit to bore are open: fill them in now. Nothing read so far speaks against "
        "going on.",
        static_cast<long>(open->measured));
  return translated("Nothing read so far speaks against going on. Read the next mark.");
}

}  // namespace

std::string advice_title(Advice advice) {
  switch (advice) {
    case Advice::as_taken_on:
      return translated("Only as taken on");
    case Advice::do_tasks:
      return translated("First do this");
    case Advice::stop_and_look:
      return translated("Stop and look");
    case Advice::record_only:
      return translated("Do not bore: record only");
    case Advice::stop_until_exposed:
      return translated("Stop until it is exposed");
    case Advice::leave_and_expose:
      return translated("Stop, leave the tool, expose");
    case Advice::back_out:
      return translated("Back out");
    case Advice::get_out:
      return translated("Everybody out");
    case Advice::go_on:
      break;
  }
  return translated("Go on");
}

std::string advice_title(const DayAnswer& day) {
  if (!day.advice) return {};
  if (*day.advice == Advice::go_on && broken(day, "day.permit")) return translated("Go on, but the permit is open");
  return advice_title(*day.advice);
}

std::string advice_text(const DayAnswer& day, UnitSystem units) {
  if (!day.advice) return day.ended ? translated("The bore has ended.") : translated("Not started.");
  switch (*day.advice) {
    case Advice::go_on:
      return go_on_text(day);
    case Advice::as_taken_on:
      return translated("The verdict stands against this bore; a named person took it on. Read the next mark.");
    case Advice::do_tasks: {
      const std::string tasks = open_tasks(day);
      return tasks.empty() ? translated("A reading cannot well be: confirm it or strike it through.")
                           : say("{}. Then tick it off.", tasks);
    }
    case Advice::stop_and_look:
      return stop_and_look_text(day);
    case Advice::record_only:
      return translated(
          "Shut the air. No advice is given on this bore; what is done all the same is written down and proves "
          "nothing.");
    case Advice::stop_until_exposed:
      return say("Shut the air. The tool does not go on, nor back, until {} is exposed and that is entered.",
                 day.to_expose.empty() ? near_names(day) : listed(day.to_expose));
    case Advice::leave_and_expose:
      return say(
          "Stop. Shut the air. Do not drive back. Leave tool and hose where they are, expose {} by hand, call its "
          "owner.",
          near_names(day));
    case Advice::back_out:
      return say(
          "Back out while the hole stands, then start again in fresh ground at least {} aside (5 tool diameters, from "
          "memory), or the tool follows the old hole.",
          length(day.restart_aside_m, units));
    case Advice::get_out:
      return translated(
          "Everybody out of the pits and upwind. Take it as gas and as live power. Touch nothing of metal. Do not go "
          "back for valve, compressor or laptop. Ring the emergency number, then the owners.");
  }
  return {};
}

namespace {

/// A sentence about a place, with its station where there is one.
std::string at_station(std::string sentence, const DayReason& r, UnitSystem units) {
  if (!r.station_m) return sentence;
  return say("{} (station {})", sentence, format(*r.station_m, Dimension::station, units));
}

}  // namespace

namespace {

/// What verdict and run sheet ask for.
std::string gate_text(const DayReason& r, UnitSystem units) {
  const auto measured = static_cast<long>(r.measured);
  if (r.code == "day.verdict") {
    const std::string verdict = translated_phrase(r.name);
    return r.leads_to == Advice::as_taken_on
               ? say_count("verdict {1}: {0} finding, taken on by a named person",
                           "verdict {1}: {0} findings, taken on by a named person", measured, verdict)
               : say_count("verdict {1}: {0} finding that nobody took on",
                           "verdict {1}: {0} findings that nobody took on", measured, verdict);
  }
  if (r.code == "day.no-go") return translated("no-go was signed for this day, and nobody can take that on");
  if (r.code == "day.permit")
    return say_count("{} line of the permit to bore is open", "{} lines of the permit to bore are open", measured);
  if (r.code == "day.expose")
    return at_station(say("{} is not exposed, and nobody can take that on", translated_phrase(r.name)), r, units);
  if (r.code == "day.tasks")
    return r.broken ? say_count("{} task of this mark is open", "{} tasks of this mark are open", measured)
                    : translated("the tasks of this mark are done");
  if (r.code == "day.no-path") return translated("no path is known, and so nothing can be said");
  if (r.code == "day.not-arrived")
    return say("by its hose it is {} past the exit face, and nobody has entered that it came out",
               length(r.measured, units));
  return {};
}

/// What the crew noticed.
std::string sign_text(const DayReason& r, UnitSystem units) {
  if (r.code == "day.danger") return say("danger: {}", translated_phrase(r.name));
  if (r.code == "day.note") return say("a note may mean danger: “{}”", translated_phrase(r.name));
  if (r.code == "day.ended") return say("the bore ended: {}", translated_phrase(r.name));
  if (r.code == "day.early-end")
    return say("it is said to have arrived with the nose at {} of {}: confirm it or strike it through",
               length(r.measured, units), length(r.limit, units));
  if (r.code == "day.query")
    return say("a reading ({}) cannot well be: confirm it or strike it through", translated_phrase(r.name));
  if (r.code == "day.heave" || r.code == "day.heave-caution")
    return at_station(
        say("{} moved by {} at a peg, {} at most", translated_phrase(r.name),
            format(r.measured, Dimension::small_length, units), format(r.limit, Dimension::small_length, units)),
        r, units);
  const auto pressure = [&](double Pa) { return format(Pa, Dimension::air_pressure, units); };
  if (r.code == "day.pressure-low")
    return say("{} at the tool, {} at least expected", pressure(r.measured), pressure(r.limit));
  if (r.code == "day.pressure-high") return say("{} at the tool, {} at most", pressure(r.measured), pressure(r.limit));
  return gate_text(r, units);
}

}  // namespace

std::string reason_text(const DayReason& r, UnitSystem units) {
  if (r.code == "day.near")
    return say(
        "{} is {} clear of the nose and not exposed, nearer than {} or within its own doubt: never drive back here",
        translated_phrase(r.name), length(r.measured, units), length(r.limit, units));
  if (r.code == "day.odd")
    return say("the last reading is {} times its usual spread from what was expected, {} at most",
               fixed_text(r.measured, 1), fixed_text(r.limit, 1));
  if (r.code == "day.rate")
    return say("the tool goes faster or slower than expected: chance {} that the ground has changed, {} at most",
               chance(r.measured, units), chance(r.limit, units));
  if (r.code == "day.contact")
    return at_station(say("chance to touch {} ahead {}, {} at most", translated_phrase(r.name),
                          chance(r.measured, units), chance(r.limit, units)),
                      r, units);
  if (r.code == "day.depth-unknown")
    return at_station(say("where {} lies ahead is not known well enough: a chance to touch it cannot be given",
                          translated_phrase(r.name)),
                      r, units);
  if (r.code == "day.gap")
    return at_station(
        say("the path as it is read passes {} with a clear gap of {}, {} required, and nobody has exposed "
            "it",
            translated_phrase(r.name), length(r.measured, units), length(r.limit, units)),
        r, units);
  if (r.code == "day.cover")
    return at_station(
        say("least cover ahead {}, more than {} required", length(r.measured, units), length(r.limit, units)), r,
        units);
  const std::string signs = sign_text(r, units);
  if (!signs.empty()) return signs;
  if (r.code == "day.ticket")
    return r.broken ? translated("the utility search does not hold on this day, or its marks cannot be seen")
                    : translated("the utility search holds on this day, and its marks can be seen");
  return say("chance to arrive in the exit pit {}, {} required", chance(r.measured, units), chance(r.limit, units));
}

std::string next_text(const NextReading& next, UnitSystem units) {
  const std::string turn =
      next.decides.empty() ? "" : "; " + say("chance that it turns the advice {}", chance(next.chance_to_turn, units));
  if (next.kind == NextReadingKind::expose) return say("expose {}", translated_phrase(next.name)) + turn;
  const char* what =
      next.kind == NextReadingKind::fix ? translated("a location here") : translated("a level on the tail now");
  return say("{} leaves the arrival uncertain by ± {} across and ± {} up or down (two in three)", what,
             length(next.sd_lateral_m, units), length(next.sd_vertical_m, units)) +
         turn;
}

std::string left_out_text(const ReadingLeftOut& left_out, const DayRecord& record) {
  const std::string kind = left_out.reading < record.readings.size()
                               ? translated_word(record.readings[left_out.reading].kind)
                               : std::string(translated("reading"));
  switch (left_out.trouble) {
    case ReadingTrouble::beyond_path:
      return say("{}: beyond the predicted path, or where the tool has not been", kind);
    case ReadingTrouble::no_nose:
      return say("{}: nobody wrote how far in the nose was", kind);
    case ReadingTrouble::runs_back:
      return say("{}: behind an earlier mark, and no reversal written", kind);
    case ReadingTrouble::no_value:
      break;
  }
  return say("{}: no value written", kind);
}

std::string odd_rate_text(const std::vector<OddRateChance>& odds, UnitSystem units) {
  if (odds.empty() || odds.front().what == OddRate::as_before) return {};
  std::string text;
  for (const OddRateChance& odd : odds) {
    if (odd.what == OddRate::as_before || odd.chance < 0.02) continue;
    text += fmt::format("{}{} {}", text.empty() ? "" : ", ", translated_word(odd.what), chance(odd.chance, units));
  }
  return text;
}

std::vector<DayLine> day_lines(const DayAnswer& day, const Crossing& crossing, UnitSystem units) {
  std::vector<DayLine> lines;
  const auto add = [&](std::string what, std::string value) { lines.push_back({std::move(what), std::move(value)}); };
  add(translated("advice"), (day.advice ? advice_title(day) + ". " : "") + advice_text(day, units));
  add(translated("nose"),
      say("{} in, station {}, offset {}, level {} (± {} across, ± {} up or down)", length(day.nose_m, units),
          format(day.nose.x_m, Dimension::station, units), format(day.nose.y_m, Dimension::station, units),
          format(day.nose.z_m, Dimension::station, units), length(day.nose.sd_lateral_m, units),
          length(day.nose.sd_vertical_m, units)));
  if (day.ended && day.how != EndHow::arrived) {
    add(translated("arrives"), translated("no more: it was given up"));
  } else if (day.arrival.offset_m) {
    add(translated("arrives"),
        say("offset {}, level {} (± {} across, ± {} up or down)",
            format(*day.arrival.offset_m, Dimension::station, units),
            format(*day.arrival.elevation_m, Dimension::station, units), length(*day.arrival.sd_lateral_m, units),
            length(*day.arrival.sd_vertical_m, units)));
    add(translated("arrives in the exit pit"), chance(*day.arrival.chance_inside_exit_pit, units));
  } else {
    add(translated("arrives"), translated("the path does not reach the exit"));
  }
  if (day.bands_in_doubt) add("", translated("The true spread is wider than these bands say: run the simulation."));
  if (day.rate.left_p50_s)
    add(translated("time left"),
        say("{} (one in ten below {}, one in ten above {})", format(*day.rate.left_p50_s, Dimension::duration, units),
            format(*day.rate.left_p10_s, Dimension::duration, units),
            format(*day.rate.left_p90_s, Dimension::duration, units)));
  if (!day.layout_stands)
    add(translated("layout"), translated("changed since the start: this is judged by what was bored"));
  for (const DayReason& reason : day.reasons)
    add(reason.broken ? translated("against") : translated("for"), reason_text(reason, units));
  if (!day.rate.odds.empty())
    if (const std::string odd = odd_rate_text(day.rate.odds.back(), units); !odd.empty())
      add(translated("the pace fits"), odd);
  for (const NextReading& next : day.next) add(translated("worth knowing"), next_text(next, units));
  for (const DayRecord& record : crossing.record)
    if (record.id == day.record)
      for (const ReadingLeftOut& out : day.left_out) add(translated("not used"), left_out_text(out, record));
  return lines;
}

}  // namespace burrow
