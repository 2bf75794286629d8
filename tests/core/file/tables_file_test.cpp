#include "burrow/file/tables_file.h"
#include "burrow/tables/material_rows.h"

#include <gtest/gtest.h>

#include <cmath>
#include <filesystem>
#include <fstream>
#include <set>

namespace burrow {
namespace {

constexpr double degree = pi / 180;

const Tables& built_in() {
  static const Tables tables = load_tables(Date{2026, 3, 2});
  return tables;
}

// What the day goes by where a hole may close: those whose row says "minutes" or "closes", whatever language is spoken.
TEST(TablesFile, ClosesSoon_TheseClasses) {
  const Tables tables = load_tables();
  std::set<std::string> soon;
  for (const SoilClass& soil : tables.soils)
    if (soil.closes_soon) soon.insert(soil.id);
  EXPECT_EQ(soon, (std::set<std::string>{"very-soft-clay", "silt", "loose-sand", "medium-sand", "dense-sand",
                                         "fine-gravel", "cobbly", "made-ground", "trench-backfill", "peat"}));
}

TEST(TablesFile, BuiltIn_SeventeenSoilsNineTools) {
  EXPECT_EQ(built_in().soils.size(), 17u);
  EXPECT_EQ(built_in().tools.size(), 9u);
  EXPECT_EQ(built_in().excavation.size(), 2u);
  for (const auto& [kind, word] : EnumNames<UtilityKind>::list) EXPECT_EQ(row_of(built_in(), kind).kind, kind);
}

template <class Row>
void expect_sourced(const std::vector<Row>& rows) {
  EXPECT_FALSE(rows.empty());
  for (const Row& row : rows) EXPECT_FALSE(row.source.text.empty());
}

TEST(TablesFile, BuiltIn_EveryRowHasASource) {
  expect_sourced(built_in().soils);
  expect_sourced(built_in().tools);
  expect_sourced(built_in().pipes);
  expect_sourced(built_in().utilities);
  expect_sourced(built_in().locating);
  expect_sourced(built_in().limits);
  expect_sourced(built_in().surface_rules);
  expect_sourced(built_in().excavation);
  expect_sourced(built_in().shoring);
  expect_sourced(built_in().earthwork);
  for (const ExcavationRuleSet& set : built_in().excavation) {
    expect_sourced(set.slopes);
    expect_sourced(set.upright_parts);
    expect_sourced(set.duties);
  }
}

TEST(TablesFile, PipeRows_EachWithASource) {
  expect_sourced(built_in().pipe_sizes);
  int known = 0;
  for (const PipeMaterial& pipe : built_in().pipes) {
    if (!pipe.strength) continue;
    ++known;
    expect_sourced(pipe.strength->modulus);
    expect_sourced(pipe.strength->bend);
    expect_sourced(pipe.strength->deflection);
    for (const DeratingRow& row : pipe.strength->derating) EXPECT_FALSE(row.source.text.empty());
    for (const PullStressRow& row : pipe.strength->pull_stress) EXPECT_FALSE(row.source.text.empty());
    EXPECT_FALSE(pipe.strength->source.text.empty());
  }
  EXPECT_EQ(known, 9);
}

// Fill, broken rock: named so; the rest by strength and type. What a table may leave out, it may leave out.
TEST(TablesFile, ExcavationWords_AreOptional) {
  EXPECT_EQ(find_soil(built_in(), "trench-backfill")->matter, ExcavationMatter::fill);
  EXPECT_EQ(find_soil(built_in(), "weathered-rock")->matter, ExcavationMatter::broken_rock);
  EXPECT_FALSE(find_soil(built_in(), "firm-clay")->matter);
  const std::string row = R"([{"id": "sand", "name": "sand", "loose": 1.2, "compacted": 0.9, "source": "own",
    "source_label": "owner's setting"}])";
  const auto tables = overlay_table(built_in(), "earthwork.json", row);
  ASSERT_TRUE(tables) << tables.error().english();
  EXPECT_EQ(find_earthwork(*tables, "sand")->loose.v, 1.2);
  EXPECT_EQ(tables->earthwork.size(), built_in().earthwork.size());
  const std::string wrong = R"([{"id": "own", "method": "timber", "type": "D", "depth_m": 3, "width_m": 1, "brace": "x",
    "brace_spacing_m": 1, "brace_rise_m": 1, "upright": "y", "source": "own", "source_label": "owner's setting"}])";
  const auto refused = overlay_table(built_in(), "shoring.json", wrong);
  ASSERT_FALSE(refused);
  EXPECT_NE(refused.error().place.english().find("type"), std::string::npos) << refused.error().english();
  std::string right = wrong;
  right.replace(right.find("\"D\""), 3, "\"C\"");
  const auto taken = overlay_table(built_in(), "shoring.json", right);
  ASSERT_TRUE(taken) << taken.error().english();
  EXPECT_TRUE(taken->shoring.back().wale.empty());
  EXPECT_FALSE(taken->shoring.back().upright_spacing);
}

