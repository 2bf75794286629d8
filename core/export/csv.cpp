#include "burrow/export/csv.h"

#include <fmt/format.h>

#include <charconv>
#include <cmath>
#include <initializer_list>

#include "burrow/words/run_text.h"
#include "burrow/words/working_names.h"
#include "burrow/words/working_text.h"

namespace burrow {

namespace {

/// Ten digits: what a bore is known to many times over, without the noise of binary fractions ("101.29999999999998").
std::string number_text(double value) {
  return fmt::format("{:.10g}", value);
}

/// What a spreadsheet would take for a formula: somebody may have named a pipe so, or meant harm. A number is none.
bool looks_like_a_formula(std::string_view text) {
  if (text.empty() || std::string_view("=+-@\t").find(text.front()) == std::string_view::npos) return false;
  double value = 0;
  const char* end = text.data() + text.size();
  const auto read = std::from_chars(text.data(), end, value);
  return read.ec != std::errc() || read.ptr != end;
}

/// Collects fields and ends lines.
class Rows {
 public:
  explicit Rows(std::initializer_list<std::string_view> names) {
    for (const std::string_view name : names) text(name);
    end();
  }
  Rows& text(std::string_view words) {
    if (!first_) all_ += ',';
    first_ = false;
    all_ += csv_field(words);
    return *this;
  }
  Rows& number(const std::optional<double>& value) {
    return text(value && std::isfinite(*value) ? number_text(*value) : std::string());
  }
  void end() {
    all_ += "\r\n";
    first_ = true;
  }
  std::string take() { return std::move(all_); }

 private:
  std::string all_;
  bool first_ = true;
};

std::string path_rows(const Assessment& assessment) {
  Rows rows{"s_m",         "station_m",    "offset_m",      "elevation_m", "inclination_rad",
            "heading_rad", "sd_lateral_m", "sd_vertical_m", "cover_m"};
  for (const PathPoint& p : assessment.bore.points) {
    for (const double v :
         {p.s_m, p.x_m, p.y_m, p.z_m, p.grade_rad, p.heading_rad, p.sd_lateral_m, p.sd_vertical_m, p.cover_m})
      rows.number(v);
    rows.end();
  }
  return rows.take();
}

std::string near_of(const Mark& mark) {
  std::string all;
  for (const MarkNear& near : mark.near) all += (all.empty() ? "" : "; ") + near_words(near, UnitSystem::metric);
  return all;
}

std::string mark_rows(const Crossing& crossing, const Assessment& assessment) {
  Rows rows{"hose_m",       "nose_m",     "station_m",  "offset_m",   "elevation_m", "depth_m", "depth_low_m",
            "depth_high_m", "time_p10_s", "time_p50_s", "time_p90_s", "near",        "to_do"};
  for (const Mark& m : assessment.marks) {
    for (const std::optional<double>& v : {m.hose_m, m.nose_m, m.station_m, m.offset_m, m.elevation_m, m.depth_m,
                                           m.depth_low_m, m.depth_high_m, m.time_s.p10, m.time_s.p50, m.time_s.p90})
      rows.number(v);
    rows.text(near_of(m)).text(task_words(m, crossing)).end();
  }
  return rows.take();
}

std::string finding_rows(const Assessment& assessment, UnitSystem units) {
  Rows rows{"code",     "severity", "missing", "subject", "name",   "station_m",    "offset_m",     "elevation_m",
            "measured", "limit",    "unit",    "sense",   "source", "source_label", "muted_reason", "text"};
  for (const Finding& f : assessment.findings) {
    rows.text(f.code).text(word_of(f.severity)).text(f.missing ? "yes" : "no").text(f.subject).text(f.name.english());
    for (const std::optional<double>& v : {f.station_m, f.offset_m, f.elevation_m, f.measured, f.limit}) rows.number(v);
    rows.text(f.unit).text(!f.limit ? "" : f.at_least ? "at least" : "at most").text(f.source.text.english());
    rows.text(word_of(f.source.label)).text(f.muted ? f.muted->reason : std::string()).text(finding_text(f, units));
    rows.end();
  }
  return rows.take();
}

/// A line for each number: what is put in, what comes out, the limit; each with what its symbol stands for.
std::string working_rows(const Crossing& crossing, const Assessment& assessment) {
  Rows rows{"step",   "code",    "title", "subject", "name",   "formula",     "role",
            "symbol", "meaning", "value", "unit",    "source", "source_label"};
  std::size_t number = 0;
  for (const Working& w : assessment.working) {
    ++number;
    const auto row = [&](std::string_view role, std::string_view symbol, double value, std::string_view unit,
                         const Source* source) {
      rows.number(static_cast<double>(number)).text(w.code).text(working_title(w.code)).text(w.subject);
      rows.text(working_place(crossing, w.subject)).text(working_formula(w)).text(role).text(symbol);
      rows.text(symbol_meaning(w.code, symbol)).number(value).text(unit);
      rows.text(source ? source->text.english() : std::string()).text(source ? word_of(source->label) : "").end();
    };
    for (const WorkingInput& input : w.inputs) row("input", input.symbol, input.value, input.unit, nullptr);
    row("result", w.symbol, w.value, w.unit, &w.source);
    if (w.limit) row("limit", w.symbol, *w.limit, w.unit, w.limit_source ? &*w.limit_source : nullptr);
  }
  return rows.take();
}

}  // namespace

std::string csv_field(std::string_view words) {
  const std::string text = looks_like_a_formula(words) ? "'" + std::string(words) : std::string(words);
  if (text.find_first_of(",\"\r\n") == std::string_view::npos) return text;
  std::string quoted = "\"";
  for (const char c : text) {
    if (c == '"') quoted += '"';
    quoted += c;
  }
  return quoted + '"';
}

std::string write_csv(CsvTable table, const Crossing& crossing, const Assessment& assessment, UnitSystem units) {
  switch (table) {
    case CsvTable::path:
      return path_rows(assessment);
    case CsvTable::marks:
      return mark_rows(crossing, assessment);
    case CsvTable::working:
      return working_rows(crossing, assessment);
    case CsvTable::findings:
      break;
  }
  return finding_rows(assessment, units);
}

}  // namespace burrow
