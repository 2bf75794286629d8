#include "burrow/document/reading_forms.h"

#include "burrow/check/assessment.h"
#include "burrow/check/hose_marks.h"
#include "burrow/crew/checklist.h"
#include "burrow/crossing/day_record.h"
#include "burrow/language/say.h"

#include <algorithm>
#include <cmath>

namespace burrow {

namespace {

constexpr double farthest_m = 1e5, highest_m = 1e4, most_rad = pi / 2, most_Pa = 1e8;

ReadingInput length(std::string label, std::optional<Length> Reading::*member, bool required, double low, double high,
                    std::string hint = {}) {
  return {std::move(label), std::move(hint), Dimension::station, required, low, high, [member](Reading& r, double v) {
            r.*member = Length{v};
          }};
}
ReadingInput sd(std::string label, std::optional<Length> Reading::*member) {
  return {
      std::move(label), "our default", Dimension::small_length, false, 0, farthest_m, [member](Reading& r, double v) {
        r.*member = Length{v};
      }};
}
ReadingInput angle_sd() {
  return {"± (1σ)",
          "our default",
          Dimension::angle,
          false,
          0,
          most_rad,
          [](Reading& r, double v) {
            r.angle_sd = Angle{v}; }};
}
ReadingInput nose() {
  return length("nose this far in", &Reading::nose, false, 0, farthest_m, "as now");
}

}  // namespace

std::vector<ReadingForm> reading_forms(double tail_to_nose_m) {
  std::vector<ReadingForm> forms;
  ReadingInput hose{"hose beyond the face",
                    {},
                    Dimension::station,
                    false,
                    -tail_to_nose_m,
                    farthest_m,
                    [tail_to_nose_m](Reading& r, double v) { r.nose = Length{std::max(0.0, v + tail_to_nose_m)}; }};
  ReadingInput in = length("or nose beyond the face", &Reading::nose, false, 0, farthest_m);
  forms.push_back({ReadingKind::mark, "hose mark", {hose, in}, false, false});  // empty: the next mark
  forms.push_back(
      {ReadingKind::grade,
       "grade of the tool",
       {{"grade, nose up +", {}, Dimension::grade, true, -1, 1, [](Reading& r, double v) { r.grade = Ratio{v}; }},
        angle_sd(),
        nose()}});
  forms.push_back({ReadingKind::heading,
                   "heading of the tool",
                   {{"heading, left +",
                     {},
                     Dimension::angle,
                     true,
                     -most_rad,
                     most_rad,
                     [](Reading& r, double v) { r.heading = Angle{v}; }},
                    angle_sd(),
                    nose()}});
  forms.push_back({ReadingKind::fix,
                   "location from above",
                   {length("offset, left +", &Reading::offset, false, -farthest_m, farthest_m),
                    length("depth of the axis", &Reading::depth, false, 0, farthest_m),
                    sd("± across", &Reading::lateral_sd), sd("± in depth", &Reading::vertical_sd), nose()},
                   false,
                   true});
  forms.push_back({ReadingKind::pressure,
                   "air pressure",
                   {{"pressure at the tool", {}, Dimension::air_pressure, true, 0, most_Pa, [](Reading& r, double v) {
                       r.pressure = Pressure{v};
                       r.at = "tool";
                     }}}});
  forms.push_back({ReadingKind::peg,
                   "peg on the ground",
                   {length("station", &Reading::station, true, -farthest_m, farthest_m),
                    length("offset, left +", &Reading::offset, false, -farthest_m, farthest_m),
                    {"risen by", {}, Dimension::small_length, true, -highest_m, highest_m, [](Reading& r, double v) {
                       r.rise = Length{v};
                     }}}});
  forms.push_back(
      {ReadingKind::back, "driven back", {length("nose this far in", &Reading::nose, true, 0, farthest_m)}});
  forms.push_back(
      {ReadingKind::arrival,
       "arrival in the exit pit",
       {length("offset, left +", &Reading::offset, false, -farthest_m, farthest_m),
        length("level of the axis", &Reading::elevation, false, -highest_m, highest_m), sd("± of both", &Reading::sd)},
       false,
       true});
  forms.push_back({ReadingKind::note, "note", {}, true});
  return forms;
}

double tail_to_nose(const Crossing& crossing, const Tables& tables) {
  return resolve_tool(crossing.bore.tool, tables).length.m + crossing.air.tail_fitting->m;
}

double next_mark(const Crossing& crossing, const Tables& tables, const DayRecord& record) {
  // By the tool that was set at its start, whatever the layout says now.
  const Bore& bore = record.layout.bore ? *record.layout.bore : crossing.bore;
  const double spacing = std::max(0.05, mark_spacing(crossing).m);
  const double ahead = resolve_tool(bore.tool, tables).length.m + crossing.air.tail_fitting->m;
  // A mark of a slip of the pen, 10 km, takes the next one nowhere.
  const double most_m = 2 * (bore.exit.station.m - bore.launch.station.m) + ahead;
  double furthest = 0;
  for (const Reading& r : record.readings)
    if (r.nose && counts(r) && r.nose->m < most_m && (r.kind == ReadingKind::mark || r.kind == ReadingKind::stop))
      furthest = std::max(furthest, r.nose->m);
  constexpr double as_read_m = 0.03;               // a mark is written down to a centimetre, or a tenth of a foot
  if (furthest < ahead - as_read_m) return ahead;  // the tail at the face: mark 0
  return ahead + (std::floor((furthest - ahead + as_read_m) / spacing) + 1) * spacing;
}

Result<Reading> reading_from(const ReadingForm& form, const std::vector<std::string>& texts, const std::string& words,
                             double time_s, UnitSystem units) {
  Reading reading;
  reading.kind = form.kind;
  if (!(time_s >= 0 && time_s < 1e9)) return out_of_range("time", time_s, "a time since the start, 0 or more");
  reading.time = Duration{time_s};
  bool any = false;
  for (std::size_t i = 0; i < form.inputs.size(); ++i) {
    const ReadingInput& input = form.inputs[i];
    const std::string text = i < texts.size() ? texts[i] : std::string();
    if (text.find_first_not_of(" \t") == std::string::npos) {
      if (input.required)
        return fail(translated_label(input.label), burrow::translated("nothing"), burrow::translated("a number"));
      continue;
    }
    const Result<double> value = parse(text, input.dimension, units);
    if (!value) return fail(translated_label(input.label), value.error().found, value.error().expected);
    if (!(*value >= input.low && *value <= input.high))
      return fail(translated_label(input.label), text,
                  format(input.low, input.dimension, units) + " to " + format(input.high, input.dimension, units));
    input.put(reading, *value);
    any = true;
  }
  if (form.needs_one && !any)
    return fail(translated_label(form.name), burrow::translated("nothing"), burrow::translated("at least one number"));
  if (form.words) {
    if (words.find_first_not_of(" \t") == std::string::npos)
      return fail(translated_label(form.name), burrow::translated("nothing"), burrow::translated("some words"));
    reading.text = words;
  }
  return reading;
}

std::string reading_line(const Reading& r, UnitSystem units) {
  std::string line = format(r.time.s, Dimension::duration, units) + " · " + translated_word(r.kind);
  const auto add = [&](const char* name, double value, Dimension dimension) {
    line += std::string(" · ") + name + (*name ? " " : "") + format(value, dimension, units);
  };
  if (r.grade) add("", r.grade->v, Dimension::grade);
  if (r.heading) add("", r.heading->rad, Dimension::angle);
  if (r.station) add(burrow::translated("station"), r.station->m, Dimension::station);
  if (r.offset) add(burrow::translated("offset"), r.offset->m, Dimension::station);
  if (r.depth) add(burrow::translated("depth"), r.depth->m, Dimension::station);
  if (r.elevation) add(burrow::translated("level"), r.elevation->m, Dimension::station);
  if (r.rise) add(burrow::translated("risen"), r.rise->m, Dimension::small_length);
  if (r.pressure) add("", r.pressure->Pa, Dimension::air_pressure);
  if (r.nose) add(burrow::translated("nose"), r.nose->m, Dimension::station);
  if (r.sign) line += " · " + translated_word(*r.sign);
  for (const std::string& task : r.tasks)
    if (const std::optional<MarkTask> known = from_word<MarkTask>(task))
      line += " · " + translated_phrase(words_of_task(*known));
  if (r.cancelled)
    line += " · " + (r.cancelled->empty() ? std::string(burrow::translated("struck through"))
                                          : say("struck through: {}", *r.cancelled));
  if (r.how) line += " · " + translated_word(*r.how);
  if (r.why && !r.why->empty()) line += " · " + *r.why;
  if (r.text && !r.text->empty()) line += " · " + *r.text;
  return line;
}

void add_reading(DayRecord& record, Reading reading) {
  const auto after = std::upper_bound(record.readings.begin(), record.readings.end(), reading.time.s,
                                      [](double time, const Reading& r) { return time < r.time.s; });
  record.readings.insert(after, std::move(reading));
}

}  // namespace burrow