// A table of one's own: words as they are written on its records, a wall and kinds this program knows.
TEST(TablesFile, UtilityMaterials_OwnRows) {
  const auto own = [](const std::string& wall, const std::string& kinds) {
    return overlay_table(
        built_in(), "utility_materials.json",
        R"([{"id": "wood", "name": "wood", "wall": ")" + wall + R"(", "kinds": [)" + kinds +
            R"(], "words": ["Holz", "Däuben*"], "source": "own", "source_label": "owner's setting"}])");
  };
  const auto taken = own("rigid", R"("water", "sewer")");
  ASSERT_TRUE(taken) << taken.error().english();
  EXPECT_EQ(taken->utility_materials.size(), built_in().utility_materials.size() + 1);
  EXPECT_EQ(find_material(*taken, "HOLZ DN 100", UtilityKind::water)->id, "wood");
  EXPECT_EQ(find_material(*taken, "Däubenrohr", UtilityKind::sewer)->id, "wood");
  EXPECT_FALSE(find_material(*taken, "Holz", UtilityKind::gas));
  EXPECT_FALSE(own("oak", ""));
  EXPECT_NE(own("rigid", R"("milk")").error().english().find("milk"), std::string::npos);
}

TEST(TablesFile, UtilityKind_KeepsItsGaps_AndNamesLimitsThatAreThere) {
  const auto own = [](const std::string& member) {
    return overlay_table(built_in(), "utilities.json",
                         R"([{"kind": "oil", "name": "fuel line", "letter_code": "O", "colour": "#a67c00",)"
                         R"("colour_dark": "#ffd23f", "dash": [8, 2], "dangerous": true, "can_hurt": true,)" +
                             member + R"("source": "own", "source_label": "our default"}])");
  };
  ASSERT_TRUE(own(""));
  EXPECT_EQ(row_of(*own(""), UtilityKind::oil).separations, row_of(built_in(), UtilityKind::oil).separations);
  ASSERT_TRUE(own(R"("separations": ["separation_steam_m"],)"));
  EXPECT_EQ(row_of(*own(R"("separations": ["separation_steam_m"],)"), UtilityKind::oil).separations.front(),
            "separation_steam_m");
  for (const char* wrong : {R"("separations": ["separation_fuel_m"],)", R"("separations": ["contact_stop"],)",
                            R"("separations": ["separation_exposed_m"],)"}) {
    const auto refused = own(wrong);
    ASSERT_FALSE(refused) << wrong;
    EXPECT_EQ(refused.error().place.english(), "utilities.json/oil/separations");
  }
}

TEST(TablesFile, Structures_NameALimit) {
  const auto own = [](const std::string& limit) {
    return overlay_table(built_in(), "structures.json",
                         R"([{"id": "silo", "name": "silo", "limit": ")" + limit +
                             R"(", "source": "own", "source_label": "owner's setting"}])");
  };
  ASSERT_TRUE(own("vibration_commercial_m_s"));
  EXPECT_EQ(find_structure(*own("vibration_commercial_m_s"), "Silo")->limit, "vibration_commercial_m_s");
  const auto refused = own("vibration_moon_m_s");
  ASSERT_FALSE(refused);
  EXPECT_NE(refused.error().english().find("vibration_moon_m_s"), std::string::npos) << refused.error().english();
}

