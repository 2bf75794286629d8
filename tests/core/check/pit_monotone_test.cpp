// Seeded random pits: a smaller floor, a nearer utility, a place known worse never make the answer better.

#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "support/clean_crossing.h"

namespace burrow::test {
namespace {

int rank(const Finding* finding) {
  if (!finding) return 0;
  return finding->severity == Severity::stop ? 2 : 1;
}

int rank_of_room(const Assessment& answer, std::string_view subject) {
  int worst = 0;
  for (const char* code : {"pit.floor-length", "pit.floor-width", "pit.tool-off-floor"})
    worst = std::max(worst, rank(find(answer, code, subject)));
  return worst;
}

int rank_of_utility(const Assessment& answer) {
  int worst = 0;
  for (const Finding& f : answer.findings)
    if (f.subject == "u9" && f.code.starts_with("pit.utility"))
      worst = std::max(worst, 1 + (f.code == "pit.utility") + (f.severity == Severity::stop));
  return worst;
}

class Draw {
 public:
  explicit Draw(unsigned seed) : random_(seed) {}
  double between(double low, double high) { return std::uniform_real_distribution<double>(low, high)(random_); }
  template <class T>
  T one_of(std::initializer_list<T> all) {
    return *(all.begin() + std::uniform_int_distribution<std::size_t>(0, all.size() - 1)(random_));
  }

 private:
  std::mt19937 random_;
};

TEST(PitMonotone, SmallerFloor_NeverBetter) {
  Draw draw(11);
  int found = 0;
  for (int i = 0; i < 200; ++i) {
    Crossing crossing = clean_crossing();
    const bool launch = draw.one_of({true, false});
    Pit& pit = launch ? crossing.pits.launch : crossing.pits.exit;
    const char* subject = launch ? "launch-pit" : "exit-pit";
    pit.floor_offset = Length{draw.between(-0.3, 0.3)};
    pit.floor_length = Length{draw.between(0.2, 3)};
    pit.floor_width = Length{draw.between(0.1, 1.6)};
    const int before = rank_of_room(judged(crossing), subject);
    if (draw.one_of({true, false}))
      pit.floor_length = Length{pit.floor_length->m * draw.between(0.3, 1)};
    else
      pit.floor_width = Length{pit.floor_width->m * draw.between(0.3, 1)};
    const Assessment smaller = judged(crossing);
    EXPECT_GE(rank_of_room(smaller, subject), before) << i << listed(smaller);
    found += before > 0;
  }
  EXPECT_GT(found, 50);
}

Utility somewhere(Draw& draw, const PitShape& pit) {
  Utility u = water_main(0, 0);
  u.id = "u9";
  u.kind = draw.one_of({UtilityKind::gas, UtilityKind::water, UtilityKind::unknown, UtilityKind::power});
  u.status.set(draw.one_of({UtilityStatus::live, UtilityStatus::abandoned, UtilityStatus::unknown}));
  u.located.how.set(draw.one_of({LocatedHow::traced, LocatedHow::records, LocatedHow::exposed}));
  u.located.lateral_sd = Length{draw.between(0, 0.4)};
  u.located.vertical_sd = Length{draw.between(0, 0.4)};
  const double x = (pit.floor_from_m + pit.floor_to_m) / 2, z = pit.floor_elevation_m - draw.between(-0.5, 1.8);
  const double y = draw.between(-3.5, 3.5), turn = draw.between(-1.5, 1.5);
  u.path = {{x - 3 * std::cos(turn), y - 3 * std::sin(turn), z}, {x + 3 * std::cos(turn), y + 3 * std::sin(turn), z}};
  return u;
}

TEST(PitMonotone, PlaceKnownWorse_NeverBetter) {
  Draw draw(12);
  int found = 0;
  for (int i = 0; i < 200; ++i) {
    Crossing crossing = clean_crossing();
    if (draw.one_of({true, false}))
      for (PitSide* side : {&crossing.pits.launch.sides.left, &crossing.pits.launch.sides.right}) *side = shored_side();
    crossing.pits.launch.sump_depth.set(Length{draw.one_of({0.0, 0.3})});
    const Assessment bare = judged(crossing);
    crossing.site.utilities.push_back(somewhere(draw, draw.one_of({true, false}) ? bare.launch_pit : bare.exit_pit));
    const int before = rank_of_utility(judged(crossing));
    Located& located = crossing.site.utilities.back().located;
    located.lateral_sd = Length{located.lateral_sd->m + draw.between(0, 1)};
    located.vertical_sd = Length{located.vertical_sd->m + draw.one_of({0.0, 0.1, 0.6, 40.0})};
    const Assessment worse = judged(crossing);
    EXPECT_GE(rank_of_utility(worse), before) << i << listed(worse);
    found += before > 0;
  }
  EXPECT_GT(found, 50);
}

// Up towards the floor from below it, and toward the pit from beside it.
TEST(PitMonotone, NearerUtility_NeverBetter) {
  Draw draw(13);
  int found = 0;
  for (int i = 0; i < 200; ++i) {
    Crossing crossing = clean_crossing();
    for (PitSide* side : {&crossing.pits.launch.sides.left, &crossing.pits.launch.sides.right})
      if (draw.one_of({true, false})) *side = shored_side();
    const Assessment bare = judged(crossing);
    const PitShape& pit = bare.launch_pit;
    Utility u = somewhere(draw, pit);
    const bool from_below = draw.one_of({true, false});
    const double z = from_below ? pit.floor_elevation_m - draw.between(0.1, 1.5) : pit.floor_elevation_m + 0.4,
                 y = from_below ? draw.between(-0.6, 0.6) : draw.between(1.0, 4.0);
    u.path = {{-5, y, z}, {-0.1, y, z}};
    crossing.site.utilities.push_back(u);
    const int before = rank_of_utility(judged(crossing));
    const double by = draw.between(0, 0.3);
    for (PathVertex& v : crossing.site.utilities.back().path) {
      if (from_below)
        v.z_m = *v.z_m + by;
      else
        v.y_m -= by;
    }
    const Assessment nearer = judged(crossing);
    EXPECT_GE(rank_of_utility(nearer), before) << i << listed(nearer);
    found += before > 0;
  }
  EXPECT_GT(found, 50);
}

}  // namespace
}  // namespace burrow::test
