#pragma once
/// What a person types or taps on the day, turned into readings of a record.

#include <functional>
#include <string>
#include <vector>

#include "burrow/base/quantity_text.h"
#include "burrow/bore/tool.h"
#include "burrow/crossing/crossing.h"

namespace burrow {

/// One number of a reading.
struct ReadingInput {
  std::string label, hint;
  Dimension dimension = Dimension::length;
  bool required = false;
  double low = 0, high = 0;  ///< SI, both accepted; what the file takes
  std::function<void(Reading&, double)> put;
};

/// The numbers of a kind of reading, and whether words go with it.
struct ReadingForm {
  ReadingKind kind = ReadingKind::mark;
  std::string name;
  std::vector<ReadingInput> inputs;
  bool words = false;      ///< why, or a note
  bool needs_one = false;  ///< at least one of the inputs
};
/// Kinds that are typed, in the order of the choice. `tail_to_nose_m`: tool and tail fitting, from hose to nose.
std::vector<ReadingForm> reading_forms(double tail_to_nose_m);

/// Hose to nose: length of the tool and its tail fitting.
double tail_to_nose(const Crossing& crossing, const Tables& tables);
/// The next hose mark to come: a whole number of spacings beyond the furthest so far, as nose.
double next_mark(const Crossing& crossing, const Tables& tables, const DayRecord& record);

/// A reading from typed texts, one an input, and the words.
/// Errors: the input that is wrong (`place` is its label), or nothing typed at all.   Evidence: DayPanel.Typed_*,
/// .WrongTyping_*
Result<Reading> reading_from(const ReadingForm& form, const std::vector<std::string>& texts, const std::string& words,
                             double time_s, UnitSystem units);

/// "8 min · mark · nose 3.00 m": one line for the list.
std::string reading_line(const Reading& reading, UnitSystem units);

/// A reading goes into a record in the order of its times.
void add_reading(DayRecord& record, Reading reading);

}  // namespace burrow
