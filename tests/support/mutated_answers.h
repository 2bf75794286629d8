#pragma once
/// Answers of the reading process with bytes changed, each of which must be refused or be sound.

#include <gtest/gtest.h>

#include <cmath>
#include <cstring>
#include <random>

#include "answer.h"

namespace burrow::test {

/// An answer that uses every member.
inline ReaderAnswer full_answer(const std::string& path) {
  Found f;
  f.file = path;
  f.format = "zipped Shapefile";
  f.layers = {"GAS", "Straße", ""};
  f.vertices = {{500001.5, 5540001.25, 101.5}, {500002, 5540002, std::nullopt}, {500003, 5540002.5, -3.0}};
  f.features = {{Shape::point, 0, 0, 1, 17, "17 GAS", std::nullopt, std::nullopt, std::nullopt, true},
                {Shape::line, 1, 1, 2, 18, "", 0.125, LevelMeant::invert, DepthFrom::ground, false},
                {Shape::area, 2, 0, 3, 19, "ä", std::nullopt, LevelMeant::crown, std::nullopt, false}};
  f.table = {{{"DIAMETER"}, {"MATERIAL"}}, {"4", "PE"}, {1, 2, 0, 0, 1, 0}};
  f.surfaces = {{1, {{0, 0, 1}, {10, 0, 2}, {0, 10, 3}, {10, 10, 4}}, {{0, 1, 2}, {1, 2, 3}}}};
  f.rasters = {{2, "/vsizip/{" + path + "}/e.tif", 20, 30, {500000, 10, 0, 5540000, 0, -10}, 99.5, 101.25},
               {0, path, 1, 1, {0, 1, 0.5, 0, 0.25, 1}, std::nullopt, std::nullopt}};
  f.frame = {"EPSG:25832", false, FileUnit::metre, FileUnit::us_survey_foot, "DHHN", true};
  f.left_out = {{"line 12", "x,y", "not a number"}, {"", "", "", false}};
  f.left_out_more = 7;
  f.order = "pnezd-";
  f.order_is_known = false;
  f.notes = {"a note", "another"};
  ReaderAnswer answer;
  answer.found = std::move(f);
  return answer;
}

inline ReaderRequest request_of(const std::string& path) {
  ReaderRequest request;
  request.path = path;
  request.most_layers = 4096;
  request.most_vertices = 100;
  return request;
}

/// Looked at once more, apart from the code under test: everything that users of what was found rely on.
inline void expect_sound(const Found& f, const ReaderRequest& request, const std::string& how) {
  const auto number = [](double v) { return std::isfinite(v) && std::abs(v) <= 1e11; };
  std::size_t count = f.vertices.size();
  for (const FoundSurface& s : f.surfaces) count += s.points.size();
  ASSERT_LE(count, request.most_vertices) << how;
  for (const FoundVertex& v : f.vertices)
    ASSERT_TRUE(number(v.x_m) && number(v.y_m) && number(v.z_m.value_or(0))) << how;
  for (const FoundFeature& g : f.features) {
    ASSERT_LE(static_cast<int>(g.shape), 2) << how;
    ASSERT_LT(g.layer, f.layers.size()) << how;
    ASSERT_TRUE(g.count >= 1 && g.count <= f.vertices.size() && g.first <= f.vertices.size() - g.count) << how;
    ASSERT_TRUE(std::isfinite(g.diameter_m.value_or(0))) << how;
  }
  ASSERT_EQ(f.table.cells.size(), f.table.fields.size() * f.features.size()) << how;
  for (const std::uint32_t cell : f.table.cells) ASSERT_LE(cell, f.table.texts.size()) << how;
  for (const FoundSurface& s : f.surfaces) {
    ASSERT_LT(s.layer, f.layers.size()) << how;
    for (const Point3& p : s.points) ASSERT_TRUE(number(p.x_m) && number(p.y_m) && number(p.z_m)) << how;
    for (const auto& face : s.faces)
      for (const std::uint32_t corner : face) ASSERT_LT(corner, s.points.size()) << how;
  }
  for (const FoundRaster& r : f.rasters) {
    ASSERT_LT(r.layer, f.layers.size()) << how;
    ASSERT_TRUE(r.columns > 0 && r.rows > 0) << how;
    ASSERT_NE(r.path.find(request.path), std::string::npos) << how;
    for (const double v : r.to_plan) ASSERT_TRUE(number(v)) << how;
  }
  ASSERT_EQ(f.file, request.path) << how;
  for (const std::string& name : f.layers)
    for (const char c : name) ASSERT_FALSE(c >= 0 && c < ' ') << how;
  (void)summaries(f);
  (void)extent_of(f);
}

struct Mutated {
  std::size_t refused = 0, taken = 0, changed = 0;
};

/// Flips bits, writes telling numbers, cuts, doubles and moves pieces: one to three of these each time.
inline Mutated try_mutations(std::uint32_t first_seed, std::size_t times) {
  const std::string path = "/a folder/b.zip";
  const ReaderRequest request = request_of(path);
  const std::string whole = packed(full_answer(path));
  const double nan = std::nan(""), huge = 1e300, infinite = HUGE_VAL;
  Mutated sum;
  for (std::size_t i = 0; i < times; ++i) {
    std::mt19937 random(first_seed + static_cast<std::uint32_t>(i));
    const auto below = [&](std::size_t n) { return n == 0 ? 0 : random() % n; };
    std::string bytes = whole;
    for (std::size_t step = below(3) + 1; step > 0 && !bytes.empty(); --step) {
      const std::size_t at = below(bytes.size()), length = std::min(bytes.size() - at, below(40) + 1);
      const auto put = [&](auto value) {
        std::memcpy(bytes.data() + at, &value, std::min(sizeof value, bytes.size() - at));
      };
      switch (below(9)) {
        case 0:
          bytes[at] = static_cast<char>(bytes[at] ^ (1 << below(8)));
          break;
        case 1:
          bytes[at] = static_cast<char>(below(256));
          break;
        case 2:
          put(~std::uint64_t{0} >> below(64));
          break;
        case 3:
          put(std::uint32_t{0xFFFFFFFF} >> below(32));
          break;
        case 4:
          put(std::array{nan, huge, infinite, -infinite, -0.0}[below(5)]);
          break;
        case 5:
          bytes.resize(at);
          break;
        case 6:
          bytes.erase(at, length);
          break;
        case 7:
          bytes.insert(below(bytes.size()), bytes.substr(at, length));
          break;
        default:
          put(static_cast<std::uint64_t>(below(300)));
          break;
      }
    }
    const auto answer = checked_answer(bytes, request);
    ++(answer ? sum.taken : sum.refused);
    sum.changed += bytes != whole ? 1 : 0;
    if (answer && answer->found) expect_sound(*answer->found, request, "seed " + std::to_string(first_seed + i));
    if (testing::Test::HasFatalFailure()) return sum;
  }
  return sum;
}

}  // namespace burrow::test
