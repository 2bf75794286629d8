#include "burrow/import/survey_csv.h"
#include "burrow/language/say.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "csv_fields.h"
#include "found_builder.h"
#include "survey_text.h"

namespace burrow {

namespace {

using csv::Line;

constexpr std::array delimiters{',', ';', '\t', ' '};

/// The next line of `rest`, which loses it. LF, CRLF and CR end a line.
std::string_view next_line(std::string_view& rest) {
  std::size_t end = 0;  // by hand: a search for one of two signs takes many times as long
  while (end < rest.size() && rest[end] != '\n' && rest[end] != '\r') ++end;
  const std::string_view line = rest.substr(0, end);
  const bool two = rest.substr(end).starts_with("\r\n");
  rest.remove_prefix(std::min(rest.size(), end + (two ? 2 : 1)));
  return line;
}

bool says_nothing(std::string_view line) {
  const std::size_t at = line.find_first_not_of(" \t,;");
  if (at == std::string_view::npos) return true;
  line.remove_prefix(at);
  return line.starts_with("#") || line.starts_with("//") || line.starts_with("!");
}

/// How a text is laid out, told by its first lines.
struct Layout {
  char delimiter = ',';
  bool decimal_comma = false;
  std::size_t columns = 0;      ///< of most lines
  std::size_t lines = 0;        ///< looked at
  std::vector<bool> is_number;  ///< of each column, in most lines that hold a number
};

Layout layout_with(std::string_view text, char delimiter) {
  constexpr std::size_t enough = 400;
  Layout layout;
  layout.delimiter = delimiter;
  std::vector<std::size_t> widths, numbers;
  std::size_t commas = 0, points = 0, with_numbers = 0;
  while (!text.empty() && layout.lines < enough) {
    const std::string_view content = next_line(text);
    if (says_nothing(content)) continue;
    Line line{0, std::string(content), {}, false};
    csv::split(line, delimiter);
    ++layout.lines;
    widths.push_back(line.fields.size());
    numbers.resize(std::max(numbers.size(), line.fields.size()));
    bool any = false;
    for (std::size_t i = 0; i < line.fields.size(); ++i) {
      const std::string& field = line.fields[i].text;
      if (!survey::is_number(field)) continue;
      ++numbers[i];
      any = true;
      commas += field.find(',') != std::string::npos ? 1u : 0u;
      points += field.find('.') != std::string::npos ? 1u : 0u;
    }
    with_numbers += any ? 1u : 0u;
  }
  layout.decimal_comma = commas > points;
  for (const std::size_t n : numbers) layout.is_number.push_back(2 * n > with_numbers);
  if (!widths.empty()) {
    std::nth_element(widths.begin(), widths.begin() + static_cast<std::ptrdiff_t>(widths.size() / 2), widths.end());
    layout.columns = widths[widths.size() / 2];
  }
  return layout;
}

Layout layout_of(std::string_view text) {
  Layout best;
  std::ptrdiff_t best_count = -1;
  for (const char delimiter : delimiters) {
    Layout layout = layout_with(text, delimiter);
    const auto count = std::count(layout.is_number.begin(), layout.is_number.end(), true);
    if (count <= best_count) continue;
    best_count = count;
    best = std::move(layout);
  }
  return best;
}

/// Order that a header gives; empty where it does not name both north and east.
std::string header_order(const Line& line) {
  std::vector<std::string> headings;
  for (const auto& field : line.fields) headings.push_back(field.text);
  return survey::order_of_headings(headings);
}

/// Fewer columns than PNEZD has: without description, without number, or both.
std::string order_for(const Layout& layout, bool xyz) {
  const auto is_number = [&](std::size_t i) { return i < layout.is_number.size() && layout.is_number[i]; };
  if (xyz && is_number(0) && is_number(1)) return layout.columns >= 4 && !is_number(3) ? "enzd" : "enz";
  if (layout.columns <= 3) return "nez";
  if (layout.columns == 4) return is_number(3) ? "pnez" : "nezd";
  return std::string(usual_order);
}

class Reader {
 public:
  Reader(std::string_view text, const ReadOptions& options)
      : text_(text), options_(options), builder_(options, "survey points"), layout_(layout_of(text)) {}

