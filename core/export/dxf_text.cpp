#include "burrow/export/dxf_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "burrow/base/ensure.h"

namespace burrow {

namespace {

std::string pair_text(int group, std::string_view value) {
  return fmt::format("{:3}\r\n{}\r\n", group, value);
}

/// The next code point of UTF-8; a stray byte stands for itself, one cut off at the end for a question mark.
unsigned next_point(std::string_view text, std::size_t& at) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned>(static_cast<unsigned char>(text[i])); };
  const unsigned first = byte(at++);
  const int more = first >= 0xf0 ? 3 : first >= 0xe0 ? 2 : first >= 0xc0 ? 1 : 0;
  if (more == 0) return first;
  unsigned value = first & (0x3fU >> static_cast<unsigned>(more));
  if (at + static_cast<std::size_t>(more) > text.size()) {
    at = text.size();
    return '?';
  }
  for (int i = 0; i < more; ++i) value = (value << 6U) | (byte(at++) & 0x3fU);
  return value;
}

/// Windows code page 1252 above 0x7f (from memory); 0: it has no such letter.
unsigned char in_1252(unsigned point) {
  if (point >= 0xa0 && point <= 0xff) return static_cast<unsigned char>(point);
  constexpr std::pair<unsigned, unsigned char> others[] = {
      {0x20ac, 0x80}, {0x201a, 0x82}, {0x201e, 0x84}, {0x2026, 0x85}, {0x2018, 0x91}, {0x2019, 0x92},
      {0x201c, 0x93}, {0x201d, 0x94}, {0x2022, 0x95}, {0x2013, 0x96}, {0x2014, 0x97}};
  for (const auto& [letter, byte] : others)
    if (letter == point) return byte;
  return 0;
}

}  // namespace

std::string dxf_string(std::string_view utf8) {
  std::string out;
  for (std::size_t at = 0; at < utf8.size();) {
    const unsigned c = next_point(utf8, at);
    if (c == '%' && !out.empty() && out.back() == '%')
      out += " %";
    else if (c < 0x20 || c == 0x7f)
      out += ' ';
    else if (c < 0x7f)
      out += static_cast<char>(c);
    else if (const unsigned char byte = in_1252(c); byte != 0)
      out += static_cast<char>(byte);
    else if (c <= 0xffff)
      out += fmt::format("\\U+{:04X}", c);
    else
      out += '?';
  }
  return out;
}

DxfText::DxfText(bool us_survey_feet) : feet_(us_survey_feet), per_m_(us_survey_feet ? 3937.0 / 1200 : 1) {}

void DxfText::code(int group, std::string_view value) {
  entities_ += pair_text(group, value);
}
void DxfText::number(int group, double value) {
  BURROW_ENSURE(std::isfinite(value));
  code(group, fmt::format("{:.6f}", value));
}

void DxfText::point(int first_code, double x_m, double y_m, double z_m) {
  number(first_code, x_m * per_m_);
  number(first_code + 10, y_m * per_m_);
  number(first_code + 20, z_m * per_m_);
  least_x_ = any_ ? std::min(least_x_, x_m) : x_m;
  least_y_ = any_ ? std::min(least_y_, y_m) : y_m;
  most_x_ = any_ ? std::max(most_x_, x_m) : x_m;
  most_y_ = any_ ? std::max(most_y_, y_m) : y_m;
  any_ = true;
}

void DxfText::layer(const std::string& name, int colour, bool dashed) {
  layers_.emplace(name, LayerRow{colour, dashed});
}

void DxfText::begin(std::string_view kind, const std::string& layer) {
  layers_.emplace(layer, LayerRow{});
  code(0, kind);
  code(8, layer);
}

void DxfText::line(const std::string& layer, const std::vector<PlanPoint>& points, bool closed) {
  if (points.size() < 2) return;
  begin("POLYLINE", layer);
  code(66, "1");
  point(10, points.front().x_m, points.front().y_m, 0);
  code(70, closed ? "1" : "0");
  for (const PlanPoint& p : points) {
    begin("VERTEX", layer);
    point(10, p.x_m, p.y_m, 0);
  }
  begin("SEQEND", layer);
}

void DxfText::line(const std::string& layer, const std::vector<Point3>& points) {
  if (points.size() < 2) return;
  begin("POLYLINE", layer);
  code(66, "1");
  point(10, points.front().x_m, points.front().y_m, 0);
  code(70, "8");  // a line in space
  for (const Point3& p : points) {
    begin("VERTEX", layer);
    point(10, p.x_m, p.y_m, p.z_m);
    code(70, "32");
  }
  begin("SEQEND", layer);
}

