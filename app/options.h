#pragma once
/// Words of a command line: what follows the command's name.

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "burrow/base/quantity_text.h"
#include "burrow/base/result.h"

namespace burrow {

/// Options a command knows, with whether a value follows ("--paper" a3) or not ("--json").
using KnownOptions = std::map<std::string, bool, std::less<>>;

struct Options {
  std::vector<std::string> files;
  bool standard_input = false;
  std::map<std::string, std::string, std::less<>> values;  ///< "--units" → "us"; an option without value → ""

  [[nodiscard]] bool has(std::string_view name) const { return values.find(name) != values.end(); }
  /// "-" among the files; after "--" it is a file's name like any other, "./-" always.
  [[nodiscard]] bool reads_standard_input() const { return standard_input; }
  [[nodiscard]] std::string value(std::string_view name, std::string_view otherwise) const;
};

/// Errors: an unknown option (lists the known), a missing value, an option twice.
Result<Options> read_options(const std::vector<std::string>& args, const KnownOptions& known);

Result<UnitSystem> units_of(const Options& options);
/// A whole number from `least` to `most`.
Result<long> whole_number(const Options& options, std::string_view name, long otherwise, long least, long most);

}  // namespace burrow