// Our defaults, three rows of different kinds as they are set out per class: weights in kN/m³, strength in kPa, G in
// MPa.
TEST(TablesFile, BuiltIn_SoilValues) {
  const SoilClass& clay = *find_soil(built_in(), "firm-clay");
  EXPECT_FALSE(clay.drained);
  EXPECT_EQ(clay.unit_weight.N_m3, 18000);
  EXPECT_EQ(clay.saturated_unit_weight.N_m3, 18500);
  EXPECT_EQ(clay.undrained_strength->Pa, 40000);
  EXPECT_FALSE(clay.friction_angle);
  EXPECT_EQ(clay.shear_modulus.Pa, 4e6);
  EXPECT_EQ(clay.wander.rad_sqrt_m, 0.0025);
  EXPECT_EQ(clay.excavation_type, ExcavationType::b);
  const SoilClass& sand = *find_soil(built_in(), "dense-sand");
  EXPECT_TRUE(sand.drained);
  EXPECT_NEAR(sand.friction_angle->rad, 38 * degree, 1e-9);
  EXPECT_NEAR(sand.dilation_angle.rad, 6 * degree, 1e-9);
  EXPECT_NEAR(sand.interface_angle.rad, 25 * degree, 1e-9);
  EXPECT_EQ(sand.stone_rate.per_m, 0.02);
  EXPECT_EQ(sand.heave_share.v, 1.1);
  EXPECT_EQ(sand.swell.v, 0.11);  // FM 5-434 Table 1-1, bank to loose 1.11 (from memory)
  const SoilClass& rock = *find_soil(built_in(), "weathered-rock");
  EXPECT_EQ(rock.refusal_rate.per_m, 0.5);
  EXPECT_EQ(rock.swell.v, 0.50);
}

/// One class as a user's table would have it.
std::string own_soil(const std::string& id, const std::string& more) {
  return R"([{"id": ")" + id + R"(", "name": "own", )" + more + R"("unit_weight_n_m3": 18000,
    "saturated_unit_weight_n_m3": 18500, "undrained_strength_pa": 45000, "drained": false, "cohesion_pa": 0,
    "dilation_angle_rad": 0, "shear_modulus_pa": 4000000, "poisson_ratio": 0.3, "earth_pressure_ratio": null,
    "adhesion_ratio": 0.2, "interface_angle_rad": 0.4, "wander_rad_sqrt_m": 0.0025, "stone_rate_1_m": 0,
    "stone_kick_rad": 0, "refusal_rate_1_m": 0.001, "heave_share": 1, "swell": 0.4, "excavation_type": "B",
    "stands_open": "days", "use": "good", "thumb": "x", "source": "own", "source_label": "owner's setting"}])";
}

// A table from before rows had neighbours still loads, and a class laid over keeps those it had.
TEST(TablesFile, Neighbours_MayBeLeftOut) {
  const auto over = overlay_table(built_in(), "soils.json", own_soil("firm-clay", ""));
  ASSERT_TRUE(over) << over.error().english();
  EXPECT_EQ(find_soil(*over, "firm-clay")->undrained_strength->Pa, 45000);
  EXPECT_EQ(find_soil(*over, "firm-clay")->neighbours, find_soil(built_in(), "firm-clay")->neighbours);
  EXPECT_TRUE(overlay_table(built_in(), "soils.json", own_soil("marl", "")));
  const auto named = overlay_table(built_in(), "soils.json", own_soil("marl", R"("neighbours": ["peat"], )"));
  ASSERT_TRUE(named) << named.error().english();
  EXPECT_EQ(find_soil(*named, "marl")->neighbours, std::vector<std::string>{"peat"});
}

