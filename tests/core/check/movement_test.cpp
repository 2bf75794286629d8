// Utilities that the ground takes along: movement, strain by the wall, what is said.

#include <gtest/gtest.h>

#include <cmath>

#include "burrow/soil/movement.h"
#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

/// The main of the clean crossing at another level and of another wall.
Crossing with_main(double elevation_m, std::string material, UtilityKind kind = UtilityKind::water) {
  Crossing crossing = clean_crossing();
  crossing.site.utilities = {water_main(4, elevation_m)};
  crossing.site.utilities.front().material = std::move(material);
  crossing.site.utilities.front().kind = kind;
  return crossing;
}

std::optional<Severity> severity_of(const Assessment& answer, std::string_view code) {
  const Finding* finding = find(answer, code, "u1");
  return finding ? std::optional(finding->severity) : std::nullopt;
}

// Second route: differences of the field along the main, which crosses squarely below the bore (firm clay, f_v = 1).
TEST(UtilityMovement, SquareCrossing_DifferencesOfTheField) {
  const Assessment answer = judged(with_main(97.6, "pe"));
  const UtilityAnswer& main = answer.utilities.front();
  const OpenedHole hole{{0.0325}, {100 - main.on_bore->z_m}, {1}};
  const auto at = [&](double x) { return *ground_movement(hole, {x}, {100 - main.on_utility->z_m}); };
  const double step = 1e-3;
  const double bends = (at(step).rise_m - 2 * at(0).rise_m + at(-step).rise_m) / (step * step);
  const double stretches = (at(step).outward_m - at(-step).outward_m) / (2 * step);
  EXPECT_NEAR(*main.ground_movement_m, std::abs(at(0).rise_m), 1e-3 * *main.ground_movement_m);
  EXPECT_NEAR(*main.strain, std::abs(bends) * 0.055 + stretches, 2e-4 * *main.strain);
}

TEST(UtilityMovement, NearerMovesMore) {
  double before = 0;
  for (const double elevation : {96.5, 97.0, 97.5, 98.0, 98.3}) {
    const double moves = *judged(with_main(elevation, "pe")).utilities.front().ground_movement_m;
    EXPECT_GT(moves, before);
    before = moves;
  }
}

// The same 0.9 m off: square to the bore the main strains, beside it only the passing front bends it.
TEST(UtilityMovement, BesideTheBore_StrainsLessThanAcross) {
  const double across = *judged(with_main(97.7, "steel")).utilities.front().strain;
  Crossing crossing = with_main(97.7, "steel");
  crossing.site.utilities.front().path = {{-4, 0, 97.7}, {12, 0, 97.7}};
  const UtilityAnswer beside = judged(crossing).utilities.front();
  EXPECT_LT(*beside.strain, 0.35 * across);
  EXPECT_GT(*beside.strain, 0.1 * across);
}

// 0.7 m below the axis the ground strains by more than each limit of iron and less than that of plastic.
TEST(UtilityStrain, Wall_DecidesWhatIsSaid) {
  EXPECT_EQ(severity_of(judged(with_main(97.9, "DN 100 cast iron")), "utility.strain"), Severity::caution);
  EXPECT_EQ(severity_of(judged(with_main(97.9, "CI")), "utility.strain"), Severity::caution);
  EXPECT_EQ(severity_of(judged(with_main(97.9, "cast iron", UtilityKind::gas)), "utility.strain"), Severity::stop);
  EXPECT_EQ(severity_of(judged(with_main(97.9, "ductile iron")), "utility.strain"), Severity::caution);
  EXPECT_EQ(severity_of(judged(with_main(97.9, "ductile iron", UtilityKind::gas)), "utility.strain"),
            Severity::caution);
  for (const char* material : {"pe100", "PVC-U", "hdpe", "PE-HD"})
    EXPECT_EQ(severity_of(judged(with_main(97.9, material)), "utility.strain"), std::nullopt) << material;
  for (const char* material : {"", "specimen pipe"}) {
    EXPECT_EQ(severity_of(judged(with_main(97.9, material)), "utility.strain"), std::nullopt);
    EXPECT_EQ(severity_of(judged(with_main(97.9, material)), "utility.wall-unknown"), Severity::caution);
  }
}

