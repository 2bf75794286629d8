#pragma once
/// Quantities in SI: one-field structs whose member is named after its unit.
/// Feet, inches, psi, degrees and percent exist only as literals here and in `quantity_text.h`.

#include <compare>

namespace burrow {

struct Length {
  double m = 0;
  auto operator<=>(const Length&) const = default;
};
struct Angle {
  double rad = 0;
  auto operator<=>(const Angle&) const = default;
};
/// A plain ratio: a grade (rise over run, positive up), a share, a chance.
struct Ratio {
  double v = 0;
  auto operator<=>(const Ratio&) const = default;
};
struct Area {
  double m2 = 0;
  auto operator<=>(const Area&) const = default;
};
struct Volume {
  double m3 = 0;
  auto operator<=>(const Volume&) const = default;
};
struct Pressure {
  double Pa = 0;
  auto operator<=>(const Pressure&) const = default;
};
struct Force {
  double N = 0;
  auto operator<=>(const Force&) const = default;
};
struct UnitWeight {
  double N_m3 = 0;
  auto operator<=>(const UnitWeight&) const = default;
};
struct Mass {
  double kg = 0;
  auto operator<=>(const Mass&) const = default;
};
struct Duration {
  double s = 0;
  auto operator<=>(const Duration&) const = default;
};
struct Frequency {
  double Hz = 0;
  auto operator<=>(const Frequency&) const = default;
};
struct VolumeFlow {
  double m3_s = 0;
  auto operator<=>(const VolumeFlow&) const = default;
};
struct Temperature {
  double K = 0;
  auto operator<=>(const Temperature&) const = default;
};
/// Events for each metre of bore: stones met, refusals.
struct RatePerLength {
  double per_m = 0;
  auto operator<=>(const RatePerLength&) const = default;
};
struct RatePerArea {
  double per_m2 = 0;
  auto operator<=>(const RatePerArea&) const = default;
};
/// Random growth of heading: standard deviation after one metre, growing with the square root of length.
struct Wander {
  double rad_sqrt_m = 0;
  auto operator<=>(const Wander&) const = default;
};

constexpr double pi = 3.14159265358979323846;
constexpr double gravity_m_s2 = 9.80665;
constexpr double water_unit_weight_N_m3 = 9806.65;

namespace literals {
constexpr double plain(long double v) {
  return static_cast<double>(v);
}
constexpr double plain(unsigned long long v) {
  return static_cast<double>(v);
}

// NOLINTBEGIN(bugprone-macro-parentheses): a type cannot stand in parentheses
#define BURROW_LITERAL(suffix, Type, factor)                 \
  constexpr Type operator""_##suffix(long double v) {        \
    return Type{plain(v) * (factor)};                        \
  }                                                          \
  constexpr Type operator""_##suffix(unsigned long long v) { \
    return Type{plain(v) * (factor)};                        \
  }
BURROW_LITERAL(m, Length, 1.0)
BURROW_LITERAL(mm, Length, 1e-3)
BURROW_LITERAL(ft, Length, 0.3048)
BURROW_LITERAL(in, Length, 0.0254)
BURROW_LITERAL(rad, Angle, 1.0)
BURROW_LITERAL(deg, Angle, pi / 180.0)
BURROW_LITERAL(pct, Ratio, 0.01)
BURROW_LITERAL(Pa, Pressure, 1.0)
BURROW_LITERAL(kPa, Pressure, 1e3)
BURROW_LITERAL(MPa, Pressure, 1e6)
BURROW_LITERAL(bar, Pressure, 1e5)
BURROW_LITERAL(psi, Pressure, 6894.757293168361)
BURROW_LITERAL(N, Force, 1.0)
BURROW_LITERAL(kN, Force, 1e3)
BURROW_LITERAL(kN_m3, UnitWeight, 1e3)
BURROW_LITERAL(kg, Mass, 1.0)
BURROW_LITERAL(s, Duration, 1.0)
BURROW_LITERAL(Hz, Frequency, 1.0)
#undef BURROW_LITERAL
// NOLINTEND(bugprone-macro-parentheses)
}  // namespace literals

}  // namespace burrow