TEST(TablesFile, Neighbours_RefusedWithTheirPlace) {
  for (const auto& [wrong, place] : {std::pair(R"("neighbours": ["porridge"], )", "neighbours/0"),
                                     {R"("neighbours": ["marl"], )", "neighbours/0"},
                                     {R"("neighbours": ["peat", "peat"], )", "neighbours/1"},
                                     {R"("neighbours": ["peat", 3], )", "neighbours/1"},
                                     {R"("neighbours": ["peat", "silt", "cobbly"], )", "neighbours"}}) {
    const auto refused = overlay_table(built_in(), "soils.json", own_soil("marl", wrong));
    ASSERT_FALSE(refused) << wrong;
    EXPECT_NE(refused.error().place.english().find(place), std::string::npos) << refused.error().english();
  }
}

TEST(TablesFile, Property_SoilsStandInOrder) {
  for (const SoilClass& soil : built_in().soils) {
    EXPECT_NE(soil.drained, soil.undrained_strength.has_value()) << soil.id;
    EXPECT_EQ(soil.drained, soil.friction_angle.has_value()) << soil.id;
    EXPECT_GE(soil.saturated_unit_weight, soil.unit_weight) << soil.id;
  }
  const char* clays[] = {"very-soft-clay", "soft-clay", "firm-clay", "stiff-clay", "very-stiff-clay", "hard-clay"};
  const char* sands[] = {"loose-sand", "medium-sand", "dense-sand"};
  for (std::size_t i = 1; i < std::size(clays); ++i) {
    EXPECT_GT(find_soil(built_in(), clays[i])->undrained_strength,
              find_soil(built_in(), clays[i - 1])->undrained_strength);
    EXPECT_GT(find_soil(built_in(), clays[i])->shear_modulus, find_soil(built_in(), clays[i - 1])->shear_modulus);
  }
  for (std::size_t i = 1; i < std::size(sands); ++i)
    EXPECT_GT(find_soil(built_in(), sands[i])->friction_angle, find_soil(built_in(), sands[i - 1])->friction_angle);
}

// Our model, recomputed: L = 0.72 + 6.6 D + 10 D²; mass 0.60 · 7850 · π D² L/4; piston 0.70 D; stroke 0.08 + 0.5 D;
// striker 0.28 of the mass; blows from 8.5 Hz (45 mm) to 4.5 Hz (180 mm); 6.9 bar; free air 1.15 A stroke (p_abs/p_atm)
// f.
TEST(TablesFile, OurModel_ToolClasses) {
  const int millimetres[] = {45, 55, 65, 75, 95, 110, 130, 145, 180};
  for (const int mm : millimetres) {
    const ToolClass* tool = find_tool(built_in(), "tool-" + std::to_string(mm));
    ASSERT_NE(tool, nullptr) << mm;
    const double D = mm / 1000.0;
    const double L = 0.72 + 6.6 * D + 10 * D * D;
    const double mass = 0.60 * 7850 * pi * D * D * L / 4;
    const double piston = 0.70 * D;
    const double stroke = 0.08 + 0.5 * D;
    const double rate = 8.5 - 4.0 * (D - 0.045) / 0.135;
    const double air = 1.15 * pi * piston * piston / 4 * stroke * (690000 + 101325.0) / 101325.0 * rate;
    const auto near = [&](double found, double wanted) { EXPECT_NEAR(found, wanted, 5e-6 * wanted) << mm; };
    near(tool->diameter.m, D);
    near(tool->length.m, L);
    near(tool->mass.kg, mass);
    near(tool->piston_diameter.m, piston);
    near(tool->stroke.m, stroke);
    near(tool->striker_mass.kg, 0.28 * mass);
    near(tool->blow_rate.Hz, rate);
    near(tool->pressure.Pa, 690000);
    near(tool->free_air.m3_s, air);
  }
}

double limit(std::string_view id) {
  const LimitRow* row = find_limit(built_in(), id);
  return row ? row->value : std::nan("");
}