// A gas main of grey iron that strains is a stop in every language, and what nobody entered counts as that.
TEST(UtilityStrain, GreyIron_InGermanAndNotKnown) {
  for (const char* material : {"cast iron", "Grauguss", "Grauguß DN 100", "grey-iron", "Steinzeug", "Stahlbeton"})
    EXPECT_EQ(severity_of(judged(with_main(98.1, material, UtilityKind::gas)), "utility.strain"), Severity::stop)
        << material;
  for (const char* material : {"", "specimen pipe", "cable"}) {
    const Assessment answer = judged(with_main(97.9, material, UtilityKind::gas));
    ASSERT_TRUE(find(answer, "utility.wall-unknown")) << material;
    EXPECT_TRUE(find(answer, "utility.wall-unknown")->missing) << "asked for: it may be the brittle one";
    EXPECT_TRUE(answer.verdict == Verdict::incomplete || answer.verdict == Verdict::stop);
  }
  EXPECT_TRUE(find(judged(with_main(97.9, "", UtilityKind::unknown)), "utility.wall-unknown")->missing);
  EXPECT_FALSE(find(judged(with_main(97.9, "", UtilityKind::water)), "utility.wall-unknown")->missing);
  EXPECT_EQ(severity_of(judged(with_main(97.9, "Stahl", UtilityKind::gas)), "utility.strain"),
            severity_of(judged(with_main(97.9, "steel", UtilityKind::gas)), "utility.strain"));
}

// Whatever row is chosen, it is never held to less than what nobody entered: an entry cannot make things look worse.
TEST(UtilityStrain, NotKnown_IsTheStrictestOfAllRows) {
  const double unknown = *find(judged(with_main(97.9, "")), "utility.wall-unknown")->limit;
  for (const UtilityMaterialRow& row : tables().utility_materials) {
    const UtilityKind kind = row.kinds.empty() ? UtilityKind::water : row.kinds.front();
    const Assessment answer = judged(with_main(97.9, row.id, kind));
    const Working* step = working(answer, "utility.strain");
    if (!step || !step->limit) {
      EXPECT_EQ(row.wall, UtilityWall::cable) << row.id;
      continue;
    }
    EXPECT_LE(unknown, *step->limit) << row.id;
  }
  const auto limit = [](const char* id) { return find_limit(tables(), id)->value; };
  EXPECT_LE(limit("vibration_plastic_pipe_m_s"), limit("vibration_rigid_pipe_m_s"));
  EXPECT_LE(limit("vibration_rigid_pipe_m_s"), limit("vibration_steel_pipe_m_s"));
}

// A copper pipe has a limit of its own, 6,000 psi (Copper Tube Handbook, Table 3c, read) over 17,000 ksi; a cable none.
TEST(UtilityStrain, CopperPipe_HasALimitACableHasNone) {
  for (const char* material : {"copper", "Kupfer"}) {
    const Assessment pipe = judged(with_main(98.1, material));
    EXPECT_EQ(severity_of(pipe, "utility.strain"), Severity::caution) << material;
    EXPECT_NEAR(*find(pipe, "utility.strain")->limit, 6000.0 / 17e6, 0.000005);
    EXPECT_EQ(severity_of(judged(with_main(98.1, material, UtilityKind::telecom)), "utility.strain"), std::nullopt);
  }
}

// A number over its limit counts, for each line by itself: what is muted for one says nothing of the next.
TEST(UtilityStrain, UnknownWalls_AreCautionsOfTheirOwn) {
  Crossing crossing = with_main(97.6, "");
  for (const double station : {2.0, 6.0}) {
    crossing.site.utilities.push_back(water_main(station, 97.8));
    crossing.site.utilities.back().id = "u" + std::to_string(crossing.site.utilities.size());
    crossing.site.utilities.back().name = "old line";
    crossing.site.utilities.back().material.clear();
  }
  const Assessment answer = judged(crossing);
  for (std::size_t i = 0; i < 3; ++i) {
    const Finding* finding = find(answer, "utility.wall-unknown", crossing.site.utilities[i].id);
    ASSERT_TRUE(finding) << listed(answer);
    EXPECT_EQ(finding->severity, Severity::caution);
    EXPECT_EQ(*finding->measured, *answer.utilities[i].strain);
  }
}

// Said to be abandoned is no proof: a brittle main moves and strains as a live one until it is proved.
TEST(UtilityStrain, AbandonedLine_IsNotJudgedOnceProved) {
  Crossing crossing = with_main(97.9, "cast iron");
  crossing.limits["movement_utility_m"] = {1e-5, "strict", {}};
  EXPECT_TRUE(find(judged(crossing), "utility.movement", "u1"));
  const auto strain = severity_of(judged(crossing), "utility.strain");
  crossing.site.utilities.front().status.set(UtilityStatus::abandoned);
  EXPECT_TRUE(find(judged(crossing), "utility.movement", "u1"));
  EXPECT_EQ(severity_of(judged(crossing), "utility.strain"), strain);
  crossing.site.utilities.front().abandonment = {"cut and capped, seen", "A. Digger", "2026-02-27", ""};
  const Assessment answer = judged(crossing);
  EXPECT_FALSE(find(answer, "utility.strain"));
  EXPECT_FALSE(find(answer, "utility.movement"));
  EXPECT_TRUE(answer.utilities.front().strain);
}

