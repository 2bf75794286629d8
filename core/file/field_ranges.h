#pragma once
/// The ranges a number of the file must lie in. A range is written so that NaN fails it.

#include <limits>
#include <string_view>

#include "burrow/base/quantity.h"

namespace burrow {

struct Range {
  double low = 0;
  double high = 0;
  bool above_low = false;  ///< `low` itself does not belong to it
  std::string_view words;

  [[nodiscard]] constexpr bool holds(double value) const {
    return (above_low ? value > low : value >= low) && value <= high;
  }
};

namespace range {
inline constexpr double largest = std::numeric_limits<double>::max();

inline constexpr Range any{-largest, largest, false, "a number"};
inline constexpr Range station{-1e5, 1e5, false, "a station from -100000 to 100000 m"};
inline constexpr Range offset{-1e5, 1e5, false, "an offset from -100000 to 100000 m"};
inline constexpr Range elevation{-1e4, 1e4, false, "an elevation from -10000 to 10000 m"};
inline constexpr Range rise{-1e4, 1e4, false, "a rise from -10000 to 10000 m"};
inline constexpr Range grade{-1, 1, false, "a grade from -1 to 1 (rise over run)"};
inline constexpr Range heading{-pi / 2, pi / 2, false, "a heading from -pi/2 to pi/2 rad"};
inline constexpr Range angle{-pi / 2, pi / 2, false, "an angle from -pi/2 to pi/2 rad"};
inline constexpr Range turn{-2 * pi, 2 * pi, false, "an angle from -2 pi to 2 pi rad"};
inline constexpr Range diameter{0, 5, true, "a diameter above 0 and up to 5 m"};
inline constexpr Range size{0, 1e5, false, "a size from 0 to 100000 m"};
inline constexpr Range positive_size{0, 1e5, true, "a size above 0 and up to 100000 m"};
inline constexpr Range sd{0, 1e5, false, "a standard deviation, 0 or more"};
inline constexpr Range not_negative{0, largest, false, "a number, 0 or more"};
inline constexpr Range positive{0, largest, true, "a number above 0"};
inline constexpr Range rate{0, largest, false, "a rate, 0 or more"};
inline constexpr Range share{0, 1, false, "a share from 0 to 1"};
inline constexpr Range poisson{0, 0.5, false, "a Poisson ratio from 0 to 0.5"};
inline constexpr Range slope_angle{0, pi / 2, false, "an angle from 0 to pi/2 rad"};
inline constexpr Range count{0, 9e15, false, "a whole number, 0 or more"};
inline constexpr Range count_from_1{1, 9e15, false, "a whole number, 1 or more"};
inline constexpr Range trials{0, 1e6, false, "a whole number of trials from 0 to 1000000"};
inline constexpr Range whole{-1e19, 1e19, false, "a whole number"};
}  // namespace range

}  // namespace burrow
