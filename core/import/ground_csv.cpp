#include "burrow/import/ground_csv.h"
#include "burrow/language/say.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <map>

#include "csv_fields.h"

namespace burrow {

namespace {

using csv::Field;
using csv::Line;

constexpr double largest = 1e6;
constexpr std::array station_words{"station", "chainage", "distance", "dist", "sta", "x"};
constexpr std::array elevation_words{"elevation", "level", "height", "elev", "z", "rl", "altitude"};

struct Columns {
  std::size_t station = 0;
  std::size_t elevation = 1;
  bool named = false;
};

std::string place(const Line& line) {
  return "line " + std::to_string(line.number);
}

/// The header word without its unit: "Station [m]" gives "station".
std::string_view first_word(std::string_view field) {
  return field.substr(0, field.find_first_of(" ([_/,"));
}

template <class Names>
std::optional<std::size_t> column_of(const std::vector<Field>& fields, const Names& words) {
  for (std::size_t i = 0; i < fields.size(); ++i)
    if (std::find(words.begin(), words.end(), first_word(csv::lower(fields[i].text))) != words.end()) return i;
  return std::nullopt;
}

std::optional<Columns> header_columns(const std::vector<Field>& fields) {
  const auto station = column_of(fields, station_words);
  const auto elevation = column_of(fields, elevation_words);
  if (!station || !elevation) return std::nullopt;
  return Columns{*station, *elevation, true};
}

/// Fills `points` from the data lines.
class Reader {
 public:
  explicit Reader(std::vector<Line> lines) : lines_(std::move(lines)) {}

  Result<GroundCsv> run() {
    out_.delimiter = csv::delimiter_of(lines_);
    for (Line& line : lines_) csv::split(line, out_.delimiter);
    if (auto error = find_decimal_mark()) return tl::unexpected(*error);
    for (const Line& line : lines_)
      if (auto error = read(line)) return tl::unexpected(*error);
    if (out_.points.size() < 2)
      return fail(translated("ground line"),
                  say_count("{} point in {}", "{} points in {}", out_.points.size(),
                            say_count_in("of text", "{} line", "{} lines", lines_.size())),
                  translated("at least two lines with station and elevation, \"12.50, 102.30\""));
    if (auto error = put_in_order()) return tl::unexpected(*error);
    say_what_was_done();
    return std::move(out_);
  }

 private:
  /// A comma within a number is a decimal mark, unless another number has a point.
  std::optional<Error> find_decimal_mark() {
    const Line* with_point = nullptr;
    for (const Line& line : lines_)
      for (const Field& field : line.fields) {
        if (!csv::looks_like_number(field.text)) continue;
        if (field.text.find(',') != std::string::npos) out_.decimal_comma = true;
        if (field.text.find('.') != std::string::npos) with_point = &line;
      }
    if (!out_.decimal_comma || with_point == nullptr) return std::nullopt;
    return Error{place(*with_point), translated("a decimal point in a file with decimal commas"),
                 translated("one decimal mark, no thousands separators")};
  }

  std::optional<Error> read(const Line& line) {
    const bool may_be_header = out_.points.empty() && !columns_.named;
    if (may_be_header && std::none_of(line.fields.begin(), line.fields.end(),
                                      [](const Field& f) { return csv::looks_like_number(f.text); })) {
      if (const auto named = header_columns(line.fields)) {
        columns_ = *named;
        if (out_.delimiter == ' ') columns_ = in_order_of(*named);
        out_.unit_hint = unit_named_in(line.text);
        return std::nullopt;
      }
    }
    if (line.open_quote) return leave_out(line, translated("a quote that is not closed"));
    if (line.fields.size() <= std::max(columns_.station, columns_.elevation))
      return leave_out(line, translated("no second column"));
    double station = 0;
    double elevation = 0;
    if (const auto reason = read_number(line.fields[columns_.station], station))
      return no_number(line, "station", *reason);
    if (const auto reason = read_number(line.fields[columns_.elevation], elevation))
      return no_number(line, "elevation", *reason);
    if (auto error = too_large(line, "station", station)) return error;
    if (auto error = too_large(line, "elevation", elevation)) return error;
    if (auto error = third_number(line)) return error;
    out_.points.push_back({station, elevation});
    line_of_.push_back(line.number);
    return std::nullopt;
  }

  /// Spaces within headings ("station [m] elevation [m]") would shift the count.
  static Columns in_order_of(const Columns& named) {
    return named.station < named.elevation ? Columns{0, 1, true} : Columns{1, 0, true};
  }

