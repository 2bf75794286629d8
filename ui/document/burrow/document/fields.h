#pragma once
/// The values of a part that a person may type, each with its unit, range and how it is set.

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "burrow/base/quantity_text.h"
#include "burrow/document/item.h"

namespace burrow {

struct Field {
  std::string label;  ///< "axis level at the face"
  Dimension dimension = Dimension::length;
  std::optional<double> value;  ///< SI; empty: not known
  bool entered = true;          ///< false: a default stands
  bool may_be_empty = false;
  double low = 0, high = 0;  ///< SI, both accepted
  /// Sets it in a crossing. Empty input only where `may_be_empty`.
  std::function<void(Crossing&, std::optional<double>)> apply;
  /// What stands where nothing is typed: the value of the class or of the program. Empty input goes back to it.
  std::optional<double> default_value = std::nullopt;
  /// Why the crossing could not stand with this value or with an empty entry, though it lies in the range.
  std::function<Result<void>(const Crossing&, std::optional<double>)> validate{};
  /// Stands for several things that differ; what is typed goes to all of them.
  bool mixed = false;
  /// A size itself, which a nominal one ("DN 100") is not.
  bool actual_size = false;
  /// Where it is locked against dragging and searching, as a JSON pointer; empty: nothing drags or searches it.
  std::string lock{};
};

/// Fields of the part, the most wanted first.   Evidence: Fields.*
std::vector<Field> fields_of(const Crossing& crossing, const ItemRef& part);

/// How the tool is set in the launch pit, and how well: grade, heading, sight base and three errors.
std::vector<Field> setting_fields(const Crossing& crossing);

/// SI value of typed text for a field, or what is wrong with it ("between −100 % and 100 %"). Empty text is an answer
/// where `may_be_empty`.
Result<std::optional<double>> read_field(const Field& field, std::string_view text, UnitSystem units);

}  // namespace burrow
