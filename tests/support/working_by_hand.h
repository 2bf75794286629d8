#pragma once
/// Each working once more, as a person works it out from the numbers listed, and as one who holds only the printed
/// page.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <map>
#include <string>

#include "burrow/clearance/contact.h"
#include "burrow/load/railway.h"
#include "burrow/load/wheel_group.h"
#include "burrow/pipe/ring.h"
#include "burrow/soil/movement.h"
#include "burrow/words/working_text.h"
#include "support/clean_crossing.h"

namespace burrow::test {

using Again = std::function<double(const Working&)>;

/// Inputs that were printed have six digits: what they must agree with among themselves agrees to these.
inline double slack = 0;

/// In mm/s and in/s, as the two sources print their forms.
inline double vibration_again(const Working& w) {
  const double percussive = input(w, "k_p") * std::sqrt(input(w, "W")) / std::pow(input(w, "r"), 1.3) / 1000;
  const double foot_pounds = input(w, "W") / 1.3558179483314004, feet = input(w, "r") / 0.3048;
  return std::max(percussive, 0.0254 * 0.65 * std::pow(25 / feet, input(w, "n")) * std::sqrt(foot_pounds / 36000));
}

/// By adding up small steps of what may be found, from where it is far enough away and the chance small enough on, on
/// either side; no quadrature rule of the program's, no search.
inline double after_hole_again(const Working& w) {
  const double u2 = input(w, "s_u") * input(w, "s_u"), h2 = input(w, "s_h") * input(w, "s_h");
  const double tau = u2 / std::sqrt(u2 + h2), then = std::sqrt(std::pow(input(w, "s_bore"), 2) + u2 * h2 / (u2 + h2));
  const double R = input(w, "R"), stop = input(w, "P_stop");
  double from = R + input(w, "g"), beyond = from + 100 * then;
  if (crossing_chance(from, R, then) > stop) {
    for (int i = 0; i < 200; ++i) {
      const double middle = 0.5 * (from + beyond);
      (crossing_chance(middle, R, then) > stop ? from : beyond) = middle;
    }
  }
  const double end = std::max(from, std::abs(input(w, "δ"))) + 9 * (tau + then);
  constexpr int steps = 3000;
  const double step = (end - from) / steps;
  double sum = 0;
  for (int i = 0; i <= steps; ++i)
    for (const double side : {1.0, -1.0}) {
      const double m = from + i * step, z = (side * m - input(w, "δ")) / tau;
      sum += (i == 0 || i == steps ? 0.5 : 1) * crossing_chance(m, R, then) * std::exp(-0.5 * z * z);
    }
  return sum * step / (tau * std::sqrt(2 * pi));
}

inline double gap_again(const Working& w) {
  return std::hypot(input(w, "x") - input(w, "x_edge"), input(w, "y") - input(w, "y_edge"));
}

inline double spread_again(const Working& w) {
  return input(w, "b") - input(w, "n") * input(w, "t");
}

/// Layer by layer: thickness times its slope.
inline double set_back_again(const Working& w) {
  double sum = 0;
  for (std::size_t i = 0; i + 1 < w.inputs.size(); i += 2) sum += w.inputs[i].value * w.inputs[i + 1].value;
  return sum;
}

/// Wheels spread over their area, or a train by the greater of table and half-space.
inline double live_again(const Working& w) {
  for (const WorkingInput& i : w.inputs)
    if (i.symbol == "P")
      return input(w, "counted") * input(w, "n") * input(w, "P") * input(w, "m") * (1 + input(w, "IM")) /
             (input(w, "l") * input(w, "w"));
  for (const WorkingInput& i : w.inputs)
    if (i.symbol == "p_1") {
      const EuropeanPressure p = *european_pressure(Length{input(w, "w")}, Length{input(w, "H")});
      EXPECT_EQ(input(w, "n"), p.lanes.count);
      EXPECT_EQ(i.value, p.model_1_Pa);
      return std::max(i.value, input(w, "p_2"));
    }
  // Read off the tables of their groups, of which WheelGroup.* show what they hold.
  for (const auto& [category, group] :
       {std::pair{"category F", WheelGroup::car}, {"category G", WheelGroup::light_vehicle}})
    if (w.source.text.english().find(category) != std::string::npos)
      return group_pressure(group, Length{input(w, "H")})->Pa;
  return rail_pressure(Length{input(w, "H")})->pressure_Pa;
}

inline double cubed(double v) {
  return v * v * v;
}

/// Ground that lasts and traffic that passes, with the support beside.
inline double flattening_again(const Working& w) {
  const auto part = [&](const char* load, const char* e) {
    return 0.1 * input(w, load) / (2.0 / 3 * input(w, e) / cubed(input(w, "DR") - 1) + 0.061 * input(w, "E′"));
  };
  return part("P_ground", "E_long") + part("P_traffic", "E_short");
}

inline double bare_buckling_again(const Working& w) {
  const double d = input(w, "d"), oval = cubed((1 - d) / ((1 + d) * (1 + d)));
  const double limit =
      2 * input(w, "E_long") * oval / ((1 - input(w, "ν") * input(w, "ν")) * cubed(input(w, "DR") - 1) * input(w, "N"));
  EXPECT_NEAR(*w.limit, limit, 1e-9 * limit + slack * std::abs(limit));
  return input(w, "u") + input(w, "P_ground") + input(w, "P_traffic") * input(w, "E_long") / input(w, "E_short");
}

inline double held_buckling_again(const Working& w) {
  const double bending = input(w, "E_long") / (12 * cubed(input(w, "DR") - 1));
  const double held = 5.65 / input(w, "N") * std::sqrt(input(w, "R_w") * input(w, "B′") * input(w, "E′") * bending);
  EXPECT_GE(*w.limit, held * (1 - 1e-12 - slack));
  return input(w, "u") + input(w, "R_w") * input(w, "P_ground") + input(w, "P_traffic");
}

inline double pull_again(const Working& w) {
  EXPECT_GE(input(w, "T_turn"), 0);
  return input(w, "T_drag") + input(w, "T_turn");
}

/// Inlet pressure by halving, Colebrook by substitution.
inline double line_again(const Working& w) {
  double f = 0.02;
  for (int i = 0; i < 200; ++i)
    f = 1 / std::pow(2 * std::log10(input(w, "ε") / (3.7 * input(w, "D")) + 2.51 / (input(w, "Re") * std::sqrt(f))), 2);
  EXPECT_NEAR(f, input(w, "f"), 1e-10 + slack * std::abs(input(w, "f")));
  const double p2 = input(w, "p2"), K = input(w, "G") * input(w, "G") * input(w, "R") * input(w, "T");
  double low = p2, high = 100 * p2;
  for (int i = 0; i < 200; ++i) {
    const double p1 = 0.5 * (low + high);
    const bool too_low = p1 * p1 - p2 * p2 < K * (f * input(w, "L") / input(w, "D") + 2 * std::log(p1 / p2));
    (too_low ? low : high) = p1;
  }
  return low;
}

inline double water_again(const Working& w) {
  const double vapour = input(w, "φ") * input(w, "p_w"), dry = input(w, "p_h") - vapour;
  const double kept = input(w, "p_s") / (input(w, "p_h") + input(w, "p") - input(w, "p_s"));
  return std::max(0.0, 0.62198 * (vapour / dry - kept) * dry * input(w, "Q") / (input(w, "R") * input(w, "T")));
}

inline double harris_again(const Working& w) {
  const double psi = 6894.757293168361, p1 = input(w, "p1") / psi;
  const double cfm = input(w, "Q") * 60 / std::pow(0.3048, 3);
  return (p1 - std::sqrt(p1 * p1 - 2 * input(w, "S") * cfm * cfm / 2390)) * psi;
}

/// Σ p P_ground.
inline double over_grounds(const Working& w) {
  double sum = 0, share = 0;
  for (const WorkingInput& i : w.inputs) {
    if (i.symbol == "p") share = i.value;
    if (i.symbol == "P_ground") sum += share * i.value;
  }
  return sum;
}

inline std::vector<double> all_of(const Working& w, std::string_view symbol) {
  std::vector<double> values;
  for (const WorkingInput& i : w.inputs)
    if (i.symbol == symbol) values.push_back(i.value);
  return values;
}

/// ∫ P(c) f(c) dc for the lognormal of mean 0.04 and sd 0.03, ln c in 4000 even steps; P of the place between the rows
/// of the working, straight in ln c.
template <class F>
inline double over_constant(const Working& w, F chance_between_rows) {
  const std::vector<double> c = all_of(w, "c");
  const double variance = std::log1p(0.75 * 0.75), mean = std::log(0.04) - variance / 2, sd = std::sqrt(variance);
  double sum = 0, weights = 0;
  std::size_t row = 0;
  for (int i = 0; i < 4000; ++i) {
    const double log_c = mean + sd * (-5 + 10 * (i + 0.5) / 4000), k = (log_c - mean) / sd;
    while (row + 2 < c.size() && std::log(c[row + 1]) < log_c) ++row;
    const double share = std::clamp((log_c - std::log(c[row])) / (std::log(c[row + 1]) - std::log(c[row])), 0.0, 1.0);
    const double weight = std::exp(-0.5 * k * k);
    sum += weight * chance_between_rows(row, share);
    weights += weight;
  }
  return sum / weights;
}

inline double below(double z) {
  return 0.5 * std::erfc(-z * std::sqrt(0.5));
}

/// The chance in the ground as entered once more from the rows; that of all grounds is their sum.
inline double score_again(const Working& w) {
  const std::vector<double> score = all_of(w, "ζ(c)");
  const double again = over_constant(
      w, [&](std::size_t row, double share) { return below(score[row] + share * (score[row + 1] - score[row])); });
  EXPECT_NEAR(again, input(w, "P_ground"), 0.002 + 0.1 * input(w, "P_ground")) << w.code;
  return over_grounds(w);
}

inline double contact_of(double delta, double radius, double s) {
  return below((radius - delta) / s) - below((-radius - delta) / s);
}

inline bool has_input(const Working& w, std::string_view symbol) {
  return std::any_of(w.inputs.begin(), w.inputs.end(), [&](const WorkingInput& i) { return i.symbol == symbol; });
}

inline double contact_again(const Working& w) {
  if (!has_input(w, "P_ground")) return contact_of(input(w, "δ"), input(w, "R"), input(w, "s"));
  const std::vector<double> gap = all_of(w, "δ(c)"), spread = all_of(w, "s_bore(c)");
  std::vector<double> between_ends = all_of(w, "e(c)");
  between_ends.resize(gap.size(), 1);
  if (!gap.empty()) {
    const double R = input(w, "R"), place = input(w, "s_utility");
    const double again = over_constant(w, [&](std::size_t row, double share) {
      const double d = gap[row] + share * (gap[row + 1] - gap[row]);
      const double s = std::hypot(spread[row] + share * (spread[row + 1] - spread[row]), place);
      const double e = between_ends[row] + share * (between_ends[row + 1] - between_ends[row]);
      return e * (below((R - d) / s) - below((-R - d) / s));
    });
    EXPECT_NEAR(again, input(w, "P_ground"), 0.002 + 0.1 * input(w, "P_ground")) << w.subject;
  }
  return over_grounds(w);
}

/// The greatest for any error from none to the stated one, tried in small steps.
inline double worst_again(const Working& w) {
  if (has_input(w, "P_ground")) return over_grounds(w);
  double worst = 0;
  for (int i = 0; i <= 2000; ++i)
    worst = std::max(worst, contact_of(input(w, "δ"), input(w, "R"),
                                       std::hypot(input(w, "s_bore"), input(w, "s_utility") * i / 2000)));
  return worst;
}

inline double near_again(const Working& w) {
  if (has_input(w, "P_ground")) return over_grounds(w);
  return contact_of(input(w, "δ"), input(w, "R") + input(w, "g_req"), input(w, "s"));
}

/// The formulas as a person would work them out from the inputs listed.
inline const std::map<std::string, Again, std::less<>>& formulas() {
  static const std::map<std::string, Again, std::less<>> all{
      {"bore.length", [](const Working& w) { return input(w, "x_exit") - input(w, "x_launch"); }},
      {"bore.exit-window", [](const Working& w) { return over_grounds(w); }},
      {"bore.daylight-chance", score_again},
      {"bore.cover-chance", score_again},
      {"surface.cover-chance", score_again},
      {"bore.refusal", [](const Working& w) { return 1 - std::exp(-input(w, "N")); }},
      {"bore.climb",
       [](const Working& w) {
         return std::abs(input(w, "z") - input(w, "z_0") - input(w, "i") * (input(w, "x") - input(w, "x_0")));
       }},
      {"bore.sag",
       [](const Working& w) {
         return std::abs(input(w, "z") - input(w, "z_0") - input(w, "i") * (input(w, "x") - input(w, "x_0")));
       }},
      {"bore.set",
       [](const Working& w) {
         const double area = pi * input(w, "d_piston") * input(w, "d_piston") / 4;
         const double energy = input(w, "share") * input(w, "p") * area * input(w, "stroke");
         const double rest = input(w, "m_tool") - input(w, "m_striker");
         const double share = (input(w, "m_striker") + input(w, "e") * input(w, "e") * rest) / input(w, "m_tool");
         const double resistance = (input(w, "R_nose") + input(w, "R_side")) * (1 + input(w, "J") * input(w, "v"));
         return share * energy / resistance - input(w, "r_e");
       }},
      {"bore.efficiency",
       [](const Working& w) {
         const double rest = input(w, "m_tool") - input(w, "m_striker");
         return (input(w, "m_striker") + input(w, "e") * input(w, "e") * rest) / input(w, "m_tool");
       }},
      {"bore.grip", [](const Working& w) { return input(w, "R_side") / input(w, "p A_piston"); }},
      {"bore.time", [](const Working& w) { return std::sqrt(input(w, "P10") * input(w, "P90")); }},
      {"surface.angle", [](const Working& w) { return pi / 2 - std::abs(input(w, "skew")) - std::abs(input(w, "ψ")); }},
      {"surface.pit-setback",
       [](const Working& w) { return std::abs(input(w, "x_edge") - input(w, "x_face")) * std::cos(input(w, "skew")); }},
      {"surface.settlement",
       [](const Working& w) {
         const double area = pi / 4 * (input(w, "D") * input(w, "D") - input(w, "n") * input(w, "d") * input(w, "d"));
         return std::max(0.0, input(w, "f") * area / (std::sqrt(2 * pi) * 0.5 * input(w, "h")));
       }},
      {"utility.movement",
       [](const Working& w) {
         const OpenedHole hole{{input(w, "a")}, {input(w, "h")}, {input(w, "f_v")}};
         const auto field = ground_movement(hole, {input(w, "x")}, {input(w, "z")}, SourceTerm::exact);
         EXPECT_NEAR(field->rise_m, input(w, "u_up"), 1e-15 + 10 * slack * w.value);
         return std::hypot(input(w, "u_out"), input(w, "u_up"));
       }},
      {"utility.strain",
       [](const Working& w) {
         const double sin2 = std::sin(input(w, "β")) * std::sin(input(w, "β")), half = input(w, "d") / 2;
         return sin2 * (input(w, "κ") * half + input(w, "j") * input(w, "ε_x")) +
                (1 - sin2) * (input(w, "κ_front") * half + input(w, "j") * input(w, "ε_front"));
       }},
      {"utility.vibration", vibration_again},
      {"building.vibration", vibration_again},
      {"footing.influence",
       [](const Working& w) {
         return std::min(input(w, "b"), (input(w, "b") - input(w, "t")) / std::sqrt(2.0)) - input(w, "D") / 2;
       }},
      {"surface.stuck", [](const Working& w) { return std::exp(-input(w, "N_from")) - std::exp(-input(w, "N_to")); }},
      {"bore.cover", [](const Working& w) { return input(w, "z_ground") - input(w, "z_axis") - input(w, "D") / 2; }},
      {"surface.cover", [](const Working& w) { return input(w, "z_ground") - input(w, "z_axis") - input(w, "D") / 2; }},
      {"bore.cover-low", [](const Working& w) { return input(w, "C") - 1.645 * input(w, "sd"); }},
      {"surface.cover-low", [](const Working& w) { return input(w, "C") - 1.645 * input(w, "sd"); }},
      {"surface.heave",
       [](const Working& w) { return input(w, "f_v") * input(w, "a") * input(w, "a") / input(w, "h"); }},
      {"surface.heave-high",
       [](const Working& w) {
         const double a = input(w, "a"), h = input(w, "h"), area = input(w, "f_v") * pi * a * a;
         const bool block = w.formula.find("tan") != std::string_view::npos;
         return block ? area / (2 * a + 2 * (h - a) * std::tan(20 * pi / 180)) : area / (std::sqrt(2 * pi) * 0.5 * h);
       }},
      {"surface.levels-rose", [](const Working& w) { return std::abs(input(w, "z_then") - input(w, "z_before")); }},
      {"surface.levels-sank", [](const Working& w) { return std::abs(input(w, "z_then") - input(w, "z_before")); }},
      {"bore.neutral-cover",
       [](const Working& w) { return input(w, "z_ground") - input(w, "z_axis") - input(w, "D") / 2; }},
      {"bore.plastic-zone", [](const Working& w) { return input(w, "a") * input(w, "n"); }},
      {"utility.plastic-zone", [](const Working& w) { return input(w, "a") * input(w, "n"); }},
      {"pit.water", [](const Working& w) { return input(w, "z_water") - input(w, "z_floor") + input(w, "sump"); }},
      {"pit.depth", [](const Working& w) { return input(w, "z_ground") - input(w, "z_floor"); }},
      {"pit.ground", [](const Working& w) { return input(w, "z_surface") - input(w, "z_line"); }},
      {"pit.set-back", set_back_again},
      {"pit.slope", [](const Working& w) { return input(w, "r") / input(w, "h"); }},
      {"pit.support-short", [](const Working& w) { return input(w, "z_top") - input(w, "z_floor"); }},
      {"pit.support-foot", [](const Working& w) { return input(w, "z_foot") - input(w, "z_floor"); }},
      {"pit.trench-width", [](const Working& w) { return input(w, "y_left") - input(w, "y_right"); }},
      {"pit.working-space", [](const Working& w) { return input(w, "L_floor") - input(w, "L_t"); }},
      {"pit.bore-side-sloped", [](const Working& w) { return std::abs(input(w, "x_surface") - input(w, "x_face")); }},
      {"pit.loose",
       [](const Working& w) {
         double sum = 0;
         for (std::size_t i = 0; i + 1 < w.inputs.size(); i += 2)
           sum += w.inputs[i].value * (1 + w.inputs[i + 1].value);
         return sum;
       }},
      {"pit.heap",
       [](const Working& w) {
         const double h = input(w, "h"), run = input(w, "n") * h;
         return input(w, "L") * input(w, "b") * h + (input(w, "L") + input(w, "b")) * run * h + pi * run * run * h / 3;
       }},
      {"pit.ladder", [](const Working& w) { return std::hypot(input(w, "x"), input(w, "y")); }},
      {"pit.edge-load", gap_again},
      {"surface.pit-edge", gap_again},
      {"surface.near-centre", gap_again},
      {"pit.shield-depth", [](const Working& w) { return input(w, "z_ground") - input(w, "z_floor"); }},
      {"pit.proposal", [](const Working& w) { return std::min(input(w, "V_straight"), input(w, "V_sloped")); }},
      {"pit.plant", gap_again},
      {"pit.tree", gap_again},
      {"pit.footing-spread", spread_again},
      {"pit.track-spread", spread_again},
      {"pit.base-heave",
       [](const Working& w) {
         const double ratio = std::min(input(w, "d") / input(w, "B"), 2.5);
         const double n_c = 5 * (1 + 0.2 * ratio) * (1 + 0.2 * input(w, "B") / input(w, "L"));
         EXPECT_NEAR(n_c, input(w, "N_c"), 1e-9 + slack * std::abs(input(w, "N_c")));
         return n_c * input(w, "s_u") / (input(w, "σ") + input(w, "q"));
       }},
      {"pit.uplift", [](const Working& w) { return input(w, "W") / (input(w, "γ_w") * input(w, "h")); }},
      {"utility.after-hole", after_hole_again},
      {"utility.contact-any",
       [](const Working& w) {
         double none = 1;
         for (const WorkingInput& i : w.inputs) none *= 1 - i.value;
         return 1 - none;
       }},
      {"site.unknown-service",
       [](const Working& w) { return 1 - std::exp(-input(w, "λ") * input(w, "L") * input(w, "D")); }},
      {"pipe.hole", [](const Working& w) { return input(w, "D") / input(w, "d"); }},
      {"pipe.earth", [](const Working& w) { return input(w, "γ") * input(w, "H"); }},
      {"pipe.earth-arched",
       [](const Working& w) {
         const double k = input(w, "Kμ′"), b = input(w, "B");
         return (1 - std::exp(-2 * k * input(w, "H") / b)) / (2 * k) * input(w, "γ") * b;
       }},
      {"pipe.live", live_again},
      {"pipe.safe-pull",
       [](const Working& w) {
         const double by_yield = 0.40 * input(w, "f_t") * input(w, "T_y");
         return input(w, "n") * input(w, "A") * input(w, "f_T") * std::min(by_yield, input(w, "σ"));
       }},
      {"pipe.pull", pull_again},
      {"pipe.pull-closed", pull_again},
      {"pipe.push", pull_again},
      {"pipe.hose", [](const Working& w) { return input(w, "T"); }},
      {"pipe.stretch",
       [](const Working& w) { return input(w, "T") * input(w, "L") / (input(w, "n A") * input(w, "E")); }},
      {"pipe.bend", [](const Working& w) { return std::min(1 / input(w, "κ"), 1e4); }},
      {"pipe.strain",
       [](const Working& w) {
         const double i = 0.5 * input(w, "h");
         return (input(w, "κ") + input(w, "g") / (i * i)) * input(w, "D") / 2;
       }},
      {"pipe.deflection", flattening_again},
      {"pipe.deflection-bare",
       [](const Working& w) {
         const double loads = input(w, "P_ground") / input(w, "E_long") + input(w, "P_traffic") / input(w, "E_short");
         return 0.15 * cubed(input(w, "DR") - 1) * loads;
       }},
      {"pipe.ring",
       [](const Working& w) { return (input(w, "P_ground") + input(w, "P_traffic")) * input(w, "DR") / 2; }},
      {"pipe.buckling-bare", bare_buckling_again},
      {"pipe.buckling", held_buckling_again},
      {"pipe.pressure", [](const Working& w) { return input(w, "p") * (input(w, "DR") - 1) / 2; }},
      {"pipe.thermal", [](const Working& w) { return std::abs(input(w, "α") * input(w, "L") * input(w, "ΔT")); }},
      {"pipe.float",
       [](const Working& w) { return input(w, "w") / (input(w, "γ_w") * pi * input(w, "D") * input(w, "D") / 4); }},
      {"pit.floor-high",
       [](const Working& w) { return input(w, "z_floor") - (input(w, "z_axis") - input(w, "D") / 2 - input(w, "t")); }},
      {"utility.distance",
       [](const Working& w) {
         return std::hypot(input(w, "x_bore") - input(w, "x_utility"), input(w, "y_bore") - input(w, "y_utility"),
                           input(w, "z_bore") - input(w, "z_utility"));
       }},
      {"utility.required", [](const Working& w) { return input(w, "g_req") + 1.645 * input(w, "s"); }},
      {"utility.separation", [](const Working& w) { return input(w, "δ") - input(w, "R"); }},
      {"utility.gap-low",
       [](const Working& w) {
         return input(w, "δ") - input(w, "R") - 1.645 * std::hypot(input(w, "s_bore"), input(w, "s_utility"));
       }},
      {"air.pressure-low", [](const Working& w) { return input(w, "p_compressor") - input(w, "Δp"); }},
      {"air.demand",
       [](const Working& w) {
         return input(w, "Q_n") * input(w, "p_0") / input(w, "p_h") * (input(w, "p") + input(w, "p_h")) /
                (input(w, "p_n") + input(w, "p_0"));
       }},
      {"air.line", line_again},
      {"air.standing",
       [](const Working& w) {
         double least = 1e12;
         for (const WorkingInput& i : w.inputs) least = std::min(least, i.value);
         return least;
       }},
      {"air.rating",
       [](const Working& w) {
         const std::vector<double> ratings = all_of(w, "p_rated");
         return *std::min_element(ratings.begin(), ratings.end());
       }},
      {"air.harris", harris_again},
      {"air.water", water_again},
      {"air.oil", [](const Working& w) { return input(w, "r") * input(w, "t"); }},
      {"air.mark", [](const Working& w) { return input(w, "m") + input(w, "L_t") + input(w, "t"); }},
      {"utility.contact", contact_again},
      {"utility.contact-worst", worst_again},
      {"utility.encroachment", near_again},
  };
  return all;
}

/// Of a printed number with its unit: its value and one step of its last digit, in SI.
struct Printed {
  double value = 0, step = 0;
};

inline const std::map<std::string, double, std::less<>>& printed_units() {
  constexpr double foot = 0.3048, inch = 0.0254, pound = 4.4482216152605, psi = 6894.757293168361;
  static const std::map<std::string, double, std::less<>> all{{"", 1},
                                                              {"m", 1},
                                                              {"%", 0.01},
                                                              {"kPa", 1e3},
                                                              {"MPa", 1e6},
                                                              {"mm/s", 1e-3},
                                                              {"m/s", 1},
                                                              {"m³", 1},
                                                              {"kN/m³", 1e3},
                                                              {"N", 1},
                                                              {"kN", 1e3},
                                                              {"N/m", 1},
                                                              {"cm²", 1e-4},
                                                              {"1/m", 1},
                                                              {"K", 1},
                                                              {"1/K", 1},
                                                              {"m³/min", 1.0 / 60},
                                                              {"°", pi / 180},
                                                              {"°C", 1},
                                                              {"J", 1},
                                                              {"s", 1},
                                                              {"kg/s", 1},
                                                              {"Hz", 1},
                                                              {"W", 1},
                                                              {"N/m²", 1},
                                                              {"1/m²", 1},
                                                              {"s/m", 1},
                                                              {"kg/(m² s)", 1},
                                                              {"kg", 1},
                                                              {"kg/m³", 1},
                                                              {"J/(kg K)", 1},
                                                              {"m/√m", 1},
                                                              {"m⁴", 1},
                                                              {"ft", foot},
                                                              {"ksi", 1000 * psi},
                                                              {"psi", psi},
                                                              {"in/s", inch},
                                                              {"yd³", 27 * foot * foot * foot},
                                                              {"lb/ft³", pound / (foot * foot * foot)},
                                                              {"lbf", pound},
                                                              {"lb/ft", pound / foot},
                                                              {"in²", inch * inch},
                                                              {"1/ft", 1 / foot},
                                                              {"1/°F", 1.8},
                                                              {"ft³/min", foot * foot * foot / 60},
                                                              {"°F", 1 / 1.8}};
  return all;
}

/// "102.300 m", "0.0968 %", "1.2e-05", "35.4 kPa": read without the program's own reader.
inline Printed read_printed(const std::string& text, bool difference = false) {
  std::size_t used = 0;
  Printed read;
  read.value = std::stod(text, &used);
  const std::string digits = text.substr(0, used);
  std::string unit = text.substr(used);
  if (!unit.empty() && unit[0] == ' ') unit.erase(0, 1);
  const auto known = printed_units().find(unit);
  EXPECT_NE(known, printed_units().end()) << "unit of \"" << text << "\"";
  const double factor = known == printed_units().end() ? 1 : known->second;
  const std::size_t exponent = digits.find('e'), point = digits.find('.');
  const double power = exponent == std::string::npos ? 0 : std::stod(digits.substr(exponent + 1));
  const std::size_t end = exponent == std::string::npos ? digits.size() : exponent;
  const double decimals = point == std::string::npos ? 0 : static_cast<double>(end - point - 1);
  read.step = std::pow(10, power - decimals) * factor;
  const bool level = !difference && (unit == "°C" || unit == "°F");
  read.value = level ? (unit == "°F" ? (read.value + 459.67) / 1.8 : read.value + 273.15) : read.value * factor;
  return read;
}

/// As a person has it who holds only the printed page.
inline Working as_printed(const Working& w, UnitSystem units) {
  Working printed = w;
  for (WorkingInput& i : printed.inputs)
    i.value = read_printed(working_input(i, units), i.symbol.starts_with("Δ")).value;
  return printed;
}

/// The result worked out again from the printed inputs agrees to its last printed digit. Empty: it does.
inline std::string what_does_not_come_out(const Working& w, UnitSystem units) {
  const auto it = formulas().find(w.code);
  if (it == formulas().end()) return std::string(w.code) + " has no formula in this test";
  const std::string text = working_number(w.value, w.unit, units, w.symbol);
  if (text[0] == '<' || text[0] == '>') return {};  // a chance that is said in words
  const Printed result = read_printed(text, w.symbol.starts_with("Δ"));
  const double again = it->second(as_printed(w, units));
  if (std::abs(again - result.value) <= 1.001 * result.step) return {};
  return std::string(w.code) + " " + w.subject + ": " + std::to_string(again) + " from what is printed\n" +
         working_text(w, units);
}

}  // namespace burrow::test
