#pragma once
/// How people write the mark before decimals: 1.25 or 1,25. Only what people read and type changes: files, JSON, CSV
/// and exports always have the point, and what computes and judges never asks.   Evidence: DecimalMark.*

#include <string>

namespace burrow {

enum class DecimalMark {
  point,  ///< "1.25"; typed too: "1,25", but "1,250" is refused, since it may mean thousands
  comma   ///< "1,25"; typed too: "1.25"; "1,250" is one and a quarter, "1.250" too
};

/// From now on, for all texts of `format` and of the functions here; other threads may make texts meanwhile.
/// `use_dictionary` calls it with what its language has.
void set_decimal_mark(DecimalMark mark);
DecimalMark decimal_mark();

/// With a fixed number of decimals: "0.50". Not a number gives "–"; the sign is a plain one.
std::string fixed_text(double value, int decimals);
/// With that many digits in all, no zeros at the end: "0.5", "1.5e+12".
std::string significant_text(double value, int digits);

}  // namespace burrow
