#pragma once
/// Lines and fields of delimited text. Private to this room.

#include <string>
#include <string_view>
#include <vector>

namespace burrow::csv {

struct Field {
  std::string text;  ///< without quotes and the spaces around it
};

struct Line {
  int number = 0;  ///< from 1, as an editor counts
  std::string text;
  std::vector<Field> fields;
  bool open_quote = false;
};

/// Lines that hold something: neither empty nor a comment. LF, CRLF and CR end a line.
std::vector<Line> lines_of(std::string_view text);

/// ';' where one stands, a tab where every line that begins with a digit has one, else ',', else ' ' for spaces and
/// tabs.
char delimiter_of(const std::vector<Line>& lines);

/// Fills `fields`. A quote opens only at the start of a field (an inch mark does not); two in a quoted field are one.
void split(Line& line, char delimiter);

/// Digits with marks and perhaps a sign and an exponent, or "nan" and "inf" in any case.
bool looks_like_number(std::string_view field);

/// With a plain "-" for a true minus, and without a leading "+".
std::string plain_number(std::string_view field);

std::string lower(std::string_view text);

}  // namespace burrow::csv