  Result<Found> run() {
    if (!options_.order.empty()) {
      const auto order = survey_order(options_.order);
      if (!order) return tl::unexpected(order.error());
      order_ = *order;
    }
    std::string_view rest = text_;
    for (std::uint32_t line_number = 1; !rest.empty(); ++line_number) {
      if (line_number % 4096 == 0)
        if (auto error =
                builder_.check_cancelled(1.0 - static_cast<double>(rest.size()) / static_cast<double>(text_.size())))
          return tl::unexpected(*error);
      const std::string_view content = next_line(rest);
      if (!says_nothing(content)) read(static_cast<int>(line_number), content);
    }
    if (auto error = builder_.check_cancelled(1.0)) return tl::unexpected(*error);
    Found& found = builder_.found;
    if (found.features.empty()) return no_points();
    if (degrees_) take_degrees();
    if (!degrees_ && survey::look_like_degrees(found))
      found.notes.emplace_back(
          translated("these numbers may be degrees of longitude and latitude: state the coordinate system"));
    if (!strange_header_.empty() && !known_)
      found.notes.push_back(say("the header names neither north nor east: which columns they are is a guess ({})",
                                as_utf8(strange_header_.substr(0, 80))));
    found.order = order_;
    found.order_is_known = known_;
    if (layout_.decimal_comma) found.notes.emplace_back(translated("commas were read as decimal marks"));
    return builder_.finish();
  }

 private:
  /// Why: the reasons of the first lines.
  [[nodiscard]] tl::unexpected<Error> no_points() const {
    std::string why = say_count("no points in {} line", "no points in {} lines", layout_.lines);
    constexpr std::size_t shown = 3;
    const auto& list = builder_.found.left_out;
    for (std::size_t i = 0; i < list.size() && i < shown; ++i) why += "; " + list[i].place + ": " + list[i].reason;
    return fail(translated("survey"), why, translated("a point a line, \"17,538484.571,1455544.537,682.233,KERB\""));
  }

  /// The header says so; WGS 84 is what receivers give.
  void take_degrees() {
    Found& found = builder_.found;
    const bool good = std::all_of(found.vertices.begin(), found.vertices.end(),
                                  [](const FoundVertex& v) { return std::abs(v.x_m) <= 360 && std::abs(v.y_m) <= 90; });
    if (!good) {
      found.notes.emplace_back(translated("the header names degrees, and the numbers are none"));
      return;
    }
    found.frame.crs = "EPSG:4326";
    found.frame.geographic = true;
    found.frame.unit.reset();
    found.notes.emplace_back(translated(
        "degrees of longitude and latitude, taken for WGS 84; heights of a satellite receiver are often above the "
        "ellipsoid and not above the sea"));
  }

  void read(int number, std::string_view content) {
    if (begun_ && split_plainly(content)) return read_point(number, content);
    Line line{number, std::string(content), {}, false};
    csv::split(line, layout_.delimiter);
    fields_.clear();
    for (const csv::Field& field : line.fields) fields_.emplace_back(field.text);
    if (begun_) return read_point(number, content);
    const bool words_alone =
        std::none_of(line.fields.begin(), line.fields.end(), [](const auto& f) { return survey::is_number(f.text); });
    std::string order = words_alone ? header_order(line) : std::string();
    if (!order.empty()) {
      if (survey::names_degrees(line.text)) {
        degrees_ = true;
      } else {
        builder_.found.frame.unit = unit_named_in(line.text);
      }
      builder_.found.frame.height_unit = unit_named_in(line.text);
      known_ = true;
      begun_ = true;
      if (order_.empty()) order_ = std::move(order);
      return;
    }
    // As many words as the lines have numbers: names of columns, of which none is known.
    if (words_alone && line.fields.size() > 2 && line.fields.size() >= layout_.columns) strange_header_ = line.text;
    if (words_alone)
      return builder_.leave_out(place(number), content,
                                translated("no numbers, and no header that names north and east"));
    known_ = !order_.empty();
    if (order_.empty()) order_ = order_for(layout_, options_.x_before_y);
    begun_ = true;
    read_point(number, content);
  }

  /// Fields of a line without quotes, as `csv::split` cuts them but without a copy. False: it holds quotes.
  bool split_plainly(std::string_view rest) {
    if (rest.find('"') != std::string_view::npos) return false;
    const bool blanks = layout_.delimiter == ' ';
    fields_.clear();
    while (true) {
      std::size_t at = 0;
      if (blanks) {
        while (at < rest.size() && is_blank(rest[at])) ++at;
        rest.remove_prefix(at);
      }
      std::size_t end = 0;
      while (end < rest.size() && (blanks ? !is_blank(rest[end]) : rest[end] != layout_.delimiter)) ++end;
      std::size_t from = 0, to = end;
      while (from < to && is_blank(rest[from])) ++from;
      while (to > from && is_blank(rest[to - 1])) --to;
      fields_.push_back(rest.substr(from, to - from));
      if (end == rest.size()) return true;
      rest.remove_prefix(end + 1);
    }
  }
  static bool is_blank(char c) { return c == ' ' || c == '\t'; }

