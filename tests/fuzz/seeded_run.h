#pragma once
/// The same tries without a view of what was reached: seeded changes, over and over, of what is kept.

#include <gtest/gtest.h>

#include <unistd.h>
#include <csignal>
#include <string>
#include <utility>

#include "tries.h"

namespace burrow::test {

/// While one lives, an abort shows the text that brought it about.
class TextUnderTry {
 public:
  explicit TextUnderTry(const std::string& text) {
    current() = &text;
    std::signal(SIGABRT, [](int) {
      const std::string& shown = *current();
      (void)!write(STDERR_FILENO, shown.data(), shown.size());
    });
  }
  ~TextUnderTry() { std::signal(SIGABRT, SIG_DFL); }
  TextUnderTry(const TextUnderTry&) = delete;
  TextUnderTry& operator=(const TextUnderTry&) = delete;

 private:
  static const std::string*& current() {
    static const std::string* text = nullptr;
    return text;
  }
};

inline void expect_right(const Try& one, const std::string& text) {
  const TextUnderTry shown(text);
  EXPECT_EQ(one.run(text), "") << one.name << ":\n" << text;
}

/// What is not refused is changed further now and then, so that changes add up.
inline void seeded_run(const Try& one, int count, unsigned seed) {
  const std::vector<std::string> seeds = seeds_of(one);
  const FormatMutator mutator = mutator_of(one, seeds);
  std::mt19937 random(seed);
  std::string last = seeds.front();
  const long before = accepted();
  for (int i = 0; i < count && !testing::Test::HasFailure(); ++i) {
    const std::string& from = random() % 3 == 0 ? last : seeds[random() % seeds.size()];
    const auto draw = static_cast<unsigned>(random());
    std::string text = draw % 5 == 0 ? spliced(one, mutator, from, seeds[draw / 8 % seeds.size()], draw)
                                     : mutated(one, mutator, from, draw);
    if (text.empty()) continue;
    const long so_far = accepted();
    expect_right(one, text);
    if (accepted() > so_far && text.size() < 20'000) last = std::move(text);
  }
  EXPECT_GT(accepted(), before) << one.name << ": all were refused";
}

}  // namespace burrow::test
