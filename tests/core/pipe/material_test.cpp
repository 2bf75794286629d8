// Material laws: the rows as printed, what lies between them, safe pull.

#include "burrow/pipe/material.h"

#include <gtest/gtest.h>

#include <cmath>

#include "burrow/file/tables_file.h"
#include "burrow/pipe/section.h"

namespace burrow::test {
namespace {

constexpr double ksi = 6894757.293168361, psi = 6894.757293168361, lbf = 4.4482216152605, in = 0.0254;
constexpr double hour = 3600, year = 365.25 * 86400;
const Temperature reference{296.15};

const PipeStrength& material(const char* id) {
  static const Tables tables = load_tables(Date{2026, 3, 2});
  return *find_pipe(tables, id)->strength;
}

Temperature fahrenheit(double f) {
  return Temperature{(f - 32) / 1.8 + 273.15};
}

// PPI Handbook Table B.1.1 (read), 73 °F, ksi as printed for 0.5 h, 2 h, 12 h, 100 h, 1 y, 50 y.
TEST(Material, PPI_ApparentModulus) {
  const double times[] = {0.5 * hour, 2 * hour, 12 * hour, 100 * hour, year, 50 * year};
  const struct {
    const char* id;
    double ksi[6];
  } rows[] = {
      {"pe80", {62, 57, 48, 42, 30, 22}}, {"pe3608", {78, 71, 60, 52, 38, 28}}, {"pe4710", {82, 74, 63, 55, 40, 29}}};
  for (const auto& row : rows)
    for (std::size_t i = 0; i < 6; ++i)
      EXPECT_NEAR(modulus(material(row.id), Duration{times[i]}, reference)->Pa / ksi, row.ksi[i], 0.5) << row.id;
}

// Calculation citing PPI 2015 (second-hand): 27 ksi at 100 years times .82 at 90 °F = 22.14 ksi.
TEST(Material, PPI_HundredYearsAtNinetyDegrees) {
  EXPECT_NEAR(modulus(material("pe3608"), Duration{100 * year}, fahrenheit(90))->Pa / ksi, 22.14, 0.005);
}

// Between two rows it is a power of time: the geometric mean of times gives the geometric mean of moduli. Never rises.
TEST(Material, Modulus_BetweenRows) {
  const PipeStrength& pe = material("pe4710");
  const double a = modulus(pe, Duration{2 * hour}, reference)->Pa, b = modulus(pe, Duration{10 * hour}, reference)->Pa;
  EXPECT_NEAR(modulus(pe, Duration{std::sqrt(20.0) * hour}, reference)->Pa, std::sqrt(a * b), 1e-3);
  double before = 1e20;
  for (double t = 1; t < 1e11; t *= 1.5) {
    const double e = modulus(pe, Duration{t}, reference)->Pa;
    EXPECT_LE(e, before);
    before = e;
  }
  EXPECT_EQ(modulus(pe, Duration{1}, reference)->Pa, modulus(pe, short_term, reference)->Pa);
  EXPECT_NEAR(modulus(material("steel-sch40"), design_life, fahrenheit(200))->Pa / ksi, 30000, 1);
}

// Multipliers (from memory but 90 °F): 40 1.49, 50 1.32, 60 1.18, 80 .93, 90 .82, 100 .73, 120 .58, 140 .43.
TEST(Material, Derating_ByTemperature) {
  const double rows[][2] = {{40, 1.49}, {50, 1.32}, {60, 1.18}, {73.4, 1}, {80, .93},
                            {90, .82},  {100, .73}, {120, .58}, {140, .43}};
  for (const auto& [f, ratio] : rows) {
    EXPECT_NEAR(derating(material("pe100"), fahrenheit(f))->v, ratio, 0.005) << f;
    EXPECT_NEAR(strength_derating(material("pe100"), fahrenheit(f))->v, std::min(ratio, 1.0), 0.005) << f;
  }
  EXPECT_NEAR(derating(material("pe100"), fahrenheit(85))->v, 0.875, 0.0001);
  EXPECT_EQ(derating(material("pe100"), Temperature{200})->v, 1.49);
  EXPECT_FALSE(derating(material("pe100"), fahrenheit(141)));
  EXPECT_FALSE(derating(material("pe100"), Temperature{std::nan("")}));
}

// ASTM F1962-22 (article, read): 1330 psi at 12 h = .40 × .95 × 3500.
TEST(Material, F1962_SafePullStress) {
  const PullStress pull = *pull_stress(material("pe4710"), Duration{12 * hour}, reference);
  EXPECT_NEAR(pull.by_yield_Pa / psi, 1330, 0.5);
  EXPECT_NEAR(pull.by_table_Pa / psi, 1150, 0.5);  // PPI (second-hand): the lesser governs
  EXPECT_EQ(pull.stress_Pa, pull.by_table_Pa);
  EXPECT_NEAR(pull_stress(material("pe4710"), Duration{hour}, reference)->by_yield_Pa / psi, 1400, 0.5);
  EXPECT_NEAR(pull_stress(material("pe4710"), Duration{24 * hour}, reference)->by_yield_Pa / psi, 0.4 * 0.91 * 3500,
              0.5);
  EXPECT_NEAR(pull_stress(material("pe4710"), Duration{0.5 * hour}, reference)->by_table_Pa / psi, 1300, 0.5);
}

// PVC 7000/2.5 = 2800 psi (second-hand); 2 in Sch 40, 1.0745 in²: 3009 lb (derived).
TEST(Material, Pvc_SafePull) {
  const Tables tables = load_tables(Date{2026, 3, 2});
  Pipe p;
  p.material = "pvc-40";
  p.outside_diameter = Length{2.375 * in};
  const double area = pipe_section(p, tables)->area_m2;
  EXPECT_NEAR(area / (in * in), 1.0745, 0.00005);
  EXPECT_NEAR(area * pull_stress(material("pvc-40"), Duration{100 * hour}, reference)->stress_Pa / lbf, 3009, 0.5);
}

// Printed 12-h table at 1100 psi (second-hand), lb, SDR 9/11/13.5: 1-1/4 940/787/653; 1-1/2 1232/1030/855; 2
// 1924/1610/1336; 3 4179/3497/2902; 4 6908/5780/4797; 6 14973/12529/10398. They took π 3.14: 0.06 %. Its rows of 1 in
// (800, 670, 550: by the formula 590, 494, 409), 2-1/2 and 5 in do not follow its own formula; a book's 7524 lb for 4
// in DR 11, 1 h, asks for 1431 psi on the least wall, and no safe stress gives that.
TEST(Material, Printed_PullTable) {
  const struct {
    double od_in, lb[3];
  } rows[] = {{1.660, {940, 787, 653}},    {1.900, {1232, 1030, 855}},  {2.375, {1924, 1610, 1336}},
              {3.500, {4179, 3497, 2902}}, {4.500, {6908, 5780, 4797}}, {6.625, {14973, 12529, 10398}}};
  const double ratios[] = {9, 11, 13.5};
  const PullStress pull = *pull_stress(material("pe3608"), Duration{12 * hour}, reference);
  EXPECT_NEAR(pull.by_table_Pa / psi, 1100, 0.5);
  for (const auto& row : rows)
    for (std::size_t i = 0; i < 3; ++i) {
      const double dr = ratios[i];
      const double area_in2 = 3.14 * row.od_in * row.od_in * (1 / dr - 1 / (dr * dr));
      EXPECT_NEAR(pull.by_table_Pa / psi * area_in2, row.lb[i], 1.0) << row.od_in << " " << dr;
    }
  EXPECT_NEAR(1100 * 3.14159 * 1.315 * 1.315 * (1.0 / 11 - 1.0 / 121), 494, 0.5);
}

// Reprinted in a catalogue of conduit (second-hand), psi for 0.5, 1, 12, 24 h: PE 3608 1400/1350/1100/1050, PE2xxx
// 1100/1050/850/800, PE 4710 1500/1400/1150/1100. Of PE 4710 another sheet has 1300 at half an hour, and 1200 at an
// hour is from memory: the lower ones are taken.
TEST(Material, SafePull_ReprintedRows) {
  const double hours[] = {0.5, 1, 12, 24};
  const struct {
    const char* id;
    double psi[4];
  } rows[] = {{"pe3608", {1400, 1350, 1100, 1050}},
              {"pe80", {1100, 1050, 850, 800}},
              {"pe4710", {1300, 1200, 1150, 1100}},
              {"pe100", {1300, 1200, 1150, 1100}}};
  for (const auto& row : rows)
    for (std::size_t i = 0; i < 4; ++i)
      EXPECT_NEAR(pull_stress(material(row.id), Duration{hours[i] * hour}, reference)->by_table_Pa / psi, row.psi[i],
                  0.5)
          << row.id << " " << hours[i];
}

// What a pipe may be pulled with never rises with time, for no material, however its rows stand.
TEST(Material, SafePull_NeverRisesWithTime) {
  const Tables tables = load_tables(Date{2026, 3, 2});
  for (const PipeMaterial& row : tables.pipes) {
    if (!row.strength) continue;
    double before = 1e20;
    for (double t = 60; t <= 24 * hour; t *= 1.07) {
      const auto pull = pull_stress(*row.strength, Duration{t}, reference);
      ASSERT_TRUE(pull) << row.id << " " << t;
      EXPECT_LE(pull->stress_Pa, before) << row.id << " " << t / hour;
      EXPECT_FALSE(pull->source.text.empty());
      before = pull->stress_Pa;
    }
  }
  PipeStrength odd = material("pe3608");
  odd.pull_stress = {{Duration{12 * hour}, Pressure{1100 * psi}, {"a", SourceLabel::read}},
                     {Duration{20 * hour}, Pressure{1165 * psi}, {"b", SourceLabel::read}}};
  EXPECT_NEAR(pull_stress(odd, Duration{20 * hour}, reference)->by_table_Pa / psi, 1100, 0.5);
  EXPECT_EQ(pull_stress(odd, Duration{23 * hour}, reference)->source.text, "a");
  odd.yield.reset();
  EXPECT_TRUE(pull_stress(odd, Duration{20 * hour}, reference));
  EXPECT_FALSE(pull_stress(odd, Duration{21 * hour}, reference));  // creeps on, and no row tells how far
}

TEST(Material, PullStress_TimeAndTemperature) {
  const PipeStrength& pe = material("pe100");
  const double one = pull_stress(pe, Duration{hour}, reference)->stress_Pa;
  EXPECT_LT(pull_stress(pe, Duration{1.01 * hour}, reference)->stress_Pa, one);
  EXPECT_NEAR(pull_stress(pe, Duration{hour}, fahrenheit(100))->stress_Pa, 0.73 * one, 10);
  EXPECT_EQ(pull_stress(pe, Duration{hour}, fahrenheit(30))->stress_Pa, one);  // cold adds nothing
  EXPECT_FALSE(pull_stress(pe, Duration{25 * hour}, reference));
  EXPECT_FALSE(pull_stress(pe, Duration{0}, reference));
  EXPECT_FALSE(pull_stress(pe, Duration{hour}, fahrenheit(150)));
  EXPECT_TRUE(pull_stress(material("copper-k"), Duration{100 * hour}, reference));
  EXPECT_FALSE(pull_stress(PipeStrength{}, Duration{hour}, reference));
}

// Least bends (second-hand): DR 9 20, 11 and 13.5 25, 17 and 21 27, 26 34, 32.5 42, 41 52 diameters. 2 in DR 11: 59.4
// in.
TEST(Material, LeastBends) {
  const double rows[][2] = {{7, 20}, {9, 20}, {11, 25}, {13.5, 25}, {17, 27}, {21, 27}, {26, 34}, {32.5, 42}, {41, 52}};
  for (const auto& [dr, times] : rows) EXPECT_EQ(bend_row(material("pe4710"), dr)->diameters.v, times) << dr;
  EXPECT_NEAR(bend_row(material("pe4710"), 11)->diameters.v * 2.375, 59.4, 0.05);
  EXPECT_EQ(bend_row(material("pe4710"), 50), nullptr);
  EXPECT_EQ(*material("pe4710").fitting_bend, Ratio{100});
}

// Safe deflection under pressure: DR 26 7.5 %, 17 6.0 % (PPI Handbook p 218, read); others from memory.
TEST(Material, PPI_SafeDeflection) {
  EXPECT_EQ(deflection_row(material("pe4710"), 26)->share.v, 0.075);
  EXPECT_EQ(deflection_row(material("pe4710"), 17)->share.v, 0.06);
  EXPECT_EQ(deflection_row(material("pe4710"), 11)->share.v, 0.05);
  EXPECT_EQ(material("pe4710").deflection_free.v, 0.075);
}

// Steel bends to half its yield at E/(2σ) diameters (derived).
TEST(Material, Steel_BendByStress) {
  const PipeStrength& steel = material("steel-sch40");
  EXPECT_NEAR(bend_row(steel, 20)->diameters.v, 30000.0 / (2 * 17.5), 0.5);
}

}  // namespace
}  // namespace burrow::test