// Short clay pieces: the joints take the stretch, the wall bends alone.
TEST(UtilityStrain, Clay_JointsTakeTheStretch) {
  const Assessment clay = judged(with_main(97.7, "vitrified clay")), iron = judged(with_main(97.7, "cast iron"));
  EXPECT_LT(*clay.utilities.front().strain, 0.5 * *iron.utilities.front().strain);
  EXPECT_EQ(input(*working(clay, "utility.strain"), "j"), 0);
  EXPECT_EQ(input(*working(iron, "utility.strain"), "j"), 1);
  EXPECT_EQ(severity_of(judged(with_main(98.1, "concrete")), "utility.strain"), Severity::caution);
  EXPECT_EQ(severity_of(judged(with_main(98.1, "clay", UtilityKind::gas)), "utility.strain"), Severity::stop);
}

TEST(UtilityStrain, NotKnowing_LeavesItOpen) {
  Crossing crossing = with_main(97.7, "cast iron");
  crossing.site.utilities.front().outside_diameter.reset();
  Assessment answer = judged(crossing);
  EXPECT_FALSE(answer.utilities.front().strain);
  EXPECT_TRUE(answer.utilities.front().ground_movement_m);
  crossing.site.utilities.front().path = {{4, -8, std::nullopt}, {4, 8, std::nullopt}};
  answer = judged(crossing);
  EXPECT_FALSE(answer.utilities.front().ground_movement_m);
  EXPECT_FALSE(find(answer, "utility.strain"));
}

// In the hole itself there is nothing to say about movement: the clear gap stops it.
TEST(UtilityMovement, StruckUtility_HasNoMovement) {
  const Assessment answer = judged(with_main(98.6, "cast iron"));
  EXPECT_FALSE(answer.utilities.front().ground_movement_m);
  EXPECT_EQ(severity_of(answer, "utility.separation"), Severity::stop);
}

TEST(UtilityMovement, OwnersLimit_Caution) {
  Crossing crossing = with_main(97.7, "pe");
  const double moves = *judged(crossing).utilities.front().ground_movement_m;
  EXPECT_FALSE(find(judged(crossing), "utility.movement"));
  crossing.limits["movement_utility_m"] = {moves * 0.99, "owner of the main", {}};
  const Assessment answer = judged(crossing);
  const Finding* finding = find(answer, "utility.movement", "u1");
  ASSERT_TRUE(finding) << listed(answer);
  EXPECT_EQ(finding->severity, Severity::caution);
  EXPECT_EQ(*finding->measured, moves);
  EXPECT_EQ(finding->source.label, SourceLabel::owners_setting);
}

// Ground that passes on less moves the utility less, in the same measure.
TEST(UtilityMovement, ShareOfTheSoil_Counts) {
  Crossing crossing = with_main(97.0, "pe");
  const UtilityAnswer full = judged(crossing).utilities.front();
  crossing.site.strata.front().values.heave_share = Ratio{0.5};
  const UtilityAnswer half = judged(crossing).utilities.front();
  EXPECT_NEAR(*half.strain, *full.strain / 2, 1e-12);
  EXPECT_NEAR(*half.ground_movement_m, *full.ground_movement_m / 2, 1e-3 * *full.ground_movement_m);
}

// The yielding ground is a note: in sand it reaches the surface, in firm clay (ten radii) it does not.
TEST(PlasticZone, Sand_ReachesSurfaceAndUtility) {
  Crossing crossing = clean_crossing();
  EXPECT_FALSE(find(judged(crossing), "bore.plastic-zone"));
  EXPECT_FALSE(find(judged(crossing), "utility.plastic-zone"));
  crossing.site.strata.front().soil = "dense-sand";
  crossing.site.utilities.push_back(water_main(6, 97.4));
  crossing.site.utilities.back().id = "u2";
  const Assessment answer = judged(crossing);
  const Finding* surface = find(answer, "bore.plastic-zone", "bore");
  const Finding* utility = find(answer, "utility.plastic-zone");
  ASSERT_TRUE(surface && utility) << listed(answer);
  EXPECT_EQ(surface->severity, Severity::note);
  EXPECT_FALSE(surface->limit) << "not judged: no limit beside it";
  EXPECT_FALSE(utility->limit);
  EXPECT_EQ(utility->subject, "u2");  // the nearest of them alone
  EXPECT_GT(*utility->measured, *answer.utilities.back().separation_m + 0.0325);
}

// Clay by hand: I_r = 4 MPa / 40 kPa = 100, so the zone ends at ten radii, 0.325 m.
TEST(PlasticZone, Clay_TenRadii) {
  EXPECT_FALSE(find(judged(with_main(98.2, "pe")), "utility.plastic-zone"));
  const Assessment answer = judged(with_main(98.3, "pe"));
  const Finding* finding = find(answer, "utility.plastic-zone", "u1");
  ASSERT_TRUE(finding) << listed(answer);
  EXPECT_NEAR(*finding->measured, 0.325, 1e-12);
}

}  // namespace
}  // namespace burrow::test
