#pragma once
/// Crossings on standard input: one on each line (JSON lines), or a single one over many lines.

#include <deque>
#include <istream>
#include <optional>
#include <string>

#include "burrow/base/result.h"

namespace burrow {

struct TextIn {
  std::string name;  ///< "-", or "-:3" for the third line of JSON lines: what answers call it
  std::string text;
  std::optional<Error> error;  ///< it could not be read
};

class TextsIn {
 public:
  explicit TextsIn(std::istream& in) : in_(in) {}

  /// The next one, as soon as its line is there; nothing at the end. Blank lines do not count. A first line that opens
  /// an object and does not close it begins a single crossing, which goes on to the end; when every line after it
  /// begins another object, it was a line cut short, and each is one. A line over 64 MB is cut, so that reading it
  /// refuses it. Error: nothing on standard input, or it could not be read to its end.   Evidence: TextsIn.*
  std::optional<TextIn> next();

 private:
  /// A line without its end; false at the end.
  bool read_line(std::string& line);
  void read_first();
  std::optional<TextIn> end();

  std::istream& in_;
  std::deque<TextIn> waiting_;
  std::size_t line_ = 0;
  bool started_ = false, any_ = false, ended_ = false;
};

}  // namespace burrow
