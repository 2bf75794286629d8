#include "burrow/words/run_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "burrow/crew/checklist.h"
#include "burrow/language/say.h"

namespace burrow {

namespace {

std::string number(const std::optional<double>& value, Dimension dimension, UnitSystem units) {
  return value ? format(*value, dimension, units) : "–";
}

std::string surface_name(const Crossing& crossing, const std::string& id) {
  for (const SurfaceFeature& feature : crossing.site.surface)
    if (feature.id == id) return feature.name.empty() ? translated_word(feature.kind) : feature.name;
  return id;
}

}  // namespace

std::string air_words(const AirAnswer& air, UnitSystem units) {
  const std::string at_tool = number(air.pressure_at_tool_Pa, Dimension::air_pressure, units);
  const std::string free_air = number(air.free_air_m3_s, Dimension::flow, units);
  const std::string with = number(air.pressure_worked_with_Pa, Dimension::air_pressure, units);
  std::string text;
  if (!air.supply)
    text = say("pressure at the tool not worked out ({}); {} taken", translated_phrase(air.not_judged), with);
  else if (air.pressure_typed)
    text = say("{} at the tool, {} of free air ({} as typed counts)", at_tool, free_air, with);
  else
    text = say("{} at the tool, {} of free air", at_tool, free_air);
  const std::string fill = format(air.oil.first_fill.m3, Dimension::small_volume, units);
  text += "; " + (air.oil.for_nine_in_ten ? say("oil {} and up to {} more", fill,
                                                format(air.oil.for_nine_in_ten->m3, Dimension::small_volume, units))
                                          : say("oil {}", fill));
  if (air.oil.look_every)
    text += ", " + say("look at it every {}", format(air.oil.look_every->s, Dimension::duration, units));
  return text;
}

namespace {

/// The clear gap, as the verdict says it; between axes only where no gap is known, and then it is named.
std::string apart_words(const MarkNear& near, UnitSystem units) {
  if (!near.above_m) return translated("depth not known");
  const bool above = *near.above_m >= 0;
  if (near.clear_m && *near.clear_m <= 0) return above ? translated("meets it, above") : translated("meets it, below");
  const std::string apart = format(near.clear_m.value_or(std::abs(*near.above_m)), Dimension::length, units);
  if (near.clear_m) return above ? say("{} clear, above", apart) : say("{} clear, below", apart);
  return above ? say("{} above, axis to axis", apart) : say("{} below, axis to axis", apart);
}

}  // namespace

std::string near_words(const MarkNear& near, UnitSystem units) {
  const auto length = [&](double v) { return format(std::abs(v), Dimension::length, units); };
  const std::string where = apart_words(near, units);
  const std::string along = length(near.ahead_m);
  return fmt::format("{}: {}, {}", near.name.empty() ? near.id : near.name, where,
                     near.ahead_m >= 0 ? say("in {}", along) : say("passed by {}", along));
}

namespace {

/// A long name by its beginning and its last word, which is often its number: "gas main … 07".
std::string short_name(const std::string& name) {
  constexpr std::size_t longest = 26, head = 14;
  if (name.size() <= longest) return name;
  const std::size_t last = name.find_last_of(' ');
  std::size_t end = name.find_last_of(' ', head);
  if (last == std::string::npos || end == std::string::npos || last <= end || name.size() - last > head) {
    // One long word: cut between letters, never within one.
    end = longest - 4;
    while (end > 0 && (static_cast<unsigned char>(name[end]) & 0xC0) == 0x80) --end;
    return name.substr(0, end) + "…";
  }
  return name.substr(0, end) + " …" + name.substr(last);
}

std::string near_in_short(const MarkNear& near, UnitSystem units) {
  const std::string name = short_name(near.name.empty() ? near.id : near.name);
  if (!near.above_m) return say("{}, depth not known", name);
  return fmt::format("{} {}", name, apart_words(near, units));
}

}  // namespace

std::string mark_in_short(const Mark& mark, UnitSystem units) {
  const auto has = [&](MarkTask task) {
    return std::find(mark.tasks.begin(), mark.tasks.end(), task) != mark.tasks.end();
  };
  const bool stop = has(MarkTask::stop_until_exposed);
  constexpr int most = 2;
  std::string names;
  int count = 0;
  for (const MarkNear& near : mark.near) {
    if (near.ahead_m < 0 || (stop && !near.expose)) continue;  // behind; for later, when it goes on
    if (++count > most) continue;
    names += (names.empty() ? "" : "; ") + near_in_short(near, units);
  }
  if (count > most) names += "; " + say_count("{} more", "{} more", count - most);
  std::string what = names;
  if (names.empty())
    what = stop ? translated("STOP until it is exposed") : has(MarkTask::slow_down) ? translated("slow") : "";
  else if (stop)
    what = say("STOP: expose {}", names);
  else if (has(MarkTask::look))
    what = say("slow, watch in hole: {}", names);
  else if (has(MarkTask::slow_down))
    what = say("slow: {}", names);
  std::string text = has(MarkTask::check_alignment) ? translated("check line, level") : "";
  const auto add = [&](const std::string& more) {
    if (!more.empty()) text += (text.empty() ? "" : "; ") + more;
  };
  add(what);
  if (has(MarkTask::prepare_arrival)) add(translated("exit pit empty"));
  return text;
}

std::string task_words(const Mark& mark, const Crossing& crossing) {
  std::string text;
  for (const MarkTask task : mark.tasks) {
    if (!text.empty()) text += "; ";
    text += translated_phrase(words_of_task(task));
    if (task != MarkTask::check_heave) continue;
    for (std::size_t i = 0; i < mark.under.size(); ++i)
      text += (i == 0 ? ": " : ", ") + surface_name(crossing, mark.under[i]);
  }
  return text;
}

std::string mark_words(const Mark& mark, const Crossing& crossing, UnitSystem units) {
  const auto length = [&](const std::optional<double>& v) { return number(v, Dimension::length, units); };
  const auto time = [&](const std::optional<double>& v) { return number(v, Dimension::duration, units); };
  std::string text = mark.hose_m ? say("hose {}", length(mark.hose_m)) : translated("no hose yet");
  text += ": " + say("nose {}, depth {} ({} to {})", length(mark.nose_m), length(mark.depth_m),
                     length(mark.depth_low_m), length(mark.depth_high_m));
  text += ", ";
  text += mark.time_s.p50 ? say("{} ({} to {})", time(mark.time_s.p50), time(mark.time_s.p10), time(mark.time_s.p90))
                          : translated("would have stopped");
  for (const MarkNear& near : mark.near) text += "; " + near_words(near, units);
  if (!mark.tasks.empty()) text += "; " + task_words(mark, crossing);
  return text;
}

}  // namespace burrow