  std::optional<Error> leave_out(const Line& line, std::string reason) {
    out_.left_out.push_back({line.number, line.text, std::move(reason)});
    return std::nullopt;
  }

  /// A word where a number belongs is left out and reported; "nan", "inf" and the like are refused.
  std::optional<Error> no_number(const Line& line, std::string_view what, const std::string& reason) {
    if (reason.empty()) return leave_out(line, say("the {} is not a number", what));
    return Error{place(line), reason, say("a {} within ±{:.0f}", what, largest)};
  }

  static std::optional<Error> too_large(const Line& line, std::string_view what, double value) {
    if (std::abs(value) <= largest) return std::nullopt;
    return Error{place(line), fmt::format("{} {:g}", what, value), say("a {} within ±{:.0f}", what, largest)};
  }

  /// Without a header nobody can tell which columns are meant.
  std::optional<Error> third_number(const Line& line) {
    if (line.fields.size() > 2) more_columns_ = true;
    if (columns_.named) return std::nullopt;
    for (std::size_t i = 2; i < line.fields.size(); ++i)
      if (csv::looks_like_number(line.fields[i].text))
        return Error{place(line), say("a number in column {}", i + 1),
                     translated("two columns, or a header that names \"station\" and \"elevation\"")};
    return std::nullopt;
  }

  /// An empty reason: a word; otherwise what stood there in place of a finite number.
  std::optional<std::string> read_number(const Field& field, double& value) const {
    std::string digits = csv::plain_number(field.text);
    if (out_.decimal_comma) std::replace(digits.begin(), digits.end(), ',', '.');
    const char* end = digits.data() + digits.size();
    const auto [stop, code] = std::from_chars(digits.data(), end, value);
    if (code == std::errc::result_out_of_range) return say("the number {}", field.text);
    if (code != std::errc() || stop != end) return std::string();
    if (!std::isfinite(value)) return "\"" + field.text + "\"";
    return std::nullopt;
  }

  std::optional<Error> put_in_order() {
    std::map<double, std::size_t> first_at;
    for (std::size_t i = 0; i < out_.points.size(); ++i) {
      const auto [it, is_new] = first_at.emplace(out_.points[i].station_m, i);
      if (is_new) continue;
      return Error{"line " + std::to_string(line_of_[i]),
                   say("station {:g}, as on line {}", it->first, line_of_[it->second]),
                   translated("each station once")};
    }
    const auto by_station = [](const LevelPoint& a, const LevelPoint& b) { return a.station_m < b.station_m; };
    if (std::is_sorted(out_.points.begin(), out_.points.end(), by_station)) return std::nullopt;
    std::sort(out_.points.begin(), out_.points.end(), by_station);
    out_.notes.emplace_back(translated("the points were put in order of station"));
    return std::nullopt;
  }

  void say_what_was_done() {
    if (out_.decimal_comma) out_.notes.emplace_back(translated("commas were read as decimal marks"));
    if (more_columns_) out_.notes.emplace_back(translated("columns beside station and elevation were not used"));
  }

  std::vector<Line> lines_;
  GroundCsv out_;
  Columns columns_;
  std::vector<int> line_of_;
  bool more_columns_ = false;
};

}  // namespace

Result<GroundCsv> read_ground_csv(std::string_view text) {
  constexpr std::size_t most_bytes = 64u << 20;
  if (text.size() > most_bytes)
    return fail(translated("file"), say_count("{} byte", "{} bytes", text.size()), translated("at most 64 MB"));
  if (text.starts_with("\xFF\xFE") || text.starts_with("\xFE\xFF"))
    return fail(translated("file"), translated("UTF-16 text"), translated("UTF-8 text"));
  if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
  if (text.find('\0') != std::string_view::npos)
    return fail(translated("file"), translated("zero bytes"), translated("text"));
  std::vector<Line> lines = csv::lines_of(text);
  if (lines.empty())
    return fail(translated("file"), translated("nothing"),
                translated("lines with station and elevation, \"12.50, 102.30\""));
  return Reader(std::move(lines)).run();
}

LevelLine in_metres(const std::vector<LevelPoint>& points, FileUnit unit) {
  const double metres = metres_in(unit);
  LevelLine line;
  for (const LevelPoint& point : points) line.push_back({point.station_m * metres, point.elevation_m * metres});
  return line;
}

}  // namespace burrow