TEST(TablesFile, BuiltIn_LimitsRiseFromCautionToStop) {
  EXPECT_EQ(limit("cover_diameters"), 10);                // common practice, no source
  EXPECT_EQ(limit("length_any_m"), 45);                   // 150 ft, common practice
  EXPECT_NEAR(limit("pit_depth_m"), 20 * 0.3048, 1e-12);  // 29 CFR 1926 Subpart P, App. F: 20 ft (read)
  EXPECT_LT(limit("separation_exposed_m"), limit("separation_traced_m"));
  EXPECT_LT(limit("contact_caution"), limit("contact_stop"));
  EXPECT_LT(limit("encroachment_caution"), limit("encroachment_stop"));
  EXPECT_LT(limit("heave_road_caution_m"), limit("heave_road_stop_m"));
  EXPECT_LT(limit("heave_track_caution_m"), limit("heave_track_stop_m"));
  EXPECT_LT(limit("length_to_55_m"), limit("length_to_95_m"));
  EXPECT_LT(limit("length_to_95_m"), limit("length_to_145_m"));
  EXPECT_LT(limit("length_to_145_m"), limit("length_above_m"));
  // Brittle walls bear least, plastic ones most (from memory); DIN 4150-3 Table 1 to 10 Hz, lines 3, 2, 1: 3, 5, 20
  // mm/s (second-hand); buried pipes 50, 80, 100 mm/s, halved for vibration that lasts.
  EXPECT_LT(limit("strain_grey_iron"), limit("strain_ductile_iron"));
  EXPECT_LT(limit("strain_ductile_iron"), limit("strain_steel"));
  EXPECT_LT(limit("strain_steel"), limit("strain_plastic"));
  EXPECT_EQ(limit("vibration_fragile_m_s"), 0.003);
  EXPECT_EQ(limit("vibration_dwelling_m_s"), 0.005);
  EXPECT_EQ(limit("vibration_commercial_m_s"), 0.020);
  EXPECT_EQ(limit("vibration_plastic_pipe_m_s"), 0.050 / 2);
  EXPECT_EQ(limit("vibration_rigid_pipe_m_s"), 0.080 / 2);
  EXPECT_EQ(limit("vibration_steel_pipe_m_s"), 0.100 / 2);
  EXPECT_TRUE(find_limit(built_in(), "cover_diameters")->at_least);
  EXPECT_FALSE(find_limit(built_in(), "contact_stop")->at_least);
}

// 29 CFR 1926 Subpart P, Table B-1 (read): A 3/4, B 1, C 1 1/2 to 1, all to 20 ft; protection from 5 ft, ladder from 4
// ft, spoil 2 ft back. DIN 4124 (second-hand): 45, 60 and 80 degrees; at 2 m of depth the edge lies 2.000 / 1.155 /
// 0.353 m back.
TEST(TablesFile, BuiltIn_ExcavationRules) {
  const auto run = [](ExcavationRules rules, ExcavationType type) {
    for (const SlopeRow& row : row_of(built_in(), rules).slopes)
      if (row.type == type) return row.run_per_rise.v;
    return std::nan("");
  };
  EXPECT_EQ(run(ExcavationRules::us_1926, ExcavationType::a), 0.75);
  EXPECT_EQ(run(ExcavationRules::us_1926, ExcavationType::b), 1.0);
  EXPECT_EQ(run(ExcavationRules::us_1926, ExcavationType::c), 1.5);
  EXPECT_EQ(run(ExcavationRules::us_1926, ExcavationType::stable_rock), 0.0);
  const ExcavationRuleSet& us = row_of(built_in(), ExcavationRules::us_1926);
  EXPECT_NEAR(us.protection_from.m, 5 * 0.3048, 1e-12);
  EXPECT_NEAR(us.ladder_from.m, 4 * 0.3048, 1e-12);
  EXPECT_NEAR(us.spoil_setback.m, 2 * 0.3048, 1e-12);
  EXPECT_NEAR(2 * run(ExcavationRules::din_4124, ExcavationType::c), 2.000, 0.0005);
  EXPECT_NEAR(2 * run(ExcavationRules::din_4124, ExcavationType::a), 1.155, 0.0005);
  EXPECT_NEAR(2 * run(ExcavationRules::din_4124, ExcavationType::stable_rock), 0.353, 0.0005);
  EXPECT_EQ(row_of(built_in(), ExcavationRules::din_4124).spoil_setback.m, 0.60);
}