void DxfText::circle(const std::string& layer, PlanPoint middle, double radius_m) {
  if (!(radius_m > 0)) return;
  begin("CIRCLE", layer);
  point(10, middle.x_m, middle.y_m, 0);
  number(40, radius_m * per_m_);
}

void DxfText::text(const std::string& layer, PlanPoint at, double height_m, std::string_view words,
                   double rotated_deg) {
  if (words.empty()) return;
  begin("TEXT", layer);
  point(10, at.x_m, at.y_m, 0);
  number(40, height_m * per_m_);
  code(1, dxf_string(words));
  if (rotated_deg != 0) number(50, rotated_deg);
  code(7, "STANDARD");
}

namespace {

/// Pairs of a group and its value, one after the other.
class Pairs {
 public:
  void put(int group, std::string_view value) { text_ += pair_text(group, value); }
  void place(const char* name, double x, double y) {
    put(9, name);
    put(10, fmt::format("{:.6f}", x));
    put(20, fmt::format("{:.6f}", y));
    put(30, "0.0");
  }
  void begin_table(const char* name, std::size_t rows) {
    put(0, "TABLE");
    put(2, name);
    put(70, std::to_string(rows));
  }
  void begin_section(const char* name) {
    put(0, "SECTION");
    put(2, name);
  }
  void add(const std::string& pairs) { text_ += pairs; }
  [[nodiscard]] const std::string& text() const { return text_; }

 private:
  std::string text_;
};

void put_line_types(Pairs& pairs) {
  const auto line_type = [&](const char* name, const char* shape, std::vector<const char*> lengths, const char* sum) {
    pairs.put(0, "LTYPE");
    pairs.put(2, name);
    pairs.put(70, "0");
    pairs.put(3, shape);
    pairs.put(72, "65");
    pairs.put(73, std::to_string(lengths.size()));
    pairs.put(40, sum);
    for (const char* length : lengths) pairs.put(49, length);
  };
  pairs.begin_table("LTYPE", 2);
  line_type("CONTINUOUS", "Solid line", {}, "0.0");
  line_type("DASHED", "__ __ __", {"0.3", "-0.15"}, "0.45");
  pairs.put(0, "ENDTAB");
}

void put_text_style(Pairs& pairs) {
  pairs.begin_table("STYLE", 1);
  pairs.put(0, "STYLE");
  pairs.put(2, "STANDARD");
  pairs.put(70, "0");
  pairs.put(40, "0.0");
  pairs.put(41, "1.0");
  pairs.put(50, "0.0");
  pairs.put(71, "0");
  pairs.put(42, "0.2");
  pairs.put(3, "txt");
  pairs.put(4, "");
  pairs.put(0, "ENDTAB");
}

}  // namespace

std::string DxfText::take() const {
  Pairs pairs;
  pairs.begin_section("HEADER");
  pairs.put(9, "$ACADVER");
  pairs.put(1, "AC1009");
  pairs.put(9, "$DWGCODEPAGE");
  pairs.put(3, "ANSI_1252");
  pairs.put(9, "$INSUNITS");
  pairs.put(70, feet_ ? "21" : "6");  // US survey feet, metres
  pairs.put(9, "$MEASUREMENT");
  pairs.put(70, feet_ ? "0" : "1");
  pairs.place("$EXTMIN", least_x_ * per_m_, least_y_ * per_m_);
  pairs.place("$EXTMAX", most_x_ * per_m_, most_y_ * per_m_);
  pairs.put(0, "ENDSEC");

  pairs.begin_section("TABLES");
  put_line_types(pairs);
  pairs.begin_table("LAYER", layers_.size() + 1);
  const auto layer_row = [&](const std::string& name, const LayerRow& row) {
    pairs.put(0, "LAYER");
    pairs.put(2, name);
    pairs.put(70, "0");
    pairs.put(62, std::to_string(row.colour));
    pairs.put(6, row.dashed ? "DASHED" : "CONTINUOUS");
  };
  if (!layers_.contains("0")) layer_row("0", {});
  for (const auto& [name, row] : layers_) layer_row(name, row);
  pairs.put(0, "ENDTAB");
  put_text_style(pairs);
  pairs.put(0, "ENDSEC");

  pairs.begin_section("ENTITIES");
  pairs.add(entities_);
  pairs.put(0, "ENDSEC");
  pairs.put(0, "EOF");
  return pairs.text();
}

}  // namespace burrow