  static std::string place(int number) { return say("line {}", number); }

  void read_point(int number, std::string_view content) {
    FoundFeature feature;
    FoundVertex v;
    std::string_view description, point;
    std::string joined;
    for (std::size_t i = 0; i < order_.size(); ++i) {
      const std::string_view field = i < fields_.size() ? fields_[i] : std::string_view();
      switch (order_[i]) {
        case 'p':
          point = field;
          break;
        case 'd':
          description = field;
          if (i + 1 == order_.size() && i + 1 < fields_.size()) description = joined = rest_of(i);
          break;
        case 'n':
        case 'e':
        case 'z':
          if (field.empty() && order_[i] == 'z') break;
          if (const std::string reason = take_number(order_[i], field, v); !reason.empty())
            return builder_.leave_out(place(number), content, reason);
          break;
        default:
          break;
      }
    }
    feature.layer = layer_of(description.substr(0, description.find_first_of(" \t")));
    feature.place = static_cast<std::uint32_t>(number);
    feature.text = point;
    if (!point.empty() && !description.empty()) feature.text += ' ';
    feature.text += description;
    builder_.add_point(std::move(feature), v, [number] { return place(number); });
  }

  /// Neighbours are often of one code.
  std::uint32_t layer_of(std::string_view code) {
    if (!has_last_code_ || code != last_code_) {
      last_layer_ = builder_.layer(code);
      last_code_ = code;
      has_last_code_ = true;
    }
    return last_layer_;
  }

  /// Empty: taken; else why not.
  std::string take_number(char letter, std::string_view field, FoundVertex& v) const {
    const std::string_view name = letter == 'n' ? "north" : letter == 'e' ? "east" : "height";
    if (field.empty()) return say("no {}", name);
    const auto value = survey::number(field, layout_.decimal_comma);
    if (!value) return say("the {} is not a number", name);
    if (!std::isfinite(*value)) return say("the {} is {}", name, field);
    if (letter == 'n') v.y_m = *value;
    if (letter == 'e') v.x_m = *value;
    if (letter == 'z') v.z_m = *value;
    return {};
  }

  /// A description may hold the delimiter itself.
  [[nodiscard]] std::string rest_of(std::size_t from) const {
    std::string rest;
    for (std::size_t i = from; i < fields_.size(); ++i) {
      if (i > from) rest += layout_.delimiter;
      rest += fields_[i];
    }
    while (!rest.empty() && (rest.back() == layout_.delimiter || rest.back() == ' ')) rest.pop_back();
    return rest;
  }

  std::string_view text_;
  const ReadOptions& options_;
  FoundBuilder builder_;
  Layout layout_;
  std::string order_;
  bool known_ = false;
  bool degrees_ = false;
  std::vector<std::string_view> fields_;  ///< of the line that is being read
  std::string last_code_;
  std::uint32_t last_layer_ = 0;
  bool has_last_code_ = false;
  std::string strange_header_;
  bool begun_ = false;  ///< the first line that is a header or a point was met
};

}  // namespace

Result<std::string> survey_order(std::string_view letters) {
  std::string order = csv::lower(letters);
  std::replace(order.begin(), order.end(), 'y', 'n');
  std::replace(order.begin(), order.end(), 'x', 'e');
  const auto wrong = [&] {
    return fail(
        translated("order"), std::string(letters),
        translated(
            "letters of the columns from the left: p point, n north, e east, z height, d description, - not used; "
            "n and e must be there, none twice"));
  };
  for (const char c : order)
    if (std::string_view("pnezd-").find(c) == std::string_view::npos ||
        (c != '-' && std::count(order.begin(), order.end(), c) > 1))
      return wrong();
  if (order.find('n') == std::string::npos || order.find('e') == std::string::npos || order.size() > 64) return wrong();
  return order;
}

Result<Found> read_survey_csv(std::string_view text, const ReadOptions& options) {
  constexpr std::size_t most_bytes = 512u << 20;
  if (text.size() > most_bytes)
    return fail(translated("file"), say_count("{} byte", "{} bytes", text.size()), translated("at most 512 MB"));
  if (const auto decoded = survey::from_utf16(text)) return Reader(*decoded, options).run();
  if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
  if (text.find('\0') != std::string_view::npos)
    return fail(translated("file"), translated("zero bytes"), translated("text"));
  return Reader(text, options).run();
}

}  // namespace burrow