// Iowa Administrative Code 761-115.13 (read): 47 in under a roadway fails, 48 in holds. Base of rail to casing 5 1/2 ft
// (second-hand). Movement of a track reported from 1/4 in (read).
TEST(TablesFile, BuiltIn_OwnersRules) {
  EXPECT_NEAR(find_rule(built_in(), "road-cover-48in")->cover->m, 48 * 0.0254, 1e-9);
  EXPECT_NEAR(find_rule(built_in(), "track-cover-66in")->cover->m, 5.5 * 0.3048, 1e-9);
  EXPECT_EQ(find_rule(built_in(), "track-cover-66in")->source.label, SourceLabel::second_hand);
  EXPECT_NEAR(find_rule(built_in(), "track-cover-72in")->heave_caution->m, 0.00635, 1e-9);
  EXPECT_FALSE(find_rule(built_in(), "road-cover-48in")->heave_stop);
}

// PAS 128 (second-hand): B1 ± 150 mm or 15 %, B2 ± 250 mm or 40 %. ASCE 38-22 (read): B, C and D carry no number.
TEST(TablesFile, BuiltIn_LocatingPresets) {
  const auto preset = [](std::string_view id) {
    for (const LocatingPreset& row : built_in().locating)
      if (row.id == id) return row;
    return LocatingPreset{};
  };
  EXPECT_EQ(preset("pas128-b1").lateral->m, 0.15);
  EXPECT_EQ(preset("pas128-b1").vertical_of_depth->v, 0.15);
  EXPECT_EQ(preset("pas128-b2").lateral_of_depth->v, 0.40);
  EXPECT_EQ(preset("pas128-a").vertical->m, 0.025);
  for (const char* id : {"asce38-b", "asce38-c", "asce38-d", "pas128-b4", "pas128-c", "pas128-d"}) {
    EXPECT_EQ(preset(id).id, id);
    EXPECT_FALSE(preset(id).lateral || preset(id).lateral_of_depth || preset(id).vertical ||
                 preset(id).vertical_of_depth);
  }
}

/// Relative luminance and contrast ratio of two colours (WCAG 2.1, from memory): black on white gives 21.
double luminance(const std::string& colour) {
  const auto channel = [&](std::size_t at) {
    const auto digit = [](char c) { return c <= '9' ? c - '0' : (c | 0x20) - 'a' + 10; };
    const double v = (digit(colour[at]) * 16 + digit(colour[at + 1])) / 255.0;
    return v <= 0.04045 ? v / 12.92 : std::pow((v + 0.055) / 1.055, 2.4);
  };
  return 0.2126 * channel(1) + 0.7152 * channel(3) + 0.0722 * channel(5);
}
double contrast(const std::string& a, const std::string& b) {
  const double la = luminance(a);
  const double lb = luminance(b);
  return (std::max(la, lb) + 0.05) / (std::min(la, lb) + 0.05);
}

TEST(TablesFile, Property_UtilitiesAreSeenAndToldApart) {
  EXPECT_NEAR(contrast("#000000", "#ffffff"), 21, 1e-9);
  std::set<std::vector<double>> dashes;
  std::set<std::string> letters;
  for (const UtilityKindRow& row : built_in().utilities) {
    EXPECT_GE(contrast(row.colour, "#fbfaf7"), 3) << row.name.english();
    EXPECT_GE(contrast(row.colour_dark, "#16191d"), 3) << row.name.english();
    EXPECT_TRUE(dashes.insert(row.dash).second) << row.name.english();
    EXPECT_TRUE(letters.insert(row.letter_code).second) << row.name.english();
  }
  EXPECT_TRUE(row_of(built_in(), UtilityKind::gas).dangerous);
  EXPECT_TRUE(row_of(built_in(), UtilityKind::power).dangerous);
  EXPECT_TRUE(row_of(built_in(), UtilityKind::steam).dangerous);  // our default
  EXPECT_FALSE(row_of(built_in(), UtilityKind::water).dangerous);
}

