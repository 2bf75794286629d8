#pragma once
/// What is tried with a hostile text, one function a format. Used by the coverage-guided fuzzers, by the seeded runs
/// and by the replay of what was kept: whoever finds a case, all of them judge it alike.

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "format_mutator.h"

namespace burrow::test {

struct Try {
  std::string_view name;  ///< of the fuzzer, and of its folders under corpus and found
  /// What is wrong; empty where all is well: the text was refused in words, or what was read holds. The sanitizers, and
  /// the asserts of the program, watch over the rest.
  std::string (*run)(std::string_view text);
  /// The first line is no part of the JSON text.
  bool headed = false;
};

/// crossing: read, written and read again. assess: judged as well. tables: laid over the built-in ones, a crossing
/// judged by them. library, practice: as crossing.
std::span<const Try> all_tries();
const Try& try_of(std::string_view name);

/// How many texts were read and not refused.
long accepted();

/// The texts to start from: those kept under tests/fuzz/corpus and tests/fuzz/found, the samples, the built-in tables.
std::vector<std::string> seeds_of(const Try& one);
/// Knows the format by these seeds.
FormatMutator mutator_of(const Try& one, const std::vector<std::string>& seeds);
/// A changed text; where it is no JSON any more, empty. A head stays.
std::string mutated(const Try& one, const FormatMutator& mutator, std::string_view text, unsigned seed);
std::string spliced(const Try& one, const FormatMutator& mutator, std::string_view text, std::string_view other,
                    unsigned seed);

}  // namespace burrow::test
