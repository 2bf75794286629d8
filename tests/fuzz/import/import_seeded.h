#pragma once
/// Seeded changes, over and over, of what is kept of foreign files.

#include "fuzz/seeded_run.h"
#include "import_tries.h"

namespace burrow::test {

/// What is not refused is changed further now and then, so that changes add up.
inline void import_seeded_run(const Try& one, int count, unsigned seed) {
  const std::vector<std::string> seeds = import_seeds_of(one);
  const LineMutator mutator(seeds);
  std::mt19937 random(seed);
  std::string last = seeds.front();
  const long before = import_accepted();
  for (int i = 0; i < count && !testing::Test::HasFailure(); ++i) {
    const std::string& from = random() % 3 == 0 ? last : seeds[random() % seeds.size()];
    std::string text = mutator.mutate(from, static_cast<unsigned>(random()));
    const long so_far = import_accepted();
    expect_right(one, text);
    if (import_accepted() > so_far && text.size() < 20'000) last = std::move(text);
  }
  EXPECT_GT(import_accepted(), before) << one.name << ": all were refused";
}

}  // namespace burrow::test