const char* const pipe_rows =
    R"([{"id": "pe100", "name": "the yard's pipe", "source": "the yard", "source_label": "owner's setting"},
        {"id": "clay-100", "name": "clay pipe", "source": "the yard", "source_label": "owner's setting"}])";

TEST(TablesOverlay, SameIdIsReplacedInPlaceNewOnesFollow) {
  const auto tables = overlay_table(built_in(), "pipes.json", pipe_rows);
  ASSERT_TRUE(tables) << tables.error().english();
  ASSERT_EQ(tables->pipes.size(), built_in().pipes.size() + 1);
  EXPECT_EQ(tables->pipes.front().name, "the yard's pipe");
  EXPECT_EQ(tables->pipes.front().source.label, SourceLabel::owners_setting);
  EXPECT_EQ(tables->pipes.back().id, "clay-100");
  EXPECT_EQ(tables->soils, built_in().soils);
}

void expect_refused(const std::string& file, const std::string& text, const std::string& place,
                    const std::string& found) {
  const auto tables = overlay_table(built_in(), file, text);
  ASSERT_FALSE(tables) << text;
  EXPECT_EQ(tables.error().place, place) << tables.error().english();
  EXPECT_NE(tables.error().found.english().find(found), std::string::npos) << tables.error().english();
}

