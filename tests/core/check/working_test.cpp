// The working: the number shown is the number of the answer, and it comes out again from the inputs shown.

#include "burrow/words/working_text.h"

#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <map>

#include "burrow/base/decimal_mark.h"
#include "burrow/clearance/contact.h"
#include "burrow/load/railway.h"
#include "burrow/load/wheel_group.h"
#include "burrow/pipe/ring.h"
#include "burrow/soil/movement.h"
#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

using Again = std::function<double(const Working&)>;

/// Inputs that were printed have six digits: what they must agree with among themselves agrees to these.
double slack = 0;

/// In mm/s and in/s, as the two sources print their forms.
double vibration_again(const Working& w) {
  const double percussive = input(w, "k_p") * std::sqrt(input(w, "W")) / std::pow(input(w, "r"), 1.3) / 1000;
  const double foot_pounds = input(w, "W") / 1.3558179483314004, feet = input(w, "r") / 0.3048;
  return std::max(percussive, 0.0254 * 0.65 * std::pow(25 / feet, input(w, "n")) * std::sqrt(foot_pounds / 36000));
}

/// By adding up small steps of what may be found, one after the other; no quadrature rule, no search.
double after_hole_again(const Working& w) {
  const double u2 = input(w, "s_u") * input(w, "s_u"), h2 = input(w, "s_h") * input(w, "s_h");
  const double tau = u2 / std::sqrt(u2 + h2), then = std::sqrt(std::pow(input(w, "s_bore"), 2) + u2 * h2 / (u2 + h2));
  const double step = tau / 4000;
  double sum = 0;
  for (int i = -36000; i <= 36000; ++i) {
    const double m = input(w, "δ") + i * step, p = crossing_chance(m, input(w, "R"), then);
    if (std::abs(m) - input(w, "R") < input(w, "g") || p > input(w, "P_stop")) continue;
    sum += p * std::exp(-0.5 * std::pow(i * step / tau, 2)) * step / (tau * std::sqrt(2 * pi));
  }
  return sum;
}

double gap_again(const Working& w) {
  return std::hypot(input(w, "x") - input(w, "x_edge"), input(w, "y") - input(w, "y_edge"));
}

double spread_again(const Working& w) {
  return input(w, "b") - input(w, "n") * input(w, "t");
}

/// Layer by layer: thickness times its slope.
double set_back_again(const Working& w) {
  double sum = 0;
  for (std::size_t i = 0; i + 1 < w.inputs.size(); i += 2) sum += w.inputs[i].value * w.inputs[i + 1].value;
  return sum;
}

/// Wheels spread over their area, or a train by the greater of table and half-space.
double live_again(const Working& w) {
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
  return rail_pressure(Length{input(w, "H")})->pressure_Pa;
}

double cubed(double v) {
  return v * v * v;
}

/// Ground that lasts and traffic that passes, with the support beside.
double flattening_again(const Working& w) {
  const auto part = [&](const char* load, const char* e) {
    return 0.1 * input(w, load) / (2.0 / 3 * input(w, e) / cubed(input(w, "DR") - 1) + 0.061 * input(w, "E′"));
  };
  return part("P_ground", "E_long") + part("P_traffic", "E_short");
}

double bare_buckling_again(const Working& w) {
  const double d = input(w, "d"), oval = cubed((1 - d) / ((1 + d) * (1 + d)));
  const double limit =
      2 * input(w, "E_long") * oval / ((1 - input(w, "ν") * input(w, "ν")) * cubed(input(w, "DR") - 1) * input(w, "N"));
  EXPECT_NEAR(*w.limit, limit, 1e-9 * limit + slack * std::abs(limit));
  return input(w, "u") + input(w, "P_ground") + input(w, "P_traffic") * input(w, "E_long") / input(w, "E_short");
}

double held_buckling_again(const Working& w) {
  const double bending = input(w, "E_long") / (12 * cubed(input(w, "DR") - 1));
  const double held = 5.65 / input(w, "N") * std::sqrt(input(w, "R_w") * input(w, "B′") * input(w, "E′") * bending);
  EXPECT_GE(*w.limit, held * (1 - 1e-12));
  return input(w, "u") + input(w, "R_w") * input(w, "P_ground") + input(w, "P_traffic");
}

double pull_again(const Working& w) {
  EXPECT_GE(input(w, "T_turn"), 0);
  return input(w, "T_drag") + input(w, "T_turn");
}

