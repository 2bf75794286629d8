#include "survey_text.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

#include "csv_fields.h"
#include "layer_words.h"

namespace burrow::survey {

namespace {

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

/// The digits in groups of three after the first: "5,412,345".
bool is_grouped(std::string_view text, char mark) {
  std::size_t digits = 0, groups = 0;
  for (std::size_t i = 0; i <= text.size(); ++i) {
    if (i < text.size() && is_digit(text[i])) {
      ++digits;
      continue;
    }
    if (i < text.size() && text[i] != mark) return false;
    if (groups == 0 ? digits < 1 || digits > 3 : digits != 3) return false;
    ++groups;
    digits = 0;
  }
  return groups > 1;
}

std::string without(std::string_view text, char mark) {
  std::string out;
  for (const char c : text)
    if (c != mark) out += c;
  return out;
}

/// The number with a decimal point and without groups; as it stands where it has none.
std::string plain(std::string_view field, bool decimal_comma) {
  std::string text = csv::plain_number(field);
  for (const std::string_view apostrophe : {"\u2019", "\u00A0", "\u202F"})
    for (std::size_t at = 0; (at = text.find(apostrophe, at)) != std::string::npos;)
      text.replace(at, apostrophe.size(), "'");
  const std::size_t sign = text.starts_with('-') ? 1 : 0;
  const std::size_t last = text.find_last_of(".,");
  const auto whole = [&](std::size_t end) { return std::string_view(text).substr(sign, end - sign); };
  for (const char mark : {'\'', ' '}) {
    const std::size_t end = std::min(last, text.size());
    if (text.find(mark) < end && is_grouped(whole(end), mark))
      return plain(text.substr(0, sign) + without(whole(end), mark) + text.substr(end), decimal_comma);
  }
  if (last == std::string::npos) return text;
  const char decimal = text[last], other = decimal == '.' ? ',' : '.';
  if (text.find(other) < last) {
    if (!is_grouped(whole(last), other)) return text;
    return text.substr(0, sign) + without(whole(last), other) + "." + text.substr(last + 1);
  }
  // One kind of mark alone: several are groups, a single one is the decimal mark.
  if (text.find(decimal) != last)
    return is_grouped(whole(text.size()), decimal) ? text.substr(0, sign) + without(whole(text.size()), decimal) : text;
  if (decimal == ',' && decimal_comma) text[last] = '.';
  return text;
}

}  // namespace

std::optional<double> number(std::string_view field, bool decimal_comma) {
  const auto whole = [](std::string_view text) -> std::optional<double> {
    double value = 0;
    const char* end = text.data() + text.size();
    const auto [stop, code] = std::from_chars(text.data(), end, value);
    return code == std::errc() && stop == end ? std::optional(value) : std::nullopt;
  };
  if (const auto usual = whole(field)) return usual;
  return whole(plain(field, decimal_comma));
}

bool is_number(std::string_view field) {
  if (csv::looks_like_number(field)) return true;
  return field.find_first_of("' \xE2\xC2") != std::string_view::npos && number(field, true).has_value();
}

namespace {

struct Heading {
  char letter;
  bool degrees;
  std::vector<std::string_view> words;
};

const std::vector<Heading>& known_headings() {
  static const std::vector<Heading> all{
      {'p', false, {"p",           "pt",      "point",       "pnt",          "no",       "nr",         "number",
                    "id",          "name",    "pointnumber", "point number", "point id", "point name", "punkt",
                    "punktnummer", "punktnr", "punkt nr",    "pktnr",        "pkt nr",   "pkt",        "punktname",
                    "punkt id",    "pnr",     "lfd nr",      "station"}},
      {'n',
       false,
       {"n", "y", "north", "northing", "hochwert", "hoch", "nord", "nordwert", "norden", "y coordinate", "y coord",
        "y koordinate", "utm north", "grid north"}},
      {'e',
       false,
       {"e", "x", "east", "easting", "rechtswert", "rechts", "ost", "ostwert", "osten", "x coordinate", "x coord",
        "x koordinate", "utm east", "grid east"}},
      {'n', true, {"lat", "latitude", "breite", "breitengrad", "geographic latitude"}},
      {'e', true, {"lon", "long", "lng", "longitude", "laenge", "laengengrad", "geographic longitude"}},
      {'z',
       false,
       {"z",
        "h",
        "height",
        "elevation",
        "elev",
        "level",
        "rl",
        "altitude",
        "alt",
        "ele",
        "hoehe",
        "hoehen",
        "gelaendehoehe",
        "hoehe nhn",
        "hoehe nn",
        "nhn",
        "nn",
        "z coordinate",
        "z koordinate",
        "orthometric height",
        "reduced level"}},
      {'d', false, {"d",         "code",         "desc",      "description", "feature",      "remark",      "remarks",
                    "note",      "feature code", "pointcode", "point code",  "beschreibung", "bezeichnung", "punktart",
                    "punktcode", "bemerkung",    "objektart", "objekt",      "kennung",      "art"}}};
  return all;
}

/// The heading without its unit, "Northing [m]", "Höhe (m)"; as words.
LayerWords words_of(std::string_view heading) {
  return LayerWords(heading.substr(0, heading.find_first_of("([{/,#")));
}

const Heading* heading_of(std::string_view text) {
  const LayerWords words = words_of(text);
  const auto whole = [&](const LayerWords& of, std::string_view phrase) {
    const auto place = of.at(0, phrase);
    return place && place->to == of.pieces().size();
  };
  const Heading* found = nullptr;
  for (const Heading& heading : known_headings())
    for (const std::string_view phrase : heading.words)
      if (!found && whole(words, phrase)) found = &heading;
  if (found) return found;
  // "Northing m": the first word tells.
  for (const Heading& heading : known_headings())
    for (const std::string_view phrase : heading.words)
      if (!found && words.at(0, phrase)) found = &heading;
  return found;
}

}  // namespace

std::string order_of_headings(const std::vector<std::string>& headings) {
  std::vector<const Heading*> all;
  for (const std::string& text : headings) all.push_back(heading_of(text));
  const auto has = [&](char letter, bool degrees) {
    return std::any_of(all.begin(), all.end(),
                       [&](const Heading* h) { return h && h->letter == letter && h->degrees == degrees; });
  };
  const bool plan = has('n', false) && has('e', false);
  std::string order;
  for (const Heading* h : all) {
    const bool other = h && (h->letter == 'n' || h->letter == 'e') && h->degrees == plan;
    const char letter = h && !other ? h->letter : '-';
    order += order.find(letter) == std::string::npos ? letter : '-';
  }
  const bool both = order.find('n') != std::string::npos && order.find('e') != std::string::npos;
  return both ? order : std::string();
}

bool names_degrees(std::string_view header) {
  std::vector<std::string> parts(1);
  for (const char c : header) {
    if (c == ',' || c == ';' || c == '\t')
      parts.emplace_back();
    else
      parts.back() += c;
  }
  bool degrees = false, plan = false;
  for (const std::string& part : parts)
    for (const std::string& word : {part, part.substr(0, part.find(' '))})
      if (const Heading* h = heading_of(word); h && (h->letter == 'n' || h->letter == 'e'))
        (h->degrees ? degrees : plan) = true;
  return degrees && !plan;
}

bool look_like_degrees(const Found& found) {
  const auto extent = extent_of(found);
  if (!extent || found.features.size() < 3) return false;
  constexpr double most = 1;
  return extent->low_x >= -180 && extent->high_x <= 180 && extent->low_y >= -90 && extent->high_y <= 90 &&
         extent->high_x - extent->low_x < most && extent->high_y - extent->low_y < most;
}

std::optional<std::string> from_utf16(std::string_view bytes) {
  const bool little = bytes.starts_with("\xFF\xFE"), big = bytes.starts_with("\xFE\xFF");
  if (!little && !big) return std::nullopt;
  const auto unit = [&](std::size_t i) {
    const auto a = static_cast<unsigned char>(bytes[i]), b = static_cast<unsigned char>(bytes[i + 1]);
    return static_cast<char32_t>(little ? a | (b << 8u) : b | (a << 8u));
  };
  std::string out;
  const auto put = [&](char32_t c) {
    const auto part = [&](unsigned shift, unsigned mask, unsigned lead) {
      out += static_cast<char>(lead | ((c >> shift) & mask));
    };
    if (c < 0x80) return part(0, 0x7F, 0);
    if (c < 0x800) {
      part(6, 0x1F, 0xC0);
    } else if (c < 0x10000) {
      part(12, 0x0F, 0xE0);
      part(6, 0x3F, 0x80);
    } else {
      part(18, 0x07, 0xF0);
      part(12, 0x3F, 0x80);
      part(6, 0x3F, 0x80);
    }
    part(0, 0x3F, 0x80);
  };
  constexpr char32_t no_sign = 0xFFFD;
  for (std::size_t i = 2; i + 1 < bytes.size(); i += 2) {
    char32_t c = unit(i);
    if (c >= 0xD800 && c < 0xDC00 && i + 3 < bytes.size()) {
      const char32_t low = unit(i + 2);
      if (low >= 0xDC00 && low < 0xE000) {
        c = 0x10000 + ((c - 0xD800) << 10u) + (low - 0xDC00);
        i += 2;
      }
    }
    put((c >= 0xD800 && c < 0xE000) || c == 0 ? no_sign : c);
  }
  return out;
}

}  // namespace burrow::survey