TEST(TablesOverlay, Refused_WithFileAndPointer) {
  const std::string good = R"("name": "n", "source": "s", "source_label": "read")";
  expect_refused("pipes.json", "", "pipes.json", "parse error");
  expect_refused("pipes.json", "{}", "pipes.json", "{}");
  expect_refused("pipes.json", "[1]", "pipes.json/0", "1");
  expect_refused("pipes.json", "[{" + good + "}]", "pipes.json/0/id", "nothing");
  expect_refused("pipes.json", R"([{"id": 5, )" + good + "}]", "pipes.json/0/id", "5");
  expect_refused("pipes.json", R"([{"id": "a", "id": "b", )" + good + "}]", "pipes.json", "\"id\" twice");
  expect_refused("pipes.json", R"([{"id": "a", "wall": 1, )" + good + "}]", "pipes.json/0/wall", "1");
  expect_refused("pipes.json", R"([{"id": "a", )" + good + R"(}, {"id": "a", )" + good + "}]", "pipes.json/1",
                 "second");
  expect_refused("pipes.json", R"([{"id": "a", "name": "n", "source": "s", "source_label": "guess"}])",
                 "pipes.json/0/source_label", "guess");
  expect_refused("pipes.json", "[{\"id\": \"\xff\", " + good + "}]", "pipes.json", "UTF-8");
  expect_refused("pipes.json", R"([{"id": "a", "law": "wood", )" + good + "}]", "pipes.json/0/law", "wood");
  const std::string law = R"("law": "metal", "law_source": "s", "law_source_label": "read", "unit_weight_n_m3": 7e4,
    "poisson": 0.3, "expansion_1_k": 1e-5, "deflection_free": 0.03, "strain_limit": "strain_steel", )";
  const std::string step = R"({"time_s": 60, "modulus_pa": 2e11, "source": "s", "source_label": "read"})";
  const auto own = [&](const std::string& rows) {
    return R"([{"id": "own", )" + law + R"("modulus": [)" + rows + "], " + good + "}]";
  };
  EXPECT_TRUE(overlay_table(built_in(), "pipes.json", own(step)));
  expect_refused("pipes.json", own(""), "pipes.json/0/modulus", "empty");
  expect_refused("pipes.json", own(step + "," + step), "pipes.json/0/modulus/1", "not above");
  expect_refused("pipes.json", own(R"({"time_s": 0, "modulus_pa": 1, "source": "s", "source_label": "read"})"),
                 "pipes.json/0/modulus/0/time_s", "0");
  const auto series = [&](const std::string& walls) {
    return R"([{"id": "own", "materials": ["pe80"], "sizes": [{"name": "x", "outside_diameter_m": 0.05, "walls": [)" +
           walls + "]}], " + good + "}]";
  };
  EXPECT_TRUE(overlay_table(built_in(), "pipe_sizes.json", series(R"({"wall_m": 0.004})")));
  expect_refused("pipe_sizes.json", series(""), "pipe_sizes.json/0/sizes/0/walls", "empty");
  expect_refused("pipe_sizes.json", series(R"({"wall_m": 0.025})"), "pipe_sizes.json/0/sizes/0/walls", "half");
  expect_refused("stones.json", "[]", "stones.json", "name");
  const std::string limit_tail = R"("at_least": true, )" + good + "}]";
  expect_refused("limits.json", R"([{"id": "gap_m", "value": -1, "unit": "m", )" + limit_tail, "limits.json/0/value",
                 "-1");
  expect_refused("limits.json", R"([{"id": "gap_m", "value": 1e999, "unit": "m", )" + limit_tail, "limits.json",
                 "1e999");
  expect_refused("limits.json", R"([{"id": "gap_m", "value": 1, "unit": "ft", )" + limit_tail, "limits.json/0/unit",
                 "ft");
  expect_refused("limits.json", R"([{"id": "gap_m", "value": 1, "unit": "", )" + limit_tail, "limits.json/0/unit", "");
  expect_refused("limits.json", R"([{"id": "shake_m_s", "value": 1, "unit": "", )" + limit_tail, "limits.json/0/unit",
                 "");
  expect_refused("limits.json", R"([{"id": "air_pa", "value": 1, "unit": "", )" + limit_tail, "limits.json/0/unit", "");
  expect_refused("limits.json", R"([{"id": "cold", "value": 1, "unit": "K", )" + limit_tail, "limits.json/0/unit", "");
  expect_refused("limits.json", R"([{"id": "gap", "value": 1, "unit": "m/s", )" + limit_tail, "limits.json/0/unit",
                 "m/s");
}

class TablesFolder : public testing::Test {
 protected:
  void SetUp() override {
    folder_ = std::filesystem::temp_directory_path() /
              ("burrow-tables-" + std::to_string(testing::UnitTest::GetInstance()->random_seed()) + "-" +
               testing::UnitTest::GetInstance()->current_test_info()->name());
    std::filesystem::remove_all(folder_);
    std::filesystem::create_directories(folder_);
  }
  void TearDown() override { std::filesystem::remove_all(folder_); }
  void write(const std::string& name, const std::string& text) const {
    std::ofstream(folder_ / name, std::ios::binary) << text;
  }

  std::filesystem::path folder_;
};

TEST_F(TablesFolder, EmptyChangesNothing) {
  const auto tables = load_tables(folder_.string());
  ASSERT_TRUE(tables);
  EXPECT_EQ(*tables, load_tables());
}

TEST_F(TablesFolder, FilesOfTheSameNameAreLaidOver) {
  write("pipes.json", pipe_rows);
  write("readme.txt", "not a table");
  const auto tables = load_tables(folder_.string());
  ASSERT_TRUE(tables) << tables.error().english();
  EXPECT_NE(find_pipe(*tables, "clay-100"), nullptr);
}

TEST_F(TablesFolder, Refused_NoFolderAndBrokenFile) {
  EXPECT_FALSE(load_tables((folder_ / "not-there").string()));
  write("soils.json", "[{\"id\": \"x\"");
  const auto tables = load_tables(folder_.string());
  ASSERT_FALSE(tables);
  EXPECT_EQ(tables.error().place, "soils.json");
}

}  // namespace
}  // namespace burrow