/// Inlet pressure by halving, Colebrook by substitution.
double line_again(const Working& w) {
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

double water_again(const Working& w) {
  const double vapour = input(w, "φ") * input(w, "p_w"), dry = input(w, "p_h") - vapour;
  const double kept = input(w, "p_s") / (input(w, "p_h") + input(w, "p") - input(w, "p_s"));
  return std::max(0.0, 0.62198 * (vapour / dry - kept) * dry * input(w, "Q") / (input(w, "R") * input(w, "T")));
}

double harris_again(const Working& w) {
  const double psi = 6894.757293168361, p1 = input(w, "p1") / psi;
  const double cfm = input(w, "Q") * 60 / std::pow(0.3048, 3);
  return (p1 - std::sqrt(p1 * p1 - 2 * input(w, "S") * cfm * cfm / 2390)) * psi;
}

/// Σ p P_ground.
double over_grounds(const Working& w) {
  double sum = 0, share = 0;
  for (const WorkingInput& i : w.inputs) {
    if (i.symbol == "p") share = i.value;
    if (i.symbol == "P_ground") sum += share * i.value;
  }
  return sum;
}

std::vector<double> all_of(const Working& w, std::string_view symbol) {
  std::vector<double> values;
  for (const WorkingInput& i : w.inputs)
    if (i.symbol == symbol) values.push_back(i.value);
  return values;
}

/// ∫ P(c) f(c) dc for the lognormal of mean 0.04 and sd 0.03, ln c in 4000 even steps; P of the place between the rows
/// of the working, straight in ln c.
template <class F>
double over_constant(const Working& w, F chance_between_rows) {
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

double below(double z) {
  return 0.5 * std::erfc(-z * std::sqrt(0.5));
}

/// The chance in the ground as entered once more from the rows; that of all grounds is their sum.
double score_again(const Working& w) {
  const std::vector<double> score = all_of(w, "ζ(c)");
  const double again = over_constant(
      w, [&](std::size_t row, double share) { return below(score[row] + share * (score[row + 1] - score[row])); });
  EXPECT_NEAR(again, input(w, "P_ground"), 0.002 + 0.1 * input(w, "P_ground")) << w.code;
  return over_grounds(w);
}

double contact_again(const Working& w) {
  const std::vector<double> gap = all_of(w, "δ(c)"), spread = all_of(w, "s_bore(c)");
  if (!gap.empty()) {
    const double R = input(w, "R"), place = input(w, "s_utility");
    const double again = over_constant(w, [&](std::size_t row, double share) {
      const double d = gap[row] + share * (gap[row + 1] - gap[row]);
      const double s = std::hypot(spread[row] + share * (spread[row + 1] - spread[row]), place);
      return below((R - d) / s) - below((-R - d) / s);
    });
    EXPECT_NEAR(again, input(w, "P_ground"), 0.002 + 0.1 * input(w, "P_ground")) << w.subject;
  }
  return over_grounds(w);
}

/// The formulas as a person would work them out from the inputs listed.
const std::map<std::string, Again, std::less<>>& formulas() {
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
      {"bore.grip", [](const Working& w) { return input(w, "R_side") / input(w, "p A_piston"); }},
      {"bore.time", [](const Working& w) { return std::sqrt(input(w, "P10") * input(w, "P90")); }},
      {"surface.angle", [](const Working& w) { return pi / 2 - input(w, "skew") - input(w, "ψ"); }},
      {"surface.pit-setback",
       [](const Working& w) { return std::abs(input(w, "x_edge") - input(w, "x_face")) * std::cos(input(w, "skew")); }},
      {"surface.settlement",
       [](const Working& w) {
         const double area = pi / 4 * (input(w, "D") * input(w, "D") - input(w, "n") * input(w, "d") * input(w, "d"));
         return input(w, "f") * area / (std::sqrt(2 * pi) * 0.5 * input(w, "h"));
       }},
      {"utility.movement",
       [](const Working& w) {
         const OpenedHole hole{{input(w, "a")}, {input(w, "h")}, {input(w, "f_v")}};
         const auto field = ground_movement(hole, {input(w, "x")}, {input(w, "z")}, SourceTerm::exact);
         EXPECT_NEAR(field->rise_m, input(w, "u_up"), 1e-15 + slack * std::abs(input(w, "u_up")));
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
      {"utility.contact-worst", over_grounds},
      {"utility.encroachment", over_grounds},
  };
  return all;
}

Crossing busy_crossing() {
  Crossing crossing = clean_crossing();
  crossing.site.utilities.push_back(water_main(5, 98.1));
  crossing.site.utilities.back().id = "u2";
  crossing.site.utilities.back().name = "gas main";
  crossing.site.utilities.back().kind = UtilityKind::gas;
  SurfaceFeature siding = lane(2.5, 5);
  siding.id = "f2";
  siding.kind = SurfaceKind::track;
  siding.rule = "track-cover-66in-pit-25ft";
  crossing.site.surface.front().rule = "road-duct-cover-36in-pit-30ft";
  crossing.site.surface.push_back(siding);
  crossing.site.surface.push_back(house(4));
  LevelPeg peg;
  peg.station = Length{4};
  peg.before = Length{100};
  peg.after = Length{100.002};
  peg.settled = Length{99.997};
  crossing.site.surface.front().levels.pegs = {peg};
  crossing.site.utility_search.unknown_rate.set(RatePerArea{0.01});
  crossing.pits.exit.sides.bore.kind.set(SideKind::sloped);
  crossing.site.ground_points = {{-3, 4, 100.6}, {1, -3, 99.8}, {9, 5, 100.3}};
  crossing.pipe->insertion.set(Insertion::pushed);
  give_air(crossing);
  return crossing;
}

/// In dense sand the ground yields as far as the surface and the water main.
Crossing sandy_crossing() {
  Crossing crossing = clean_crossing();
  crossing.site.strata.front().soil = "dense-sand";
  crossing.site.utilities = {water_main(4, 98.2)};
  return crossing;
}

/// Pits 2 m deep in clay over sand that holds water, a machine and a tree beside them.
Crossing wet_crossing() {
  Crossing crossing = clean_crossing();
  crossing.bore.launch.elevation = Length{98.0325};
  crossing.site.water = LevelLine{{-8, 98.5}, {20, 98.5}};
  Stratum sand = crossing.site.strata.front();
  sand.id = "l2";
  sand.soil = "medium-sand";
  sand.top = LevelLine{{-8, 97.2}, {20, 97.2}};
  crossing.site.strata.push_back(sand);
  Plant digger;
  digger.id = "p1";
  digger.station = Length{-9};
  digger.length = Length{4};
  digger.width = Length{2};
  digger.load = Force{80e3};
  crossing.site.plant = {digger};
  Tree lime;
  lime.id = "t1";
  lime.station = Length{12};
  lime.offset = Length{6};
  lime.protection_radius = Length{3};
  crossing.site.trees = {lime};
  crossing.pipe->pull_by.set(PullBy::hose);
  crossing.pipe->hose_rating = Force{2000};
  crossing.pipe->operating_pressure.set(Pressure{6e5});
  return crossing;
}

/// Rates from records, and an exit pit of a typed depth under a path that sags.
Crossing calibrated_crossing() {
  Crossing crossing = clean_crossing();
  crossing.bore.model.calibrated_from.set(12);
  crossing.bore.model.calibrated_records = named_records(12);
  crossing.site.strata.front().values.refusal_rate = RatePerLength{0.002};
  crossing.pits.exit.floor_elevation = Length{98.2};
  return crossing;
}

/// Sides left to the program, behind the shield that is rated for them.
Crossing shielded_crossing() {
  Crossing crossing = clean_crossing();
  crossing.pits = Pits{};
  crossing.pits.launch.shield = {Length{3}, ExcavationType::c, "plate", ""};
  crossing.bore.launch.elevation = Length{98.3};
  return crossing;
}

TEST(Working, EachRecomputesFromItsInputs) {
  std::vector<Working> all = judged(busy_crossing()).working;
  Crossing european = clean_crossing();
  european.site.surface.front().traffic = "en-1991-2";
  const std::vector<Working> lanes = judged(european).working;
  all.insert(all.end(), lanes.begin(), lanes.end());
  const std::vector<Working> wet = judged(wet_crossing()).working;
  all.insert(all.end(), wet.begin(), wet.end());
  const std::vector<Working> sandy = judged(sandy_crossing()).working;
  all.insert(all.end(), sandy.begin(), sandy.end());
  const std::vector<Working> calibrated = judged(calibrated_crossing()).working;
  all.insert(all.end(), calibrated.begin(), calibrated.end());
  const std::vector<Working> shielded = judged(shielded_crossing()).working;
  all.insert(all.end(), shielded.begin(), shielded.end());
  std::map<std::string_view, int> met;
  for (const Working& w : all) {
    const auto it = formulas().find(w.code);
    ASSERT_NE(it, formulas().end()) << w.code << " has no formula in this test";
    // A level bore crosses squarely; the stadium is then the band of the crossing formula to 1e-6.
    // Pressures: bracketing ends at the last digits of a double.
    const double tolerance = w.unit.empty() ? 2e-6 : w.unit == "Pa" ? 1e-9 * std::abs(w.value) : 1e-9;
    EXPECT_NEAR(w.value, it->second(w), tolerance) << w.code << " " << w.subject;
    ++met[w.code];
  }
  for (const auto& [code, formula] : formulas()) EXPECT_TRUE(met.contains(code)) << code;
}

/// Of a printed number with its unit: its value and one step of its last digit, in SI.
struct Printed {
  double value = 0, step = 0;
};

/// "102.300 m", "0.0968 %", "1.2e-05", "35.4 kPa": read without the program's own reader.
Printed read_printed(const std::string& text) {
  static const std::map<std::string, double> units{
      {"", 1},         {"m", 1},        {"%", 0.01},      {"kPa", 1e3},
      {"MPa", 1e6},    {"mm/s", 1e-3},  {"m/s", 1},       {"m³", 1},
      {"kN/m³", 1e3},  {"N", 1},        {"N/m", 1},       {"cm²", 1e-4},
      {"1/m", 1},      {"K", 1},        {"1/K", 1},       {"m³/min", 1.0 / 60},
      {"°", pi / 180}, {"°C", 1},       {"J", 1},         {"s", 1},
      {"kg/s", 1},     {"Hz", 1},       {"W", 1},         {"N/m²", 1},
      {"1/m²", 1},     {"s/m", 1},      {"kg/(m² s)", 1}, {"kg", 1},
      {"kg/m³", 1},    {"J/(kg K)", 1}, {"m/√m", 1},      {"m⁴", 1}};
  std::size_t used = 0;
  Printed read;
  read.value = std::stod(text, &used);
  const std::string digits = text.substr(0, used);
  std::string unit = text.substr(used);
  if (!unit.empty() && unit[0] == ' ') unit.erase(0, 1);
  EXPECT_TRUE(units.contains(unit)) << "unit of \"" << text << "\"";
  const double factor = units.contains(unit) ? units.at(unit) : 1;
  const std::size_t exponent = digits.find('e'), point = digits.find('.');
  const double power = exponent == std::string::npos ? 0 : std::stod(digits.substr(exponent + 1));
  const std::size_t end = exponent == std::string::npos ? digits.size() : exponent;
  const double decimals = point == std::string::npos ? 0 : static_cast<double>(end - point - 1);
  read.step = std::pow(10, power - decimals) * factor;
  read.value = unit == "°C" ? read.value + 273.15 : read.value * factor;
  return read;
}

/// As a person has it who holds only the printed page.
Working as_printed(const Working& w) {
  Working printed = w;
  for (WorkingInput& i : printed.inputs) i.value = read_printed(working_input(i, UnitSystem::metric)).value;
  return printed;
}

/// The result worked out again from the printed inputs agrees to its last printed digit.
void expect_comes_out(const Working& w) {
  const auto it = formulas().find(w.code);
  ASSERT_NE(it, formulas().end()) << w.code << " has no formula in this test";
  const std::string text = working_number(w.value, w.unit, UnitSystem::metric, w.symbol);
  if (text[0] == '<' || text[0] == '>') return;  // a chance that is said in words
  const Printed result = read_printed(text);
  EXPECT_NEAR(it->second(as_printed(w)), result.value, 1.001 * result.step) << w.code << " " << w.subject << "\n"
                                                                            << working_text(w, UnitSystem::metric);
}

TEST(WorkingText, Printed_ComesOutByHand) {
  int read = 0;
  slack = 5e-5;
  for (const Crossing& crossing :
       {busy_crossing(), wet_crossing(), sandy_crossing(), calibrated_crossing(), shielded_crossing()})
    for (const Working& w : judged(crossing).working) {
      expect_comes_out(w);
      ++read;
    }
  slack = 0;
  EXPECT_GT(read, 200);
}

// Levels to the millimetre: 102.3 − 101 − 0.0375 = 1.2625 once stood above a printed 1.292.
TEST(WorkingText, Printed_LevelsToTheMillimetre) {
  EXPECT_EQ(working_input({"z_ground", 102.3294, "m"}, UnitSystem::metric), "102.3294 m");
  EXPECT_EQ(working_input({"z_axis", 101, "m"}, UnitSystem::metric), "101.000 m");
  EXPECT_EQ(working_number(1234.56, "m", UnitSystem::metric), "1234.560 m");
  EXPECT_EQ(working_number(-0.0004, "m", UnitSystem::metric), "-0.0004 m");
  EXPECT_EQ(working_input({"P", 0.000968, ""}, UnitSystem::metric), "0.0968 %");
  EXPECT_EQ(working_input({"P", 1.5e-12, ""}, UnitSystem::metric), "1.5e-10 %");
  EXPECT_EQ(working_number(1.5e-12, "", UnitSystem::metric, "P"), "< 0.01 %");
}

TEST(Working, NumberIsThatOfTheAnswer) {
  const Assessment answer = judged(busy_crossing());
  const auto value = [&](std::string_view code, std::string_view subject) {
    const Working* w = working(answer, code, subject);
    EXPECT_TRUE(w) << code << subject;
    return w ? w->value : std::nan("");
  };
  EXPECT_EQ(value("bore.cover", "bore"), *answer.cover.least_m);
  EXPECT_EQ(value("bore.exit-window", "exit-pit"), *answer.arrival.chance_inside_exit_pit);
  EXPECT_EQ(value("pit.depth", "launch-pit"), answer.launch_pit.depth_m);
  EXPECT_EQ(value("pit.depth", "exit-pit"), answer.exit_pit.depth_m);
  EXPECT_EQ(value("bore.length", "bore"), 8);
  for (const UtilityAnswer& u : answer.utilities) {
    EXPECT_EQ(value("utility.separation", u.id), *u.separation_m);
    EXPECT_EQ(value("utility.gap-low", u.id), *u.gap_low_m);
    EXPECT_EQ(value("utility.contact", u.id), *u.contact_chance);
    EXPECT_EQ(value("utility.contact-worst", u.id), *u.contact_chance_worst);
    EXPECT_EQ(value("utility.encroachment", u.id), *u.encroachment_chance);
  }
}

// A finding and its working never tell two numbers or two limits.
TEST(Working, NumberIsThatOfTheFinding) {
  Crossing crossing = busy_crossing();
  crossing.bore.launch.elevation = Length{99.55};
  crossing.bore.exit.station = Length{19};
  crossing.pits.exit.floor_width = Length{0.05};
  const Assessment answer = judged(crossing);
  int compared = 0;
  for (const Finding& f : answer.findings) {
    std::string code = f.code == "utility.contact" ? "utility.contact-worst" : f.code;
    for (const Working& w : answer.working) {
      if (w.code != code || w.subject != f.subject || !f.measured) continue;
      if (f.code == "bore.length" && w.limit != f.limit) continue;  // one for the tool, one for any tool
      EXPECT_EQ(w.value, *f.measured) << f.code;
      if (w.limit) {
        EXPECT_EQ(w.limit, f.limit) << f.code;
      }
      ++compared;
    }
  }
  EXPECT_GE(compared, 4) << listed(answer);
}

TEST(WorkingText, Lines_FormulaInputsResultLimitSource) {
  const Working w{"utility.separation",
                  "u1",
                  "g = δ − R",
                  {{"δ", 0.5, "m"}, {"R", 0.0875, "m"}},
                  "g",
                  0.4125,
                  "m",
                  0.6,
                  {"least distance", SourceLabel::derived}};
  EXPECT_EQ(working_text(w, UnitSystem::metric),
            "g = δ − R\n  δ = 0.500 m\n  R = 0.0875 m\ng = 0.4125 m\nlimit 0.600 m\nfrom: least distance [derived]");
  EXPECT_EQ(working_text(w, UnitSystem::us),
            "g = δ − R\n  δ = 1.64042 ft\n  R = 0.287073 ft\ng = 1.353 ft\nlimit 1.969 ft\nfrom: least distance "
            "[derived]");
}

TEST(WorkingText, Formula_HasTheDecimalMarkOfTheLanguage) {
  Working w;
  w.formula = "g_low = δ − R − 1.645 √(s_bore² + s_utility²)";
  EXPECT_EQ(working_formula(w), w.formula);
  set_decimal_mark(DecimalMark::comma);
  EXPECT_EQ(working_formula(w), "g_low = δ − R − 1,645 √(s_bore² + s_utility²)");
  set_decimal_mark(DecimalMark::point);
}

TEST(WorkingText, Number_EachUnit) {
  EXPECT_EQ(working_number(pi / 4, "rad", UnitSystem::metric), "45°");
  EXPECT_EQ(working_number(0.012345, "", UnitSystem::us), "0.01235");
  EXPECT_EQ(working_number(69000, "Pa", UnitSystem::metric), "69 kPa");
  EXPECT_EQ(working_number(6894.757293168361, "Pa", UnitSystem::us), "1 psi");
  EXPECT_EQ(working_number(8.5, "Hz", UnitSystem::metric), "8.5 Hz");
  EXPECT_EQ(working_number(0.05, "m³/s", UnitSystem::metric), "3 m³/min");
  EXPECT_EQ(working_number(0.0471947443, "m³/s", UnitSystem::us), "100 ft³/min");
  EXPECT_EQ(working_number(288.15, "K", UnitSystem::us), "59 °F");
}

}  // namespace
}  // namespace burrow::test
