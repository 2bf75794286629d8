#pragma once
/// Values of a crossing's file changed by their JSON pointer, for scripts and tables: typed as a person types them.

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "burrow/base/result.h"
#include "burrow/tables/tables.h"

namespace burrow {

/// `pointer`: "/bore/launch/elevation_m", "/site/utilities/0/outside_diameter_m"; a thing of a list by its id too:
/// "/site/utilities/u1/…". `text`: a bare number is in the unit that the key names; with a unit written as a person
/// writes it ("330 ft 6 in", "2 %"); "null" where the file allows not known; words; for objects and lists JSON.
struct NewValue {
  std::string pointer;
  std::string text;
};

/// Nothing typed, as an empty cell of a table, means not known and never 0: null, or an empty text. Where the program
/// would put a default of its own in that place, or something must stand there, it is refused.
enum class EmptyText { refused, not_known };

class ChangedValues {
 public:
  /// `tables` must live as long as this. Errors: as `read_crossing`; a file of a newer version.
  static Result<ChangedValues> open(std::string_view crossing_text, const Tables& tables);

  /// Whether the file has such a place. Error: what is known there, and what looks like it.
  [[nodiscard]] Result<void> check(std::string_view pointer) const;

  /// Leaves out what somebody established for that very place and that no other crossing may take over: search and
  /// tracing of utilities, test holes, permissions, agreements, water, what was seen in a pit, records of the day,
  /// muted findings. Gives the pointers of what was left out.
  std::vector<std::string> leave_out_evidence();

  /// The text of the file with these values, taken by the same reader as any file, and written as the program does.
  /// Errors (`place` is the pointer): an unknown pointer, a value that is not understood, what `read_crossing` refuses.
  /// Evidence: ChangedValues.*
  [[nodiscard]] Result<std::string> with(const std::vector<NewValue>& values, EmptyText empty) const;

 private:
  struct Parts;
  explicit ChangedValues(std::shared_ptr<Parts> parts) : parts_(std::move(parts)) {}
  std::shared_ptr<Parts> parts_;
};

}  // namespace burrow
