#include "burrow/words/day_text.h"

#include <fmt/format.h>

#include <cmath>

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

}  // namespace

std::string advice_title(Advice advice) {
  switch (advice) {
    case Advice::stop_and_look:
      return translated("Stop and look");
    case Advice::leave_and_expose:
      return translated("Stop, leave the tool, expose");
    case Advice::back_out:
      return translated("Back out");
    case Advice::go_on:
      break;
  }
  return translated("Go on");
}

std::string advice_text(const DayAnswer& day, UnitSystem units) {
  if (!day.advice) return day.ended ? translated("The bore has ended.") : translated("Not started.");
  switch (*day.advice) {
    case Advice::go_on:
      return translated("Nothing read so far speaks against going on. Read the next mark.");
    case Advice::stop_and_look:
      return day.near.empty()
                 ? translated("Shut the air and look: locate the tool, look at the hose and the ground, then decide.")
                 : say("Shut the air and look. Do not drive back: {} is near and nobody has exposed it.",
                       near_names(day));
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

std::string reason_text(const DayReason& r, UnitSystem units) {
  if (r.code == "day.near")
    return say("{} is {} from the nose and not exposed, nearer than {} or within its own doubt: never drive back here",
               translated_phrase(r.name), length(r.measured, units), length(r.limit, units));
  if (r.code == "day.odd")
    return say("the last reading is {:.1f} standard deviations from what was expected, {:.1f} at most", r.measured,
               r.limit);
  if (r.code == "day.rate")
    return say("chance that the rate means something new {}, {} at most", chance(r.measured, units),
               chance(r.limit, units));
  if (r.code == "day.contact")
    return at_station(say("chance to touch {} ahead {}, {} at most", translated_phrase(r.name),
                          chance(r.measured, units), chance(r.limit, units)),
                      r, units);
  if (r.code == "day.depth-unknown")
    return at_station(
        say("the depth of {} ahead is not known: a chance to touch it cannot be given", translated_phrase(r.name)), r,
        units);
  if (r.code == "day.cover")
    return at_station(
        say("least cover ahead {}, more than {} required", length(r.measured, units), length(r.limit, units)), r,
        units);
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
  return say("{} leaves the arrival uncertain by {} across and {} up or down (one standard deviation)", what,
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
  add(translated("advice"), (day.advice ? advice_title(*day.advice) + ". " : "") + advice_text(day, units));
  add(translated("nose"),
      say("{} in, station {}, offset {}, level {} (± {} across, ± {} up or down)", length(day.nose_m, units),
          format(day.nose.x_m, Dimension::station, units), format(day.nose.y_m, Dimension::station, units),
          format(day.nose.z_m, Dimension::station, units), length(day.nose.sd_lateral_m, units),
          length(day.nose.sd_vertical_m, units)));
  if (day.arrival.offset_m) {
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
  for (const DayReason& reason : day.reasons)
    add(reason.broken ? translated("against") : translated("for"), reason_text(reason, units));
  if (!day.rate.odds.empty())
    if (const std::string odd = odd_rate_text(day.rate.odds.back(), units); !odd.empty())
      add(translated("the rate may mean"), odd);
  for (const NextReading& next : day.next) add(translated("worth knowing"), next_text(next, units));
  for (const DayRecord& record : crossing.record)
    if (record.id == day.record)
      for (const ReadingLeftOut& out : day.left_out) add(translated("not used"), left_out_text(out, record));
  return lines;
}

}  // namespace burrow
