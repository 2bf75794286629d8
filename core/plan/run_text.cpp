#include "burrow/plan/run_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "burrow/base/say.h"
#include "burrow/plan/checklist.h"

namespace burrow {

namespace {

std::string number(const std::optional<double>& value, Dimension dimension, UnitSystem units) {
  return value ? format(*value, dimension, units) : "–";
}

std::string surface_name(const Crossing& crossing, const std::string& id) {
  for (const SurfaceFeature& feature : crossing.site.surface)
    if (feature.id == id) return feature.name.empty() ? said_word(feature.kind) : feature.name;
  return id;
}

}  // namespace

std::string air_words(const AirAnswer& air, UnitSystem units) {
  std::string text;
  if (air.supply)
    text = say("{} at the tool, {} of free air", number(air.pressure_at_tool_pa, Dimension::air_pressure, units),
               number(air.free_air_m3_s, Dimension::flow, units));
  else
    text = say("pressure at the tool not worked out ({}); {} taken", said(std::string_view(air.not_judged)),
               number(air.pressure_worked_with_pa, Dimension::air_pressure, units));
  if (air.supply && air.pressure_typed)
    text += say(" ({} as typed counts)", number(air.pressure_worked_with_pa, Dimension::air_pressure, units));
  text += said("; oil ") + format(air.oil.first_fill.m3, Dimension::small_volume, units);
  if (air.oil.for_nine_in_ten)
    text += say(" and up to {} more", format(air.oil.for_nine_in_ten->m3, Dimension::small_volume, units));
  if (air.oil.look_every)
    text += said(", look at it every ") + format(air.oil.look_every->s, Dimension::duration, units);
  return text;
}

std::string near_words(const MarkNear& near, UnitSystem units) {
  const auto length = [&](double v) { return format(std::abs(v), Dimension::length, units); };
  const std::string where = !near.above_m        ? std::string(said("depth not known"))
                            : *near.above_m >= 0 ? length(*near.above_m) + said(" above")
                                                 : length(*near.above_m) + said(" below");
  return fmt::format("{}: {}, {} {}", near.name.empty() ? near.id : near.name, where,
                     near.ahead_m >= 0 ? "in" : said("passed by"), length(near.ahead_m));
}

std::string mark_in_short(const Mark& mark, UnitSystem units) {
  const auto has = [&](MarkTask task) {
    return std::find(mark.tasks.begin(), mark.tasks.end(), task) != mark.tasks.end();
  };
  const bool stop = has(MarkTask::stop_until_exposed);
  std::string lead = stop                       ? said("STOP: expose ")
                     : has(MarkTask::look)      ? said("slow, look in hole: ")
                     : has(MarkTask::slow_down) ? said("slow: ")
                                                : "";
  constexpr int most = 2;
  std::string names;
  int count = 0;
  for (const MarkNear& near : mark.near) {
    if (near.ahead_m < 0 || (stop && !near.expose)) continue;  // behind; for later, when it goes on
    if (++count > most) continue;
    const std::string where = !near.above_m ? said(", depth not known")
                                            : " " + format(std::abs(*near.above_m), Dimension::length, units) +
                                                  (*near.above_m < 0 ? said(" below") : said(" above"));
    names += (names.empty() ? "" : "; ") + (near.name.empty() ? near.id : near.name) + where;
  }
  if (count > most) names += say("; {} more", count - most);
  if (names.empty()) lead = stop ? said("STOP until it is exposed") : has(MarkTask::slow_down) ? said("slow") : "";
  std::string text = has(MarkTask::check_alignment) ? said("check line, level") : "";
  const auto add = [&](const std::string& more) {
    if (!more.empty()) text += (text.empty() ? "" : "; ") + more;
  };
  add(lead + names);
  if (has(MarkTask::prepare_arrival)) add(said("clear the exit pit"));
  return text;
}

std::string task_words(const Mark& mark, const Crossing& crossing) {
  std::string text;
  for (const MarkTask task : mark.tasks) {
    if (!text.empty()) text += "; ";
    text += words_of_task(task);
    if (task != MarkTask::check_heave) continue;
    for (std::size_t i = 0; i < mark.under.size(); ++i)
      text += (i == 0 ? ": " : ", ") + surface_name(crossing, mark.under[i]);
  }
  return text;
}

std::string mark_words(const Mark& mark, const Crossing& crossing, UnitSystem units) {
  std::string text = mark.hose_m ? said("hose ") + format(*mark.hose_m, Dimension::length, units) : said("no hose yet");
  text += say(": nose {}, depth {} ({} to {})", number(mark.nose_m, Dimension::length, units),
              number(mark.depth_m, Dimension::length, units), number(mark.depth_low_m, Dimension::length, units),
              number(mark.depth_high_m, Dimension::length, units));
  if (mark.time_s.p50)
    text +=
        say(", {} ({} to {})", number(mark.time_s.p50, Dimension::duration, units),
            number(mark.time_s.p10, Dimension::duration, units), number(mark.time_s.p90, Dimension::duration, units));
  else
    text += said(", would have stopped");
  for (const MarkNear& near : mark.near) text += "; " + near_words(near, units);
  if (!mark.tasks.empty()) text += "; " + task_words(mark, crossing);
  return text;
}

}  // namespace burrow
